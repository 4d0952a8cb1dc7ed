/** How long a question or check takes: "a moment", "half a minute", "3 minutes", "10 minutes, then wait 3 weeks". */
export function describeMinutes(minutes: number, waitDays = 0): string {
  const time =
    minutes < 0.4
      ? 'a moment'
      : minutes < 0.75
        ? 'half a minute'
        : minutes < 1.5
          ? '1 minute'
          : `${Math.round(minutes)} minutes`;
  if (waitDays <= 0) return time;
  if (waitDays === 1) return `${time}, and a wait until tomorrow`;
  if (waitDays % 7 === 0)
    return `${time}, and a wait of ${waitDays === 7 ? 'a week' : `${waitDays / 7} weeks`}`;
  return `${time}, and a wait of ${waitDays} days`;
}
