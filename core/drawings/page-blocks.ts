import type { Mm } from '../units';
import type { Item } from './page';

/*
 * Dealing blocks out to pages of two columns: a block takes the column that is free highest, or both.
 */

export interface PageBlock {
  readonly width: 'half' | 'whole';
  readonly height: Mm;
  readonly at: (left: Mm, top: Mm) => Item[];
  /** Never the last of a page while something follows. */
  readonly keepWithNext?: boolean;
  /** `1:10`; what the title block says if all blocks of a page agree. */
  readonly ratio?: string;
}

export interface DealtPage {
  readonly blocks: readonly { readonly block: PageBlock; readonly column: 0 | 1; readonly down: Mm }[];
}

export const wholeWidth: Mm = 170;
const betweenHalves: Mm = 8;
export const halfWidth: Mm = (wholeWidth - betweenHalves) / 2;

/**
 * Blocks in order, left and right in turn as room allows. A block that is higher than a page has a page of its own.
 *
 * @param firstRoom height of the first page, `room` that of the others
 */
export function dealBlocks(blocks: readonly PageBlock[], firstRoom: Mm, room: Mm): DealtPage[] {
  const pages: { block: PageBlock; column: 0 | 1; down: Mm }[][] = [[]];
  let used: [Mm, Mm] = [0, 0];
  const fits = (down: Mm, height: Mm) => down + height <= (pages.length === 1 ? firstRoom : room) + 1e-9;
  const turnOver = () => {
    if (pages.at(-1)!.length === 0 && pages.length > 1) return;
    pages.push([]);
    used = [0, 0];
  };
  blocks.forEach((block, i) => {
    const bound = boundTo(blocks, i);
    let place = placeFor(block, used);
    if (!fits(place.down, bound)) {
      turnOver();
      place = placeFor(block, used);
    }
    pages.at(-1)!.push({ block, ...place });
    const down = place.down + block.height;
    if (block.width === 'whole') used = [down, down];
    else used[place.column] = down;
  });
  return pages.map((page) => ({ blocks: page }));
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

function placeFor(block: PageBlock, [left, right]: [Mm, Mm]): { column: 0 | 1; down: Mm } {
  if (block.width === 'whole') return { column: 0, down: Math.max(left, right) };
  return left <= right ? { column: 0, down: left } : { column: 1, down: right };
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
