/** Whether a text is a day that there is, as ISO 8601 writes it: `2026-11-30`. */
export function isDay(text: string): boolean {
  const read = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : undefined;
  // The 31st of a shorter month would be read as a day of the next.
  return read !== undefined && !Number.isNaN(read.getTime()) && read.toISOString().startsWith(text);
}
