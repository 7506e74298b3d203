import { isPiece } from '../../core/job/hung-kinds';
import type { HungItem, HungKind } from '../../core/job/hung-schema';
import { boardAt, middlesOfSquares } from '../../core/job/pieces';
import type { Wall } from '../../core/job/schema';
import type { MmBox } from '../../core/job/shape';
import { partsOfBox, snap, type Snapped, type SnapLine } from './snap';

/** Whether an item goes from square to square, as a piece of a game does. */
export function goesBySquares({ kind, marking }: HungItem, own: readonly HungKind[]): boolean {
  return marking !== undefined || isPiece(kind, own);
}

/**
 * A piece over a board comes to stand in the middle of the nearest square, from however far within it.
 *
 * @param reach mm; less than nothing while snapping is held off
 * @returns null where no board is under its middle
 */
export function snapToSquares(wall: Wall, box: MmBox, reach: number): Snapped | null {
  if (reach < 0) return null;
  const board = boardAt(wall, { x: box.x + box.width / 2, y: box.y + box.height / 2 });
  if (!board) return null;
  const words = `the middle of a square of marking ${board.marking.id}`;
  const middles = middlesOfSquares(board);
  const lines = (['x', 'y'] as const).flatMap((axis) =>
    middles[axis].map((at): SnapLine => ({ axis, at, words, kind: 'middle' })),
  );
  const parts = partsOfBox(box).filter(({ kind }) => kind === 'middle');
  return snap(parts, lines, board.marking.side ?? 0);
}
