import { describe, expect, it } from 'vitest';
import { depthsBehind, layersBehind, sharedEdges, topInWords } from '../../../core/drawings/picture/layers';
import { skirtingArea } from '../../../core/drawings/picture/skirting';
import { wallLook } from '../../../core/drawings/picture/wall-look';
import { rectangle, regionArea } from '../../../core/geometry/polygon';
import { demoJob } from '../../../core/job/demo';
import { workOutFully } from '../../../core/run/pipeline';
import type { Panel } from '../../../core/panels/panel';

const worked = workOutFully(demoJob(), { steps: 2 });
const zoneOf = (wall: number, zone: number) => worked.walls[wall]!.zones[zone]!;
const onPaper = {
  toPaper: ({ x, y }: { x: number; y: number }) => ({ x: x / 2000, y: y / 2000 }),
  perMm: 0.05,
};

describe('layers behind a finished face', () => {
  it.each([
    // Steel panels, painted; a writable coat on plaster; a chalk coat on magnetic coating.
    [0, 0, ['sealer', 'joint reinforcement', 'steel panels', 'adhesive']],
    [0, 1, ['sealer', 'primer', 'primer', 'primer']],
    [1, 1, ['sealer', 'magnetic coating', 'magnetic coating', 'primer']],
  ])('wall %i, zone %i, from the face inwards', (wall, zone, words) => {
    const { resolved } = zoneOf(wall, zone).buildUp;
    expect(depthsBehind.map((depth) => topInWords(layersBehind(resolved, depth)))).toEqual(words);
  });

  it('are the zone’s own, in their order, and never more than before', () => {
    for (const { buildUp } of worked.walls.flatMap(({ zones }) => zones)) {
      const all = buildUp.resolved.layers;
      let before = all.length;
      for (const depth of depthsBehind) {
        const left = layersBehind(buildUp.resolved, depth);
        expect(left).toEqual(all.filter((layer) => left.includes(layer)));
        expect(left.length).toBeLessThanOrEqual(before);
        before = left.length;
      }
    }
  });
});

describe('the picture behind the face', () => {
  it('shows every panel of the layout, and none before the filler is off or once the steel is', () => {
    const wall = worked.walls[0]!;
    const look = wallLook(wall, worked.job, onPaper);
    const panels = wall.zones.flatMap(({ layout }) => layout?.panels ?? []);
    const steelOf = (depth: string) =>
      look.behind
        .find((step) => step.depth === depth)!
        .items.filter((item) => item.kind === 'art' && item.fill === '#bcc4c8');
    const drawn = steelOf('steel');
    expect(drawn).toHaveLength(panels.length);
    drawn.forEach((item, i) => {
      const { outer } = panels[i]!.outline;
      expect(item.kind === 'art' && item.chains[0]!.points).toEqual(outer.map(onPaper.toPaper));
    });
    expect(steelOf('ground')).toEqual([]);
  });

  it('has no step that takes nothing away', () => {
    const glass = { ...demoJob(), walls: [{ ...demoJob().walls[0]! }] };
    const zones = glass.walls[0]!.zones.slice(1);
    const only = workOutFully({ ...glass, walls: [{ ...glass.walls[0]!, zones }] }, { steps: 1 });
    const { behind } = wallLook(only.walls[0]!, only.job, onPaper);
    expect(behind.map(({ depth }) => depth)).toEqual(['filler', 'primer']);
  });
});

describe('edges that panels share', () => {
  it('two panels side by side have one joint, over their common height', () => {
    const panel = (left: number, bottom: number, height: number) =>
      ({ outline: rectangle(left, bottom, 50_000, height) }) as unknown as Panel;
    const [strip, ...others] = sharedEdges([panel(0, 0, 50_000), panel(50_100, 10_000, 60_000)]);
    expect(others).toEqual([]);
    expect(strip).toEqual({ left: 475.5, right: 525.5, bottom: 100, top: 500 });
    expect(sharedEdges([panel(0, 0, 50_000), panel(60_000, 0, 50_000)])).toEqual([]);
  });
});

describe('skirting', () => {
  it('runs along the floor and up the steps, and stops at openings', () => {
    const wall = [rectangle(0, 0, 400_000, 270_000)];
    expect(regionArea(skirtingArea(wall, 90, []))).toBe(400_000 * 9_000);
    const door = [rectangle(100_000, 0, 90_000, 200_000)];
    expect(regionArea(skirtingArea(wall, 90, [door]))).toBe(310_000 * 9_000);
    const step = [
      {
        outer: [
          { x: 0, y: 0 },
          { x: 100_000, y: 0 },
          { x: 100_000, y: 18_000 },
          { x: 200_000, y: 18_000 },
          { x: 200_000, y: 270_000 },
          { x: 0, y: 270_000 },
        ],
        holes: [],
      },
    ];
    expect(regionArea(skirtingArea(step, 90, []))).toBe(200_000 * 9_000);
  });
});
