import { boxOf } from '../../core/geometry/polygon';
import type { Panel } from '../../core/panels/panel';
import type { Wall } from '../../core/job/schema';
import { objectKinds } from '../../core/job/several';
import { objectsOf, pointOf, type MmBox, type ObjectRef } from '../../core/job/shape';
import { nameOfObject } from '../job/changes/names';
import { polygonOf } from './rings';
import type { SnapLine } from './snap';

/**
 * Everything on a wall that edges, middles and corners can be brought in line with: the datum, the wall's
 * corners and middle, every object's edges and middle, and the joints of the panels as last worked out.
 *
 * @param moving left out: nothing snaps to itself; hung items count only where one of them moves
 * @param panels of this wall; those of the moving zone are left out, as they move with it
 */
export function snapLines(wall: Wall, moving: ObjectRef | null, panels: readonly Panel[] = []): SnapLine[] {
  const lines: SnapLine[] = [
    { axis: 'x', at: 0, words: 'the datum', kind: 'datum' },
    { axis: 'y', at: 0, words: 'the datum', kind: 'datum' },
    ...linesOfWall(wall),
  ];
  const kinds = moving?.kind === 'hung' ? objectKinds : objectKinds.filter((kind) => kind !== 'hung');
  for (const kind of kinds) {
    for (const object of objectsOf(wall, kind)) {
      if (moving?.kind === kind && moving.id === object.id) continue;
      lines.push(...linesOfBox(boxInMm(object), nameOfObject(wall, { kind, id: object.id })));
    }
  }
  const ownMark = moving?.kind === 'zone' ? `${wall.id}-${moving.id}-` : null;
  return [...lines, ...linesOfPanels(panels.filter(({ mark }) => !ownMark || !mark.startsWith(ownMark)))];
}

function linesOfWall(wall: Wall): SnapLine[] {
  const corners = wall.outline.map(pointOf);
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
  return [
    ...distinct(xs).map((at): SnapLine => ({ axis: 'x', at, words: "the wall's edge", kind: 'wall' })),
    ...distinct(ys).map((at): SnapLine => ({ axis: 'y', at, words: "the wall's edge", kind: 'wall' })),
    { axis: 'x', at: middle, words: "the wall's middle", kind: 'middle' },
  ];
}

function linesOfBox({ x, y, width, height }: MmBox, name: string): SnapLine[] {
  return [
    { axis: 'x', at: x, words: `the left edge of ${name}`, kind: 'edge' },
    { axis: 'x', at: x + width, words: `the right edge of ${name}`, kind: 'edge' },
    { axis: 'x', at: x + width / 2, words: `the middle of ${name}`, kind: 'middle' },
    { axis: 'y', at: y, words: `the lower edge of ${name}`, kind: 'edge' },
    { axis: 'y', at: y + height, words: `the upper edge of ${name}`, kind: 'edge' },
    { axis: 'y', at: y + height / 2, words: `the middle of ${name}`, kind: 'middle' },
  ];
}

/** Panels share their joints, so each line is taken once. */
function linesOfPanels(panels: readonly Panel[]): SnapLine[] {
  const boxes = panels.map(({ outline }) => boxOf(outline.outer));
  const xs = distinct(boxes.flatMap(({ left, right }) => [left, right]));
  const ys = distinct(boxes.flatMap(({ bottom, top }) => [bottom, top]));
  return [
    ...xs.map((at): SnapLine => ({ axis: 'x', at: at / 100, words: 'a panel line', kind: 'joint' })),
    ...ys.map((at): SnapLine => ({ axis: 'y', at: at / 100, words: 'a panel line', kind: 'joint' })),
  ];
}

/** The true extent, arcs included. */
function boxInMm(object: Parameters<typeof polygonOf>[0]): MmBox {
  const { left, bottom, right, top } = boxOf(polygonOf(object).outer);
  return { x: left / 100, y: bottom / 100, width: (right - left) / 100, height: (top - bottom) / 100 };
}

function distinct(values: readonly number[]): number[] {
  return [...new Set(values)];
}
