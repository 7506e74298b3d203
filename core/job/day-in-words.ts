/** An ISO 8601 day in words, `2 March 2026`; anything else as it was written. */
export function dayInWords(date: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date) ?? [];
  const name = months[Number(month) - 1];
  return name ? `${Number(day)} ${name} ${year}` : date;
}

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
