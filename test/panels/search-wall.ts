import { countStockSheets } from '../../core/cutting/count-stock-sheets';
import type { CuttingTask } from '../../core/cutting/plan';
import { searchCutting } from '../../core/cutting/search';
import { rectangle } from '../../core/geometry/polygon';
import { searchBestStart, type BestStart } from '../../core/panels/best-start';
import type { CutSize } from '../../core/panels/cut-size';
import { patternOf } from '../../core/panels/grid';
import type { StartQuestion } from '../../core/panels/start-figures';
import { startMeter } from '../../core/panels/start-meter';
import { toHundredth } from '../../core/units';
import { findRival, type PlainFigures, type PlainQuestion, type Rival } from './brute-force';
import type { RandomWall } from './random-walls';
import { stockSheet } from './zones-by-hand';

export function questionOf({ area, width, height, method, kerf }: RandomWall): StartQuestion {
  const layout = area.zone.layout!;
  const stock = stockSheet(width, height);
  const format = { width: toHundredth(width), height: toHundredth(height) };
  return {
    area,
    pattern: patternOf(layout, stock),
    leastWidth: toHundredth(layout.leastWidth),
    kerf: toHundredth(kerf),
    countStockSheets: (cut) => countStockSheets(cut, format, method, toHundredth(kerf)),
  };
}

/** Stock sheets of the cutter's first plan for the bounding rectangles of cut panels. */
export function sheetsByCutter(wall: RandomWall, cut: readonly Pick<CutSize, 'width' | 'height'>[]): number {
  if (cut.length === 0) return 0;
  const task: CuttingTask = {
    panels: cut.map(({ width, height }, i) => ({
      mark: `P${i}`,
      stock: ['S1'],
      outline: rectangle(0, 0, width, height),
    })),
    stock: [
      {
        id: 'S1',
        width: toHundredth(wall.width),
        height: toHundredth(wall.height),
        price: 100,
        hasFace: false,
      },
    ],
    rack: [],
    method: wall.method,
    kerf: toHundredth(wall.kerf),
    leastOffcut: [10_000, 10_000],
  };
  const plan = searchCutting(task, 1).next().value;
  if (!plan) throw new Error('The first step of cutting gives a plan.');
  return plan.newSheets;
}

export function plainQuestionOf(wall: RandomWall): PlainQuestion {
  const { pattern, leastWidth } = questionOf(wall);
  const { area, box } = wall.area;
  return {
    ...pattern,
    area,
    bottom: box.bottom,
    leastWidth,
    countSheets: (cut) => sheetsByCutter(wall, cut),
  };
}

/** The best start by the search; its stock sheets as the cutter's first plan has them, if that has fewer. */
export function searchWall(
  wall: RandomWall,
  rules?: StartQuestion['rules'],
): { readonly found: BestStart; readonly figures: PlainFigures } {
  const question = { ...questionOf(wall), rules };
  const found = searchBestStart(question);
  const { best } = found;
  const cut = startMeter(question).cutSizes(best.start.x, best.start.y);
  const byCutter = best.panels - best.cutPanels + sheetsByCutter(wall, cut);
  return { found, figures: { ...best, stockSheets: Math.min(best.stockSheets, byCutter) } };
}

/** A start on a raster of whole millimetres that beats the figures. */
export function rivalOf(wall: RandomWall, figures: PlainFigures): Rival | undefined {
  return findRival(plainQuestionOf(wall), figures, 100);
}

/** In which figure a rival beats: the first that differs. */
export function beatenIn(figures: PlainFigures, rival: PlainFigures): keyof PlainFigures {
  if (rival.slivers !== figures.slivers) return 'slivers';
  return rival.stockSheets !== figures.stockSheets ? 'stockSheets' : 'cutPanels';
}
