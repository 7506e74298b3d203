import { describe, expect, it } from 'vitest';
import { polygonArea } from '../../core/geometry/polygon';
import { copyObject, fitObject, moveObject } from '../../core/job/changes';
import { emptyJob, newWall } from '../../core/job/defaults';
import {
  addHole,
  circleOf,
  circleVertices,
  fittedHole,
  kindOfHole,
  movedHole,
  removeHole,
} from '../../core/job/holes';
import { readJobObject } from '../../core/job/read';
import { polygonOf } from '../../core/job/placed-regions';
import type { Job, Zone } from '../../core/job/schema';
import { boxOfVertices, rectangleVertices } from '../../core/job/shape';
import { surveyWall } from '../../core/survey/survey';
import { zoneAreas } from '../../core/zones/zone-areas';
import { regionArea } from '../../core/geometry/polygon';
import { setHoleBox } from '../../web/job/changes/holes';

const zone: Zone = {
  id: 'Z1',
  name: '',
  shape: rectangleVertices({ x: 500, y: 500, width: 2000, height: 1000 }),
  holes: [],
  buildUp: 'chalk',
};
const bare: Job = { ...emptyJob(), walls: [{ ...newWall('A', '', 5000, 2700), zones: [zone] }] };
const ref = { kind: 'zone', id: 'Z1' } as const;
const rectangle = rectangleVertices({ x: 800, y: 700, width: 400, height: 300 });
const round = circleVertices({ x: 1900, y: 1000, diameter: 300 });
const job = [rectangle, round].reduce((before, hole) => addHole(before, 'A', 'Z1', hole), bare);
const holesOf = (after: Job, i = 0) => after.walls[0]!.zones[i]!.holes;

describe('holes of a zone', () => {
  it('are left out of its area: a rectangle exactly, a circle as π d² / 4', () => {
    const [area] = zoneAreas(surveyWall(job.walls[0]!));
    const left = regionArea(area!.area) / 1e4;
    expect(Math.abs(left - (2e6 - 400 * 300 - (Math.PI * 300 ** 2) / 4))).toBeLessThan(20);
    expect(polygonArea(polygonOf(rectangle)) / 1e4).toBe(120_000);
  });
  it('make a job that can be read again', () => {
    expect(readJobObject(JSON.parse(JSON.stringify(job))).job?.walls).toEqual(job.walls);
  });
  it('are a rectangle, a circle or free to whoever types them', () => {
    expect([rectangle, round, rectangle.slice(0, 3)].map(kindOfHole)).toEqual([
      'rectangle',
      'circle',
      'free',
    ]);
    expect(circleOf(round)).toEqual({ x: 1900, y: 1000, diameter: 300 });
    expect(circleOf(movedHole(round, 12.34, -5.5))).toEqual({ x: 1912.34, y: 994.5, diameter: 300 });
    expect(circleOf(rectangle)).toBeNull();
  });
  it('go along where the zone is moved or copied, and stay where it is made larger', () => {
    expect(holesOf(moveObject(job, 'A', ref, 100, 50))[0]).toEqual(movedHole(rectangle, 100, 50));
    expect(holesOf(copyObject(job, 'A', ref, 0, -400), 1)).toEqual(
      [rectangle, round].map((hole) => movedHole(hole, 0, -400)),
    );
    const wider = fitObject(job, 'A', ref, { x: 400, y: 500, width: 2400, height: 1000 });
    expect(holesOf(wider)).toEqual([rectangle, round]);
    const typed = fitObject(job, 'A', ref, { x: 600, y: 500, width: 2000, height: 1000 });
    expect(holesOf(typed)[0]).toEqual(movedHole(rectangle, 100, 0));
  });
  it('are made another size by their box; round ones stay round', () => {
    const ofZone = { zone: 'Z1', hole: 0 };
    const wider = setHoleBox('A', ofZone, { width: 500 }).change(job);
    expect(boxOfVertices(holesOf(wider)[0]!)).toEqual({ x: 800, y: 700, width: 500, height: 300 });
    expect(circleOf(fittedHole(round, { x: 100, y: 100, width: 250, height: 400 }))).toEqual({
      x: 225,
      y: 300,
      diameter: 250,
    });
  });
  it('are taken out by their place in the list; a zone that is not there changes nothing', () => {
    expect(holesOf(removeHole(job, 'A', { zone: 'Z1', hole: 0 }))).toEqual([round]);
    expect(addHole(job, 'A', 'Z9', round)).toBe(job);
    expect(setHoleBox('A', { zone: 'Z1', hole: 7 }, { x: 0 }).change(job)).toBe(job);
  });
});
