import type { Mm } from '../units';
import type { Item, PaperPoint } from './page';
import type { Tile, TileGrid } from './template-tiles';

/** Where along a joint of two pages they have marks to be laid on one another. */
const shares = [0.25, 0.75] as const;

/** The marks that a page shares with its neighbours, each with the same letter on both. */
export function jointMarks(grid: TileGrid, tile: Tile, dx: Mm, dy: Mm): Item[] {
  const reach = Math.min(4, grid.overlap / 2 - 0.5);
  return allMarks(grid)
    .map((mark, i) => ({ ...mark, letter: letterOf(i) }))
    .filter(({ tiles }) => tiles.includes(tile))
    .flatMap(({ at, letter }) => markItems({ x: at.x + dx, y: at.y + dy }, reach, letter));
}

interface Mark {
  readonly at: PaperPoint;
  readonly tiles: readonly [Tile, Tile];
}

function allMarks({ tiles, region, step, overlap }: TileGrid): Mark[] {
  const next = ({ column, row }: Tile, right: number, down: number) =>
    tiles.find((other) => other.column === column + right && other.row === row + down);
  return tiles.flatMap((tile): Mark[] => {
    const { shown, column, row } = tile;
    const [beside, under] = [next(tile, 1, 0), next(tile, 0, 1)];
    const x = region.left + (column + 1) * step.x + overlap / 2;
    const y = region.top - (row + 1) * step.y - overlap / 2;
    return [
      ...(beside
        ? shares.map((share): Mark => ({
            at: { x, y: shown.top - share * (shown.top - shown.bottom) },
            tiles: [tile, beside],
          }))
        : []),
      ...(under
        ? shares.map((share): Mark => ({
            at: { x: shown.left + share * (shown.right - shown.left), y },
            tiles: [tile, under],
          }))
        : []),
    ];
  });
}

function markItems({ x, y }: PaperPoint, reach: Mm, letter: string): Item[] {
  const line = (a: PaperPoint, b: PaperPoint): Item => ({ kind: 'stroke', points: [a, b], width: 0.25 });
  return [
    line({ x: x - reach, y }, { x: x + reach, y }),
    line({ x, y: y - reach }, { x, y: y + reach }),
    { kind: 'circle', centre: { x, y }, radius: reach / 2, width: 0.25 },
    {
      kind: 'text',
      text: letter,
      at: { x: x + reach / 2 + 0.3, y: y + 0.6 },
      height: 2.5,
      weight: 'semi-bold',
    },
  ];
}

/** `A`, …, `Z`, `AA`, … */
function letterOf(i: number): string {
  const letter = String.fromCharCode(65 + (i % 26));
  return i < 26 ? letter : `${letterOf(Math.floor(i / 26) - 1)}${letter}`;
}
