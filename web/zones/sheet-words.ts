import type { SheetCount, WholeSize, WholeSizes } from '../../core/panels/whole-sheets';
import { lengthFigure, lengthWords } from '../look/figures';

/** "3 × 2 sheets + 140 mm in width" */
export function sheetsInWords({ across, up }: SheetCount): string {
  const one = across.whole === 1 && up.whole === 1;
  const rest = [
    ...restInWords(across.over, across.open, 'width'),
    ...restInWords(up.over, up.open, 'height'),
  ];
  return `${across.whole} × ${up.whole} ${one ? 'sheet' : 'sheets'}${rest.join('')}`;
}

/** "4 × 2: 2000 × 1000" */
export function sizeInWords({ across, up, width, height }: WholeSize): string {
  return `${across} × ${up}: ${lengthFigure(width)} × ${lengthFigure(height)}`;
}

/** Why there is no size to choose. */
export function noSizeInWords(sizes: WholeSizes): string {
  if ('sizes' in sizes) return 'No panel is cut by its size.';
  return {
    'not a rectangle': 'Sizes without a cut are for rectangles.',
    stagger: 'Staggered courses are cut at the ends at any size.',
    'no room': 'No whole sheet has room on this wall.',
  }[sizes.none];
}

function restInWords(over: number, open: number, side: string): string[] {
  if (over > 0) return [` + ${lengthWords(over)} in ${side}`];
  return open > 0 ? [` + ${lengthWords(open)} of open joint in ${side}`] : [];
}
