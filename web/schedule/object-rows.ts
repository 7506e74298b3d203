import type { Fitting, Opening, Wall } from '../../core/job/schema';
import { boxOfObject, type ObjectRef } from '../../core/job/shape';

/** A row of the survey's schedule. Lengths in mm; a circle is placed by its middle and has a diameter. */
export interface ObjectRow {
  readonly ref: ObjectRef;
  readonly object: Opening | Fitting;
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

function rowOf(kind: 'opening' | 'fitting', object: Opening | Fitting): ObjectRow {
  const ref = { kind, id: object.id };
  const { x, y, width, height } = boxOfObject(object);
  if (object.circle) {
    const { circle } = object;
    return { ref, object, form: 'circle', fromLeft: circle.x, fromFloor: circle.y, width, height };
  }
  return { ref, object, form: object.shape ? 'free' : 'rectangle', fromLeft: x, fromFloor: y, width, height };
}
