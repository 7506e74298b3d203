import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { readMagnets, writeMagnets } from '../../core/holding/magnets-csv';
import { contacts, magnet, magnetMaterials, magnetShapes } from '../../core/job/magnet-schema';

const span = fc.integer({ min: 1, max: 100_000 }).map((n) => n / 100);
const from0 = fc.integer({ min: 0, max: 100_000 }).map((n) => n / 100);
const name = fc.oneof(
  fc.string({ minLength: 1, maxLength: 30 }).map((s) => `a${s.replace(/\r|\0/g, '')}z`),
  fc.constantFrom('=1+1', '@home', '-5', "'quoted", 'a,b', 'a;b', 'two\nlines'),
);
const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const anyList = fc
  .array(
    fc.record({
      name,
      shape: fc.constantFrom(...magnetShapes),
      diameter: span,
      length: optional(span),
      bore: optional(span),
      cup: optional(fc.record({ magnet: span, wall: optional(span), floor: span, recess: optional(from0) })),
      height: span,
      material: fc.constantFrom(...magnetMaterials),
      remanence: fc.integer({ min: 1, max: 200 }).map((n) => n / 100),
      recoil: fc.integer({ min: 100, max: 200 }).map((n) => n / 100),
      contact: fc.constantFrom(...contacts),
      cover: from0,
      rated: optional(fc.record({ force: span, thickness: span, gap: from0 })),
      ratedPerArea: optional(span),
      price: optional(from0),
    }),
    { maxLength: 6 },
  )
  .map((list) =>
    list.map((fields, i) =>
      v.parse(magnet, JSON.parse(JSON.stringify({ id: `MG${i + 1}`, ...fields })) as unknown),
    ),
  );

describe('any list of magnets', () => {
  it('comes back from CSV as it was written', () => {
    fc.assert(
      fc.property(anyList, (magnets) => {
        expect(readMagnets(writeMagnets(magnets))).toEqual({ magnets, faults: [] });
      }),
      { numRuns: 150, seed: 91 },
    );
  });
});

describe('a list with bad rows', () => {
  const headings = 'id;name;shape;Diameter or shorter side (mm);height (mm);rated pull (N);price';

  it('is read but for them, and each is told with row and column', () => {
    const { magnets, faults } = readMagnets(
      [
        headings,
        'A;small;disc;12,5;3;;0,85',
        'B;no height;disc;12;;;',
        'C;odd;star;12;3;;',
        'D;rated alone;pot;25;8;120;',
        'A;again;disc;10;3;;',
      ].join('\r\n'),
    );
    expect(magnets.map(({ id, diameter, price }) => [id, diameter, price])).toEqual([['A', 12.5, 0.85]]);
    expect(faults.map(({ row, column }) => [row, column])).toEqual([
      [3, 'height (mm)'],
      [4, 'shape'],
      [5, expect.stringMatching(/^rated /)],
      [5, expect.stringMatching(/^rated /)],
      [6, 'id'],
    ]);
    for (const { text } of faults) expect(text).toMatch(/\.$/);
  });

  it('without its headings is told in one sentence', () => {
    const { magnets, faults } = readMagnets('small,disc,12,3\n');
    expect(magnets).toEqual([]);
    expect(faults).toHaveLength(1);
    expect(faults[0]!.text).toContain('lacks the headings');
  });
});
