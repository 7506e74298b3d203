/* `npm run bench`: the figures of the planner, measured here and now. Seeded work; medians, since machines are noisy. */
import { demoJob } from '../../core/job/demo';
import { workOut, workOutFully } from '../../core/run/pipeline';
import type { Job } from '../../core/job/schema';
import { cuttingBench } from './cutting-bench';
import { documentsBench } from './documents-bench';
import { finiteElementsBench } from './finite-elements-bench';
import { schoolJob, singleWallJob } from './generated-jobs';
import { holdingBench } from './holding-bench';
import { panelsBench } from './panels-bench';
import { peersBench } from './peers-bench';
import { priceBench } from './price-bench';
import { row, timed } from './print';
import { schoolBench } from './school-bench';
import { screenBench } from './screen-bench';

const parts: Record<string, () => Promise<void>> = {
  run: runBench,
  school: schoolBench,
  panels: panelsBench,
  cutting: cuttingBench,
  peers: peersBench,
  holding: holdingBench,
  'finite-elements': finiteElementsBench,
  documents: documentsBench,
  price: priceBench,
  screen: screenBench,
};

const wanted = process.argv.slice(2);
for (const name of wanted) {
  if (!(name in parts)) {
    console.error(
      `There is no part "${name}": choose from ${Object.keys(parts).join(', ')}, or none for all.`,
    );
    process.exit(1);
  }
}
for (const [name, part] of Object.entries(parts)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  console.log(`\n── ${name}`);
  await part();
}

async function runBench(): Promise<void> {
  for (const [title, job, rounds] of [
    ['demo', demoJob(), 9],
    ['one wall, 40 panels, 8 fittings', singleWallJob(40, 8), 9],
    ['one wall, 500 panels, 20 fittings', singleWallJob(500, 20), 3],
    ['120 walls, one delivery', schoolJob(120), 3],
  ] as const) {
    const first = timed(rounds, () => firstResult(job));
    const whole = timed(rounds, () => workOutFully(job));
    const { cutting, walls } = whole.value;
    const panels = walls.flatMap(({ zones }) => zones.flatMap(({ layout }) => layout?.panels ?? []));
    row(`${title}: first result`, first);
    row(`${title}: final result`, whole);
    const proof = cutting.leastPossible ? 'least possible' : `bound ${cutting.lowerBound}`;
    console.log(`    ${panels.length} panels, ${cutting.newSheets} stock sheets (${proof})`);
  }
}

function firstResult(job: Job) {
  for (const worked of workOut(job)) if (worked) return worked;
  throw new Error('A job that is worked out has a first result.');
}
