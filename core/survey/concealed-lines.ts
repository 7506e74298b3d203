import type { Finding } from '../finding';
import { distanceToSegment, type Point } from '../geometry/polygon';
import { fixingPointNames, sentence, surveyLineNames } from '../job/names';
import type { FixingPoint } from '../job/ground-schema';
import type { SurveyLine, Wall } from '../job/schema';
import { toHundredth, type Mm } from '../units';
import { boxOfFixingPoint } from './fixing-points';

export type ConcealedKind = Extract<SurveyLine['kind'], 'cable' | 'pipe'>;

/** Whether a line of the survey is something in the wall that must not be drilled into. */
export function isConcealed(line: SurveyLine): line is SurveyLine & { readonly kind: ConcealedKind } {
  return line.kind === 'cable' || line.kind === 'pipe';
}

/** How far from where it was found a cable or pipe may run; common practice, no source. */
const foundWithin: Mm = 50;

/** Fixing points over or close to a cable or pipe: screws go there. */
export function concealedFindings({ id: wall, lines = [], fixingPoints = [] }: Wall): Finding[] {
  return fixingPoints.flatMap((point) =>
    lines.filter(isConcealed).flatMap((line): Finding[] => {
      const near = distanceBetween(point, line);
      if (near > toHundredth(foundWithin)) return [];
      const name = `${surveyLineNames[line.kind]} ${line.id}`;
      const what = `${sentence(fixingPointNames[point.kind])} ${point.id}`;
      const where = near === 0 ? `lies over ${name}` : `is only ${Math.round(near / 100)} mm from ${name}`;
      return [
        {
          level: 'warning',
          code: 'fixing-point-at-concealed-line',
          wall,
          object: point.id,
          text: `${what} ${where}, which may run ${foundWithin} mm from where it was found; move the fixing point, or have the ${line.kind} found again before anything is screwed there.`,
        },
      ];
    }),
  );
}

/** Hundredths; 0 where the line crosses the fixing point. */
function distanceBetween(point: FixingPoint, { from, to }: SurveyLine): number {
  const { left, right, bottom, top } = boxOfFixingPoint(point);
  const [a, b] = [from, to].map(([x, y]): Point => ({ x: toHundredth(x), y: toHundredth(y) })) as [
    Point,
    Point,
  ];
  const corners = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
  const isWithin = ({ x, y }: Point) => x >= left && x <= right && y >= bottom && y <= top;
  const toBox = ({ x, y }: Point) =>
    Math.hypot(Math.max(left - x, 0, x - right), Math.max(bottom - y, 0, y - top));
  if (isWithin(a) || isWithin(b) || crosses(a, b, corners)) return 0;
  return Math.min(toBox(a), toBox(b), ...corners.map((corner) => distanceToSegment(corner, a, b)));
}

/** Whether the corners stand on both sides of the line through a and b, and a and b beyond the box. */
function crosses(a: Point, b: Point, corners: readonly Point[]): boolean {
  const sides = corners.map(({ x, y }) => Math.sign((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x)));
  if (sides.every((side) => side > 0) || sides.every((side) => side < 0)) return false;
  const overlap = (key: 'x' | 'y') => {
    const own = corners.map((corner) => corner[key]);
    return Math.max(a[key], b[key]) >= Math.min(...own) && Math.min(a[key], b[key]) <= Math.max(...own);
  };
  return overlap('x') && overlap('y');
}
