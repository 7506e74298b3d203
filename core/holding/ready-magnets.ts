import type { MagnetRecord } from '../job/magnet-schema';
import type { Job } from '../job/schema';
import { disc, magnetOf, withRubber, type Grade, type Magnet } from './magnet';

/**
 * Generic magnets to begin with: the sizes of the note's table in three grades, bare and with 1 mm of rubber. Sizes: note on
 * holding force, section 1; ferrite of its data. No prices: they are the user's.
 */
export const readyMagnets: readonly MagnetRecord[] = [
  ...(['N35', 'N42'] as const).flatMap((grade) =>
    (
      [
        [10, 3],
        [12, 5],
        [15, 3],
        [20, 3],
        [20, 5],
        [20, 10],
        [25, 5],
        [30, 10],
      ] as const
    ).map(([diameter, height]) => [grade, diameter, height] as const),
  ),
  ['Y30', 20, 5] as const,
  ['Y30', 25, 5] as const,
  ['Y30', 30, 10] as const,
].flatMap(([grade, diameter, height]) => {
  const bare = disc(grade, diameter, height);
  const id = idOf(grade, diameter, height);
  return [recordOf(id, bare), recordOf(`${id}-rubber`, withRubber(bare, 1))];
});

export const catalogue: readonly Magnet[] = readyMagnets.map(magnetOf);

/** The job's magnets after the ready ones that it has not put others in place of; by id. */
export function magnetsOf({ magnets = [] }: Pick<Job, 'magnets'>): ReadonlyMap<string, Magnet> {
  if (magnets.length === 0) return readyById;
  return new Map([...readyById, ...magnets.map((record) => [record.id, magnetOf(record)] as const)]);
}

const readyById: ReadonlyMap<string, Magnet> = new Map(catalogue.map((magnet) => [magnet.id!, magnet]));

function idOf(grade: Grade, diameter: number, height: number): string {
  return `${grade}-${diameter}x${height}`;
}

/** A magnet as the job lists it. */
export function recordOf(id: string, { Br, mur, id: _, ...magnet }: Magnet): MagnetRecord {
  return { ...magnet, id, remanence: Br, recoil: mur } as MagnetRecord;
}
