import { describe, expect, it } from 'vitest';
import { hitsAt, nearestWithin, nextHit, outlineCornerAt } from '../../../web/elevation/hit';
import { smallWall } from '../proofing-wall';

const ids = (x: number, y: number, tolerance: number, station: 'survey' | 'zones' | 'panels') =>
  hitsAt(smallWall, { x, y }, tolerance, station).map(({ id }) => id);

describe('what lies under a hand', () => {
  it('the socket before the zone it sits in', () => {
    expect(ids(2340, 1200, 0, 'zones')).toEqual(['K4', 'Z1']);
  });

  it('zones are not chosen at the survey', () => {
    expect(ids(2340, 1200, 0, 'survey')).toEqual(['K4']);
    expect(ids(1500, 800, 0, 'survey')).toEqual([]);
  });

  it('an edge belongs to its object', () => {
    expect(ids(220, 1000, 0, 'survey')).toEqual(['D1']);
  });

  it('a near miss counts within the tolerance, after what is really there', () => {
    expect(ids(2340, 1146, 10, 'zones')).toEqual(['Z1']);
    expect(ids(2340, 1146, 11, 'zones')).toEqual(['Z1', 'K4']);
    expect(ids(1150, 1000, 5, 'survey')).toEqual(['D1']);
    expect(ids(1152, 1000, 5, 'survey')).toEqual([]);
  });

  it('outside the round head of an arch is not the arch', () => {
    expect(ids(5600, 2300, 0, 'survey')).toEqual(['A1']);
    expect(ids(5030, 2320, 0, 'survey')).toEqual([]);
  });

  it('a round pipe is hit on its circle, not on its box', () => {
    const pipe = smallWall.fittings.find(({ id }) => id === 'P1')!.circle!;
    const r = pipe.diameter / 2;
    expect(ids(pipe.x + r * 0.9, pipe.y, 0, 'survey')).toContain('P1');
    expect(ids(pipe.x + r * 0.9, pipe.y + r * 0.9, 0, 'survey')).not.toContain('P1');
  });
});

describe('tapping again', () => {
  const hits = [
    { kind: 'fitting', id: 'K4' },
    { kind: 'zone', id: 'Z1' },
  ] as const;

  it('goes through everything that lies there, and round again', () => {
    expect(nextHit(hits, null)).toEqual(hits[0]);
    expect(nextHit(hits, hits[0])).toEqual(hits[1]);
    expect(nextHit(hits, hits[1])).toEqual(hits[0]);
  });

  it('begins with the uppermost where something else was chosen', () => {
    expect(nextHit(hits, { kind: 'opening', id: 'D1' })).toEqual(hits[0]);
  });

  it('on bare wall chooses nothing', () => {
    expect(nextHit([], hits[0])).toBeNull();
  });
});

describe('corners', () => {
  it('the nearest within reach', () => {
    expect(outlineCornerAt(smallWall, { x: 7990, y: 2150 }, 20)).toBe(2);
    expect(outlineCornerAt(smallWall, { x: 7900, y: 2150 }, 20)).toBeNull();
  });

  it('none at a place that is no place', () => {
    expect(nearestWithin([{ x: NaN, y: NaN }], { x: 0, y: 0 }, 100)).toBeNull();
  });
});
