/** The view over a file's bytes. */
export const viewOf = (file: Uint8Array): DataView =>
  new DataView(file.buffer, file.byteOffset, file.byteLength);

/** Do these letters stand there, one a byte? */
export const asciiAt = (bytes: Uint8Array, at: number, word: string): boolean =>
  [...word].every((letter, index) => bytes[at + index] === letter.charCodeAt(0));

/** The letters that stand there, one a byte. */
export const textAt = (bytes: Uint8Array, at: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + length));

export const bytesOf = (word: string): Uint8Array => Uint8Array.from(word, (letter) => letter.charCodeAt(0));

export function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
