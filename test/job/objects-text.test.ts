import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyJob, newFitting, newOpening, newWall, newZone } from '../../core/job/defaults';
import { writeObjects } from '../../core/job/objects-text';
import { isObjectsText, readObjects } from '../../core/job/read-objects-text';
import { readJobObject } from '../../core/job/read';
import { allObjects } from '../../core/job/several';
import type { Opening, Wall } from '../../core/job/schema';
import { findObject } from '../../core/job/shape';
import { jobFile } from './random-job';

const empty = newWall('A', 'Proofing wall', 5400, 2700);
const wall: Wall = {
  ...empty,
  openings: [
    { ...newOpening(empty, 'door'), x: 300, name: 'To the "dark" room; no: light' },
    {
      id: 'A1',
      kind: 'arch',
      clearance: 40,
      shape: [[0, 0], [1200, 0], [1200, 1700], { arcTo: [0, 1700], via: [600, 2300] }],
    } as unknown as Opening,
  ],
  fittings: [{ ...newFitting(empty, 'socket'), x: 1500, locked: true }, newFitting(empty, 'light')],
  zones: [newZone(emptyJob(), empty, { x: 1400, y: 900, width: 3000, height: 1500 })],
};
const job = { ...emptyJob('Bindery'), walls: [wall] };
const text = writeObjects(job, wall, allObjects(wall));

describe('objects as text', () => {
  it('can be read by a person', () => {
    expect(text.split('\n').slice(0, 7)).toEqual([
      'Lodeplan objects: 5 from wall A, Proofing wall. In mm, from the left and from the floor.',
      '- door D1 "To the \\"dark\\" room; no: light": left 300; floor 0; width 926;',
      '  height 2040; clearance 60; hinges left; opens towards; handle 1050',
      '- arch A1: corners 0 0, 1200 0, 1200 1700, arc 600 2300 to 0 1700;',
      '  clearance 40',
      '- socket K1: left 1500; floor 257; width 146; height 86; clearance 5; locked',
      '- light L1: middle 110 2010; diameter 220; clearance 20',
    ]);
  });

  it.each(['cm', 'm', 'ft-in'] as const)(
    'is written in %s and read back to the very same numbers',
    (units) => {
      const odd: Wall = {
        ...wall,
        fittings: [
          // 3'-11 1/8", a third of a metre, and below the datum.
          { ...newFitting(empty, 'socket'), x: 1196.975, y: 333.3333333, width: 0.5, height: -0 + 86 },
          {
            ...newFitting(empty, 'light'),
            circle: { x: -25.4, y: 1e-7, diameter: 304.8 },
          } as (typeof wall.fittings)[0],
        ],
      };
      const written = writeObjects({ ...job, units }, odd, allObjects(odd));
      expect(written).toMatch({ cm: /In cm, /, m: /In m, /, 'ft-in': /In ft and in, / }[units]);
      if (units === 'ft-in') expect(written).toContain(`left 3'-11 1/8"; floor 333.3333333 mm`);
      const letter = written.replaceAll('\n', '\n> ').replaceAll('"', '”').replaceAll("'", '’');
      for (const one of [written, ...(units === 'ft-in' ? [] : [`> ${letter}`])]) {
        const read = readObjects(one);
        expect(read.faults).toEqual([]);
        expect(read.objects.map(({ object }) => object)).toEqual(
          allObjects(odd).map((ref) => findObject(odd, ref)),
        );
        expect(read.objects.at(-1)!.sheet).toEqual({ width: 500, height: 500 });
      }
    },
  );

  it.each([
    [`left 4'; floor 6"; width 1' 3/4"; height 1'-0"`, [1219.2, 152.4, 323.85, 304.8]],
    [`left 4’-0”; floor 1/16"; width 10 1/2"; height 250 mm`, [1219.2, 1.5875, 266.7, 250]],
  ])('reads feet and inches as people type them: %s', (clauses, expected) => {
    const one = `Lodeplan objects: 1 from wall A. In ft and in, from the left and from the floor.\n- socket K1: ${clauses}`;
    const { objects, faults } = readObjects(one);
    expect(faults).toEqual([]);
    const { x, y, width, height } = objects[0]!.object as Opening;
    expect([x, y, width, height]).toEqual(expected);
  });

  it('refuses a bare figure among feet and inches, which could be either', () => {
    const one = `Lodeplan objects: 1 from wall A. In ft and in, from the left and from the floor.\n- socket K1: left 4; floor 0; width 6"; height 6"`;
    expect(readObjects(one).faults[0]!.text).toContain('a figure in ft and in has to follow “left”');
  });

  it('is read back whole, also quoted in a letter, with other line ends and other blanks', () => {
    const expected = allObjects(wall).map((ref) => findObject(wall, ref));
    const letter = text
      .split('\n')
      .map((line) => `> ${line}`)
      .join('\r\n');
    const blank = text.replace(/left 1500; floor/, 'left\u00a01500 ;\u00a0 floor');
    for (const one of [text, letter, `\uFEFF${text}`, blank]) {
      const read = readObjects(one);
      expect(read.faults).toEqual([]);
      expect(read.objects.map(({ object }) => object)).toEqual(expected);
    }
    expect(readObjects(text).objects.at(-1)!.sheet).toEqual({ width: 500, height: 500 });
  });

  it.each([
    ['- sofa S1: left 0', 2, 'no kind'],
    ['- socket: left 0', 2, 'such as “socket K1:”'],
    ['- socket K1: left 1,5; floor 0', 2, 'a figure in mm has to follow “left”'],
    ['- socket K1: left 0; floor 0; width -5; height 86', 2, 'width is -5'],
    ['- socket K1: left 0; colour red', 2, '“colour red” is nothing'],
    ['- zone Z1: corners 0 0, 5 5, 10 0, 0 5; build-up chalk', 2, 'cross'],
    ['- zone Z1: corners 0 0, 5; build-up chalk', 2, 'corners are written'],
    ['- socket K1: also {"x": 1', 2, 'no JSON'],
    ['- socket K1: left 0; floor 0; width 9; height 9; also {"__proto__": {"locked": true}}', 2, '__proto__'],
    ['- socket K1: left 1e999; floor 0; width 9; height 9', 2, 'Infinity'],
  ])('says on which line and why: %s', (entry, line, words) => {
    const good = '- socket K2: left 10; floor 0; width 9; height 9';
    const { objects, faults } = readObjects(`Lodeplan objects: 2\n${entry}\n${good}`);
    expect(faults).toEqual([{ line, text: expect.stringContaining(words) as unknown }]);
    expect(objects.map(({ object }) => object.id)).toEqual(['K2']);
  });

  it('refuses what is too much or nothing of ours', () => {
    expect(readObjects('door 220 0 926 2040').faults[0]!.text).toContain('Lodeplan objects');
    expect(readObjects('Lodeplan objects: 0').faults[0]!.text).toContain('No object');
    expect(
      readObjects(`Lodeplan objects\n${'- socket K1: left 0\n'.repeat(2001)}`).faults[0]!.text,
    ).toContain('2001');
    expect(readObjects(`Lodeplan objects\n${'x'.repeat(2_000_001)}`).objects).toEqual([]);
    expect(isObjectsText('door 220')).toBe(false);
  });
});

describe('for any job', () => {
  const sound = jobFile.map((file) => readJobObject(file).job).filter((one) => one !== null);

  it('every object comes back from its text as it was', () => {
    fc.assert(
      fc.property(sound, (any) => {
        for (const one of any!.walls) {
          const refs = allObjects(one);
          if (refs.length === 0) continue;
          const { objects, kinds, faults } = readObjects(writeObjects(any!, one, refs));
          expect(faults).toEqual([]);
          const named = one.fittings.map(({ kind }) => kind);
          expect(kinds).toEqual((any!.fittingKinds ?? []).filter(({ name }) => named.includes(name)));
          expect(objects.map(({ object }) => object)).toEqual(refs.map((ref) => findObject(one, ref)));
        }
      }),
      { numRuns: 80 },
    );
  });

  it('a text that was tampered with is read or refused, and never throws', () => {
    const change = fc.tuple(fc.nat(text.length), fc.nat(12), fc.string({ maxLength: 8 }));
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 5 }), (changes) => {
        const broken = changes.reduce(
          (left, [at, gone, put]) => left.slice(0, at) + put + left.slice(at + gone),
          text,
        );
        const { objects, kinds, faults } = readObjects(broken);
        expect(objects.length + kinds.length + faults.length).toBeGreaterThan(0);
        for (const fault of faults) expect(fault.text).not.toBe('');
      }),
      { numRuns: 200 },
    );
  });
});
