import { boxOf } from '../geometry/polygon';
import type { CutPattern } from './cut-patterns';
import type { CutStep } from './cut-steps';
import type { PanelShape } from './panel-sheet';

/**
 * The panel sheet that says all there is to say of a pattern: its stock sheet is one panel, whole but for notches, holes
 * or slants, and nothing of it is kept.
 *
 * @param shapeOf the panel sheet of a mark
 * @returns undefined if the pattern needs a drawing of its own
 */
export function panelSheetOf(
  { drawn, sheets }: CutPattern,
  steps: readonly CutStep[],
  shapeOf: ReadonlyMap<string, PanelShape>,
): PanelShape | undefined {
  const [placement, ...others] = drawn.placements;
  if (!placement || others.length > 0) return undefined;
  if (steps.some(({ kind }) => kind !== 'open') || drawn.offcuts.some(({ keep }) => keep)) return undefined;
  const { left, bottom, right, top } = boxOf(placement.outline.outer);
  if (left !== 0 || bottom !== 0 || right !== drawn.width || top !== drawn.height) return undefined;
  const shapes = new Set(sheets.map(({ placements }) => shapeOf.get(placements[0]!.mark)));
  // Panels of one pattern may be laid from different stock and so have a sheet each.
  return shapes.size === 1 ? [...shapes][0] : undefined;
}
