const day = 86_400_000;

/**
 * The day so many days after another.
 *
 * @returns null where `date` is no ISO 8601 day, or the answer lies beyond the year 9999
 * @example dayAfter('2026-02-27', 2) // '2026-03-01'
 */
export function dayAfter(date: string, days: number): string | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return null;
  const from = Date.parse(`${date}T00:00:00Z`);
  // What the calendar does not have, such as 30 February, is carried on by some runtimes and refused by others.
  if (Number.isNaN(from) || new Date(from).toISOString().slice(0, 10) !== date) return null;
  const to = new Date(from + days * day).toISOString();
  return /^\d{4}-/.test(to) ? to.slice(0, 10) : null;
}
