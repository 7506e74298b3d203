import { addFitting, addOpening, addZone } from '../../../core/job/changes';
import type { Fitting, Opening, OwnKind, Vertex, Wall, Zone } from '../../../core/job/schema';
import type { MmBox } from '../../../core/job/shape';
import type { NamedChange } from './named-change';
import { bringKind } from './kinds';
import { kindName } from './names';

export function putInOpening(wall: Wall, opening: Opening): NamedChange {
  return {
    name: `Put in ${kindName(opening.kind, 'opening')} ${opening.id}`,
    change: (job) => addOpening(job, wall.id, opening),
  };
}

/** @param offered kinds that the job may not have yet; it gets the fitting's */
export function putInFitting(wall: Wall, fitting: Fitting, offered: readonly OwnKind[] = []): NamedChange {
  return {
    name: `Put in ${kindName(fitting.kind, 'fitting')} ${fitting.id}`,
    change: (job) => addFitting(bringKind(job, fitting.kind, offered), wall.id, fitting),
  };
}

export function putInZone(wall: Wall, zone: Zone): NamedChange {
  return { name: `Put in zone ${zone.id}`, change: (job) => addZone(job, wall.id, zone) };
}

/**
 * An opening or fitting set into a box: an arch gets a round head, a round one its largest circle, everything
 * else is the box.
 */
export function setInto<T extends Opening | Fitting>(object: T, box: MmBox): T {
  const { x, y, width, height } = box;
  if (object.circle) {
    const diameter = Math.min(width, height);
    return { ...object, circle: { ...object.circle, x: x + width / 2, y: y + height / 2, diameter } };
  }
  if (object.kind === 'arch') {
    const { x: _x, y: _y, width: _width, height: _height, ...rest } = object;
    return { ...rest, shape: archVertices(box) } as unknown as T;
  }
  return { ...object, x, y, width, height };
}

/** Upright jambs under half a circle, or under a flatter arc where the box is wider than twice its height. */
function archVertices({ x, y, width, height }: MmBox): Vertex[] {
  const rise = Math.min(width / 2, height / 2);
  const springing = y + height - rise;
  return [
    [x, y],
    [x + width, y],
    [x + width, springing],
    { arcTo: [x, springing], via: [x + width / 2, y + height] },
  ];
}
