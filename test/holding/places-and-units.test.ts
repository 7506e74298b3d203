import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxOf, rectangle, type Polygon } from '../../core/geometry/polygon';
import * as force from '../../core/holding/force-units';
import { contacts } from '../../core/job/magnet-schema';
import { designFriction, measuredFriction, usualCondition } from '../../core/holding/friction';
import { behindMagnet, wallFaces } from '../../core/holding/wall-faces';

describe('forces in kilograms and pounds', () => {
  it('1 kg weighs 9.80665 N (3rd CGPM, 1901), 1 lbf is 4.4482216152605 N (exact, from both definitions)', () => {
    expect(force.newtonsOfKilograms(1)).toBe(9.80665);
    expect(force.newtonsOfPounds(1)).toBeCloseTo(4.4482216152605, 12);
  });

  it('come back from newtons as they were', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (value) => {
        expect(force.kilogramsOfNewtons(force.newtonsOfKilograms(value))).toBeCloseTo(value, 6);
        expect(force.poundsOfNewtons(force.newtonsOfPounds(value))).toBeCloseTo(value, 6);
      }),
      { seed: 41 },
    );
  });
});

describe('friction (note on holding force, section 4: table of design values)', () => {
  it.each([
    ['metal', 'clean-dry', 0.2],
    ['metal', 'dusty', 0.1],
    ['ferrite', 'clean-dry', 0.2],
    ['paper', 'clean-dry', 0.2],
    ['rubber', 'clean-dry', 0.4],
  ] as const)('%s, %s: %d', (contact, condition, mu) => {
    expect(designFriction(contact, condition).mu).toBe(mu);
  });

  it('is designed at or below every handbook range but where the note itself goes higher, and dust never helps', () => {
    for (const contact of contacts) {
      const [dry, dusty] = [designFriction(contact, 'clean-dry'), designFriction(contact, 'dusty')];
      expect(dusty.mu).toBeLessThanOrEqual(dry.mu / 2);
      expect(dry.mu).toBeLessThan(dry.range[1]);
      expect(dusty.mu).toBeLessThan(dusty.range[1]);
    }
  });

  it('on writable and chalk surfaces counts as dusty', () => {
    expect([usualCondition('plain'), usualCondition('writable'), usualCondition('chalk')]).toEqual([
      'clean-dry',
      'dusty',
      'dusty',
    ]);
  });

  it('that was measured counts, up to what handbooks know', () => {
    expect(measuredFriction(0.17, 'metal').mu).toBe(0.17);
    expect(measuredFriction(2, 'metal').mu).toBe(0.35);
  });
});

describe('the panel under a magnet', () => {
  // Two panels of 500 × 1000 mm with a joint of 1 mm, the left one with a square hole of 100 mm.
  const left: Polygon = {
    ...rectangle(0, 0, 50000, 100000),
    holes: [
      [
        { x: 20000, y: 40000 },
        { x: 20000, y: 50000 },
        { x: 30000, y: 50000 },
        { x: 30000, y: 40000 },
      ],
    ],
  };
  const faces = [left, rectangle(50100, 0, 50000, 100000)].map((outline) => ({
    outline,
    box: boxOf(outline.outer),
  }));

  it.each([
    ['the middle of a panel', 250, 700, 0, 190],
    ['near the joint', 480, 700, 0, 10],
    ['over the joint', 495, 700, 0, -5],
    ['near the hole', 250, 520, 0, 10],
    ['over the joint from the other side', 503, 700, 1, -8],
  ] as const)('%s', (_, x, y, panel, clearance) => {
    const found = behindMagnet(wallFaces(faces, []), { x, y }, 20);
    expect(found.face).toBe(faces[panel]);
    expect(found.clearance).toBeCloseTo(clearance, 9);
  });

  it('is none in a hole, in the joint or beside the steel', () => {
    for (const x of [250, 500.5, -10]) {
      const found = behindMagnet(wallFaces(faces, []), { x, y: 450 }, 20);
      expect([found.face, found.clearance]).toEqual([undefined, -10]);
    }
  });

  it('is as near as a screw head', () => {
    const screws = [{ x: 250, y: 730, diameter: 8 }];
    const found = behindMagnet(wallFaces(faces, screws), { x: 250, y: 700 }, 20);
    expect(found.clearance).toBeCloseTo(16, 9);
  });
});
