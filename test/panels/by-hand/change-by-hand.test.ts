import { describe, expect, it } from 'vitest';
import { polygonArea } from '../../../core/geometry/polygon';
import type { Layout } from '../../../core/job/schema';
import type { HandWish } from '../../../core/panels/by-hand/hand-wishes';
import { layOutZone } from '../../../core/panels/lay-out';
import { layOut, mmRectangle, stockSheet, zoneArea } from '../zones-by-hand';

const stock = stockSheet(500, 400);
const at = (x: number, y: number) => ({ x: x * 100, y: y * 100 });

/** A zone of 1250 × 800 mm: two whole panels and one of 250 mm in each course. */
function laid(wishes: readonly HandWish[], changes: Partial<Layout> = {}) {
  return layOut(zoneArea(mmRectangle([0, 0, 1250, 800]), [], changes), stock, wishes);
}

const sizes = ({ panels }: ReturnType<typeof laid>) =>
  panels.map(({ outline: { outer } }) => {
    const [xs, ys] = [outer.map(({ x }) => x), outer.map(({ y }) => y)];
    return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)].map((side) => side / 100);
  });

describe('a panel split by hand', () => {
  it('becomes two cut panels beside each other, marked in reading order', () => {
    const result = laid([{ id: 'H1', kind: 'split', axis: 'x', at: at(200, 200) }]);
    expect(sizes(result).slice(0, 4)).toEqual([
      [200, 400],
      [300, 400],
      [500, 400],
      [250, 400],
    ]);
    expect(result.panels.slice(0, 3).map(({ full }) => full)).toEqual([false, false, true]);
    expect(result.panels.map(({ mark }) => mark)).toEqual([1, 2, 3, 4, 5, 6, 7].map((n) => `A-Z1-0${n}`));
    expect(result.byHand).toMatchObject([{ state: 'met' }]);
    expect(new Set(result.fixing.order).size).toBe(7);
  });

  it('has the joint gap in the middle of the line', () => {
    const result = laid([{ id: 'H1', kind: 'split', axis: 'y', at: at(200, 200) }], { jointGap: 4 });
    expect(sizes(result)[0]).toEqual([500, 198]);
    expect(result.panels.filter(({ outline }) => polygonArea(outline) === 50_000 * 19_800)).toHaveLength(2);
  });

  it('is lost where no panel lies, and refused on the edge of one', () => {
    const result = laid([
      { id: 'H1', kind: 'split', axis: 'x', at: at(2000, 200) },
      { id: 'H2', kind: 'split', axis: 'x', at: at(1, 200) },
    ]);
    expect(result.byHand).toMatchObject([{ state: 'lost' }, { state: 'met' }]);
    expect(result.findings.find(({ code }) => code === 'by-hand-lost')?.text).toBe(
      'Split H1 of zone Z1 has lost its place: no panel lies there any more; give it another place or let it go.',
    );
  });
});

describe('two panels joined by hand', () => {
  it('become one if it comes out of a stock sheet', () => {
    const split: HandWish = { id: 'H1', kind: 'split', axis: 'x', at: at(200, 200) };
    const join: HandWish = { id: 'H2', kind: 'join', at: at(100, 200), with: at(300, 200) };
    const result = laid([split, join]);
    expect(sizes(result)[0]).toEqual([500, 400]);
    expect(result.panels[0]!.full).toBe(true);
  });

  it('give the joint between them back to the panel', () => {
    const join: HandWish = { id: 'H1', kind: 'join', at: at(1100, 200), with: at(1100, 600) };
    const result = laid([join], { jointGap: 4 });
    // 1250 − 2 × 504 = 242 mm wide; 804 mm would be too high for a stock sheet of 500 × 400.
    expect(result.byHand).toMatchObject([{ state: 'unmet', code: 'join-refused' }]);
    const low = layOut(zoneArea(mmRectangle([0, 0, 1250, 450]), [], { jointGap: 4 }), stock, [join]);
    expect(low.byHand).toMatchObject([{ state: 'lost' }]);
    const near = { ...join, with: at(1100, 430) };
    const joined = layOut(zoneArea(mmRectangle([0, 0, 1250, 450]), [], { jointGap: 4 }), stock, [near]);
    expect(sizes(joined)).toContainEqual([242, 450]);
  });

  it('are refused with a sentence if they are too large, and stay as they were', () => {
    const result = laid([{ id: 'H1', kind: 'join', at: at(100, 200), with: at(600, 200) }]);
    expect(result.panels).toHaveLength(6);
    expect(result.findings.find(({ code }) => code === 'join-refused')?.text).toBe(
      'Join H1 of zone Z1 is not made: together they are 1000 × 400 mm, more than a stock sheet of 500 × 400 mm gives; move it or let it go.',
    );
  });

  it('are lost once they are no neighbours', () => {
    const result = laid([{ id: 'H1', kind: 'join', at: at(100, 200), with: at(1100, 200) }]);
    expect(result.byHand).toMatchObject([{ state: 'lost' }]);
  });
});

describe('a panel left out by hand', () => {
  const leaveOut: HandWish = { id: 'H1', kind: 'no-panel', at: at(1100, 200) };

  it('is no panel and no cut any more; the others are numbered without it, and its place is kept', () => {
    const before = laid([]);
    const result = laid([leaveOut]);
    expect(result.panels).toHaveLength(before.panels.length - 1);
    const cuts = (one: typeof result) => one.panels.filter(({ full }) => !full).length;
    expect(cuts(result)).toBe(cuts(before) - 1);
    expect(result.panels.map(({ mark }) => mark)).toEqual([1, 2, 3, 4, 5].map((n) => `A-Z1-0${n}`));
    expect(result.leftOut).toHaveLength(1);
    expect(polygonArea(result.leftOut![0]!.outline)).toBe(25_000 * 40_000);
    expect(result.byHand).toMatchObject([{ state: 'met' }]);
    expect(result.fixing.order).toHaveLength(5);
  });

  it('has with the panels that are left the area that all had: nothing is lost', () => {
    const sum = ({ panels, leftOut = [] }: ReturnType<typeof laid>) =>
      [...panels, ...leftOut].reduce((total, { outline }) => total + polygonArea(outline), 0);
    expect(sum(laid([leaveOut]))).toBe(125_000 * 80_000);
  });

  it('may be half of one that was split before', () => {
    const split: HandWish = { id: 'H2', kind: 'split', axis: 'x', at: at(200, 200) };
    const result = laid([split, { ...leaveOut, at: at(100, 200) }]);
    expect(sizes(result)[0]).toEqual([300, 400]);
    expect(result.leftOut).toHaveLength(1);
  });

  it('says so where no panel lies, and is not taken for a zone without room where all are left out', () => {
    expect(laid([{ ...leaveOut, at: at(2000, 200) }]).byHand).toMatchObject([{ state: 'lost' }]);
    const one = layOut(zoneArea(mmRectangle([0, 0, 400, 300]), []), stock, [
      { ...leaveOut, at: at(100, 100) },
    ]);
    expect(one.panels).toEqual([]);
    expect(one.findings.map(({ code }) => code)).not.toContain('zone-without-panels');
  });
});

describe('a panel cut from another stock sheet by hand', () => {
  const other = { ...stockSheet(300, 400), id: 'S2' };
  const wish: HandWish = { id: 'H1', kind: 'other-stock', at: at(1100, 200), stock: 'S2' };
  const from = (changes: Partial<typeof other>, one: HandWish = wish) =>
    layOutZone({
      wallId: 'A',
      area: zoneArea(mmRectangle([0, 0, 1250, 800]), []),
      stock: [stock, { ...other, ...changes }],
      countStockSheets: () => 0,
      wishes: [one],
    });

  it('is that one alone, and cut from nothing else', () => {
    const result = from({});
    expect(result.byHand).toMatchObject([{ state: 'met' }]);
    expect(result.panels.map((panel) => panel.stock)).toEqual(['S1', 'S1', 'S2', 'S1', 'S1', 'S1']);
    expect(result.panels[2]).toMatchObject({ fromStock: true, full: false });
  });

  it('is whole where the other stock sheet is just its size', () => {
    expect(from({ width: 250 }).panels[2]!.full).toBe(true);
  });

  it('is refused with a sentence where it is too large for it, or the steel is another', () => {
    const text = (changes: Partial<typeof other>) =>
      from(changes).findings.find(({ object }) => object === 'Z1')?.text;
    expect(text({ width: 200 })).toBe(
      'Panel from other stock H1 of zone Z1 is not made: it is 250 × 400 mm, more than a stock sheet of 200 × 400 mm gives; move it or let it go.',
    );
    expect(text({ thickness: 0.8 })).toContain('another steel, thickness, coating or face');
    expect(from({ width: 200 }).panels.every((panel) => panel.stock === 'S1')).toBe(true);
  });

  it('is lost with its stock sheet', () => {
    expect(from({}, { ...wish, stock: 'S9' }).byHand).toMatchObject([{ state: 'lost' }]);
  });
});

describe('what cannot be met', () => {
  it('is said: two lines that contradict each other, with how far they are apart', () => {
    const line = (id: string, x: number): HandWish => ({
      id,
      kind: 'joint-on-line',
      axis: 'x',
      at: at(x, 200),
    });
    const result = laid([line('H1', 300), line('H2', 900)], { start: 'best' });
    const said = result.findings.filter(({ code }) => code === 'joint-off-line');
    expect(said).toHaveLength(1);
    expect(said[0]!.text).toMatch(
      /^Joint on a line H[12] of zone Z1 contradicts H[12]: they are 600 mm apart, and joints lie every 500 mm; move one of them or let it go\.$/,
    );
  });

  it('is said of a picked start, a panel that no start makes whole, and a band that is too wide', () => {
    const whole: HandWish = { id: 'H1', kind: 'whole-panel', at: at(100, 600) };
    const fixed = laid([whole], { start: { x: 300, y: 0 } });
    expect(fixed.findings.find(({ code }) => code === 'panel-not-whole')?.text).toContain('picked start');
    const low = layOut(zoneArea(mmRectangle([0, 0, 1250, 390]), [], { start: 'best' }), stock, [
      { ...whole, at: at(100, 100) },
    ]);
    expect(low.findings.find(({ code }) => code === 'panel-not-whole')?.text).toContain(
      'no start makes it whole',
    );
    const band = { left: 100, right: 120_000, bottom: null, top: null };
    const wide = laid([{ id: 'H1', kind: 'no-joints', band }], { start: 'best' });
    expect(wide.findings.find(({ code }) => code === 'joints-in-band')?.text).toMatch(
      /^Band without joints H1 of zone Z1 is not met: 2 joints are left in it, upright at [\d.]+, upright at [\d.]+ mm;/,
    );
  });

  it('is kept and said of a kind that is not known', () => {
    const result = laid([{ id: 'H1', kind: 'unknown', of: 'curl' }]);
    expect(result.findings).toMatchObject([{ level: 'note', code: 'by-hand-unknown' }]);
  });
});

describe('slivers', () => {
  it('are not shared out across a joint that has to lie on a line, nor into a panel that is to be whole', () => {
    const area = (changes: Partial<Layout>) =>
      zoneArea(mmRectangle([0, 0, 520, 400]), [], { redivide: true, ...changes });
    const line: HandWish = { id: 'H1', kind: 'joint-on-line', axis: 'x', at: at(500, 200) };
    expect(sizes(layOut(area({}), stock))).not.toContainEqual([20, 400]);
    expect(sizes(layOut(area({}), stock, [line]))).toContainEqual([20, 400]);
    const whole: HandWish = { id: 'H1', kind: 'whole-panel', at: at(100, 200) };
    expect(layOut(area({}), stock, [whole]).byHand).toMatchObject([{ state: 'met' }]);
  });
});
