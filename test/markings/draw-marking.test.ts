import { describe, expect, it } from 'vitest';
import type { Marking } from '../../core/job/marking-schema';
import { drawMarking } from '../../core/markings/draw-marking';

const zone = { x: 100_000, y: 50_000 };
const draw = (own: object) => drawMarking({ id: 'M1', x: 0, y: 0, ...own } as Marking, zone);
const along = (drawn: ReturnType<typeof draw>, axis: 'x' | 'y') =>
  drawn.lines
    .filter(({ from, to }) => from[axis] === to[axis])
    .map(({ from }) => (from[axis] - zone[axis]) / 100);

describe('a ruled grid', () => {
  it('has one line more than its spacing goes into its size, in either direction', () => {
    const drawn = draw({ kind: 'ruled-grid', width: 1200, height: 600, spacingAcross: 100, spacingUp: 75 });
    expect(along(drawn, 'x')).toEqual(Array.from({ length: 13 }, (_, i) => 100 * i));
    expect(along(drawn, 'y')).toEqual(Array.from({ length: 9 }, (_, i) => 75 * i));
  });

  it('ends in a narrower cell where its spacing does not go into its size', () => {
    const drawn = draw({ kind: 'ruled-grid', width: 250, height: 100, spacingAcross: 100, spacingUp: 100 });
    expect(along(drawn, 'x')).toEqual([0, 100, 200, 250]);
  });

  it('keeps its place in the zone', () => {
    const drawn = draw({
      kind: 'ruled-grid',
      x: 40,
      y: 15.5,
      width: 100,
      height: 100,
      spacingAcross: 50,
      spacingUp: 50,
    });
    expect(drawn.box).toEqual({ left: 104_000, bottom: 51_550, right: 114_000, top: 61_550 });
  });
});

describe('ruled lines', () => {
  it('stand on the foot and have no frame', () => {
    const drawn = draw({ kind: 'ruled-lines', width: 900, height: 250, spacingUp: 60 });
    expect(along(drawn, 'y')).toEqual([0, 60, 120, 180, 240]);
    expect(along(drawn, 'x')).toEqual([]);
  });
});

describe('a table', () => {
  const weekPlan = {
    kind: 'table',
    width: 1540,
    height: 1100,
    columns: ['Monday', 'Tuesday', 'Wednesday'],
    rows: ['early', 'late'],
    headingHeight: 100,
    headingWidth: 340,
    letterHeight: 30,
  };

  it('shares what its headings leave equally', () => {
    const drawn = draw(weekPlan);
    expect(along(drawn, 'x')).toEqual([0, 340, 740, 1140, 1540]);
    expect(along(drawn, 'y')).toEqual([0, 500, 1000, 1100]);
  });

  it('adds up exactly where a third is no hundredth', () => {
    const places = along(draw({ ...weekPlan, headingWidth: undefined, width: 1000 }), 'x');
    expect(places).toEqual([0, 333.33, 666.67, 1000]);
  });

  it('takes its own widths and heights, rows from the top', () => {
    const drawn = draw({ ...weekPlan, columnWidths: [200, 600, 400], rowHeights: [300, 700] });
    expect(along(drawn, 'x')).toEqual([0, 340, 540, 1140, 1540]);
    expect(along(drawn, 'y')).toEqual([0, 700, 1000, 1100]);
  });

  it('has each heading in its cell', () => {
    const { texts } = draw(weekPlan);
    expect(texts.map(({ text }) => text)).toEqual(['Monday', 'Tuesday', 'Wednesday', 'early', 'late']);
    expect(texts[1]!.cell).toEqual({ left: 174_000, right: 214_000, bottom: 150_000, top: 160_000 });
    expect(texts[3]!.cell).toEqual({ left: 100_000, right: 134_000, bottom: 100_000, top: 150_000 });
    expect(texts.every(({ height }) => height === 3000)).toBe(true);
    expect(draw({ ...weekPlan, headingHeight: undefined, headingWidth: undefined }).texts).toEqual([]);
  });
});

describe('a board of squares', () => {
  const board = { kind: 'board', across: 8, up: 8, side: 120, tones: 'two' };

  it('has nine lines either way for eight squares', () => {
    const drawn = draw(board);
    expect(along(drawn, 'x')).toEqual([0, 120, 240, 360, 480, 600, 720, 840, 960]);
    expect(along(drawn, 'y')).toHaveLength(9);
  });

  it('fills every other square, half of an even board and one more of an odd one', () => {
    const areaOf = (own: object) =>
      draw({ ...board, ...own }).filled.reduce(
        (sum, { left, right, bottom, top }) => sum + (right - left) * (top - bottom),
        0,
      ) / 1e4;
    expect(areaOf({})).toBe(32 * 120 * 120);
    expect(areaOf({ across: 5, up: 3 })).toBe(8 * 120 * 120);
    expect(areaOf({ tones: 'plain' })).toBe(0);
    expect(draw(board).filled[0]).toEqual({ left: 100_000, right: 112_000, bottom: 50_000, top: 62_000 });
  });
});
