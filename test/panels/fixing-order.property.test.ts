import fc from 'fast-check';
import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import type { Polygon } from '../../core/geometry/polygon';
import { readJobObject } from '../../core/job/read';
import type { Panel, ZoneLayout } from '../../core/panels/panel';
import { surveyWall } from '../../core/survey/survey';
import { toHundredth } from '../../core/units';
import { zoneAreas } from '../../core/zones/zone-areas';
import { layOut, stockSheet } from './zones-by-hand';

/*
 * Whoever fixes the panels in order never has to guess where one goes: what it stands on and what it is set against
 * is on the wall before it. Which panels those are is found here by pushing each panel down, or to the left, until it
 * runs into others, with polyclip-ts, an independent clipping library. The order itself is
 * common practice, no source.
 */

const [width, height] = [500, 400];

const walls = fc.record({
  wide: fc.integer({ min: 600, max: 2600 }),
  high: fc.integer({ min: 500, max: 1900 }),
  /** Taken from the upper right corner, and left free below the zone. */
  step: fc.option(fc.tuple(fc.integer({ min: 100, max: 900 }), fc.integer({ min: 100, max: 700 }))),
  foot: fc.constantFrom(0, 0, 150),
  openings: fc.array(
    fc.tuple(
      fc.integer({ min: 0, max: 2200 }),
      fc.constantFrom(0, 300, 611, 900),
      fc.integer({ min: 80, max: 900 }),
      fc.integer({ min: 80, max: 900 }),
    ),
    { maxLength: 3 },
  ),
  fittings: fc.array(fc.tuple(fc.integer({ min: 0, max: 2400 }), fc.integer({ min: 0, max: 1800 })), {
    maxLength: 3,
  }),
  joint: fc.option(fc.integer({ min: 200, max: 2000 })),
  slope: fc.constantFrom(0, 0, 0, 250),
});

const layouts = fc.record({
  jointGap: fc.constantFrom(0, 0, 2, 3.5),
  stagger: fc.constantFrom(0, 0.5, 1 / 3, 0.27),
  leastWidth: fc.constantFrom(50, 150),
  turned: fc.boolean(),
  redivide: fc.boolean(),
  start: fc.oneof(
    fc.constantFrom('lower-left', 'upper-right', 'centre-on-joint'),
    fc.record({ x: fc.integer({ min: -900, max: 900 }), y: fc.integer({ min: -900, max: 900 }) }),
  ),
});

type Corner = readonly [number, number];

function laidOut(wall: typeof walls extends fc.Arbitrary<infer W> ? W : never, layout: object): ZoneLayout {
  const { wide, high, step, foot, openings, fittings, joint, slope } = wall;
  const outline: Corner[] = [
    [0, 0],
    [wide, 0],
    [wide, high - slope],
    [0, high],
  ];
  const [across, up] = step ?? [0, 0];
  const shape: Corner[] =
    step && across < wide && up + slope < high - foot
      ? [
          [0, foot],
          [wide, foot],
          [wide, high - slope - up],
          [wide - across, high - slope - up],
          [wide - across, high],
          [0, high],
        ]
      : [[0, foot], [wide, foot], ...outline.slice(2)];
  const { job, findings } = readJobObject({
    format: 'lodeplan-job',
    version: 1,
    name: 'Fixing',
    stock: [{ id: 'S1', width, height }],
    walls: [
      {
        id: 'A',
        outline,
        openings: openings
          .filter(([x, y, w, h]) => x + w <= wide && y + h <= high - slope)
          .map(([x, y, w, h], i) => ({ id: `O${i}`, kind: 'window', x, y, width: w, height: h })),
        fittings: fittings
          .filter(([x, y]) => x + 80 <= wide && y + 80 <= high - slope)
          .map(([x, y], i) => ({ id: `F${i}`, kind: 'socket', x, y, width: 80, height: 80 })),
        lines:
          joint !== null && joint < wide
            ? [{ id: 'M1', kind: 'movement-joint', from: [joint, 0], to: [joint, high], width: 20 }]
            : [],
        zones: [{ id: 'Z1', shape, buildUp: 'steel-panel', layout: { stock: 'S1', ...layout } }],
      },
    ],
  });
  if (!job) throw new Error(findings.map(({ text }) => text).join('\n'));
  return layOut(zoneAreas(surveyWall(job.walls[0]!))[0]!, stockSheet(width, height));
}

/** Beyond the joint, so that panels that face each other across it meet; hundredths. */
const push = 5;

/** For each panel the numbers of those that it runs into when it is pushed. */
function metBy(panels: readonly Panel[], dx: number, dy: number): Set<number>[] {
  const rings = ({ outer, holes }: Polygon, x: number, y: number) =>
    [outer, ...holes].map((ring) => ring.map((point): [number, number] => [point.x + x, point.y + y]));
  const spans = panels.map(({ outline: { outer } }) => {
    const [xs, ys] = [outer.map(({ x }) => x), outer.map(({ y }) => y)];
    return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)] as const;
  });
  return panels.map(({ outline }, i) => {
    const [left, right, bottom, top] = spans[i]!;
    const met = new Set<number>();
    panels.forEach((other, j) => {
      const [l, r, b, t] = spans[j]!;
      if (i === j || left + dx >= r || right + dx <= l || bottom + dy >= t || top + dy <= b) return;
      const shared = polyclip.intersection(rings(outline, dx, dy), rings(other.outline, 0, 0));
      if (shared.length > 0) met.add(j);
    });
    return met;
  });
}

describe('the order of fixing', () => {
  it('has whatever a panel stands on and is set against on the wall before it, and closing panels last', () => {
    const seen = { panels: 0, closing: 0, overClosing: 0, onNothing: 0 };
    fc.assert(
      fc.property(walls, layouts, (wall, layout) => {
        const { panels, fixing } = laidOut(wall, layout);
        const gap = toHundredth(layout.jointGap);
        const marks = panels.map(({ mark }) => mark);
        expect([...fixing.order].sort()).toEqual([...marks].sort());
        const turn = marks.map((mark) => fixing.order.indexOf(mark));
        const below = metBy(panels, 0, -gap - push);
        const before = metBy(panels, -gap - push, 0);
        seen.panels += panels.length;

        const isClosing = panels.map(({ closing }) => closing === true);
        const closingTurns = turn.filter((_, i) => isClosing[i]);
        seen.closing += closingTurns.length;
        expect(Math.min(...closingTurns, panels.length)).toBe(panels.length - closingTurns.length);

        // What a panel waits for. Beside or above one that closes it is set by its own line, or stands on a batten.
        const [stands, waits] = [below, panels.map((_, i) => new Set([...below[i]!, ...before[i]!]))].map(
          (relation) => relation.map((others, i) => [...others].filter((j) => !isClosing[j] || isClosing[i])),
        );
        panels.forEach((_, i) => {
          for (const j of waits![i]!) expect(turn[j]!).toBeLessThan(turn[i]!);
        });

        // Nothing hangs in the air: floor or batten under whatever stands on no panel.
        panels.forEach(({ outline, causes }, i) => {
          if (stands![i]!.length > 0) return;
          const onFloor = causes[0]!.some((cause) => cause.kind === 'rim' && cause.side === 'floor');
          if (onFloor) return;
          seen.onNothing++;
          if (below[i]!.size > 0) seen.overClosing++;
          // One that closes the gap above an opening is cut to fit it.
          const lowest = Math.min(...outline.outer.map(({ y }) => y));
          const next = (n: number) => outline.outer[(n + 1) % outline.outer.length]!;
          const footCauses = causes[0]!.filter(
            (_, n) => outline.outer[n]!.y === lowest && next(n).y === lowest,
          );
          if (isClosing[i] && footCauses.every(({ kind }) => kind === 'opening')) return;
          const feet = outline.outer.filter(({ y }) => y === lowest);
          const isUnder = ({ x, y }: { x: number; y: number }) =>
            fixing.battens.some(
              ({ from, to }) =>
                Math.min(from.y, to.y) <= y && from.x <= x && x <= to.x && Math.max(from.y, to.y) >= y,
            );
          expect(feet.some(isUnder)).toBe(true);
        });
      }),
      { numRuns: 250, seed: 11 },
    );
    // Enough of every kind, so that none of the above holds for want of cases.
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(150);
  });
});
