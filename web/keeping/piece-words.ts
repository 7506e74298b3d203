import { lengthFigure } from '../look/figures';

/** `500 × 250`. */
export function sizeFigure({ width, height }: { readonly width: number; readonly height: number }): string {
  return `${lengthFigure(width)} × ${lengthFigure(height)}`;
}
