import type { Fitting, Opening, Wall } from '../../core/job/schema';
import { boxOfObject, type ObjectRef } from '../../core/job/shape';
import { kindName } from '../job/changes/names';

/** A row of the survey's schedule. Lengths in mm; a circle is placed by its middle and has a diameter. */
export interface ObjectRow {
  readonly ref: ObjectRef;
  readonly object: Opening | Fitting;
  /** "socket K4" */
  readonly name: string;
  readonly form: 'rectangle' | 'circle' | 'free';
  readonly fromLeft: number;
  readonly fromFloor: number;
  readonly width: number;
  readonly height: number;
}

/** Openings, then fittings, in the order of the job. */
export function objectRows(wall: Wall): ObjectRow[] {
  return [
    ...wall.openings.map((object) => rowOf('opening', object)),
    ...wall.fittings.map((object) => rowOf('fitting', object)),
  ];
}

const rows = new WeakMap<Opening | Fitting, ObjectRow>();

/** The same row as long as the object is the same: while one is dragged, the rows of all others rest. */
function rowOf(kind: 'opening' | 'fitting', object: Opening | Fitting): ObjectRow {
  const known = rows.get(object);
  if (known) return known;
  const row = freshRow(kind, object);
  rows.set(object, row);
  return row;
}

function freshRow(kind: 'opening' | 'fitting', object: Opening | Fitting): ObjectRow {
  const name = `${kindName(object.kind, kind)} ${object.id}`;
  const row = { ref: { kind, id: object.id }, object, name };
  const { x, y, width, height } = boxOfObject(object);
  if (object.circle) {
    const { circle } = object;
    return { ...row, form: 'circle', fromLeft: circle.x, fromFloor: circle.y, width, height };
  }
  return { ...row, form: object.shape ? 'free' : 'rectangle', fromLeft: x, fromFloor: y, width, height };
}
