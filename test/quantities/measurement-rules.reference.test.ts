import { describe, expect, it } from 'vitest';
import type { MeasurementRuleId } from '../../core/job/quantities-schema';
import { measurementRule, measurementRules, offerArea } from '../../core/quantities/measurement-rules';
import { box, jobOf, wallOf, wallsOf, workedTakeOff } from './worked-jobs';

/** m² */
interface Measured {
  readonly true: number;
  readonly offer: number;
}

/** The zone is the wall but for a strip of 0.5 m at its right end: 5.5 × 3 m = 16.5 m². */
function measure(rule: MeasurementRuleId, ...openings: object[]): Measured {
  const job = jobOf({
    walls: [
      wallOf({
        openings: openings.map((one, i) => ({ id: `O${i}`, kind: 'window', ...one })),
        zones: [{ id: 'Z1', buildUp: 'writable', shape: box(0, 0, 5500, 3000) }],
      }),
    ],
  });
  const { worked } = workedTakeOff(job);
  const { measures } = wallsOf(job, worked)[0]!.zones[0]!;
  const { area, trueArea } = offerArea(worked.walls[0]!.survey, measures, measurementRule(rule));
  return { true: trueArea / 1e10, offer: area / 1e10 };
}

const inside = (width: number, height: number, fields: object = {}) => ({
  x: 1000,
  y: 500,
  width,
  height,
  ...fields,
});
const door = { x: 4000, y: 0, width: 500, height: 500 };

describe('VOB/C DIN 18363, 5.2.1.1: openings of more than 2.5 m² single size are deducted', () => {
  it('keeps 2.50 m² and deducts 2.51 m²', () => {
    expect(measure('din-18363', inside(2000, 1250)).offer).toBeCloseTo(16.5, 9);
    expect(measure('din-18363', inside(2000, 1255)).offer).toBeCloseTo(16.5 - 2.51, 9);
  });

  it('judges each opening by itself, doors too', () => {
    const two = [inside(1250, 1250), { x: 3000, y: 0, width: 1200, height: 2000 }];
    expect(measure('din-18363', ...two).offer).toBeCloseTo(16.5, 9);
  });

  it('deducts in floors from 0.5 m²', () => {
    const { takesOffFloor } = measurementRule('din-18363');
    expect([0.5, 0.51].map(takesOffFloor)).toEqual([false, true]);
  });

  it('counts reveals by themselves whatever the size of the opening (5.1.2)', () => {
    // 2 × (1 + 1) m, 0.2 m deep.
    const { offer, true: own } = measure('din-18363', inside(1000, 1000, { reveal: 200 }));
    expect(offer).toBeCloseTo(16.5 + 0.8, 9);
    expect(own).toBeCloseTo(16.5 - 1 + 0.8, 9);
  });

  it('judges an opening by its whole size and takes off what lies in the zone', () => {
    const across = { x: 5000, y: 400, width: 1000, height: 2510 };
    expect(measure('din-18363', across).offer).toBeCloseTo(16.5 - 0.5 * 2.51, 9);
    expect(measure('din-18363', { ...across, height: 2400 }).offer).toBeCloseTo(16.5, 9);
  });
});

describe('VOB/C DIN 18363, 5.2.1.2 and 5.1.8', () => {
  const zoneOf = (shape: unknown, fittings: object[] = []) => {
    const job = jobOf({
      walls: [wallOf({ fittings, zones: [{ id: 'Z1', buildUp: 'writable', shape }] })],
    });
    const { worked } = workedTakeOff(job);
    const { measures } = wallsOf(job, worked)[0]!.zones[0]!;
    const of = (rule: MeasurementRuleId) =>
      offerArea(worked.walls[0]!.survey, measures, measurementRule(rule)).area / 1e10;
    return { din: of('din-18363'), net: of('net') };
  };
  const beam = (height: number, fields: object = {}) => ({
    ...{ id: 'B1', kind: 'beam-end', x: 0, y: 1000, width: 6000, clearance: 0 },
    ...{ height, ...fields },
  });

  it('what runs right across is taken off above 30 cm of width, other fittings are not', () => {
    const whole = box(0, 0, 5500, 3000);
    expect(zoneOf(whole, [beam(300)]).din).toBeCloseTo(16.5, 9);
    expect(zoneOf(whole, [beam(310)]).din).toBeCloseTo(16.5 - 5.5 * 0.31, 9);
    expect(zoneOf(whole, [beam(310, { width: 3000 })]).din).toBeCloseTo(16.5, 9);
  });

  it('a polygon is measured by the smallest rectangle that encloses it', () => {
    // A right-angled triangle of 3 and 2 m: twice its own 3 m², along any of its sides.
    expect(
      zoneOf([
        [0, 0],
        [3000, 0],
        [0, 2000],
      ]),
    ).toEqual({ din: expect.closeTo(6, 6), net: expect.closeTo(3, 6) });
    // An L of 3 × 2 m without 2 × 1 m.
    const ell = [
      [0, 0],
      [3000, 0],
      [3000, 1000],
      [1000, 1000],
      [1000, 2000],
      [0, 2000],
    ];
    expect(zoneOf(ell)).toEqual({ din: expect.closeTo(6, 9), net: expect.closeTo(4, 9) });
    // A square of 1 m on its corner is its own smallest rectangle.
    const side = Math.SQRT1_2 * 1000;
    const turned = [
      [1000, 100],
      [1000 + side, 100 + side],
      [1000, 100 + 2 * side],
      [1000 - side, 100 + side],
    ];
    expect(zoneOf(turned).din).toBeCloseTo(1, 4);
  });
});

describe('NRM2 and SMM7 (sizes from memory): voids above 1.00 and 0.50 m² are deducted', () => {
  it('keeps what is no larger', () => {
    expect(measure('nrm2', inside(1000, 1000)).offer).toBeCloseTo(16.5, 9);
    expect(measure('nrm2', inside(1000, 1010)).offer).toBeCloseTo(16.5 - 1.01, 9);
    expect(measure('smm7', inside(1000, 500)).offer).toBeCloseTo(16.5, 9);
    expect(measure('smm7', inside(1000, 510)).offer).toBeCloseTo(16.5 - 0.51, 9);
  });

  it('says that the sizes are from memory', () => {
    for (const id of ['nrm2', 'smm7'] as const) expect(measurementRule(id).read).toBe('memory');
  });
});

describe('a national Standard Method of Measurement, A2(b): voids at the boundary are always deducted', () => {
  it('takes a door off and a window not', () => {
    expect(measure('voids-at-boundary', door).offer).toBeCloseTo(16.5 - 0.25, 9);
    expect(measure('voids-at-boundary', inside(2000, 2000)).offer).toBeCloseTo(16.5, 9);
    expect(measure('nrm2', door).offer).toBeCloseTo(16.5 - 0.25, 9);
  });
});

describe('IS 1200 practice (trade page): none below 0.5 m², one face to 3 m², above with reveals', () => {
  it.each([
    [inside(980, 500, { reveal: 100 }), 16.5],
    [inside(1000, 500, { reveal: 100 }), 16.5 - 0.5],
    [inside(2000, 1500, { reveal: 100 }), 16.5 - 3],
    [inside(2000, 1600, { reveal: 100 }), 16.5 - 3.2 + 0.72],
  ])('%o', (opening, area) => {
    expect(measure('is-1200', opening).offer).toBeCloseTo(area, 9);
  });
});

describe('every rule', () => {
  it.each(measurementRules.map(({ id }) => id))('%s: leaves the true area as it is', (id) => {
    expect(measure(id, inside(2000, 1600, { reveal: 100 }), door).true).toBeCloseTo(
      16.5 - 3.2 + 0.72 - 0.25,
      9,
    );
  });

  it('net offers the true area', () => {
    const { offer, true: own } = measure('net', inside(700, 700, { reveal: 50 }), door);
    expect(offer).toBe(own);
  });
});
