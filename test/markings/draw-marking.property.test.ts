import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Marking } from '../../core/job/marking-schema';
import { sizedMarking, sizeOfMarking } from '../../core/job/markings';
import { emptyJob } from '../../core/job/defaults';
import { drawMarking } from '../../core/markings/draw-marking';

const mm = (least: number, most: number) =>
  fc.integer({ min: least * 100, max: most * 100 }).map((hundredths) => hundredths / 100);
const count = fc.integer({ min: 1, max: 12 });

const marking: fc.Arbitrary<Marking> = fc
  .record({ x: mm(-500, 500), y: mm(-500, 500), width: mm(300, 4000), height: mm(300, 3000) })
  .chain((own) =>
    fc
      .oneof(
        fc
          .record({ spacingAcross: mm(10, 900), spacingUp: mm(10, 900) })
          .map((more) => ({ kind: 'ruled-grid', ...more })),
        mm(10, 900).map((spacingUp) => ({ kind: 'ruled-lines', spacingUp })),
        fc
          .record({ across: count, up: count, side: mm(10, 300) })
          .map((more) => ({ kind: 'board', tones: 'two', ...more })),
        fc
          .tuple(count, count, mm(0.01, 200), mm(0.01, 200))
          .map(([across, up, headingWidth, headingHeight]) => ({
            kind: 'table',
            columns: Array.from({ length: across }, (_, i) => `c${i}`),
            rows: Array.from({ length: up }, (_, i) => `r${i}`),
            headingWidth,
            headingHeight,
          })),
      )
      .map((kind) => ({ id: 'M1', ...own, ...kind }) as Marking),
  );
const origin = fc.record({ x: fc.integer({ min: -1e6, max: 1e7 }), y: fc.integer({ min: -1e6, max: 1e7 }) });

describe('what a marking draws', () => {
  it('lies in its box, on whole hundredths, upright or level', () => {
    fc.assert(
      fc.property(marking, origin, (one, at) => {
        const { box, lines, filled, texts } = drawMarking(one, at);
        const points = [
          ...lines.flatMap(({ from, to }) => [from, to]),
          ...[...filled, ...texts.map(({ cell }) => cell)].flatMap(({ left, bottom, right, top }) => [
            { x: left, y: bottom },
            { x: right, y: top },
          ]),
        ];
        for (const { x, y } of points) {
          expect(Number.isInteger(x) && Number.isInteger(y)).toBe(true);
          expect(x >= box.left && x <= box.right && y >= box.bottom && y <= box.top).toBe(true);
        }
        for (const { from, to } of lines) expect(from.x === to.x || from.y === to.y).toBe(true);
      }),
      { numRuns: 300, seed: 11 },
    );
  });

  it('moves with its zone, and nothing else of it changes', () => {
    fc.assert(
      fc.property(marking, origin, (one, at) => {
        const here = drawMarking(one, { x: 0, y: 0 });
        const there = drawMarking(one, at);
        expect(there.lines.length).toBe(here.lines.length);
        there.lines.forEach(({ from }, i) => {
          expect(from.x - here.lines[i]!.from.x).toBe(at.x);
          expect(from.y - here.lines[i]!.from.y).toBe(at.y);
        });
      }),
      { numRuns: 100, seed: 12 },
    );
  });

  it('equal columns differ by a hundredth at most and add up to the width exactly', () => {
    fc.assert(
      fc.property(mm(100, 5000), fc.integer({ min: 1, max: 60 }), (width, columns) => {
        const table = {
          id: 'M1',
          kind: 'table',
          x: 0,
          y: 0,
          width,
          height: 100,
          columns: Array.from({ length: columns }, () => ''),
          rows: [''],
        } as Marking;
        const xs = drawMarking(table, { x: 0, y: 0 })
          .lines.filter(({ from, to }) => from.x === to.x)
          .map(({ from }) => from.x);
        const widths = xs.slice(1).map((x, i) => x - xs[i]!);
        expect(widths).toHaveLength(columns);
        expect(widths.reduce((sum, one) => sum + one, 0)).toBe(Math.round(width * 100));
        expect(Math.max(...widths) - Math.min(...widths)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 300, seed: 13 },
    );
  });

  it('brought to another size, a table with its own columns still adds up', () => {
    const widths = fc.array(mm(1, 500), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(widths, mm(500, 9000), (columnWidths, width) => {
        const sum = Math.round(columnWidths.reduce((total, one) => total + one, 0) * 100) / 100;
        const table = {
          id: 'M1',
          kind: 'table',
          x: 0,
          y: 0,
          width: sum,
          height: 100,
          columnWidths,
        } as Marking;
        const sized = { ...table, ...sizedMarking(emptyJob(), table, { width }) } as Marking;
        expect(sizeOfMarking(sized)).toEqual({ width, height: 100 });
        const total = sized.columnWidths!.reduce((all, one) => all + Math.round(one * 100), 0);
        expect(total).toBe(Math.round(width * 100));
      }),
      { numRuns: 200, seed: 14 },
    );
  });
});
