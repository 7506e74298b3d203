import { boxOf } from '../../../core/geometry/polygon';
import type { HandPlace, Wall } from '../../../core/job/schema';
import { objectsOf } from '../../../core/job/shape';
import { placeOnWall } from '../../../core/survey/wall-places';
import { nameOfObject } from '../../job/changes/names';
import { polygonOf } from '../rings';
import type { SnapLine } from '../snap';

/** A line that something by hand can be drawn to, and the place that moves with it. */
export interface AnchorLine extends SnapLine {
  readonly place: HandPlace;
}

/** Edges of openings, fittings, the zone and joints of the ground: what a choice by hand can stay with. */
export function anchorLines(wall: Wall, zoneId: string): AnchorLine[] {
  const lines: AnchorLine[] = [];
  for (const kind of ['opening', 'fitting', 'zone'] as const) {
    for (const object of objectsOf(wall, kind)) {
      if (kind === 'zone' && object.id !== zoneId) continue;
      const box = boxOf(polygonOf(object).outer);
      const name = nameOfObject(wall, { kind, id: object.id });
      const of = kind === 'zone' ? { of: kind } : { of: kind, id: object.id };
      for (const side of ['left', 'right', 'bottom', 'top'] as const) {
        const axis = side === 'left' || side === 'right' ? 'x' : 'y';
        const words = `the ${sideWords[side]} edge of ${name}`;
        lines.push({ axis, at: box[side] / 100, words, kind: 'edge', place: { ...of, side } });
      }
    }
  }
  for (const { id } of wall.lines ?? []) {
    for (const axis of ['x', 'y'] as const) {
      const place = { of: 'line', id };
      const at = placeOnWall(wall, zoneId, place, axis);
      if (typeof at === 'number')
        lines.push({ axis, at: at / 100, words: `joint ${id} of the ground`, kind: 'edge', place });
    }
  }
  return lines;
}

export const sideWords = { left: 'left', right: 'right', bottom: 'lower', top: 'upper' } as const;
