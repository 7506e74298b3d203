import { hungKindInWords } from '../../../core/job/hung-kinds';
import type { HungItem } from '../../../core/job/hung-schema';
import type { Fitting, Job, Opening, Wall, Zone } from '../../../core/job/schema';
import { findObject, type ObjectRef } from '../../../core/job/shape';

const kindWords: Readonly<Record<string, string>> = {
  door: 'door',
  window: 'window',
  hatch: 'hatch',
  niche: 'niche',
  arch: 'arch',
  socket: 'socket',
  switch: 'switch',
  light: 'light',
  thermostat: 'thermostat',
  radiator: 'radiator',
  pipe: 'pipe',
  'beam-end': 'beam end',
};

/** The kind of an opening or fitting in plain words; kinds of our own files and of other people's alike. */
export function kindName(kind: string, of: 'opening' | 'fitting'): string {
  return kindWords[kind] ?? (kind === 'free' ? `free ${of}` : kind);
}

/** How a change calls an object: "socket K4", "door D1", "zone Z1". */
export function nameOfObject(wall: Wall | undefined, ref: ObjectRef): string {
  const object = wall && findObject(wall, ref);
  if (ref.kind === 'hung')
    return object ? `${hungKindInWords((object as HungItem).kind)} ${ref.id}` : `item ${ref.id}`;
  if (ref.kind === 'zone' || !object) return `${ref.kind} ${ref.id}`;
  return `${kindName((object as Opening | Fitting).kind, ref.kind)} ${ref.id}`;
}

/** "wall A". */
export function nameOfWall(wallId: string): string {
  return `wall ${wallId}`;
}

/** "A Proofing wall", or only "Wall A" while it has no name. */
export function titleOfWall(wall: Wall): string {
  return wall.name ? `${wall.id} ${wall.name}` : `Wall ${wall.id}`;
}

/** "Z1 Proofs", or only "Z1" while it has no name. */
export function titleOfZone(zone: Zone): string {
  return zone.name ? `${zone.id} ${zone.name}` : zone.id;
}

export function stockTitle(job: Job, stockId: string): string {
  const stock = job.stock.find((entry) => entry.id === stockId);
  return stock?.name || stockId;
}
