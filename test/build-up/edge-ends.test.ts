import { describe, expect, it } from 'vitest';
import { edgeSigns, type SignLine } from '../../core/build-up/edge-signs';
import { usualFeather } from '../../core/build-up/feather';
import type { EdgeEnd } from '../../core/job/product-schema';
import type { Fitting, Opening, Vertex, Wall, Zone } from '../../core/job/schema';
import { builtJob, workedOf, type Built } from './built-wall';

const edgesOf = (built: Built = {}, kind = 'steel-panel', zone = 0) =>
  workedOf(builtJob(kind, built), zone).edges;
const box = (x: number, y: number, width: number, height: number): Vertex[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];
const chosen = (edge: number, end: EdgeEnd['end'], width?: number): EdgeEnd => ({
  edge,
  end,
  ...(width === undefined ? {} : { width }),
});
/** Layers 2.785 mm thick: a feather of 150 times that, 417.75, up to the next 50. */
const usual = 450;

describe('a feather', () => {
  // Common practice, no source: 300 to 600 mm, a slope of 1 in 150.
  it.each([
    [1, 300],
    [2, 300],
    [2.1, 350],
    [3, 450],
    [4, 600],
    [9, 600],
  ])('of %d mm is %d mm wide', (thickness, width) => expect(usualFeather(thickness)).toBe(width));

  it('goes all round a zone amid the wall, square at its corners', () => {
    const { lengths, featherArea, findings } = edgesOf();
    expect(lengths).toEqual({ feather: 6000, 'stop-bead': 0, trim: 0, corner: 0 });
    expect(featherArea).toBeCloseTo((2000 + 2 * usual) * (1000 + 2 * usual) - 2_000_000, 3);
    expect(findings).toEqual([]);
  });

  it('goes round a round zone in a ring', () => {
    const shape: Vertex[] = [
      { arcTo: [3500, 1500], via: [3353.55, 1146.45] },
      { arcTo: [3000, 2000], via: [3353.55, 1853.55] },
      { arcTo: [2500, 1500], via: [2646.45, 1853.55] },
      { arcTo: [3000, 1000], via: [2646.45, 1146.45] },
    ];
    const { lengths, featherArea } = edgesOf({ zone: { shape } });
    expect(lengths.feather / (Math.PI * 1000)).toBeCloseTo(1, 3);
    expect(featherArea / (Math.PI * ((500 + usual) ** 2 - 500 ** 2))).toBeCloseTo(1, 3);
  });

  it('lies outside the zone only, and within the wall', () => {
    const { featherArea, lengths } = edgesOf({ zone: { shape: box(200, 1000, 1000, 1000) } });
    // 200 mm are left on the left.
    expect(featherArea).toBeCloseTo((1000 + 200 + usual) * (1000 + 2 * usual) - 1_000_000, 3);
    expect(lengths.feather).toBe(4000);
  });
});

describe('the usual end', () => {
  it('is the corner along floor, ceiling and ends of the wall', () => {
    const { runs, lengths } = edgesOf({ zone: { shape: box(0, 0, 6000, 3000) } });
    expect(lengths).toEqual({ feather: 0, 'stop-bead': 0, trim: 0, corner: 18_000 });
    expect(runs.map(({ edge, end }) => [edge, end])).toEqual([
      [1, 'corner'],
      [2, 'corner'],
      [3, 'corner'],
      [4, 'corner'],
    ]);
  });

  it('is the same whichever way round the shape is listed, with the numbers of its own corners', () => {
    const shape = box(0, 0, 2000, 3000).reverse();
    // Listed: up left, up right, down right, down left; edge 2 is the right one.
    const { runs } = edgesOf({ zone: { shape } });
    expect(runs.filter(({ end }) => end === 'feather')).toMatchObject([{ edge: 2, length: 3000 }]);
  });

  it('is a stop bead along an opening, and none along a box', () => {
    const opening = { id: 'W1', kind: 'window', x: 2500, y: 1200, width: 400, height: 500, clearance: 10 };
    const fitting = { id: 'K1', kind: 'socket', x: 3400, y: 1400, width: 80, height: 80, clearance: 5 };
    const { lengths, runs } = edgesOf({
      wall: { openings: [opening as Opening], fittings: [fitting as Fitting] },
    });
    expect(lengths['stop-bead']).toBeCloseTo(2 * (420 + 520), 6);
    expect(runs.find(({ cause }) => cause.kind === 'fitting')).toMatchObject({ end: null, length: 360 });
    expect(lengths.feather).toBe(6000);
  });

  it('is none between two zones that are as thick, and a feather under one that is thin', () => {
    const beside = (buildUp: string): Partial<Wall> => {
      const job = builtJob('steel-panel');
      const first = job.walls[0]!.zones[0]!;
      const second: Zone = { ...first, id: 'Z2', buildUp, shape: box(4000, 1000, 1000, 500) };
      return { zones: [first, second] };
    };
    const steel = edgesOf({ wall: beside('steel-panel-writable') });
    expect(steel.lengths.feather).toBe(5500);
    expect(steel.runs.filter(({ end }) => end === null)).toMatchObject([{ edge: 2, length: 500 }]);
    const other = edgesOf({ wall: beside('steel-panel-writable') }, 'steel-panel', 1);
    expect(other.lengths.feather).toBe(2500);
    expect(edgesOf({ wall: beside('writable') }).lengths.feather).toBe(6000);
  });

  it('is nothing at all of coats and films', () => {
    for (const kind of ['writable', 'magnetic-coating', 'magnetic-film', 'writable-film', 'glass-film']) {
      expect(edgesOf({}, kind)).toMatchObject({ runs: [], featherArea: 0, findings: [] });
    }
  });
});

describe('a chosen end', () => {
  it('takes the place of the usual one, edge by edge', () => {
    const zone = { edges: [chosen(1, 'stop-bead'), chosen(2, 'trim'), chosen(3, 'feather', 300)] };
    const { lengths, featherArea, runs } = edgesOf({ zone });
    expect(lengths).toEqual({ feather: 3000, 'stop-bead': 2000, trim: 1000, corner: 0 });
    // 300 mm above, the usual width on the left, mitred where they meet.
    expect(featherArea).toBeCloseTo(2000 * 300 + 1000 * usual + 300 * usual, 3);
    expect(runs.map(({ isChosen }) => isChosen)).toEqual([true, true, true, false]);
  });

  it('is asked for again where the zone has no such edge', () => {
    const { findings } = edgesOf({ zone: { edges: [chosen(5, 'trim')] } });
    expect(findings.map(({ code }) => code)).toEqual(['lost-edge-end']);
    expect(findings[0]!.text).toContain('an end for edge 5, but only 4 edges');
  });

  it('is warned of where a feather is too steep', () => {
    expect(
      edgesOf({ zone: { edges: [chosen(3, 'feather', 100)] } }).findings.map(({ code }) => code),
    ).toEqual(['narrow-feather']);
    expect(edgesOf({ zone: { edges: [chosen(3, 'feather', 225)] } }).findings).toEqual([]);
  });
});

describe('room for a feather', () => {
  const door = (x: number, y = 0) =>
    ({ id: 'D1', kind: 'door', x, y, width: 900, height: 2100, clearance: 0 }) as Opening;

  it('is asked for where a frame is nearer than it is wide', () => {
    const { findings } = edgesOf({ wall: { openings: [door(4120)] } });
    expect(findings).toHaveLength(1);
    expect(findings[0]!.code).toBe('no-room-for-feather');
    expect(findings[0]!.text).toContain('edge 2 has 120 mm to door D1 and its feather wants 450 mm');
  });

  it('is there where the frame is as far as it is wide, or beside another edge', () => {
    expect(edgesOf({ wall: { openings: [door(4000 + usual)] } }).findings).toEqual([]);
    expect(edgesOf({ wall: { openings: [{ ...door(4120), y: 2000, height: 500 }] } }).findings).toEqual([]);
  });

  it('is asked for before what stands out of the wall, not before a flush box', () => {
    const fitting = (kind: string) =>
      ({ id: 'F1', kind, x: 2500, y: 2200, width: 100, height: 100, clearance: 0 }) as Fitting;
    const codes = (kind: string) =>
      edgesOf({ wall: { fittings: [fitting(kind)] } }).findings.map(({ text }) => text);
    expect(codes('light')[0]).toContain('edge 3 has 200 mm to light F1');
    expect(codes('socket')).toEqual([]);
  });

  it('is asked for where the wall ends, also under a slope', () => {
    const flat = edgesOf({ zone: { shape: box(2000, 1000, 1000, 1700) } }).findings;
    expect(flat[0]!.text).toContain('edge 3 has 300 mm to the ceiling');
    const outline: Vertex[] = [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [0, 1500],
    ];
    // Over x = 2000 the ceiling is 2000 + … : 1500 + 0.25 · 2000 = 2000.
    const sloped = edgesOf({ wall: { outline }, zone: { shape: box(2000, 700, 1000, 1000) } }).findings;
    expect(sloped[0]!.text).toContain('edge 3 has 300 mm to the ceiling');
  });

  it('is not asked for where another end was chosen', () => {
    const zone = { edges: [chosen(2, 'stop-bead')] };
    expect(edgesOf({ zone, wall: { openings: [door(4120)] } }).findings).toEqual([]);
  });
});

describe('where ends lie', () => {
  it('is the line of each end, its corners included, with the zone on the left', () => {
    const { stretches } = edgesOf({ zone: { edges: [chosen(1, 'trim'), chosen(2, 'trim')] } });
    const [from, corner, to] = [
      { x: 200_000, y: 100_000 },
      { x: 400_000, y: 100_000 },
      { x: 400_000, y: 200_000 },
    ];
    expect(stretches.find(({ end }) => end === 'trim')).toEqual({
      end: 'trim',
      width: null,
      points: [from, corner, to],
    });
    expect(stretches.find(({ end }) => end === 'feather')).toEqual({
      end: 'feather',
      width: usual,
      points: [to, { x: 200_000, y: 200_000 }, from],
    });
  });

  it('comes back to its first point where a whole edge ends alike, and is as long as the runs say', () => {
    const { stretches, lengths } = edgesOf();
    expect(stretches).toHaveLength(1);
    expect(stretches[0]!.points.at(-1)).toEqual(stretches[0]!.points[0]);
    const { points } = stretches[0]!;
    const length = points
      .slice(1)
      .reduce((sum, p, i) => sum + Math.hypot(p.x - points[i]!.x, p.y - points[i]!.y) / 100, 0);
    expect(length).toBeCloseTo(lengths.feather, 6);
  });

  it('leaves out what is not ended', () => {
    const fitting = { id: 'K1', kind: 'socket', x: 3400, y: 1400, width: 80, height: 80, clearance: 5 };
    const { stretches } = edgesOf({ wall: { fittings: [fitting as Fitting] } });
    expect(stretches.map(({ end }) => end)).toEqual(['feather']);
  });
});

describe('signs of ends', () => {
  const lengthOf = ([a, b]: SignLine) => Math.hypot(b.x - a.x, b.y - a.y) / 100;

  it('go as far as a feather is wide, long and short by turns, and stop where it is stopped', () => {
    const { stretches, feather } = edgesOf({ zone: { shape: box(200, 1000, 1000, 1000) } });
    const lines = edgeSigns(stretches, feather, 2000);
    const ofRight = lines.filter(([from]) => from.x === 120_000).map(lengthOf);
    expect(Math.max(...ofRight)).toBeCloseTo(usual, 6);
    expect(Math.min(...ofRight)).toBeCloseTo(usual * 0.3, 6);
    // 200 mm are left to the end of the wall.
    const ofLeft = lines.filter(([from]) => from.x === 20_000).map(lengthOf);
    expect(Math.max(...ofLeft)).toBeCloseTo(200, 6);
  });

  it('leave out what is beyond the part that is shown', () => {
    const { stretches, feather } = edgesOf();
    const within = { left: 0, right: 250_000, bottom: 0, top: 300_000 };
    const shown = edgeSigns(stretches, feather, 2000, within);
    expect(shown.length).toBeGreaterThan(0);
    expect(shown.length).toBeLessThan(edgeSigns(stretches, feather, 2000).length);
  });

  it('differ by shape', () => {
    const shapes = (['stop-bead', 'trim', 'corner'] as const).map((end) => {
      const points = [
        { x: 0, y: 0 },
        { x: 300, y: 0 },
      ];
      return JSON.stringify(edgeSigns([{ end, width: null, points }], [], 100));
    });
    expect(new Set(shapes).size).toBe(3);
  });
});
