import { solvePull, type SolverInput } from '../../core/holding/solver/solve-pull';
import { confirmPull } from '../../core/holding/confirmed-pull';
import { disc } from '../../core/holding/magnet';
import { row, timed } from './print';

const sheet = { t: 0.0005, g: 0.001, Br: 1.3, mur: 1.05 };
const cases: Readonly<Record<string, SolverInput>> = {
  'disc 20 × 5 mm': { R: 0.01, H: 0.005, ...sheet },
  'disc 40 × 4 mm on 0.3 mm': { R: 0.02, H: 0.004, ...sheet, t: 0.0003 },
  'ring 20 / 6 × 5 mm': { R: 0.01, bore: 0.003, H: 0.005, ...sheet },
  'cup 32 × 7 mm on thick steel': {
    ...{ R: 0.016, H: 0.007, cup: { magnetR: 0.0125, wall: 0.002, floor: 0.002, recess: 0.0001 } },
    ...{ ...sheet, t: 0.01, g: 0.0002 },
  },
};

/** The finite elements: one case is to take a second at most; a magnet that is confirmed has three of them. */
export function finiteElementsBench(): Promise<void> {
  for (const [words, input] of Object.entries(cases)) {
    const solved = timed(7, () => solvePull(input));
    row(words, solved);
    const { F, nodes, iterations } = solved.value;
    console.log(`    ${F.toFixed(3)} N, ${nodes} nodes, ${iterations} steps of Newton's method`);
  }
  const ground = {
    kind: 'steel',
    steel: 'low-carbon',
    thickness: 0.5,
    gap: 1,
    surface: 'plain',
    tests: [],
  } as const;
  const ring = { ...disc('N42', 20, 5), shape: 'ring', bore: 6 } as const;
  row(
    'a ring confirmed, with its worst and best case',
    timed(5, () => confirmPull(ring, ground, 0, { hottest: 20, coldest: 20 })),
  );
  return Promise.resolve();
}
