import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readyBuildUps } from '../../core/build-up/ready-build-ups';
import { builtJob, soundGround, workedOf } from './built-wall';

const short = ({ kind, product, over }: (typeof readyBuildUps)[number]['layers'][number]) =>
  `${kind}${product ? `=${product}` : ''}@${over}`;
const anyLayers = fc
  .subarray(
    readyBuildUps.flatMap(({ layers }) => layers),
    { minLength: 1, maxLength: 14 },
  )
  .map((layers) => layers.map(short));
const figuresOf = (layers: readonly string[], hollow = 2) =>
  workedOf(builtJob('steel-panel', { layers, ground: { ...soundGround, hollow } })).figures;

describe('figures of any layers', () => {
  it('keep the order least ≤ nominal ≤ greatest, and no gap is wider than all layers and hollow together', () => {
    fc.assert(
      fc.property(anyLayers, fc.integer({ min: 0, max: 20 }), (layers, hollow) => {
        const { gap, thickness } = figuresOf(layers, hollow);
        if (!gap) return;
        const [least, nominal, greatest] = [gap.least.value!, gap.nominal.value!, gap.greatest.value!];
        expect(least).toBeLessThanOrEqual(nominal);
        expect(nominal).toBeLessThanOrEqual(greatest);
        expect(nominal).toBeLessThanOrEqual(thickness.value! + 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it('of one layer after another add up', () => {
    fc.assert(
      fc.property(anyLayers, anyLayers, (one, other) => {
        const [a, b, both] = [figuresOf(one), figuresOf(other), figuresOf([...one, ...other])];
        expect(both.mass.value).toBeCloseTo(a.mass.value! + b.mass.value!, 5);
        expect(both.thickness.value).toBeCloseTo(a.thickness.value! + b.thickness.value!, 5);
        expect(both.coats).toBe(a.coats + b.coats);
      }),
      { numRuns: 60 },
    );
  });
});
