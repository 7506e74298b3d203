import type { End } from '../build-up/edge-ends';
import { edgeSigns, type SignLine } from '../build-up/edge-signs';
import type { Point } from '../geometry/polygon';
import type { Mm } from '../units';
import type { WorkedZone } from '../worked-out';
import type { PaperPoint, Stroke } from './page';
import type { PaperBox } from './paper';
import { paperPoint, type View } from './setting-out-view';

/** What each end's sign stands for, in the order of the key. */
export const endWords: Readonly<Record<End, string>> = {
  feather: 'layers feathered out over this width',
  'stop-bead': 'layers end at a stop bead',
  trim: 'layers end at a trim',
  corner: 'layers run to the corner',
};

/** How the edges of a zone end, in signs of the same size at every scale. */
export function edgeEndMarks({ buildUp }: WorkedZone, view: View): Stroke[] {
  const { stretches, feather } = buildUp.edges;
  const unit = (100 * view.scale.real) / view.scale.paper;
  const lines = edgeSigns(stretches, feather, unit, view.shown);
  return lines.map((line) => stroke(line, (point) => paperPoint(view, point)));
}

/** A piece of an edge with its sign; the zone lies above it. */
export function edgeEndSample(end: End, { left, bottom, right, top }: PaperBox): Stroke[] {
  const up = end === 'feather' ? top : (bottom + top) / 2;
  const [from, to] = [toPoint(left, up), toPoint(right, up)];
  const band = { outer: [toPoint(left, bottom), toPoint(right, bottom), to, from], holes: [] };
  const lines = edgeSigns([{ end, width: up - bottom, points: [from, to] }], [band], 100);
  const edge: Stroke = { ...stroke([from, to], toPaper), width: 0.5, colour: 'red-lead' };
  return [edge, ...lines.map((line) => stroke(line, toPaper))];
}

/** On paper as if it were a wall at full size. */
function toPoint(x: Mm, y: Mm): Point {
  return { x: Math.round(x * 100), y: Math.round(y * 100) };
}

function toPaper({ x, y }: Point): PaperPoint {
  return { x: x / 100, y: y / 100 };
}

function stroke([from, to]: SignLine, paper: (point: Point) => PaperPoint): Stroke {
  return { kind: 'stroke', points: [paper(from), paper(to)], width: 0.18, colour: 'soft' };
}
