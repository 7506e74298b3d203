import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { difference, intersection } from '../../core/geometry/clip';
import { rectangle, regionArea } from '../../core/geometry/polygon';
import type { Wall, Zone } from '../../core/job/schema';
import { surveyWall } from '../../core/survey/survey';
import { causesOf } from '../../core/zones/edge-causes';
import { runningMarks } from '../../core/zones/running-marks';
import { zoneAreas } from '../../core/zones/zone-areas';
import { walls, wallOf } from '../survey/random-walls';

function zone(id: string, left: number, bottom: number, right: number, top: number): Zone {
  return { id, name: '', buildUp: 'steel-panel', shape: [[left, bottom], [right, bottom], [right, top], [left, top]], holes: [] }; // prettier-ignore
}

const areasOf = (parts: Partial<Wall>) => zoneAreas(surveyWall(wallOf(parts)));

describe('zoneAreas', () => {
  it('gives what two zones share to the one listed first, and says so', () => {
    const [first, second] = areasOf({
      zones: [zone('Z1', 0, 0, 1000, 1000), zone('Z2', 500, 0, 2000, 1000)],
    });
    expect(first!.area).toEqual([rectangle(0, 0, 100000, 100000)]);
    expect(second!.area).toEqual([rectangle(100000, 0, 100000, 100000)]);
    expect(second!.findings.map(({ code }) => code)).toEqual(['zones-overlap']);
    expect(second!.findings[0]!.text).toContain('zone Z1');
  });

  it('takes the holes of a zone off', () => {
    const holed = { ...zone('Z1', 0, 0, 1000, 1000), holes: [zone('', 200, 200, 400, 400).shape] };
    const [area] = areasOf({ zones: [holed] });
    expect(regionArea(area!.area)).toBe(96_0000_0000);
    expect(area!.shapePolygon.holes).toHaveLength(1);
  });

  it('says when nothing of a zone is left, when it leaves the wall, and when its edge runs under a fitting', () => {
    const socket = { id: 'K1', kind: 'socket', x: 950, y: 300, width: 100, height: 80, clearance: 5 };
    const areas = areasOf({
      fittings: [socket],
      zones: [zone('Z1', 0, 0, 1000, 1000), zone('Z2', 100, 100, 200, 200), zone('Z3', 5000, 0, 6000, 900)],
    });
    const codes = areas.map(({ findings }) => findings.map(({ code }) => code));
    expect(codes[0]).toEqual(['fitting-across-zone-edge']);
    expect(codes[1]).toEqual(['zone-without-area', 'zones-overlap']);
    expect(codes[2]).toEqual(['zone-outside-wall']);
  });

  it('areas share nothing and stay in the usable part and in their own shape', () => {
    fc.assert(
      fc.property(walls({ sloping: false }), (wall) => {
        const survey = surveyWall(wall);
        const areas = zoneAreas(survey);
        areas.forEach(({ area, shapePolygon }, i) => {
          expect(difference(area, survey.usable)).toEqual([]);
          expect(difference(area, [shapePolygon])).toEqual([]);
          for (const other of areas.slice(0, i)) expect(intersection(area, other.area)).toEqual([]);
        });
      }),
      { seed: 42, numRuns: 200 },
    );
  });
});

describe('causesOf', () => {
  it('names the opening, the rim, the wall’s own edge, the zone before and the stock sheet', () => {
    const door = { id: 'D1', kind: 'door', x: 0, y: 0, width: 900, height: 2000, clearance: 50 };
    const rim = { floor: 100, ceiling: 0, left: 0, right: 0 };
    const zones = [zone('Z1', 3000, 0, 5400, 2700), zone('Z2', 0, 0, 3500, 2700)];
    const area = areasOf({ openings: [door], rim, zones })[1]!;
    // The lower left corner above the door, and a middle piece from the floor up.
    const lower = intersection(area.area, [rectangle(50000, 0, 100000, 150000)])[0]!;
    expect(causesOf(lower, area)).toEqual([
      [
        { kind: 'rim', side: 'floor' },
        { kind: 'stock-edge' },
        { kind: 'stock-edge' },
        { kind: 'opening', id: 'D1' },
      ],
    ]);
    const upper = intersection(area.area, [rectangle(200000, 200000, 100000, 100000)])[0]!;
    expect(causesOf(upper, area)[0]!.slice(1)).toEqual([
      { kind: 'zone', id: 'Z1' },
      { kind: 'rim', side: 'ceiling' },
      { kind: 'stock-edge' },
    ]);
  });

  it('gives every edge round a pipe to the pipe', () => {
    const pipe = { id: 'P1', kind: 'pipe', circle: { x: 1000, y: 1000, diameter: 60 }, clearance: 10 };
    const area = areasOf({ fittings: [pipe], zones: [zone('Z1', 0, 0, 2000, 2000)] })[0]!;
    const causes = causesOf(area.area[0]!, area);
    expect(new Set(causes[1]!.map(({ kind }) => kind))).toEqual(new Set(['fitting']));
  });
});

describe('runningMarks', () => {
  it('measures to edges and centres from the datum, equal places once', () => {
    const socket = { id: 'K1', kind: 'socket', x: 1500, y: 300, width: 146, height: 86, clearance: 5 };
    const pipe = { id: 'P1', kind: 'pipe', circle: { x: 4000, y: 343, diameter: 40 }, clearance: 10 };
    const survey = surveyWall(
      wallOf({ fittings: [socket, pipe], zones: [zone('Z1', 1500, 900, 5400, 2700)] }),
    );
    const { along, up } = runningMarks(survey, zoneAreas(survey));
    expect(along.map(({ at }) => at / 100)).toEqual([0, 1500, 1573, 1646, 4000, 5400]);
    expect(up.map(({ at }) => at / 100)).toEqual([0, 300, 343, 386, 900, 2700]);
    expect(along[1]!.of.map(({ id, edge }) => `${id} ${edge}`)).toEqual(['K1 left', 'Z1 left']);
    expect(up[2]!.of.map(({ id, edge }) => `${id} ${edge}`)).toEqual(['K1 centre', 'P1 centre']);
  });

  it('names the corners of a sloping outline with their vertices', () => {
    const outline: [number, number][] = [[0, 0], [4000, 0], [4000, 2000], [1000, 2600], [0, 2600]]; // prettier-ignore
    const survey = surveyWall(wallOf({ outline }));
    const { along } = runningMarks(survey, []);
    expect(along[1]).toEqual({ at: 100000, of: [{ kind: 'wall', id: 'A', edge: 'corner', vertices: [3] }] });
  });
});
