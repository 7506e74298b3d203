/*
 * `npm run bench:cutting`: plates, bounds and proofs on a file of instances, on one core. Every plan is checked by
 * the independent verifier before it is counted.
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { CuttingMethod } from '../../core/cutting/plan';
import { generateInstances } from '../cutting/class-generators';
import { readInstances, readRecords, type PackingInstance, type PlateRecord } from '../cutting/instance-file';
import { percentile } from './print';
import { clocks, solveInstance, type Clock, type SolvedInstance } from './solve-instance';

const usage =
  'npm run bench:cutting -- (--instances FILE | --generate SEED [--write FILE]) --method free|edge-to-edge ' +
  '--seconds S [--only CLASS] [--clock wall|cpu]';

interface Wanted {
  readonly instances: readonly PackingInstance[];
  readonly records: ReadonlyMap<string, PlateRecord>;
  readonly method: CuttingMethod;
  readonly seconds: number;
  readonly clock: Clock;
}

try {
  process.exitCode = runBench(readWanted(process.argv.slice(2)));
} catch (error) {
  console.error((error as Error).message);
  process.exitCode = 1;
}

/** @throws Error with one sentence for the user */
function readWanted(args: string[]): Wanted {
  const { values } = parseArgs({
    args,
    options: {
      instances: { type: 'string' },
      generate: { type: 'string' },
      write: { type: 'string' },
      method: { type: 'string' },
      seconds: { type: 'string' },
      only: { type: 'string' },
      clock: { type: 'string', default: 'wall' },
    },
  });
  const { method, clock, only } = values;
  if (method !== 'free' && method !== 'edge-to-edge')
    throw new Error(`Say --method free or edge-to-edge: ${usage}`);
  if (clock !== 'wall' && clock !== 'cpu') throw new Error(`--clock is wall or cpu: ${usage}`);
  const seconds = Number(values.seconds ?? NaN);
  if (values.seconds?.trim() === '' || !(seconds >= 0 && seconds < Infinity)) {
    throw new Error(`Say --seconds S, 0 or more: ${usage}`);
  }
  if ((values.instances === undefined) === (values.generate === undefined)) {
    throw new Error(`Say either --instances FILE or --generate SEED: ${usage}`);
  }
  if (values.write !== undefined && values.generate === undefined) {
    throw new Error('--write FILE keeps generated instances, so it goes with --generate SEED.');
  }
  const [instances, records] =
    values.instances === undefined
      ? [generated(values.generate!, values.write), new Map<string, PlateRecord>()]
      : [readInstances(values.instances), readRecords(values.instances)];
  const chosen = only === undefined ? instances : instances.filter((one) => String(one.class) === only);
  if (chosen.length === 0) {
    const classes = [...new Set(instances.map((one) => one.class))].join(', ');
    throw new Error(`There is no class ${only}; the classes are ${classes}.`);
  }
  return { instances: chosen, records, method, seconds, clock: clocks[clock] };
}

function generated(seed: string, file: string | undefined): readonly PackingInstance[] {
  if (!/^\d{1,9}$/.test(seed))
    throw new Error(`--generate takes a seed, a whole number from 0, not "${seed}".`);
  const content = generateInstances(Number(seed));
  if (file !== undefined) writeFileSync(file, `${JSON.stringify(content)}\n`);
  return content.instances;
}

/** @returns the exit code: 1 if a plan is unsound */
function runBench({ instances, records, method, seconds, clock }: Wanted): number {
  const classes = new Map<PackingInstance['class'], PackingInstance[]>();
  for (const instance of instances) {
    classes.set(instance.class, [...(classes.get(instance.class) ?? []), instance]);
  }
  const all: Counted[] = [];
  for (const [name, members] of classes) {
    const solved = members.map((instance): Counted => {
      const counted = { instance, ...solveInstance(instance, method, seconds, clock) };
      for (const fault of counted.faults) console.log(`FAULT ${instance.id}: ${fault}`);
      return counted;
    });
    console.log(`class ${name} (${members.length}): ${figures(solved)}`);
    all.push(...solved);
  }
  const faulty = all.filter(({ faults }) => faults.length > 0);
  const far = all.filter(({ instance, plates }) => plates > (recordOf(instance) ?? Infinity) + 1);
  if (far.length > 0) {
    console.log(`more than one plate above the record: ${far.map(({ instance }) => instance.id).join(', ')}`);
  }
  if (faulty.length > 0) {
    console.log(`unsound and not counted: ${faulty.map(({ instance }) => instance.id).join(', ')}`);
  }
  console.log(figures(all));
  return faulty.length > 0 ? 1 : 0;

  function recordOf({ id }: PackingInstance): number | undefined {
    return records.get(id)?.[method === 'free' ? 'free' : 'edgeToEdge'];
  }

  function figures(solved: readonly Counted[]): string {
    const sound = solved.filter(({ faults }) => faults.length === 0);
    const plates = sound.reduce((sum, one) => sum + one.plates, 0);
    const lower = sound.reduce((sum, one) => sum + one.lower, 0);
    const proved = sound.filter((one) => one.proved).length;
    const times = sound.map(({ ms }) => ms).sort((a, b) => a - b);
    const known = sound.filter(({ instance }) => recordOf(instance) !== undefined);
    const over = known.reduce((sum, one) => sum + one.plates - recordOf(one.instance)!, 0);
    return (
      `plates=${plates} lower=${lower} proved=${proved} medianMs=${percentile(times, 0.5).toFixed(1)} ` +
      `overBest=${known.length > 0 ? over : '-'}`
    );
  }
}

interface Counted extends SolvedInstance {
  readonly instance: PackingInstance;
}
