import fc from 'fast-check';
import type { Fitting, Opening, Wall, Zone } from '../../core/job/schema';

/** Figures as a tape and a scale drawing give them: whole hundredths of a millimetre, written in mm. */
function mm(least: number, most: number): fc.Arbitrary<number> {
  return fc.integer({ min: least * 100, max: most * 100 }).map((hundredths) => hundredths / 100);
}

/** Free shapes of other than right angles, by three to five points round a middle. */
function freeShape(): fc.Arbitrary<[number, number][]> {
  return fc
    .record({
      x: mm(0, 6000),
      y: mm(0, 3000),
      reach: fc.array(mm(30, 500), { minLength: 3, maxLength: 5 }),
    })
    .map(({ x, y, reach }) =>
      reach.map((r, i) => {
        const angle = (i * 2 * Math.PI) / reach.length + 0.2;
        return [
          Math.round((x + r * Math.cos(angle)) * 100) / 100,
          Math.round((y + r * Math.sin(angle)) * 100) / 100,
        ];
      }),
    );
}

const rectangle = fc.record({
  x: mm(-200, 6000),
  y: mm(-200, 3000),
  width: mm(5, 1500),
  height: mm(5, 2200),
});
const clearance = fc.oneof(fc.constant(0), mm(0, 80));
const allowances = fc.oneof(fc.constant(0), mm(0, 120));

/** Floor and ceiling of three bays, each with its own height: stepped, or sloping from bay to bay. */
function outline(sloping: boolean): fc.Arbitrary<[number, number][]> {
  const heights = (least: number, most: number) => fc.array(mm(least, most), { minLength: 4, maxLength: 4 });
  return fc
    .record({
      bays: fc.array(mm(300, 2500), { minLength: 3, maxLength: 3 }),
      floor: fc.oneof(fc.constant<number[]>([0, 0, 0, 0]), heights(0, 600)),
      ceiling: fc.oneof(fc.constant<number[]>([2600, 2600, 2600, 2600]), heights(1500, 3000)),
      clockwise: fc.boolean(),
    })
    .map(({ bays, floor, ceiling, clockwise }) => {
      const xs = bays.reduce((at, bay) => [...at, Math.round((at.at(-1)! + bay) * 100) / 100], [0]);
      const path = (ys: number[]): [number, number][] =>
        sloping
          ? xs.map((x, i) => [x, ys[i]!])
          : bays.flatMap((_, i): [number, number][] => [
              [xs[i]!, ys[i]!],
              [xs[i + 1]!, ys[i]!],
            ]);
      const points = [...path(floor), ...path(ceiling).reverse()];
      const distinct = points.filter(([x, y], i) => {
        const [beforeX, beforeY] = points.at(i - 1)!;
        return x !== beforeX || y !== beforeY;
      });
      return clockwise ? distinct.reverse() : distinct;
    });
}

/** A wall with up to four openings, six fittings and three zones, which may overlap and leave the wall. */
export function walls({ sloping }: { sloping: boolean }): fc.Arbitrary<Wall> {
  const shape = sloping
    ? fc.oneof(
        rectangle,
        freeShape().map((points) => ({ shape: points })),
      )
    : rectangle;
  const zoneShape = sloping
    ? fc.oneof(
        rectangle.map(cornersOf),
        freeShape().map((points) => points.map(([x, y]): [number, number] => [x * 2, y * 2])),
      )
    : rectangle.map(cornersOf);
  return fc
    .record({
      outline: outline(sloping),
      rim: fc.record({ floor: allowances, ceiling: allowances, left: allowances, right: allowances }),
      openings: fc.array(fc.record({ place: shape, clearance }), { maxLength: 4 }),
      fittings: fc.array(fc.record({ place: shape, clearance }), { maxLength: 6 }),
      zones: fc.array(zoneShape, { maxLength: 3 }),
    })
    .map(({ outline, rim, openings, fittings, zones }) => ({
      id: 'A',
      name: '',
      outline,
      rim,
      openings: openings.map(({ place, clearance }, i): Opening => ({
        id: `O${i}`,
        kind: 'free',
        clearance,
        ...place,
      })),
      fittings: fittings.map(({ place, clearance }, i): Fitting => ({
        id: `F${i}`,
        kind: 'free',
        clearance,
        ...place,
      })),
      zones: zones.map((shape, i): Zone => ({
        id: `Z${i}`,
        name: '',
        buildUp: 'steel-panel',
        shape,
        holes: [],
      })),
    }));
}

function cornersOf({
  x,
  y,
  width,
  height,
}: {
  x: number;
  y: number;
  width: number;
  height: number;
}): [number, number][] {
  // Twice as large as an opening, so that most zones hold something.
  return [
    [x, y],
    [x + 2 * width, y],
    [x + 2 * width, y + height],
    [x, y + height],
  ];
}

/** One wall by hand, all defaults filled in. */
export function wallOf(parts: Partial<Wall> = {}): Wall {
  return {
    id: 'A',
    name: '',
    outline: [
      [0, 0],
      [5400, 0],
      [5400, 2700],
      [0, 2700],
    ],
    rim: { floor: 0, ceiling: 0, left: 0, right: 0 },
    openings: [],
    fittings: [],
    zones: [],
    ...parts,
  };
}
