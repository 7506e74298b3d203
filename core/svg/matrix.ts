/** (a b c d e f) of SVG 1.1, 7.4: x′ = a x + c y + e, y′ = b x + d y + f. */
export type Matrix = readonly [number, number, number, number, number, number];

export interface SvgPoint {
  readonly x: number;
  readonly y: number;
}

export const identity: Matrix = [1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export function product([a, b, c, d, e, f]: Matrix, inner: Matrix): Matrix {
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

export function apply([a, b, c, d, e, f]: Matrix, { x, y }: SvgPoint): SvgPoint {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** How much wider a line gets: the geometric mean where the two directions differ. */
export function growthOf([a, b, c, d]: Matrix): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}

/** A list of transforms; null if it is none. Source: SVG 1.1 (second edition), 7.6. */
export function parseTransform(text: string): Matrix | null {
  const left = text.replace(/([a-zA-Z]+)\s*\(([^)]*)\)[\s,]*/g, '');
  if (left.trim() !== '') return null;
  let whole = identity;
  for (const [, name, list] of text.matchAll(/([a-zA-Z]+)\s*\(([^)]*)\)/g)) {
    const figures =
      list!.trim() === ''
        ? []
        : list!
            .trim()
            .split(/[\s,]+/)
            .map(Number);
    const own = figures.every(Number.isFinite) ? matrixOf(name!, figures) : null;
    if (!own) return null;
    whole = product(whole, own);
  }
  return whole;
}

function matrixOf(name: string, n: readonly number[]): Matrix | null {
  const [p = 0, q, r] = n;
  const degrees = (p * Math.PI) / 180;
  switch (name) {
    case 'matrix':
      return n.length === 6 ? (n as unknown as Matrix) : null;
    case 'translate':
      return [1, 0, 0, 1, p, q ?? 0];
    case 'scale':
      return [p, 0, 0, q ?? p, 0, 0];
    case 'rotate': {
      const turn: Matrix = [
        Math.cos(degrees),
        Math.sin(degrees),
        -Math.sin(degrees),
        Math.cos(degrees),
        0,
        0,
      ];
      if (q === undefined || r === undefined) return turn;
      return product(product([1, 0, 0, 1, q, r], turn), [1, 0, 0, 1, -q, -r]);
    }
    case 'skewX':
      return [1, 0, Math.tan(degrees), 1, 0, 0];
    case 'skewY':
      return [1, Math.tan(degrees), 0, 1, 0, 0];
    default:
      return null;
  }
}
