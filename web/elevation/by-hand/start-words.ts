import { countText } from '../../../core/drawings/figure-text';
import type { HandFigures } from '../../../core/run/hand-figures';
import type { StartFigures } from '../../../core/run/start-scale';

/** "12 stock sheets, 8 cut, 1 sliver, 9 joints" */
export function startFigureWords({ stockSheets, cutPanels, slivers, joints }: StartFigures): string {
  return [
    countText(stockSheets, 'stock sheet'),
    `${cutPanels} cut`,
    slivers === 0 ? 'no slivers' : countText(slivers, 'sliver'),
    countText(joints, 'joint'),
  ].join(', ');
}

/** The same without the words: "best: 11, 8, 0, 9". */
export function bestWords(best: readonly StartFigures[] | null): string {
  const [first] = best ?? [];
  if (!first) return 'looking for the best start';
  const { stockSheets, cutPanels, slivers, joints } = first;
  return `best: ${[stockSheets, cutPanels, slivers, joints].join(', ')}`;
}

/** "12 stock sheets, 8 cut, 1 sliver" */
export function handFigureWords({ stockSheets, cutPanels, slivers }: HandFigures): string {
  return [
    countText(stockSheets, 'stock sheet'),
    `${cutPanels} cut`,
    slivers === 0 ? 'no slivers' : countText(slivers, 'sliver'),
  ].join(', ');
}

/** The same of the zone with one choice less: "best without it: 11, 8, 0". */
export function withoutWords(figures: HandFigures | null): string {
  if (!figures) return 'counting what it would be without it';
  const { stockSheets, cutPanels, slivers } = figures;
  return `best without it: ${[stockSheets, cutPanels, slivers].join(', ')}`;
}
