import type { MmPoint } from '../../core/job/shape';
import { finestStep } from '../look/figures';

/** Something on the wall that a moving edge or middle can be brought in line with. */
export interface SnapLine {
  /** `x`: an upright line at this x; `y`: a level one at this y. */
  readonly axis: 'x' | 'y';
  /** mm, wall frame. */
  readonly at: number;
  /** What it is, as it is said: "right edge of door D1". */
  readonly words: string;
  readonly kind: keyof typeof ranks;
}

/** Where several lines are equally near, the highest rank wins. */
const ranks = { datum: 4, wall: 3, edge: 2, middle: 1, joint: 0 };

/** A part of what moves: one of its edges, its middle, a corner. */
export interface SnapPart {
  readonly axis: 'x' | 'y';
  readonly at: number;
  /** "left edge", "middle", "corner". */
  readonly words: string;
  /** Middles come in line with middles, edges and corners with edges; both with the datum and with joints. */
  readonly kind: 'edge' | 'middle';
}

/** A line that something has snapped to, to be drawn and said. */
export interface Guide {
  readonly axis: 'x' | 'y';
  readonly at: number;
  readonly words: string;
}

export interface Snapped {
  /** What to add to the move, mm. */
  readonly by: MmPoint;
  readonly guides: readonly Guide[];
}

/**
 * The least shift, along each axis on its own, that brings a part of what moves in line with a line of the wall.
 *
 * @param parts where the moving parts are before snapping, mm
 * @param tolerance mm; nothing snaps from further away
 * @returns a shift of 0 and no guide on an axis where nothing is near enough
 */
export function snap(parts: readonly SnapPart[], lines: readonly SnapLine[], tolerance: number): Snapped {
  const x = nearest(parts, lines, 'x', tolerance);
  const y = nearest(parts, lines, 'y', tolerance);
  return {
    by: { x: x?.by ?? 0, y: y?.by ?? 0 },
    guides: [x, y].flatMap((found) => (found ? [found.guide] : [])),
  };
}

function nearest(
  parts: readonly SnapPart[],
  lines: readonly SnapLine[],
  axis: 'x' | 'y',
  tolerance: number,
): { by: number; guide: Guide } | null {
  let best: { part: SnapPart; line: SnapLine; distance: number } | null = null;
  for (const part of parts) {
    if (part.axis !== axis) continue;
    for (const line of lines) {
      if (line.axis !== axis || !goTogether(part, line)) continue;
      const distance = Math.abs(line.at - part.at);
      if (distance > tolerance) continue;
      const nearer = !best || distance < best.distance - 1e-6;
      const equal = best && Math.abs(distance - best.distance) <= 1e-6;
      if (nearer || (equal && ranks[line.kind] > ranks[best!.line.kind])) best = { part, line, distance };
    }
  }
  if (!best) return null;
  const { part, line } = best;
  return {
    by: line.at - part.at,
    guide: { axis, at: line.at, words: `${part.words} in line with ${line.words}` },
  };
}

function goTogether(part: SnapPart, line: SnapLine): boolean {
  if (line.kind === 'datum' || line.kind === 'joint') return true;
  return (part.kind === 'middle') === (line.kind === 'middle');
}

/** The edges and the middle of a box that moves as a whole. */
export function partsOfBox(box: { x: number; y: number; width: number; height: number }): SnapPart[] {
  return [
    { axis: 'x', at: box.x, words: 'left edge', kind: 'edge' },
    { axis: 'x', at: box.x + box.width / 2, words: 'middle', kind: 'middle' },
    { axis: 'x', at: box.x + box.width, words: 'right edge', kind: 'edge' },
    { axis: 'y', at: box.y, words: 'lower edge', kind: 'edge' },
    { axis: 'y', at: box.y + box.height / 2, words: 'middle', kind: 'middle' },
    { axis: 'y', at: box.y + box.height, words: 'upper edge', kind: 'edge' },
  ];
}

/** A single corner. */
export function partsOfPoint({ x, y }: MmPoint): SnapPart[] {
  return [
    { axis: 'x', at: x, words: 'corner', kind: 'edge' },
    { axis: 'y', at: y, words: 'corner', kind: 'edge' },
  ];
}

/** To whole millimetres, or sixteenths of an inch, as a free hand places things. */
export function toWholeMm({ x, y }: MmPoint): MmPoint {
  const step = finestStep();
  const whole = (length: number) => Math.round(Math.round(length / step) * step * 100) / 100 + 0;
  return { x: whole(x), y: whole(y) };
}
