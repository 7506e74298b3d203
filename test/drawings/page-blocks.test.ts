import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dealOut, type FlowBlock } from '../../core/drawings/flow-table';
import { dealBlocks, type PageBlock } from '../../core/drawings/page-blocks';

const block = (width: PageBlock['width'], height: number, keepWithNext = false): PageBlock => ({
  width,
  height,
  keepWithNext,
  at: () => [],
});

describe('dealBlocks', () => {
  it('sets halves side by side, then under the shorter', () => {
    const [page] = dealBlocks([block('half', 50), block('half', 30), block('half', 20)], 100, 100);
    expect(page!.blocks.map(({ column, down }) => [column, down])).toEqual([
      [0, 0],
      [1, 0],
      [1, 30],
    ]);
  });

  it('sets a whole block under both columns', () => {
    const [page] = dealBlocks([block('half', 50), block('half', 30), block('whole', 20)], 100, 100);
    expect(page!.blocks[2]).toMatchObject({ column: 0, down: 50 });
  });

  it('takes a heading along to the page of what it heads', () => {
    const pages = dealBlocks([block('whole', 80), block('whole', 10, true), block('whole', 30)], 100, 100);
    expect(pages.map(({ blocks }) => blocks.length)).toEqual([1, 2]);
  });

  it('property: every block once, in order, none over another or over the foot', () => {
    const blocks = fc.array(
      fc.record({
        width: fc.constantFrom('half' as const, 'whole' as const),
        height: fc.integer({ min: 1, max: 100 }),
      }),
    );
    fc.assert(
      fc.property(blocks, (sizes) => {
        const all = sizes.map(({ width, height }) => block(width, height));
        const pages = dealBlocks(all, 100, 100);
        expect(pages.flatMap((page) => page.blocks.map((placed) => placed.block))).toEqual(all);
        for (const page of pages) {
          const spans = page.blocks.map(({ block: { width, height }, column, down }) => ({
            columns: width === 'whole' ? [0, 1] : [column],
            from: down,
            to: down + height,
          }));
          spans.forEach((one, i) => {
            expect(one.to).toBeLessThanOrEqual(100);
            for (const other of spans.slice(i + 1)) {
              const shared = one.columns.some((column) => (other.columns as number[]).includes(column));
              expect(shared && one.from < other.to && other.from < one.to).toBe(false);
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
