import type { WorkedOut } from '../worked-out';
import { bundleLabels } from './bundle-labels';
import { changesSince, type Since } from './changes-since';
import { clientAlternatives, type DrawnAlternative } from './client-alternatives';
import { clientView } from './client-view';
import { cutList } from './cut-list';
import { cutSheets } from './cut-sheets';
import type { LodeplanDocument, TextMeasure } from './page';
import { settingOutSheet } from './setting-out';

/** What a job is drawn beside, as far as it is known. */
export interface Beside {
  /** All alternatives of the job in their order, the chosen one among them. */
  readonly alternatives?: readonly DrawnAlternative[];
  readonly since?: Since | null;
}

/**
 * Every document of a job in the order of the work: a setting-out sheet a wall, cut sheets, cut list, bundle labels, client view,
 * alternatives side by side, changes since a revision. A document with nothing to show is left out; a job without walls has none.
 */
export function composeDocuments(
  worked: WorkedOut,
  measure: TextMeasure,
  { alternatives = [], since }: Beside = {},
): LodeplanDocument[] {
  const documents = [
    ...worked.walls.map((_, wallIndex) => settingOutSheet(worked, wallIndex, measure)),
    cutSheets(worked, measure),
    cutList(worked, measure),
    bundleLabels(worked, measure),
    clientView(worked, measure),
    clientAlternatives(worked.job, alternatives, measure),
    ...(since ? [changesSince(worked, since, measure)] : []),
  ];
  return documents.filter(({ pages }) => pages.length > 0);
}
