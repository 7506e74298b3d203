import { priceJob } from '../offer/price-job';
import { calendarFile } from '../programme/calendar-file';
import type { WorkedOut } from '../worked-out';
import { holdingTable } from './holding-table';
import { materialsTable, needsTable } from './materials-tables';
import { programmeCsv } from './programme-csv';

/** A list for other programs: its name with ending, and its text. */
export interface ListFile {
  readonly name: string;
  readonly text: string;
}

/**
 * Checks of what hangs, materials, how each amount is counted, and dates as CSV (RFC 4180); visits and days of readiness as a calendar file
 * (RFC 5545) where the job names a day.
 */
export function pricedTables(worked: WorkedOut): ListFile[] {
  const checks = holdingTable(worked);
  const held = checks === undefined ? [] : [{ name: 'holding-checks.csv', text: checks }];
  const { takeOff, programme } = priceJob(worked);
  if (takeOff.lines.length === 0 && programme.tasks.length === 0) return held;
  const dates = calendarFile(worked.job, programme);
  return [
    ...held,
    ...[materialsTable(worked, takeOff), needsTable(worked, takeOff)].map(({ name, text }) => ({
      name: `${name}.csv`,
      text,
    })),
    { name: 'programme.csv', text: programmeCsv(worked.job, programme) },
    ...(dates === null ? [] : [{ name: 'programme.ics', text: dates }]),
  ];
}
