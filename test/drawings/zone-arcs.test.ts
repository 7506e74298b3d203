import { describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import { settingOutSheet } from '../../core/drawings/setting-out';
import { zoneArcs } from '../../core/drawings/zone-arcs';
import { circleVertices } from '../../core/job/holes';
import { lengthUnits } from '../../core/lengths';
import { jobOf, workedOutOf } from './crowded-job';
import { fontFiles } from './font-files';
import { textFaults, textsOf } from './page-checks';

const measure = measureWith(fontFiles);

const wall = (id: string, top: object, holes: object[] = [], width = 4000) => ({
  id,
  outline: [
    [0, 0],
    [width, 0],
    [width, 2600],
    [0, 2600],
  ],
  fittings: [{ id: 'K1', kind: 'socket', x: 1400, y: 300, width: 146, height: 86, clearance: 5 }],
  zones: [
    {
      id: 'Z1',
      name: 'Arch',
      buildUp: 'steel-panel',
      shape: [[1000, 500], [3000, 500], [3000, 1500], top],
      holes,
      layout: { stock: 'S1', start: 'lower-left' },
    },
  ],
});

const flat = { arcTo: [1000, 1500], via: [2000, 1800] };
const half = { arcTo: [1000, 1500], via: [2000, 2500] };
/** A slot: straight at the foot, half a circle over it. */
const slot = [[1800, 700], [2200, 700], [2200, 900], { arcTo: [1800, 900], via: [2000, 1100] }];
const worked = workedOutOf(
  jobOf([wall('A', flat), wall('B', half), wall('C', half, [slot]), wall('D', flat, [], 7000)]),
);
const sheets = worked.walls.map((_, i) => settingOutSheet(worked, i, measure));

describe('curved edges of zones', () => {
  it('have the radius that chord and rise give: r = c²/8s + s/2 (school geometry, the sagitta of an arc)', () => {
    const [arc, ...more] = zoneArcs(worked.walls[0]!.zones[0]!);
    const [chord, rise] = [2000, 300];
    const radius = (chord * chord) / (8 * rise) + rise / 2;
    expect(more).toEqual([]);
    expect(arc!.radius / 100).toBeCloseTo(radius, 2);
    expect(arc!.rise / 100).toBeCloseTo(rise, 2);
    expect(arc!.centre.x / 100).toBeCloseTo(2000, 2);
    expect(arc!.centre.y / 100).toBeCloseTo(1800 - radius, 2);
  });

  it('are dimensioned from a centre on the wall, and by their rise where it is beneath the floor', () => {
    // r = 2000²/2400 + 150 = 1816,7: its centre lies 16,7 under the floor.
    expect(textsOf(sheets[0]!.pages[0]!)).toContain('R 1816,7 rise 300');
    const half = textsOf(sheets[1]!.pages[0]!);
    expect(half).toContain('R 1000');
    expect(half).toContain('centre 2000 | 1500');
  });

  it('stand in a table with all that they can be struck by', () => {
    const texts = sheets[1]!.pages.slice(1).flatMap(textsOf);
    const at = texts.indexOf('R 1000');
    expect(texts.slice(at - 3, at + 3)).toEqual([
      'Z1',
      '3000 | 1500',
      '1000 | 1500',
      'R 1000',
      '1000',
      '2000 | 1500',
    ]);
  });

  it('are told of holes too', () => {
    const arcs = zoneArcs(worked.walls[2]!.zones[0]!);
    expect(arcs.map(({ radius }) => Math.round(radius))).toEqual([100000, 20000]);
    expect(textsOf(sheets[2]!.pages[0]!)).toContain('R 200');
  });

  it('are one diameter where a hole is a whole circle', () => {
    const job = jobOf([wall('A', [1000, 1500], [circleVertices({ x: 2000, y: 1000, diameter: 400 })])]);
    const bored = workedOutOf(job);
    const [circle, ...more] = zoneArcs(bored.walls[0]!.zones[0]!);
    expect(more).toEqual([]);
    expect(circle!.isCircle).toBe(true);
    // Points of a hole lie on whole hundredths, and so does what is known of its centre.
    expect(Math.hypot(circle!.centre.x - 200000, circle!.centre.y - 100000)).toBeLessThan(1);
    const texts = textsOf(settingOutSheet(bored, 0, measure).pages[0]!);
    expect(texts).toContain('Ø 400');
    expect(texts).toContain('centre 2000 | 1000');
    expect(texts.some((text) => text.startsWith('R '))).toBe(false);
  });

  it('lay no text on another on A4 and A3, in any unit', () => {
    const formats = new Set<string>();
    for (const units of lengthUnits) {
      const inUnits = { ...worked, job: { ...worked.job, units } };
      worked.walls.forEach((_, i) => {
        const sheet = settingOutSheet(inUnits, i, measure);
        for (const { format } of sheet.pages) formats.add(format);
        expect([units, i, textFaults(sheet, measure, true)]).toEqual([units, i, []]);
      });
    }
    expect(formats.has('A3')).toBe(true);
  });
});
