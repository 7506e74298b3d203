/**
 * Days and times of day as whole numbers, without a clock or a time zone: ISO 8601 days count from 1970-01-01 = 0, which
 * was a Thursday.
 */

/** Of a day as `2026-03-02`; null for anything else, also for a day that no month has. */
export function dayNumber(text: string): number | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!parts) return null;
  const days = Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3])) / 86_400_000;
  return isoDay(days) === text ? days : null;
}

/** @example isoDay(0) // 1970-01-01 */
export function isoDay(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10);
}

/** As ISO 8601 numbers them: 1 Monday, 7 Sunday. */
export function weekdayOf(day: number): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

/** Minutes from midnight of `08:30`; 24:00 ends a day. null for anything else. */
export function timeOfDay(text: string): number | null {
  const parts = /^(\d{2}):(\d{2})$/.exec(text);
  if (!parts) return null;
  const minutes = Number(parts[1]) * 60 + Number(parts[2]);
  return Number(parts[2]) < 60 && minutes <= 1440 ? minutes : null;
}
