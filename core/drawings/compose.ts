import type { WorkedOut } from '../worked-out';
import { bundleLabels } from './bundle-labels';
import { clientView } from './client-view';
import { cutList } from './cut-list';
import { cutSheets } from './cut-sheets';
import type { LodeplanDocument, TextMeasure } from './page';
import { settingOutSheet } from './setting-out';

/**
 * Every document of a job in the order of the work: a setting-out sheet a wall, cut sheets, cut list, bundle labels, client view. A
 * document with nothing to show is left out; a job without walls has none.
 */
export function composeDocuments(worked: WorkedOut, measure: TextMeasure): LodeplanDocument[] {
  const documents = [
    ...worked.walls.map((_, wallIndex) => settingOutSheet(worked, wallIndex, measure)),
    cutSheets(worked, measure),
    cutList(worked, measure),
    bundleLabels(worked, measure),
    clientView(worked, measure),
  ];
  return documents.filter(({ pages }) => pages.length > 0);
}
