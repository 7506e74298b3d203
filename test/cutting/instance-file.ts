import { existsSync, readFileSync } from 'node:fs';
import * as v from 'valibot';

/** Rectangles to be cut from the fewest equal plates; lengths are whole numbers without a unit. */
export interface PackingInstance {
  readonly id: string;
  readonly class: number | string;
  /** Pieces; the quantities add up to it. */
  readonly n: number;
  readonly width: number;
  readonly height: number;
  readonly items: readonly (readonly [width: number, height: number, quantity: number])[];
}

export interface InstanceFile {
  readonly source: string;
  readonly citation: string;
  readonly instances: readonly PackingInstance[];
}

/** Best numbers of plates on record for an instance, quarter turns allowed. */
export interface PlateRecord {
  readonly free: number;
  /** In at most three stages of cuts that run right across. */
  readonly edgeToEdge: number;
  /** No plan takes fewer. */
  readonly bound: number;
}

const whole = v.pipe(v.number(), v.integer(), v.minValue(1));

const instanceFile = v.object({
  instances: v.pipe(
    v.array(
      v.object({
        id: v.string(),
        class: v.union([v.number(), v.string()]),
        n: whole,
        width: whole,
        height: whole,
        items: v.pipe(v.array(v.tuple([whole, whole, whole])), v.minLength(1)),
      }),
    ),
    v.minLength(1),
  ),
});

const recordFile = v.object({
  bestKnown: v.record(
    v.string(),
    v.object({ rotation: v.number(), rotation3Stage: v.number(), rotationBound: v.number() }),
  ),
});

/**
 * @returns the instances of the file
 * @throws Error with one sentence for the user if there is no such file or it says something else
 */
export function readInstances(path: string): readonly PackingInstance[] {
  const { instances } = parseFile(path, instanceFile);
  for (const { id, n, width, height, items } of instances) {
    const pieces = items.reduce((sum, [, , quantity]) => sum + quantity, 0);
    if (pieces !== n) throw new Error(`${path}: instance ${id} says ${n} pieces, its items are ${pieces}.`);
    const large = items.find(
      ([w, h]) => Math.max(w, h) > Math.max(width, height) || Math.min(w, h) > Math.min(width, height),
    );
    if (large) {
      throw new Error(
        `${path}: instance ${id} has a piece ${large[0]} × ${large[1]}, but its plate is ${width} × ${height}.`,
      );
    }
  }
  return instances;
}

/** The records that lie beside an instance file: `x.json` has them in `x-best-known.json`. Empty without one. */
export function readRecords(path: string): ReadonlyMap<string, PlateRecord> {
  const beside = path.replace(/\.json$/i, '') + '-best-known.json';
  if (!existsSync(beside)) return new Map();
  const { bestKnown } = parseFile(beside, recordFile);
  return new Map(
    Object.entries(bestKnown).map(([id, { rotation, rotation3Stage, rotationBound }]) => [
      id,
      { free: rotation, edgeToEdge: rotation3Stage, bound: rotationBound },
    ]),
  );
}

function parseFile<Schema extends v.GenericSchema>(path: string, schema: Schema): v.InferOutput<Schema> {
  if (!existsSync(path)) throw new Error(`There is no file ${path}.`);
  let content: unknown;
  try {
    content = JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    throw new Error(`${path} is not a file of JSON text.`);
  }
  const parsed = v.safeParse(schema, content);
  if (parsed.success) return parsed.output;
  const [issue] = parsed.issues;
  throw new Error(`${path}: ${v.getDotPath(issue) ?? 'the whole'}: ${issue.message}.`);
}
