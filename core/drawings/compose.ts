import type { WorkedOut } from '../worked-out';
import { bundleLabels } from './bundle-labels';
import { changesSince, type Since } from './changes-since';
import { clientAlternatives, type DrawnAlternative } from './client-alternatives';
import { clientView } from './client-view';
import { cutList } from './cut-list';
import { cutSheets } from './cut-sheets';
import { holdingChecks } from './holding-checks';
import { holdingMapSheet } from './holding-map-sheet';
import { markingsSheet } from './markings-sheet';
import type { LodeplanDocument, TextMeasure } from './page';
import { panelLabels } from './panel-labels';
import { picturesInFile, type Pictures } from './pictures';
import { pricedDocuments } from './priced-documents';
import { settingOutSheet } from './setting-out';
import { templates } from './templates';

/** What a job is drawn beside, as far as it is known. */
export interface Beside {
  /** All alternatives of the job in their order, the chosen one among them. */
  readonly alternatives?: readonly DrawnAlternative[];
  readonly since?: Since | null;
  /** What markings show; absent: those whose bytes stand in the job, as in a file. */
  readonly pictures?: Pictures;
}

/**
 * Every document of a job in the order of the work: a setting-out sheet a wall, cut sheets, cut list, templates, bundle labels,
 * panel labels, markings of each wall that has some, checks of what hangs, a holding map of each wall that holds magnets,
 * client view, alternatives side by side, materials list, film strips, programme, day sheets, offer, care sheet, handover pack,
 * changes since a revision. A document with nothing to show is
 * left out; a job without walls has none.
 */
export function composeDocuments(
  worked: WorkedOut,
  measure: TextMeasure,
  { alternatives = [], since, pictures = picturesInFile(worked.job) }: Beside = {},
): LodeplanDocument[] {
  const documents = [
    ...worked.walls.map((_, wallIndex) => settingOutSheet(worked, wallIndex, measure)),
    cutSheets(worked, measure),
    cutList(worked, measure),
    templates(worked, measure),
    bundleLabels(worked, measure),
    panelLabels(worked, measure),
    ...worked.walls.map((_, wallIndex) => markingsSheet(worked, wallIndex, measure, pictures)),
    holdingChecks(worked, measure),
    ...worked.walls.map((_, wallIndex) => holdingMapSheet(worked, wallIndex, measure)),
    clientView(worked, measure, pictures),
    clientAlternatives(worked.job, alternatives, measure),
    ...pricedDocuments(worked, alternatives, pictures, measure),
    ...(since ? [changesSince(worked, since, measure)] : []),
  ];
  return documents.filter(({ pages }) => pages.length > 0);
}
