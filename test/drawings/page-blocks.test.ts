import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dealOut, type FlowBlock } from '../../core/drawings/flow-table';
import { dealBlocks, type BlockGroup, type DealtPage, type PageBlock } from '../../core/drawings/page-blocks';

const block = (width: PageBlock['width'], height: number, keepWithNext = false): PageBlock => ({
  width,
  height,
  keepWithNext,
  at: () => [],
});

const single = (width: PageBlock['width'], height: number, mayFillGaps = false): BlockGroup => ({
  blocks: [block(width, height)],
  mayFillGaps,
});

const places = (page: DealtPage) => page.blocks.map(({ column, down }) => [column, down]);

describe('dealBlocks', () => {
  it('sets halves side by side, then under the shorter', () => {
    const [page] = dealBlocks([single('half', 50), single('half', 30), single('half', 20)], 100, 100);
    expect(places(page!)).toEqual([
      [0, 0],
      [1, 0],
      [1, 30],
    ]);
  });

  it('sets a whole block under both columns, and a later half into the gap above it', () => {
    const groups = [single('half', 50), single('half', 30), single('whole', 20), single('half', 20)];
    const [page] = dealBlocks(groups, 100, 100);
    expect(places(page!).slice(2)).toEqual([
      [0, 50],
      [1, 30],
    ]);
  });

  it('fills a gap of an earlier page only with a block that may', () => {
    const groups = (mayFill: boolean) => [
      single('half', 60),
      single('whole', 90),
      single('half', 30, mayFill),
    ];
    expect(dealBlocks(groups(true), 100, 100).map((page) => page.blocks.length)).toEqual([2, 1]);
    expect(dealBlocks(groups(false), 100, 100).map((page) => page.blocks.length)).toEqual([1, 1, 1]);
  });

  it('keeps the gap under a block, unless it ends at the foot of the page', () => {
    const spaced = (height: number): BlockGroup => ({ blocks: [{ ...block('whole', height), gap: 5 }] });
    const [page, ...others] = dealBlocks([spaced(40), spaced(55)], 100, 100);
    expect(places(page!)).toEqual([
      [0, 0],
      [0, 45],
    ]);
    expect(others).toEqual([]);
  });

  it('takes a heading along to the page of what it heads', () => {
    const headed = { blocks: [block('whole', 10, true), block('whole', 30)] };
    const pages = dealBlocks([single('whole', 80), headed], 100, 100);
    expect(pages.map(({ blocks }) => blocks.length)).toEqual([1, 2]);
  });

  it('property: every block once, none over another or over the foot, groups in one piece', () => {
    const blocks = fc.record({
      width: fc.constantFrom('half' as const, 'whole' as const),
      height: fc.integer({ min: 1, max: 100 }),
      gap: fc.constantFrom(0, 5),
    });
    const groups = fc.array(
      fc.record({ sizes: fc.array(blocks, { minLength: 1, maxLength: 3 }), mayFillGaps: fc.boolean() }),
    );
    fc.assert(
      fc.property(groups, (all) => {
        const dealt = all.map(({ sizes, mayFillGaps }) => ({
          blocks: sizes.map(({ width, height, gap }) => ({ ...block(width, height), gap })),
          mayFillGaps,
        }));
        const pages = dealBlocks(dealt, 100, 100);
        const placed = pages.flatMap((page, p) => page.blocks.map((one) => ({ ...one, page: p })));
        const asked = dealt.flatMap((group) => group.blocks);
        expect(placed.length).toBe(asked.length);
        const where = new Map(placed.map((one) => [one.block, one]));
        expect(asked.every((one) => where.has(one))).toBe(true);
        let page = 0;
        for (const group of dealt) {
          const own = group.blocks.map((one) => where.get(one)!);
          own.slice(1).forEach((one, i) => {
            const before = own[i]!;
            expect(one.page > before.page || one.down >= before.down + before.block.height).toBe(true);
          });
          if (group.mayFillGaps && own.length === 1) continue;
          expect(own[0]!.page).toBeGreaterThanOrEqual(page);
          page = own.at(-1)!.page;
        }
        for (const { blocks: onPage } of pages) {
          const spans = onPage.map(({ block: { width, height }, column, down }) => ({
            columns: width === 'whole' ? [0, 1] : [column],
            from: down,
            to: down + height,
          }));
          spans.forEach((one, i) => {
            expect(one.to).toBeLessThanOrEqual(100);
            for (const other of spans.slice(i + 1)) {
              const isShared = one.columns.some((column) => (other.columns as number[]).includes(column));
              expect(isShared && one.from < other.to && other.from < one.to).toBe(false);
            }
          });
        }
      }),
    );
  });
});

describe('dealOut', () => {
  const row = (height: number, keepWithNext = false): FlowBlock => ({ height, keepWithNext, at: () => [] });

  it('fills pages and keeps a group with its first row', () => {
    const pages = dealOut([row(40), row(40), row(10, true), row(20), row(30)], 100);
    expect(pages.map((page) => page.length)).toEqual([2, 3]);
  });

  it('leaves the first page to what stands above where nothing else fits there', () => {
    expect(dealOut([row(40)], 100, 30).map((page) => page.length)).toEqual([0, 1]);
  });
});
