import type { ZoneEdges } from '../../../core/build-up/edge-ends';
import { edgeSigns } from '../../../core/build-up/edge-signs';
import { fillPolygon, inks, type Pen } from './pen';

/** px to a unit of a sign. */
const unit = 4;

/** How a zone's edges end: each end by a sign of its own, feathers over a faint ground besides. */
export function paintEdgeEnds(pen: Pen, edges: ZoneEdges | undefined): void {
  if (!edges || edges.stretches.length === 0) return;
  const { context, frame } = pen;
  const { originX, originY, scale, width, height } = frame;
  for (const polygon of edges.feather) fillPolygon(pen, polygon, 'rgb(93 104 112 / 9%)');
  const shown = {
    left: (-originX / scale) * 100,
    right: ((width - originX) / scale) * 100,
    top: (originY / scale) * 100,
    bottom: ((originY - height) / scale) * 100,
  };
  context.beginPath();
  for (const [from, to] of edgeSigns(edges.stretches, edges.feather, (unit / scale) * 100, shown)) {
    context.moveTo(originX + (from.x / 100) * scale, originY - (from.y / 100) * scale);
    context.lineTo(originX + (to.x / 100) * scale, originY - (to.y / 100) * scale);
  }
  context.strokeStyle = inks.soft;
  context.lineWidth = 1;
  context.stroke();
}
