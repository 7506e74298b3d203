import type { Wall } from '../../core/job/schema';
import { boxOfVertices, type MmBox } from '../../core/job/shape';
import { nameOfObject } from '../job/changes/names';

/** A rectangle whose size is known, and where its lower left lies if that is known too. */
export interface KnownSize {
  readonly value: string;
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly at?: readonly [number, number];
}

/** ISO 216, from memory. */
const papers = [
  { name: 'A4', short: 210, long: 297 },
  { name: 'A3', short: 297, long: 420 },
] as const;

/** What stands on the wall already, the wall itself, sheets of paper. */
export function knownSizes(wall: Wall): readonly KnownSize[] {
  const box = boxOfVertices(wall.outline);
  const placed = [
    ...wall.openings.map((object) => ({ kind: 'opening' as const, object })),
    ...wall.fittings.map((object) => ({ kind: 'fitting' as const, object })),
  ];
  return [
    ...placed.flatMap(({ kind, object }): KnownSize[] => {
      const { id, x, y, width, height } = object;
      if (x === undefined || y === undefined || !width || !height) return [];
      return [{ value: `${kind} ${id}`, label: nameOfObject(wall, { kind, id }), width, height, at: [x, y] }];
    }),
    { value: 'wall', label: 'the wall', width: box.width, height: box.height, at: [box.x, box.y] },
    ...papers.flatMap(({ name, short, long }): KnownSize[] => [
      { value: `${name} upright`, label: `paper ${name}, upright`, width: short, height: long },
      { value: `${name} across`, label: `paper ${name}, across`, width: long, height: short },
    ]),
  ];
}

/** Its corners in the order in which they are marked. */
export function cornersOf({ x, y, width, height }: MmBox): readonly (readonly [number, number])[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

export const cornerNames = ['lower left', 'lower right', 'upper right', 'upper left'] as const;

/** The upright rectangle that four places are the corners of; null if they are not. */
export function boxOfCorners(places: readonly (readonly [number, number])[]): MmBox | null {
  const [a, b, c, d] = places;
  if (!a || !b || !c || !d) return null;
  const box = { x: a[0], y: a[1], width: c[0] - a[0], height: c[1] - a[1] };
  const isUpright = b[0] === c[0] && b[1] === a[1] && d[0] === a[0] && d[1] === c[1];
  return isUpright && box.width > 0 && box.height > 0 ? box : null;
}
