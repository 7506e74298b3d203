import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sumsBy } from '../../core/quantities/areas';
import { box, jobOf, netByItem, wallOf, workedTakeOff } from './worked-jobs';

const products = [
  {
    id: 'f',
    name: 'Filler',
    layer: 'smoothing',
    unit: 'kg',
    thickness: 0.7,
    density: 1.6,
    coats: 2,
    loss: 0.05,
  },
  { id: 'c', name: 'Coarse filler', layer: 'filler', unit: 'l', thickness: 2.5, loss: 0.05 },
  { id: 'p', name: 'Paint', layer: 'decorative', unit: 'l', spreadingRate: 7.3, coats: 2, loss: 0.1 },
];
const buildUps = [
  {
    id: 'own',
    kind: 'writable',
    layers: [
      { kind: 'smoothing', product: 'f' },
      { kind: 'decorative', product: 'p' },
    ],
  },
  {
    id: 'thick',
    kind: 'writable',
    layers: [
      { kind: 'filler', product: 'c' },
      { kind: 'decorative', product: 'p' },
    ],
  },
];

const mm = (min: number, max: number) => fc.integer({ min: min * 100, max: max * 100 }).map((at) => at / 100);
const rectangle = fc.record({ x: mm(0, 5000), y: mm(0, 2500), width: mm(50, 1500), height: mm(50, 1500) });

const wall = fc.record({
  openings: fc.array(rectangle, { maxLength: 3 }),
  fittings: fc.array(rectangle, { maxLength: 2 }),
  reveal: fc.constantFrom(0, 120),
  hollow: fc.constantFrom(0, 4),
  cut: mm(700, 5200),
  upright: fc.boolean(),
  layers: fc.constantFrom('own', 'thick'),
});

describe('a zone cut in two', () => {
  it('takes what the whole one did of everything: materials, masking tape, areas', () => {
    fc.assert(
      fc.property(wall, ({ openings, fittings, reveal, hollow, cut, upright, layers }) => {
        const jobWith = (shapes: [number, number][][]) =>
          jobOf({
            products,
            buildUps,
            walls: [
              wallOf({
                ground: { hollow },
                openings: openings.map((one, i) => ({ id: `O${i}`, kind: 'window', reveal, ...one })),
                fittings: fittings.map((one, i) => ({ id: `K${i}`, kind: 'socket', clearance: 5, ...one })),
                zones: shapes.map((shape, i) => ({
                  id: `Z${i + 1}`,
                  buildUp: 'writable',
                  layers,
                  shape,
                })),
              }),
            ],
          });
        const at = upright ? cut : (cut * 2) / 5;
        const [x, y, width, height] = [550, 200, 4900, 2400];
        const parts = upright
          ? [box(x, y, at - x, height), box(at, y, x + width - at, height)]
          : [box(x, y, width, at - y), box(x, at, width, y + height - at)];
        const whole = workedTakeOff(jobWith([box(x, y, width, height)])).off;
        const cutInTwo = workedTakeOff(jobWith(parts)).off;
        const [before, after] = [netByItem(whole), netByItem(cutInTwo)];
        expect(Object.keys(after).sort()).toEqual(Object.keys(before).sort());
        for (const [item, net] of Object.entries(before)) expect(after[item]).toBeCloseTo(net, 8);
        const areas = ({ zoneAreas }: typeof whole) => [
          ...sumsBy(
            zoneAreas,
            () => 'face',
            ({ face }) => face,
          ).values(),
          ...sumsBy(
            zoneAreas,
            () => 'gross',
            ({ gross }) => gross,
          ).values(),
        ];
        // Rectangles alone: whole hundredths squared, to the last one.
        expect(areas(cutInTwo)).toEqual(areas(whole));
      }),
      { numRuns: 60 },
    );
  });
});

describe('packs of a take-off', () => {
  it('hold what is needed with loss, and cost what they are made of', () => {
    fc.assert(
      fc.property(fc.array(mm(1, 30), { minLength: 1, maxLength: 4 }), mm(500, 5000), (sizes, width) => {
        const packs = sizes.map((size, i) => ({ size, price: 10 + size * (5 - i) }));
        const { off } = workedTakeOff(
          jobOf({
            products: products.map((product) => (product.id === 'p' ? { ...product, packs } : product)),
            buildUps,
            walls: [
              wallOf({
                zones: [{ id: 'Z1', buildUp: 'writable', layers: 'own', shape: box(0, 0, width, 2000) }],
              }),
            ],
          }),
        );
        const line = off.lines.find(({ item }) => item === 'product p')!;
        expect(line.packs!.total).toBeGreaterThanOrEqual(line.withLoss - 1e-9);
        expect(line.withLoss).toBeCloseTo(line.net / 0.9, 9);
        expect(line.cost).toBe(line.packs!.packs.reduce((sum, { price, count }) => sum + price * count, 0));
      }),
      { numRuns: 40 },
    );
  });
});
