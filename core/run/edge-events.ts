import { boxOfRegion, type Region } from '../geometry/polygon';
import type { Layout, StockSheet, Zone } from '../job/schema';
import { inwardReach, type ZoneEdge } from '../job/zone-edges';
import { patternOf } from '../panels/grid';
import { toHundredth, toMm, type Hundredth, type Mm } from '../units';
import type { ZoneArea } from '../zones/zone-area';

interface EdgeQuestion {
  readonly area: ZoneArea;
  /** The zone, or the part of it, that the edge belongs to. */
  readonly zone: Zone;
  /** What of the wall can carry steel: beyond it a zone need not grow. */
  readonly usable: Region;
  readonly stock: StockSheet;
  /** By how much the edge may move, mm. */
  readonly margin: Mm;
  readonly kerf: Hundredth;
}

/** Moves of one edge that are looked at. */
const mostMoves = 24;

/**
 * Moves of a zone's edge, outwards in mm, at which its panels may change for the better: those that leave whole
 * panels between it and another edge of the zone, or a last panel of which a stock sheet yields two, three or four,
 * or one that is just no sliver; those that bring it onto another edge; and the largest either way. Likelier ones
 * first, at most some dozen.
 */
export function edgeMoves({ area, zone, usable, stock, margin, kerf }: EdgeQuestion, edge: ZoneEdge): Mm[] {
  const reach = inwardReach(zone, edge);
  if (reach === null || area.area.length === 0 || usable.length === 0) return [];
  const isUpright = edge === 'left' || edge === 'right';
  const outwards = edge === 'left' || edge === 'bottom' ? -1 : 1;
  const at = area.box[edge];
  const beyond = (boxOfRegion(usable)[edge] - at) * outwards;
  const least = -Math.min(toHundredth(margin), toHundredth(reach));
  const most = Math.min(toHundredth(margin), Math.max(0, beyond));

  const opposite = area.box[({ left: 'right', right: 'left', bottom: 'top', top: 'bottom' } as const)[edge]];
  const others = edgesAlong(usable, area, isUpright).filter((other) => other !== at && other !== opposite);
  const lengths = lengthsOf(zone.layout!, stock, isUpright, kerf);
  const moves: Hundredth[] = [];
  /** The edge moved so that it lies `length` and some whole pitches from another. */
  const reachTo = (from: Hundredth, { length, pitch }: { length: number; pitch: number }) => {
    const span = (at - from) * outwards;
    const first = Math.ceil((span + least - length) / pitch);
    for (let n = Math.max(0, first); length + n * pitch - span <= most; n++)
      moves.push(length + n * pitch - span);
  };
  reachTo(opposite, lengths.whole);
  for (const part of lengths.parts) reachTo(opposite, part);
  moves.push(least, most);
  for (const other of others) {
    moves.push((other - at) * outwards);
    if ((at - other) * outwards > 0) reachTo(other, lengths.whole);
  }
  for (const other of others) {
    if ((at - other) * outwards > 0) for (const part of lengths.parts) reachTo(other, part);
  }
  const fitting = moves.map(Math.round).filter((move) => move >= least && move <= most && move !== 0);
  return [...new Set(fitting)].slice(0, mostMoves).map(toMm);
}

/** Lengths between two edges, up to whole pitches: whole panels, and last panels that are worth cutting. */
function lengthsOf(layout: Layout, stock: StockSheet, isUpright: boolean, kerf: Hundredth) {
  const pattern = patternOf(layout, stock);
  const [size, pitch] = isUpright ? [pattern.width, pattern.pitchX] : [pattern.height, pattern.pitchY];
  const gap = pitch - size;
  const parts = new Set<number>();
  for (const side of [pattern.width, pattern.height]) {
    for (const pieces of [2, 3, 4]) parts.add(Math.floor((side - (pieces - 1) * kerf) / pieces));
  }
  parts.add(toHundredth(layout.leastWidth));
  return {
    whole: { length: pitch - gap, pitch },
    parts: [...parts].filter((part) => part > 0 && part < size).map((part) => ({ length: part, pitch })),
  };
}

/** Where edges of the area, and of what can carry steel beside it, stand. */
function edgesAlong(usable: Region, area: ZoneArea, isUpright: boolean): Hundredth[] {
  const places = new Set<Hundredth>();
  for (const { outer, holes } of [...area.area, ...usable]) {
    for (const ring of [outer, ...holes]) {
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length]!;
        if (isUpright ? a.x === b.x : a.y === b.y) places.add(isUpright ? a.x : a.y);
      });
    }
  }
  return [...places].sort((a, b) => a - b);
}
