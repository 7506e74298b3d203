import type { Outline } from '../../geometry/outline';
import type { Box, Point, Polygon, Ring } from '../../geometry/polygon';
import { boxOf } from '../../geometry/polygon';
import type { KnownArc } from '../panel-arcs';
import { crossingsAt } from '../ring-places';
import { contourOf } from './contour';
import { textWidth, type WorkshopLayer, type WorkshopShape, type WorkshopText } from './workshop-drawing';

type Layer = Exclude<WorkshopLayer, 'text'>;

/** A ring in hundredths on a layer, its arcs among the known ones. */
export function ringShape(layer: Layer, ring: Ring, arcs: readonly KnownArc[] = []): WorkshopShape {
  return { kind: 'contour', layer, contour: contourOf(ring, arcs) };
}

/** An outline with the arcs that it was drawn with. */
export function outlineShape(layer: Layer, { ring, arcs }: Outline): WorkshopShape {
  return ringShape(
    layer,
    ring,
    arcs.map(({ centre, radius }) => ({ ...centre, radius })),
  );
}

export function boxShape(layer: Layer, { left, bottom, right, top }: Box): WorkshopShape {
  const ring = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
  return ringShape(layer, ring);
}

export function lineShape(layer: Layer, from: Point, to: Point): WorkshopShape {
  return { kind: 'line', layer, from: [from.x / 100, from.y / 100], to: [to.x / 100, to.y / 100] };
}

/** Words in the widest place of a polygon (hundredths), as large as fits, 3 to `most` mm. */
export function wordsWithin({ outer, holes }: Polygon, text: string, most = 40): WorkshopText {
  const { bottom, top } = boxOf(outer);
  const rings = [outer, ...holes].map((ring) => ring.map(({ x, y }) => ({ x: x / 100, y: y / 100 })));
  let best = { left: 0, width: -1, y: 0 };
  for (let i = 1; i < 8; i++) {
    const y = (bottom + ((top - bottom) * (i + 0.01)) / 8) / 100;
    const crossings = crossingsAt(rings, y);
    for (let c = 0; c + 1 < crossings.length; c += 2) {
      const width = crossings[c + 1]! - crossings[c]!;
      const isMiddle = i === 4 && width >= best.width;
      if (width > best.width + 0.01 || isMiddle) best = { left: crossings[c]!, width, y };
    }
  }
  const perHeight = textWidth({ text, height: 1 });
  const room = Math.min(best.width / (perHeight * 1.2), (top - bottom) / 250);
  const height = Math.round(Math.max(3, Math.min(most, room)) * 10) / 10;
  const at = [best.left + best.width / 2, best.y - height / 2].map((value) => Math.round(value * 100) / 100);
  return { kind: 'text', text, at: [at[0]!, at[1]!], height, centred: true };
}

/** Lines of text downwards from a point, mm. */
export function wordsDown(lines: readonly string[], x: number, top: number, height: number): WorkshopText[] {
  return lines.map((text, i) => ({
    kind: 'text',
    text,
    at: [x, Math.round((top - height - i * height * 1.7) * 100) / 100],
    height,
    centred: false,
  }));
}
