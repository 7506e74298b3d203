import { readyMagnets } from '../../../core/holding/ready-magnets';
import { putMagnet, removeMagnet, setPullTests } from '../../../core/job/hung';
import type { MagnetRecord, PullTestRecord } from '../../../core/job/magnet-schema';
import type { Job, Zone } from '../../../core/job/schema';
import type { NamedChange } from './named-change';
import { freshListId } from './stock';

/** The job's own magnets, and the ready ones that none of them stands in place of. */
export function listedMagnets({ magnets = [] }: Job): readonly MagnetRecord[] {
  const own = new Map(magnets.map((magnet) => [magnet.id, magnet]));
  const ready = readyMagnets.map((magnet) => own.get(magnet.id) ?? magnet);
  return [...ready, ...magnets.filter(({ id }) => !isReadyMagnet(id))];
}

export function isReadyMagnet(id: string): boolean {
  return readyMagnets.some((ready) => ready.id === id);
}

/** The magnet as it is to be; a ready one becomes the job's own under the same id. */
export function setMagnet(magnet: MagnetRecord, what: string): NamedChange {
  return { name: `Set ${what} of magnet ${magnet.name}`, change: (job) => putMagnet(job, magnet) };
}

export function addMagnet(
  job: Job,
  like?: MagnetRecord,
): { readonly magnet: MagnetRecord; readonly change: NamedChange } {
  const id = freshListId([...listedMagnets(job)], 'MG');
  const magnet: MagnetRecord = like
    ? { ...like, id, name: `${like.name}, copy` }
    : {
        ...{ id, name: 'New magnet', shape: 'disc', diameter: 20, height: 5 },
        ...{ material: 'neodymium', remanence: 1.19, recoil: 1.05, contact: 'metal', cover: 0 },
      };
  return { magnet, change: { name: `Add magnet ${magnet.name}`, change: (now) => putMagnet(now, magnet) } };
}

/** Magnets of a list: each takes the place of the one of its id, or stands after the others. */
export function takeInMagnets(list: readonly MagnetRecord[]): NamedChange {
  const count = list.length === 1 ? '1 magnet' : `${list.length} magnets`;
  return { name: `Load ${count}`, change: (job) => list.reduce(putMagnet, job) };
}

export function takeOutMagnet({ id, name }: MagnetRecord): NamedChange {
  return {
    name: isReadyMagnet(id) ? `Put magnet ${name} back as it came` : `Delete magnet ${name}`,
    change: (job) => removeMagnet(job, id),
  };
}

/** What stands in the way of deleting a magnet, in words, or null. */
export function magnetInUse(job: Job, id: string): string | null {
  if (isReadyMagnet(id)) return null;
  for (const wall of job.walls) {
    const item = wall.hung?.find(({ magnets }) => magnets?.magnet === id);
    if (item) return `Item ${item.id} on wall ${wall.id} hangs by it; give that another magnet first.`;
    const zone = wall.zones.find(({ pullTests }) => pullTests?.some(({ magnet }) => magnet === id));
    if (zone)
      return `A pull test of zone ${zone.id} on wall ${wall.id} was made with it; take that out first.`;
  }
  if (job.holdingMap?.magnet === id)
    return 'The holding map is drawn for it; choose another magnet there first.';
  const kind = job.hungKinds?.find(({ item }) => item.magnets?.magnet === id);
  return kind ? `The kind “${kind.name}” has it; keep that kind with another magnet first.` : null;
}

export function putPullTest(wallId: string, zone: Zone, test: PullTestRecord, what?: string): NamedChange {
  const tests = zone.pullTests ?? [];
  const at = tests.findIndex(({ id }) => id === test.id);
  return {
    name: what ? `Set ${what} of pull test ${test.id}` : `Put in pull test ${test.id}`,
    change: (job) => setPullTests(job, wallId, zone.id, at < 0 ? [...tests, test] : tests.with(at, test)),
  };
}

export function takeOutPullTest(wallId: string, zone: Zone, id: string): NamedChange {
  return {
    name: `Delete pull test ${id}`,
    change: (job) =>
      setPullTests(
        job,
        wallId,
        zone.id,
        (zone.pullTests ?? []).filter((test) => test.id !== id),
      ),
  };
}
