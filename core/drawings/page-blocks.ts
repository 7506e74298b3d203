import type { Mm } from '../units';
import type { Item } from './page';

/*
 * Dealing blocks out to pages of two columns: a block takes one column or both, wherever there is room for it.
 */

export interface PageBlock {
  readonly width: 'half' | 'whole';
  readonly height: Mm;
  /** Space wanted under the block, unless it ends at the foot of the page. */
  readonly gap?: Mm;
  readonly at: (left: Mm, top: Mm) => Item[];
  /** Never the last of a page while something follows in its group. */
  readonly keepWithNext?: boolean;
  /** `1:10`; what the title block says if all blocks of a page agree. */
  readonly ratio?: string;
}

/** Blocks that follow each other without anything between them: a table, or a drawing with its table. */
export interface BlockGroup {
  readonly blocks: readonly PageBlock[];
  /**
   * Whether the only block of a group may go back to a page that has room left. Readers then need to be told where it is.
   * Otherwise, and for groups of several blocks, no block stands on an earlier page than the blocks before it.
   */
  readonly mayFillGaps?: boolean;
}

export interface DealtPage {
  readonly blocks: readonly DealtBlock[];
}

interface DealtBlock extends Place {
  readonly block: PageBlock;
}

interface Place {
  readonly column: 0 | 1;
  readonly down: Mm;
}

type Span = readonly [from: Mm, to: Mm];

interface OpenPage {
  readonly blocks: DealtBlock[];
  /** What is free in each column, from above. */
  free: readonly [readonly Span[], readonly Span[]];
}

export const wholeWidth: Mm = 170;
const betweenHalves: Mm = 8;
export const halfWidth: Mm = (wholeWidth - betweenHalves) / 2;

/**
 * Groups in order, each block as high on its page as there is room, left before right. A group of several blocks goes under
 * everything that stands on the page. A block that is higher than a page has a page of its own.
 *
 * @param firstRoom height of the first page, `room` that of the others
 */
export function dealBlocks(groups: readonly BlockGroup[], firstRoom: Mm, room: Mm): DealtPage[] {
  const pages: OpenPage[] = [emptyPage(firstRoom)];
  for (const { blocks, mayFillGaps } of groups) {
    if (blocks.length === 1) {
      dealSingle(blocks[0]!, mayFillGaps ? pages : pages.slice(-1));
      continue;
    }
    let below = lowest(pages.at(-1)!);
    blocks.forEach((block, i) => {
      let place = findPlace(pages.at(-1)!, block.width, boundTo(blocks, i), below);
      if (!place) {
        turnOver();
        place = { column: 0, down: 0 };
      }
      settle(pages.at(-1)!, block, place);
      below = place.down + block.height;
    });
  }
  return pages.map(({ blocks }) => ({ blocks }));

  function dealSingle(block: PageBlock, candidates: readonly OpenPage[]): void {
    for (const page of candidates) {
      const place = findPlace(page, block.width, block.height, 0);
      if (place) return settle(page, block, place);
    }
    turnOver();
    settle(pages.at(-1)!, block, { column: 0, down: 0 });
  }

  function turnOver(): void {
    // A page that is still empty has no more room than the next one, unless it is the first.
    if (pages.length === 1 || pages.at(-1)!.blocks.length > 0) pages.push(emptyPage(room));
  }
}

export function drawDealt({ blocks }: DealtPage, left: Mm, top: Mm): Item[] {
  return blocks.flatMap(({ block, column, down }) =>
    block.at(left + column * (wholeWidth - halfWidth), top - down),
  );
}

/** The ratio that all drawings of a page share, `as shown` if they differ, undefined if there is none. */
export function ratioOfPage({ blocks }: DealtPage): string | undefined {
  const ratios = new Set(blocks.flatMap(({ block }) => (block.ratio ? [block.ratio] : [])));
  if (ratios.size === 0) return undefined;
  return ratios.size === 1 ? `SCALE ${[...ratios][0]!}` : 'as shown';
}

function emptyPage(room: Mm): OpenPage {
  return { blocks: [], free: [[[0, room]], [[0, room]]] };
}

/** The highest free place for a block of a height, not above `below`. */
function findPlace(
  { free: [left, right] }: OpenPage,
  width: PageBlock['width'],
  height: Mm,
  below: Mm,
): Place | undefined {
  const downIn = (spans: readonly Span[]): Mm | undefined => {
    const span = spans.find(([from, to]) => Math.max(from, below) + height <= to + 1e-9);
    return span && Math.max(span[0], below);
  };
  if (width === 'whole') {
    const down = downIn(shared(left, right));
    return down === undefined ? undefined : { column: 0, down };
  }
  const [atLeft, atRight] = [downIn(left), downIn(right)];
  if (atLeft === undefined) return atRight === undefined ? undefined : { column: 1, down: atRight };
  return atRight === undefined || atLeft <= atRight
    ? { column: 0, down: atLeft }
    : { column: 1, down: atRight };
}

function settle(page: OpenPage, block: PageBlock, place: Place): void {
  page.blocks.push({ block, ...place });
  const taken: Span = [place.down, place.down + block.height + (block.gap ?? 0)];
  const [left, right] = page.free;
  const takes = (column: 0 | 1) => block.width === 'whole' || place.column === column;
  page.free = [takes(0) ? without(left, taken) : left, takes(1) ? without(right, taken) : right];
}

function without(spans: readonly Span[], [start, end]: Span): Span[] {
  return spans
    .flatMap(([from, to]): Span[] => [
      [from, Math.min(to, start)],
      [Math.max(from, end), to],
    ])
    .filter(([from, to]) => to - from > 1e-9);
}

function shared(left: readonly Span[], right: readonly Span[]): Span[] {
  return left.flatMap(([from, to]) =>
    right
      .map(([start, end]): Span => [Math.max(from, start), Math.min(to, end)])
      .filter(([start, end]) => end - start > 1e-9),
  );
}

/** Where both columns are free down to the foot of the page. */
function lowest({ blocks }: OpenPage): Mm {
  return Math.max(0, ...blocks.map(({ block, down }) => down + block.height + (block.gap ?? 0)));
}

/** Height of a block with all that must stay with it. */
function boundTo(blocks: readonly PageBlock[], from: number): Mm {
  let height = 0;
  for (let i = from; i < blocks.length; i++) {
    height += blocks[i]!.height;
    if (!blocks[i]!.keepWithNext) break;
  }
  return height;
}
