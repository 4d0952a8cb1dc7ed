/**
 * How much a settled case counts, by how the end is known. Our own judgement (common practice, no source). A guess
 * counts nothing: most guesses repeat what this tool said, and a tool must not learn from itself.
 */
export const SURENESS = { guess: 0, fairly: 0.5, seen: 0.9, told: 1 } as const;
export type Sureness = keyof typeof SURENESS;
