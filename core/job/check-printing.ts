import type { Finding } from '../finding';
import { figure } from '../lengths';
import { labelSheetOf, labelSize, leastLabel } from './label-sheets';
import { refusal } from './place';
import type { Job } from './schema';

/** Labels have room on their sheet, and the one to begin with is on it. */
export function checkPrinting(job: Job): Finding[] {
  const labels = job.printing?.labels;
  if (!labels) return [];
  const sheet = labelSheetOf(job);
  const { width, height } = labelSize(sheet);
  const refuse = (field: string | null, code: string, says: string) =>
    refusal(job, ['printing', 'labels', ...(field === null ? [] : [field])], code, says);
  const grid = `${sheet.columns} × ${sheet.rows} labels on ${sheet.paper}`;
  if (width <= 0 || height <= 0) {
    return [
      refuse(null, 'no-room-for-labels', `leave no room for ${grid}; make margins, gaps or numbers smaller.`),
    ];
  }
  if (width < leastLabel.width || height < leastLabel.height) {
    const is = `${figure(width, 1)} × ${figure(height, 1)} mm`;
    const least = `${leastLabel.width} × ${leastLabel.height} mm`;
    return [
      refuse(
        null,
        'small-labels',
        `make ${grid} only ${is} each, and a mark that can be read needs ${least}; put fewer on a sheet, or make margins and gaps smaller.`,
      ),
    ];
  }
  const most = sheet.columns * sheet.rows;
  const { first = 1 } = labels;
  if (first <= most) return [];
  return [
    refuse(
      'first',
      'no-such-label',
      `is ${first}, but the sheet has ${most} labels; give a number up to ${most}.`,
    ),
  ];
}
