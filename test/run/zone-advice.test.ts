import { describe, expect, it } from 'vitest';
import { emptyJob, newWall } from '../../core/job/defaults';
import type { Job, Layout, Opening, StockSheet } from '../../core/job/schema';
import { rectangleVertices } from '../../core/job/shape';
import { zoneEdges, type ZoneEdge } from '../../core/job/zone-edges';
import { inside, room, sheet as sheetOf, steel, wallOf } from '../job/room-walls';
import { runRoundCorner } from '../../core/job/run-round-corner';
import { workOutFully } from '../../core/run/pipeline';
import { applyZoneAdvice, zoneAdviceInSteps, type ZoneAdvised } from '../../core/run/zone-advice';

const sheet: StockSheet = {
  id: 'S1',
  name: '',
  width: 500,
  height: 500,
  thickness: 0.5,
  price: 6.4,
  hasFace: false,
  spares: 0,
};

function jobWith(
  width: number,
  height: number,
  openings: Opening[] = [],
  changes: Partial<Layout> = {},
): Job {
  const layout: Layout = {
    stock: 'S1',
    start: 'best',
    turned: false,
    jointGap: 0,
    stagger: 0,
    leastWidth: 50,
    ...changes,
  };
  const shape = rectangleVertices({ x: 1000, y: 500, width, height });
  const zone = { id: 'Z1', name: '', shape, holes: [], buildUp: 'steel-panel', layout };
  const wall = { ...newWall('A', '', 6000, 3000), openings, zones: [zone] };
  return { ...emptyJob(), stock: [sheet], walls: [wall] };
}

function advise(job: Job, margin: number, edges: readonly ZoneEdge[] = zoneEdges): ZoneAdvised {
  const steps = zoneAdviceInSteps({ job, wallId: 'A', zoneId: 'Z1', margin, edges });
  for (;;) {
    const { value, done } = steps.next();
    if (done) return value;
  }
}

function sheetsOf(job: Job): number {
  return workOutFully(job, { steps: 10 }).cutting.newSheets;
}

function cutPanelsOf(job: Job): number {
  return workOutFully(job, { steps: 1 }).walls[0]!.zones[0]!.layout!.panels.filter(({ full }) => !full)
    .length;
}

describe('a zone of 2240 × 1000 mm on plates of 500 mm, by hand', () => {
  const job = jobWith(2240, 1000);
  const { now, advice } = advise(job, 300, ['right']);

  it('is now 8 whole plates and one more for two panels of 240 mm', () => {
    expect(now).toMatchObject({ stockSheets: 9, cutPanels: 2, slivers: 0, cost: 9 * 640 });
  });
  it('needs one stock sheet less, and no cut, where it is 240 mm narrower', () => {
    expect(advice[0]).toEqual({
      edges: { right: -240 },
      figures: expect.objectContaining({ stockSheets: 8, cutPanels: 0 }) as unknown,
      saves: {
        stockSheets: 1,
        cutPanels: 2,
        cost: 640,
        area: expect.closeTo(0.24, 9) as unknown,
        money: '6.40 EUR',
      },
    });
  });
  it('has no cut where it is 260 mm wider, but that takes one stock sheet more, and so is not advised', () => {
    expect(advice.some(({ edges }) => (edges.right ?? 0) > 0)).toBe(false);
  });
  it('is left alone within a margin in which nothing is saved', () => {
    expect(advise(job, 100, ['right']).advice).toEqual([]);
  });
  it('is changed on those edges alone that may move', () => {
    for (const edges of [['left'], ['bottom', 'top']] as const) {
      const moved = advise(job, 300, edges).advice.flatMap((one) => Object.keys(one.edges));
      expect(moved.every((edge) => (edges as readonly string[]).includes(edge))).toBe(true);
    }
  });
  it('shares a change between both sides where one alone may not move so far', () => {
    const both = advise(job, 130, ['left', 'right']).advice;
    expect(both[0]!.edges).toEqual({ left: -120, right: -120 });
    expect(both[0]!.saves.stockSheets).toBe(1);
  });
});

describe('a zone that is too large both ways', () => {
  it('is advised to change both ways together', () => {
    const { advice } = advise(jobWith(2060, 1060), 100, ['right', 'top']);
    expect(advice[0]!.edges).toEqual({ right: -60, top: -60 });
    expect(advice[0]!.figures).toMatchObject({ stockSheets: 8, cutPanels: 0 });
  });
});

describe('advice on a zone with openings', () => {
  const openings: Opening[] = [
    { id: 'D1', kind: 'door', x: 1600, y: 0, width: 900, height: 2040, clearance: 60 },
    { id: 'W1', kind: 'window', x: 3300, y: 900, width: 700, height: 600, clearance: 20 },
  ];
  const job = jobWith(3370, 1630, openings);
  const { now, advice, considered } = advise(job, 200);

  it('comes true when it is applied, and each is worth its change', () => {
    expect(now.stockSheets).toBe(sheetsOf(job));
    expect(advice.length).toBeGreaterThan(0);
    expect(considered).toBeGreaterThan(20);
    for (const one of advice) {
      const after = applyZoneAdvice(job, 'A', 'Z1', one);
      expect(after).not.toBe(job);
      expect(sheetsOf(after)).toBe(one.figures.stockSheets);
      expect(cutPanelsOf(after)).toBe(one.figures.cutPanels);
      expect(one.saves.stockSheets).toBe(now.stockSheets - one.figures.stockSheets);
      expect(one.saves.stockSheets > 0 || one.saves.cutPanels > 0 || one.saves.cost > 0).toBe(true);
      expect(Object.values(one.edges).every((by) => Math.abs(by) <= 200)).toBe(true);
    }
  });
  it('is in order, most stock sheets saved first, and the same every time', () => {
    const sheets = advice.map(({ saves }) => saves.stockSheets);
    expect(sheets).toEqual([...sheets].sort((a, b) => b - a));
    expect(advise(job, 200)).toEqual({ now, advice, considered });
  });
});

describe('advice beside another zone', () => {
  it('counts what the zone listed later gives up', () => {
    const job = jobWith(1000, 1000);
    const [wall] = job.walls;
    const [zone] = wall!.zones;
    // The first is whole as it is; 40 mm more of it make the second whole too, at the price of cuts in the first.
    const second = {
      ...zone!,
      id: 'Z2',
      shape: rectangleVertices({ x: 2000, y: 500, width: 1040, height: 1000 }),
    };
    const both = { ...job, walls: [{ ...wall!, zones: [zone!, second] }] };
    const { now, advice } = advise(both, 60, ['right']);
    expect(now.stockSheets).toBe(sheetsOf(both));
    for (const one of advice) {
      expect(sheetsOf(applyZoneAdvice(both, 'A', 'Z1', one))).toBe(one.figures.stockSheets);
    }
  });
});

it('is none for a zone without steel, or one that is not there', () => {
  const job = jobWith(2240, 1000);
  const steps = zoneAdviceInSteps({ job, wallId: 'A', zoneId: 'Z9', margin: 100, edges: zoneEdges });
  expect(steps.next()).toEqual({
    done: true,
    value: {
      now: { slivers: 0, stockSheets: 0, cutPanels: 0, panels: 0, area: 0, cost: 0 },
      advice: [],
      considered: 0,
    },
  });
});

/*
 * By hand: 740 mm before an inside corner and 840 mm after it on sheets of 400 × 500 mm: the lines go on, so the second
 * part begins with what is left of a sheet. Whole sheets end at 800 + 800.
 */
describe('a zone that runs round a corner', () => {
  const walls = [
    wallOf('A', 2000, inside('B'), [steel('Z1', [1260, 300, 740, 1000], { start: 'best' })]),
    wallOf('B', 2000),
  ];
  const made = runRoundCorner(room(walls, sheetOf(400, 500)), 'A', 'Z1', 'right', 840);
  if ('fault' in made) throw new Error(made.fault);
  const { job } = made;
  const partB = job.walls[1]!.zones[0]!.id;
  const adviseOn = (wallId: string, zoneId: string) => {
    const steps = zoneAdviceInSteps({ job, wallId, zoneId, margin: 150, edges: ['left', 'right'] });
    for (;;) {
      const { value, done } = steps.next();
      if (done) return value;
    }
  };
  const panelsOf = (one: Job) =>
    workOutFully(one, { steps: 1 }).walls.flatMap(({ zones }) =>
      zones.flatMap(({ layout }) => layout!.panels),
    );

  it('is counted over both walls, and is advised the same from either', () => {
    const [fromA, fromB] = [adviseOn('A', 'Z1'), adviseOn('B', partB)];
    const panels = panelsOf(job);
    expect(fromA.now.panels).toBe(panels.length);
    expect(fromA.now.cutPanels).toBe(panels.filter(({ full }) => !full).length);
    expect(fromB.now).toEqual(fromA.now);
    expect(fromB.advice).toEqual(fromA.advice);
  });

  it('saves what it is said to save once its ends are moved, on whichever wall they are', () => {
    const { now, advice } = adviseOn('A', 'Z1');
    expect(advice.length).toBeGreaterThan(0);
    for (const one of advice) {
      const after = applyZoneAdvice(job, 'A', 'Z1', one);
      const cut = panelsOf(after).filter(({ full }) => !full).length;
      expect(now.cutPanels - cut).toBe(one.saves.cutPanels);
      expect(after.walls[0]!.zones[0]!.shape.some((point) => (point as number[])[0] === 2000)).toBe(true);
      expect(after.walls[1]!.zones[0]!.shape.some((point) => (point as number[])[0] === 0)).toBe(true);
    }
  });
});
