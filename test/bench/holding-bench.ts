import { checkWall } from '../../core/holding/check-hung';
import { holdingMap } from '../../core/holding/holding-map';
import { hungResults } from '../../core/holding/judge-wall';
import { magnetsOf } from '../../core/holding/ready-magnets';
import { newHung } from '../../core/job/hung-kinds';
import type { Job, Wall } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { fullWallJob } from './full-wall';
import { randomOf } from './generated-jobs';
import { row, timed } from './print';

const kinds = ['print', 'clipboard', 'map', 'shelf', 'tool-rack', 'coat-hook', 'game-piece'] as const;

/** What hangs on a wall of 500 panels, and the map of what may. Items at seeded places; invented. */
export async function holdingBench(): Promise<void> {
  const { job } = fullWallJob();
  const { survey, zones } = workOutFully(job).walls[0]!;
  const { wall } = survey;
  const panels = zones.flatMap(({ layout }) => layout?.panels ?? []).length;
  const magnet = magnetsOf(job).get('N42-20x5')!;
  const map = timed(15, () => holdingMap(job, wall, zones, { magnet, reach: 30, use: 'light-at-reach' }));
  row(`holding map, ${panels} panels`, map);
  console.log(
    `    ${map.value.length} bands, ${map.value.reduce((n, { region }) => n + region.length, 0)} areas`,
  );
  const few = withItems(job, wall, 200);
  const checked = timed(9, () => checkWall(job, few, zones));
  row('200 items checked in full', checked);
  console.log(`    ${checked.value.filter(({ verdict }) => verdict.verdict === 'holds').length} hold`);
  const many = withItems(job, wall, 5000);
  const judged = timed(3, () => hungResults(job, many, zones));
  row('5,000 items judged', judged);
  console.log(`    ${judged.value.hung.filter(({ verdict }) => verdict === 'holds').length} hold`);
}

function withItems(job: Job, wall: Wall, count: number): Wall {
  const random = randomOf(5);
  const hung = Array.from({ length: count }, (_, i) => ({
    ...newHung(job, wall, kinds[i % kinds.length]!, { x: 300 + random() * 15000, y: 400 + random() * 2500 }),
    id: `H${i + 1}`,
  }));
  return { ...wall, peopleBelow: [], hung };
}
