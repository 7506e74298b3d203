import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readyBuildUps } from '../../core/build-up/ready-build-ups';
import { mendBuildUp, remarksOn, rules } from '../../core/build-up/rules';
import type { Ground } from '../../core/job/ground-schema';
import { layerKinds } from '../../core/job/product-schema';
import { productsOf } from '../../core/build-up/resolve';
import { emptyJob } from '../../core/job/defaults';
import { builtJob, contextIn, soundGround } from './built-wall';

const products = [...productsOf(emptyJob('Studio')).values()];

/** Any layers at all, in any order, with and without products that fit them. */
const layer = fc.constantFrom(
  ...layerKinds.flatMap((kind) => [
    kind,
    ...products.filter((product) => product.layer === kind).map(({ id }) => `${kind}=${id}`),
    `${kind}@edges`,
    `${kind}@joints`,
  ]),
);
const ground = fc.constantFrom<Ground>(
  soundGround,
  { ...soundGround, hollow: 6 },
  { ...soundGround, material: 'sound-paint' },
  { ...soundGround, material: 'glass' },
  { ...soundGround, material: 'metal', exposure: 'outdoor' },
  {},
);

describe('what mends a rule', () => {
  it('changes the layers and leaves the rule kept, whatever else lies on the wall', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...readyBuildUps.map(({ id }) => id)),
        fc.array(layer, { maxLength: 9 }),
        ground,
        (kind, layers, on) => {
          const job = builtJob(kind, { layers, ground: on });
          for (const { code, isMendable } of remarksOn(contextIn(job))) {
            const mended = mendBuildUp(job, 'A', 'Z1', code);
            const isStill = remarksOn(contextIn(mended)).some((one) => one.code === code);
            const canBe = rules.find((rule) => rule.code === code)!.apply !== undefined;
            expect([code, isMendable, mended !== job, isStill]).toEqual([code, canBe, canBe, !canBe]);
          }
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('is not offered where a product of the user stands in for the one that would mend it', () => {
    const wet = {
      id: 'adhesive-two-component',
      name: 'Wall glue',
      layer: 'adhesive',
      unit: 'kg',
      drying: 'water-loss',
    } as const;
    const shutIn = (products: readonly (typeof wet)[]) => {
      const job = builtJob('steel-panel', {
        ground: { ...soundGround, material: 'sound-paint' },
        products: [...products, { ...wet, id: 'glue' }],
        layers: ['adhesive=glue', 'steel'],
      });
      return remarksOn(contextIn(job)).find(({ code }) => code === 'adhesive-shut-in')?.isMendable;
    };
    expect(shutIn([])).toBe(true);
    expect(shutIn([wet])).toBe(false);
  });
});
