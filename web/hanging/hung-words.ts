import { hungKindInWords, readyHungKinds } from '../../core/job/hung-kinds';
import type { HungItem, HungKind, Use } from '../../core/job/hung-schema';
import { magnetsOf } from '../../core/holding/ready-magnets';
import type { Job, Wall } from '../../core/job/schema';

interface Option {
  readonly value: string;
  readonly label: string;
}

export const useWords: Readonly<Record<Use, string>> = {
  'light-at-reach': 'light, at reach',
  handled: 'handled daily',
  'could-hurt': 'could hurt',
};

/** What can be chosen as the kind of an item; its own stands among them whatever it is. */
export function kindOptions(own: readonly HungKind[], kind: string): Option[] {
  const names = [...readyHungKinds, ...own.map(({ name }) => name)];
  const all = names.includes(kind) ? names : [...names, kind];
  return all.map((name) => ({ value: name, label: hungKindInWords(name) }));
}

/** Magnets of the job, and the one it names if that is not among them. */
export function magnetOptions(job: Job, { magnets }: Pick<HungItem, 'magnets'>): Option[] {
  const all = [...magnetsOf(job)].map(([value, { name }]) => ({ value, label: name }));
  if (!magnets) return [{ value: '', label: 'none' }, ...all];
  const isThere = all.some(({ value }) => value === magnets.magnet);
  return isThere ? all : [{ value: magnets.magnet, label: `${magnets.magnet}, not in the job` }, ...all];
}

/** "4 × N42 20 × 5 mm" */
export function magnetsInWords(job: Job, { magnets }: Pick<HungItem, 'magnets'>): string {
  if (!magnets) return 'none';
  return `${magnets.places.length} × ${magnetsOf(job).get(magnets.magnet)?.name ?? magnets.magnet}`;
}

/** Markings that a piece may be moved about on: "Z1/M1" and its name. */
export function markingOptions(wall: Wall): Option[] {
  return wall.zones.flatMap(({ id: zone, markings = [] }) =>
    markings
      .filter(({ kind }) => kind !== 'picture')
      .map(({ id, name }) => ({
        value: `${zone}/${id}`,
        label: `${id} on ${zone}${name ? `, ${name}` : ''}`,
      })),
  );
}
