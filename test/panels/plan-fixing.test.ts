import { describe, expect, it } from 'vitest';
import { readJobObject } from '../../core/job/read';
import { workOutFully } from '../../core/run/pipeline';
import { expansionOfSteel, thermalGap, thermalOpening } from '../../core/panels/thermal-gap';
import type { ZoneLayout } from '../../core/panels/panel';

/** One wall 4000 × 3000 with one zone, laid with stock sheets of 1000 × 1000. */
function laidOut(wall: object, zone: object, more: object = {}, stock: object = {}): ZoneLayout {
  const { job, findings } = readJobObject({
    format: 'lodeplan-job',
    version: 1,
    name: 'Fixing',
    stock: [{ id: 'S1', width: 1000, height: 1000, ...stock }],
    walls: [
      {
        id: 'A',
        outline: [
          [0, 0],
          [4000, 0],
          [4000, 3000],
          [0, 3000],
        ],
        zones: [
          {
            id: 'Z1',
            shape: [
              [0, 0],
              [4000, 0],
              [4000, 3000],
              [0, 3000],
            ],
            buildUp: 'steel-panel',
            layout: { stock: 'S1', start: 'lower-left', leastWidth: 50 },
            ...zone,
          },
        ],
        ...wall,
      },
    ],
    ...more,
  });
  if (!job) throw new Error(findings.map(({ text }) => text).join('\n'));
  return workOutFully(job).walls[0]!.zones[0]!.layout!;
}

const shape = (left: number, bottom: number, right: number, top: number) => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

describe('closing panels', () => {
  it('are the cut panels at the far end of a row between the ends of the wall', () => {
    const { panels } = laidOut(
      {},
      { shape: shape(0, 0, 4000, 1000), layout: { stock: 'S1', start: { x: -500, y: 0 } } },
    );
    expect(panels.filter(({ closing }) => closing).map(({ cell }) => cell.x / 100)).toEqual([3500]);
  });

  it('are at the near end where the far end is free', () => {
    const { panels } = laidOut(
      {},
      { shape: shape(0, 500, 3000, 1500), layout: { stock: 'S1', start: { x: -500, y: 500 } } },
    );
    expect(panels.filter(({ closing }) => closing).map(({ cell }) => cell.x / 100)).toEqual([-500]);
  });

  it('are none where a zone ends freely on the wall', () => {
    const { panels } = laidOut({}, { shape: shape(500, 500, 3200, 1700) });
    expect(panels.some(({ closing }) => closing)).toBe(false);
  });
});

describe('order of fixing', () => {
  it('starts on a batten where the first course stands on nothing, at its height', () => {
    const { fixing } = laidOut({}, { shape: shape(500, 600, 3200, 1700) });
    expect(fixing.battens).toEqual([{ from: { x: 50000, y: 60000 }, to: { x: 320000, y: 60000 } }]);
  });

  it('needs no batten on the floor, and one over a door', () => {
    const door = { id: 'D1', kind: 'door', x: 1000, y: 0, width: 1000, height: 2000 };
    const { fixing } = laidOut({ openings: [door] }, {});
    expect(fixing.battens).toEqual([{ from: { x: 100000, y: 200000 }, to: { x: 200000, y: 200000 } }]);
  });

  it('goes course by course from the left', () => {
    const { fixing, panels } = laidOut({}, { shape: shape(0, 500, 3000, 2500) });
    const places = fixing.order.map((mark) => {
      const { cell } = panels.find((panel) => panel.mark === mark)!;
      return [cell.x / 1e5, (cell.y - 50000) / 1e5];
    });
    expect(places).toEqual([
      [0, 0],
      [1, 0],
      [2, 0],
      [0, 1],
      [1, 1],
      [2, 1],
    ]);
  });

  it('leaves closing panels to the end', () => {
    const { fixing, panels } = laidOut(
      {},
      { shape: shape(0, 0, 4000, 2000), layout: { stock: 'S1', start: { x: -500, y: 0 } } },
    );
    const closing = new Set(panels.filter((panel) => panel.closing).map(({ mark }) => mark));
    expect(closing.size).toBe(2);
    expect(new Set(fixing.order.slice(-2))).toEqual(closing);
  });
});

describe('rows that must fit exactly', () => {
  it('are found between two fixed edges, and not where one is free', () => {
    const fixed = laidOut({}, { shape: shape(0, 500, 4000, 1500) });
    expect(fixed.findings.map(({ code }) => code)).toContain('must-fit-exactly');
    const free = laidOut({}, { shape: shape(0, 500, 3000, 1500) });
    expect(free.findings.map(({ code }) => code)).not.toContain('must-fit-exactly');
  });
});

describe('creep', () => {
  it('adds up over the whole stock sheets of a row', () => {
    const { creep } = laidOut(
      {},
      { shape: shape(0, 500, 4000, 1500) },
      {},
      { tolerance: { size: 0.4, squareness: 0.3 } },
    );
    // Four sheets: 4 × 0.7 all the same way; √(4 × (0.4² + 0.3²)) = 1.
    expect(creep.find(({ axis }) => axis === 'x')).toMatchObject({ whole: 4, most: 280, likely: 100 });
  });

  it('is none without tolerances', () => {
    expect(laidOut({}, {}).creep).toEqual([]);
  });
});

describe('thermal gap', () => {
  it('is steel’s expansion over the panel from fixing to the warmest (EN 1993-1-1:2005, 3.2.6: 12 × 10⁻⁶ per K, from memory)', () => {
    expect(expansionOfSteel).toBe(12e-6);
    const temperatures = { low: 5, high: 40, atFixing: 15 };
    expect(thermalGap(2000, temperatures)).toBeCloseTo(0.6, 9);
    expect(thermalOpening(2000, temperatures)).toBeCloseTo(0.24, 9);
  });

  it('is asked for where the joint gap is less', () => {
    const temperatures = { low: 5, high: 40, atFixing: 15 };
    const tight = laidOut({}, { shape: shape(500, 500, 3200, 1700) }, { temperatures });
    expect(tight.findings.find(({ code }) => code === 'joint-gap-too-narrow')?.text).toContain(
      'at least 0.3 mm',
    );
    const layout = { stock: 'S1', start: 'lower-left', jointGap: 0.3 };
    const open = laidOut({}, { shape: shape(500, 500, 3200, 1700), layout }, { temperatures });
    expect(open.findings.map(({ code }) => code)).not.toContain('joint-gap-too-narrow');
  });
});

describe('movement joints', () => {
  it('part the panels, and are the cause of their edges', () => {
    const lines = [{ id: 'M1', kind: 'movement-joint', from: [1700, 0], to: [1700, 3000], width: 20 }];
    const { panels } = laidOut({ lines }, {});
    const crosses = panels.filter(({ outline }) => {
      const xs = outline.outer.map(({ x }) => x);
      return Math.min(...xs) < 171000 && Math.max(...xs) > 169000;
    });
    expect(crosses).toEqual([]);
    const along = panels.filter(({ causes }) =>
      causes.flat().some((cause) => cause.kind === 'movement-joint'),
    );
    expect(along).toHaveLength(6);
  });
});
