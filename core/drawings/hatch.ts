import type { Mm } from '../units';
import type { LineWidth, Colour, PaperPoint, Stroke } from './page';

export interface HatchStyle {
  /** Distance between lines; ISO 128 asks for 0.7 mm at least. */
  readonly spacing: Mm;
  /** Degrees anticlockwise from the horizontal. */
  readonly angle: number;
  readonly width: LineWidth;
  readonly colour: Colour;
}

/**
 * Parallel narrow lines that fill rings by the even-odd rule. Lines lie on one grid through the page's
 * origin, so that neighbouring areas hatched alike read as one.
 *
 * @param rings paper frame, mm; a ring inside another is left free
 */
export function hatch(rings: readonly (readonly PaperPoint[])[], style: HatchStyle): Stroke[] {
  const angle = (style.angle * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  // u runs along the hatch, v across it.
  const turned = rings.map((ring) =>
    ring.map(({ x, y }) => ({ u: x * cos + y * sin, v: y * cos - x * sin })),
  );
  const across = turned.flatMap((ring) => ring.map(({ v }) => v));
  if (across.length === 0) return [];
  const strokes: Stroke[] = [];
  const last = Math.floor(Math.max(...across) / style.spacing);
  for (let n = Math.ceil(Math.min(...across) / style.spacing); n <= last; n++) {
    const v = n * style.spacing;
    const crossings = turned.flatMap((ring) => crossingsOf(ring, v)).sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      if (crossings[i + 1]! - crossings[i]! < 0.05) continue;
      const point = (u: number): PaperPoint => ({ x: u * cos - v * sin, y: u * sin + v * cos });
      strokes.push({
        kind: 'stroke',
        points: [point(crossings[i]!), point(crossings[i + 1]!)],
        width: style.width,
        colour: style.colour,
      });
    }
  }
  return strokes;
}

/** Half-open at the lower end, so that a line through a corner crosses once or not at all, never twice. */
function crossingsOf(ring: readonly { u: number; v: number }[], v: number): number[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return a.v <= v !== b.v <= v ? [a.u + ((v - a.v) / (b.v - a.v)) * (b.u - a.u)] : [];
  });
}
