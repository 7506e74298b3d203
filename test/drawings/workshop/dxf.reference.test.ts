import { describe, expect, it } from 'vitest';
import { boxOf, perimeter, polygonArea } from '../../../core/geometry/polygon';
import { cutPatterns } from '../../../core/drawings/cut-patterns';
import { toDxf } from '../../../core/drawings/workshop/dxf';
import { patternDrawings } from '../../../core/drawings/workshop/pattern-drawing';
import { wallDrawings } from '../../../core/drawings/workshop/wall-drawing';
import { changeJob } from '../../../core/job/changes';
import { smallWorkedOut } from '../small-job';
import { workedJobs } from '../worked-jobs';
import { areaOfRead, arcOfRead, readDxf } from './read-drawing';
import { roundWalls } from './round-walls';

/*
 * AutoCAD 2000 DXF Reference (HEADER, LWPOLYLINE, CIRCLE, TEXT; bulge: tangent of a quarter of the included angle),
 * judged by dxf-parser, an independent reader.
 */
describe.each([...workedJobs, ['round', roundWalls()] as const])(
  'DXF of the job %s, read by dxf-parser',
  (_, worked) => {
    const { patterns } = cutPatterns(worked);
    const files = patternDrawings(worked).map((drawing) => readDxf(toDxf(drawing)));

    it('has a file for each cutting pattern, in millimetres ($INSUNITS 4), on layers by meaning', () => {
      expect(files).toHaveLength(patterns.length);
      for (const { units, version, layers } of files) {
        expect([units, version]).toEqual([4, 'AC1015']);
        expect(layers).toEqual(['0', 'CUT', 'MARK', 'SHEET', 'TEXT']);
      }
    });

    it('cuts closed contours alone, and has words on the layer TEXT alone', () => {
      for (const { contours, texts } of files) {
        expect(contours.every(({ closed }) => closed)).toBe(true);
        expect(texts.length).toBeGreaterThan(0);
        expect(new Set(texts.map(({ layer }) => layer))).toEqual(new Set(['TEXT']));
      }
    });

    it('gives the sheet its size and the contours the areas of the panels', () => {
      patterns.forEach(({ drawn }, i) => {
        const { contours } = files[i]!;
        const sheet = contours.find(({ layer }) => layer === 'SHEET')!;
        expect(areaOfRead(sheet)).toBeCloseTo((drawn.width * drawn.height) / 1e4, 6);
        const rings = contours.filter(({ layer }) => layer === 'CUT');
        const outlines = drawn.placements.map(({ outline }) => outline);
        expect(rings).toHaveLength(outlines.reduce((sum, { holes }) => sum + 1 + holes.length, 0));
        let at = 0;
        for (const outline of outlines) {
          const [outer, ...holes] = rings.slice(at, at + 1 + outline.holes.length);
          at += 1 + outline.holes.length;
          const area = areaOfRead(outer!) - holes.reduce((sum, hole) => sum + areaOfRead(hole), 0);
          // Arcs lie within 0.06 mm of the polygon's edges; straight panels agree exactly.
          const isRound = [outer!, ...holes].some(
            ({ circle, vertices }) => circle !== null || vertices.some(({ bulge }) => bulge !== 0),
          );
          const allowed = isRound ? (0.06 * perimeter(outline)) / 100 : 1e-4;
          expect(Math.abs(area - polygonArea(outline) / 1e4)).toBeLessThanOrEqual(allowed);
        }
      });
    });

    it('keeps every corner on the placed panel', () => {
      patterns.forEach(({ drawn }, i) => {
        const corners = new Set(
          drawn.placements.flatMap(({ outline }) =>
            [outline.outer, ...outline.holes].flat().map(({ x, y }) => `${x / 100} ${y / 100}`),
          ),
        );
        for (const { layer, vertices } of files[i]!.contours)
          if (layer === 'CUT')
            for (const { x, y } of vertices) expect(corners).toContain(`${x + 0} ${y + 0}`);
      });
    });

    it('shows each wall with its panels at their places', () => {
      wallDrawings(worked).forEach((drawing, i) => {
        const { contours, units } = readDxf(toDxf(drawing));
        const panels = worked.walls[i]!.zones.flatMap(({ layout }) => layout?.panels ?? []);
        expect(units).toBe(4);
        const rings = panels.flatMap(({ outline }) => [outline.outer, ...outline.holes]);
        const read = contours.filter(({ layer }) => layer === 'PANEL');
        expect(read).toHaveLength(rings.length);
        read.forEach(({ vertices, circle }, k) => {
          if (circle) return;
          const { left, bottom, right, top } = boxOf(rings[k]!);
          for (const { x, y } of vertices) {
            expect(x).toBeGreaterThanOrEqual(left / 100);
            expect(x).toBeLessThanOrEqual(right / 100);
            expect(y).toBeGreaterThanOrEqual(bottom / 100);
            expect(y).toBeLessThanOrEqual(top / 100);
          }
        });
      });
    });

    it('gives the same bytes for the same job, in ASCII with CRLF', () => {
      for (const drawing of patternDrawings(worked)) {
        const text = toDxf(drawing);
        expect(toDxf(drawing)).toBe(text);
        expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
      }
    });
  },
);

describe('arcs in DXF', () => {
  it('a pipe of 40 mm with 10 mm clearance is a circle of 60 mm', () => {
    const circles = patternDrawings(smallWorkedOut()).flatMap((drawing) =>
      readDxf(toDxf(drawing)).contours.filter(({ circle }) => circle),
    );
    expect(circles.map(({ circle }) => circle!.radius)).toEqual([30]);
  });

  it('an arched opening of 450 mm radius with 20 mm clearance is cut at 470 mm, about its centre on the wall', () => {
    const drawn = wallDrawings(roundWalls())[0]!;
    const { contours } = readDxf(toDxf(drawn));
    const arcsOn = (wanted: string) =>
      contours
        .filter(({ layer }) => layer === wanted)
        .flatMap(({ vertices }) =>
          vertices.flatMap((a, i) =>
            a.bulge === 0 ? [] : [arcOfRead(a, vertices[(i + 1) % vertices.length]!)],
          ),
        );
    const opening = arcsOn('OPENING');
    expect(opening.length).toBeGreaterThan(0);
    for (const { x, y, radius } of opening) {
      expect(radius).toBeCloseTo(450, 1);
      expect(Math.hypot(x - 1450, y - 1200)).toBeLessThan(0.1);
    }
    const panels = arcsOn('PANEL').filter(({ radius }) => Math.abs(radius - 470) < 1);
    expect(panels.length).toBeGreaterThan(0);
    for (const { x, y } of panels) expect(Math.hypot(x - 1450, y - 1200)).toBeLessThan(0.6);
  });
});

describe('words in DXF', () => {
  it('are one line of ASCII whatever a name holds', () => {
    const worked = smallWorkedOut();
    const job = changeJob(worked.job, { name: '%%c Prüf^raum\r\n0\r\nEOF' });
    const { texts, types } = readDxf(toDxf(patternDrawings({ ...worked, job })[0]!));
    expect(types.filter((type) => type === 'TEXT').length).toBe(texts.length);
    expect(texts.some(({ text }) => text.startsWith('% %c Pr\\U+00FCf^ raum  0  EOF'))).toBe(true);
  });
});
