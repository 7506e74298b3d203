import { regionArea } from '../../core/geometry/polygon';
import { searchBestStart } from '../../core/panels/best-start';
import type { StartCandidate } from '../../core/panels/panel';
import { figuresOfStart } from '../../core/panels/start-figures';
import { startPoint, type FixedStart } from '../../core/panels/start-point';
import type { PlainFigures } from '../panels/brute-force';
import { rectilinearWall, slopingWall, type RandomWall } from '../panels/random-walls';
import { beatenIn, questionOf, rivalOf, searchWall } from '../panels/search-wall';

const walls = (make: (seed: number) => RandomWall, from: number, to: number): RandomWall[] =>
  Array.from({ length: to - from }, (_, i) => make(from + i)).filter(({ area }) => area.area.length > 0);

/** The best start against the plain ways of laying out, on 200 generated walls, each wall by itself. */
export function benchPlainWays(): void {
  const all = [...walls(rectilinearWall, 2000, 2150), ...walls(slopingWall, 2000, 2050)];
  const ways: readonly (readonly [string, FixedStart | 'best'])[] = [
    ['best start', 'best'],
    ['start in the corner', 'lower-left'],
    ['centred, panel on the middle', 'centre-on-panel'],
    ['centred, joint on the middle', 'centre-on-joint'],
  ];
  for (const [name, start] of ways) {
    const sums = { stockSheets: 0, cutPanels: 0, slivers: 0, cutLength: 0 };
    let laid = 0;
    let bought = 0;
    for (const wall of all) {
      const question = questionOf(wall);
      const { area, pattern } = question;
      const figures: StartCandidate =
        start === 'best'
          ? searchBestStart(question).best
          : figuresOfStart(question, startPoint(start, area.box, pattern));
      for (const key of Object.keys(sums) as (keyof typeof sums)[]) sums[key] += figures[key];
      laid += regionArea(area.area);
      bought += figures.stockSheets * pattern.width * pattern.height;
    }
    console.log(
      `panels  ${all.length} walls, ${name}: ${sums.stockSheets} stock sheets, ${sums.cutPanels} cut panels, ` +
        `${sums.slivers} slivers, ${(sums.cutLength / 1e5).toFixed(0)} m of cuts, ` +
        `waste ${(100 - (100 * laid) / bought).toFixed(1)} %`,
    );
  }
}

export const kinds = {
  rectilinear: { make: rectilinearWall, count: 200, title: 'rectilinear walls' },
  sloping: { make: slopingWall, count: 100, title: 'walls with sloping or round edges' },
};

/**
 * The best start against every start on a raster of 1 mm, each nested by the cutter's first plan, on 200 walls of level
 * and upright edges and 100 with sloping or round ones. Takes the better part of an hour; `raster-bench.ts` does a
 * slice of it.
 */
export function benchBruteForce(): void {
  for (const kind of Object.keys(kinds) as (keyof typeof kinds)[])
    compareWithRaster(kind, 0, kinds[kind].count);
}

/** Those walls of a kind with these numbers. */
export function compareWithRaster(kind: keyof typeof kinds, from: number, to: number): void {
  const { make, title } = kinds[kind];
  const all = walls(make, from, to);
  const beaten: Record<keyof PlainFigures, string[]> = { slivers: [], stockSheets: [], cutPanels: [] };
  for (const wall of all) {
    const { figures } = searchWall(wall);
    const rival = rivalOf(wall, figures);
    if (rival) beaten[beatenIn(figures, rival)].push(wall.name);
  }
  const { slivers, stockSheets, cutPanels } = beaten;
  console.log(
    `panels  ${all.length} ${title} against every start on 1 mm: beaten in slivers ${slivers.length}, ` +
      `in stock sheets ${stockSheets.length}, in cut panels at equal slivers and sheets ${cutPanels.length}` +
      [...slivers, ...stockSheets, ...cutPanels].map((one) => `; ${one}`).join(''),
  );
}
