import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { readProducts, writeProducts } from '../../core/build-up/products-csv';
import {
  dryingKinds,
  layerKinds,
  notchShapes,
  product,
  productUnits,
  toolKinds,
} from '../../core/job/product-schema';

const positive = fc.integer({ min: 1, max: 1_000_000_00 }).map((n) => n / 100);
const amount = fc.integer({ min: 0, max: 100_000 }).map((n) => n / 10);
/** Text that stands in a cell: none at all, or with a letter at both ends. */
const text = fc.string({ minLength: 1, maxLength: 40 }).map((s) => `a${s.replace(/\r|\0/g, '')}z`);
const risky = fc.constantFrom(
  '=1+1',
  '@home',
  '-5',
  '+4',
  "'quoted",
  "'=x",
  '"',
  'a,b',
  'a;b',
  'two\nlines',
  '  x'.trim(),
);
const texts = fc.array(
  text.map((s) => s.replaceAll('|', '/')),
  { minLength: 1, maxLength: 4 },
);
const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const anyProduct = fc
  .record({
    name: fc.oneof(text, risky),
    layer: fc.constantFrom(...layerKinds),
    unit: fc.constantFrom(...productUnits),
    packs: fc.array(fc.record({ size: positive, price: amount }), { maxLength: 4 }),
    spreadingRate: optional(positive),
    volumeSolids: optional(fc.integer({ min: 1, max: 100 })),
    dryFilm: optional(positive),
    thickness: optional(positive),
    density: optional(positive),
    weight: optional(positive),
    rollWidth: optional(positive),
    coats: fc.integer({ min: 1, max: 20 }),
    drying: fc.constantFrom(...dryingKinds),
    mixing: optional(
      fc.record({
        parts: fc.tuple(positive, positive),
        by: fc.constantFrom('volume', 'weight'),
        potLife: positive,
        potLifeAt: fc.integer({ min: -60, max: 150 }),
        openTime: optional(positive),
      }),
    ),
    touchDry: optional(amount),
    recoatLeast: optional(amount),
    recoatMost: optional(amount),
    cure: optional(amount),
    temperatureLeast: optional(fc.integer({ min: -60, max: 150 })),
    humidityMost: optional(fc.integer({ min: 0, max: 100 })),
    grounds: optional(texts),
    tool: optional(
      fc.record({
        kind: fc.constantFrom(...toolKinds),
        nap: optional(positive),
        notch: optional(
          fc.record({
            shape: fc.constantFrom(...notchShapes),
            bridge: amount,
            width: positive,
            depth: positive,
            tilt: optional(fc.integer({ min: 1, max: 90 })),
          }),
        ),
      }),
    ),
    loss: optional(fc.integer({ min: 0, max: 99 }).map((n) => n / 100)),
    pace: optional(positive),
    cautions: optional(texts),
    note: optional(fc.oneof(text, risky)),
    batch: optional(text),
    typical: optional(fc.boolean()),
  })
  .map((fields) => JSON.parse(JSON.stringify(fields)) as Record<string, unknown>);

const anyList = fc
  .array(anyProduct, { maxLength: 6 })
  .map((list) => list.map((fields, i) => v.parse(product, { id: `P${i + 1}`, ...fields })));

describe('any list of products', () => {
  it('comes back from CSV as it was written', () => {
    fc.assert(
      fc.property(anyList, (products) => {
        expect(readProducts(writeProducts(products))).toEqual({ products, faults: [] });
      }),
      { numRuns: 150 },
    );
  });

  it('of any text is read or refused in sentences, and never half a row', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), fc.boolean(), (junk, withHeadings) => {
        const { products, faults } = readProducts(`${withHeadings ? 'id,name,layer,unit\n' : ''}${junk}`);
        for (const one of products) expect(v.is(product, one)).toBe(true);
        for (const { row, text: says } of faults) {
          expect(row).toBeGreaterThan(0);
          expect(says).toMatch(/\.$/);
        }
      }),
      { numRuns: 150 },
    );
  });
});
