/*
 * `npm run check:holding -- --cases FILE [--solver]` holds the pull of the model against a file of reference cases (the format of
 * `magnet-pull-development.json`: magnetGrades with Br in T and mur, cases in mm and N). The last line says how many cases
 * there are and by how much the model is off, at most and in the root mean square, in per cent with the one decimal that
 * the model's own accuracy is stated with. With `--solver` the finite elements are held against them, with the steel of
 * the file (`bhCurve.points`) where it gives one, which takes minutes for hundreds of cases. A bad file gets one line on standard error, and the exit code 1.
 */
import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { bhCurve } from '../holding/solver/bh-curve';
import { solvePullOf } from '../holding/solver/solve-pull';
import { comparePulls, readPullCases } from './holding-cases';

const usage = 'Usage: npm run check:holding -- --cases FILE [--solver]';

await main().catch((fault: unknown) => fail(fault instanceof Error ? fault.message : String(fault)));

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: { cases: { type: 'string' }, solver: { type: 'boolean', default: false } },
  });
  const file = values.cases;
  if (!file) return fail(usage);
  const text = await readFile(file, 'utf8').catch(() => undefined);
  if (text === undefined) return fail(`${file} cannot be read: give the path of a file of reference cases.`);
  const read = readPullCases(text);
  if ('fault' in read) return fail(`${file}: ${read.fault}`);
  const curve = read.steel && bhCurve(read.steel);
  if (values.solver)
    console.log(curve ? 'Steel: the points of the file.' : 'Steel: our own saturation curve of mild steel.');
  const { cases, max, rms, worst, outside } = values.solver
    ? comparePulls(read.cases, (situation) => solvePullOf(situation, undefined, curve).F)
    : comparePulls(read.cases);
  console.log(`Furthest off: ${worst.words}: ${worst.pull.toPrecision(4)} N, reference ${worst.force} N.`);
  console.log(`Unrounded: max ${perCent(max, 3)}, rms ${perCent(rms, 3)}.`);
  if (outside > 0) console.log(`${outside} of the cases lie outside the limits of the model.`);
  console.log(`cases=${cases} max=${perCent(max, 1)} rms=${perCent(rms, 1)}`);
}

function perCent(share: number, decimals: number): string {
  return `${(share * 100).toFixed(decimals)}%`;
}

function fail(line: string): never {
  console.error(line.replaceAll('\n', ' '));
  process.exit(1);
}
