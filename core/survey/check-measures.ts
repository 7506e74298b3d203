import type { Finding } from '../finding';
import type { CheckMeasure, Wall } from '../job/schema';
import { pointOf, type MmPoint } from '../job/shape';

/** A drawing this near to the tape is as good as the tape; common practice, no source; mm. */
const near = 3;

/** A measure held against the drawing; mm. */
export interface ComparedMeasure {
  readonly measure: CheckMeasure;
  /** Undefined where a corner is not there any more. */
  readonly drawn: number | undefined;
  /** Measured less drawn. */
  readonly off: number | undefined;
}

export function compareMeasures({ outline, checkMeasures = [] }: Wall): ComparedMeasure[] {
  const corners = outline.map(pointOf);
  return checkMeasures.map((measure) => {
    const [a, b] = [corners[measure.from - 1], corners[measure.to - 1]];
    const drawn = a && b && a !== b ? distance(a, b) : undefined;
    return { measure, drawn, off: drawn === undefined ? undefined : measure.length - drawn };
  });
}

/** A corner that is drawn square, and by how much the diagonal across it says that it is not. */
export interface SquareCheck {
  /** Corner number, from 1. */
  readonly corner: number;
  /** From it along one edge to the corner before, over the height of the other. */
  readonly diagonal: CheckMeasure;
  /** How far the far end of the edge to the next corner leans over the corner (above 0) or away from it, mm. */
  readonly lean: number;
}

/**
 * Corners with measured diagonals. With edges a and b and the diagonal d across them, b leans by (a² + b² − d²) / 2a over a,
 * by the law of cosines; edges are taken as measured, else as drawn.
 */
export function squareChecks(wall: Wall): SquareCheck[] {
  const corners = wall.outline.map(pointOf);
  const measures = wall.checkMeasures ?? [];
  const count = corners.length;
  const side = (i: number, j: number) =>
    measures.find((one) => isBetween(one, i + 1, j + 1))?.length ?? distance(corners[i]!, corners[j]!);
  return corners.flatMap((corner, i): SquareCheck[] => {
    const [before, after] = [(i + count - 1) % count, (i + 1) % count];
    const diagonal = measures.find((one) => isBetween(one, before + 1, after + 1));
    if (!diagonal || count < 4 || !isSquare(corners[before]!, corner, corners[after]!)) return [];
    const [a, b, d] = [side(before, i), side(i, after), diagonal.length];
    return [{ corner: i + 1, diagonal, lean: (a * a + b * b - d * d) / (2 * a) }];
  });
}

/** What the measures say against the drawing. */
export function measureFindings(wall: Wall): Finding[] {
  const finding = (level: Finding['level'], code: string, text: string) => ({
    level,
    code,
    wall: wall.id,
    text,
  });
  return compareMeasures(wall).flatMap(({ measure: { from, to, length }, drawn, off }): Finding[] => {
    const where = `from corner ${from} to corner ${to}`;
    if (drawn === undefined) {
      const says = `The check measure ${where} hangs on a corner that wall ${wall.id} has not: measure between two of its corners, or delete it.`;
      return [finding('warning', 'check-measure-lost', says)];
    }
    if (Math.abs(off!) <= near) return [];
    const says = `The tape says ${tenths(length)} mm ${where}, the drawing ${tenths(drawn)} mm: measure again, or fit the outline to the measures.`;
    return [finding('warning', 'check-measure-off', says)];
  });
}

export function isBetween({ from, to }: CheckMeasure, a: number, b: number): boolean {
  return (from === a && to === b) || (from === b && to === a);
}

/** Within a hundredth of a degree. */
function isSquare(a: MmPoint, corner: MmPoint, b: MmPoint): boolean {
  const [ax, ay, bx, by] = [a.x - corner.x, a.y - corner.y, b.x - corner.x, b.y - corner.y];
  return Math.abs(ax * bx + ay * by) <= 1.75e-4 * Math.hypot(ax, ay) * Math.hypot(bx, by);
}

function distance(a: MmPoint, b: MmPoint): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

function tenths(length: number): number {
  return Math.round(length * 10) / 10;
}
