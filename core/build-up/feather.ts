import { difference, intersection, union } from '../geometry/clip';
import {
  boxContains,
  boxesMeet,
  boxOf,
  isBox,
  type Box,
  type Point,
  type Polygon,
  type Region,
  type Ring,
} from '../geometry/polygon';
import { toHundredth, toMm, type Mm } from '../units';
import type { EdgePiece } from './edge-pieces';

/* The tapered margin of filler around a zone: how wide, where it lies, and what is in its way. */

/** Slope of a feather that no hand feels and raking light hardly shows: 1 in 150. Common practice, no source. */
const run = 150;
const narrowest: Mm = 300;
const widest: Mm = 600;

/** Usual width of a feather, mm: 300 for 2 mm and less, 450 for 3 mm, 600 from 4 mm on. Common practice, no source. */
export function usualFeather(thickness: Mm): Mm {
  return Math.min(widest, Math.max(narrowest, Math.ceil((thickness * run) / 50 - 1e-9) * 50));
}

/** A piece of a zone's edge that is feathered, and how wide. */
export interface FeatheredPiece {
  readonly piece: EdgePiece;
  readonly width: Mm;
}

/**
 * Where feathers lie: strips outside the pieces, mitred where two meet at a corner that points outwards, less everything
 * that is not wall or has filler of its own.
 *
 * @param rings pieces in their order round each ring; null: not feathered
 * @param on the wall's own outline
 * @param less what no feather lies on
 */
export function featherRegion(
  rings: readonly (readonly (FeatheredPiece | null)[])[],
  on: Region,
  less: Region,
): Region {
  const strips = rings.flatMap(stripsAlong);
  if (strips.length === 0) return [];
  const box = boxOf(strips.flatMap(({ outer }) => outer));
  const near = less.filter(({ outer }) => boxesMeet(boxOf(outer), box));
  const onWall = isWithin(box, on) ? strips : intersection(strips, on);
  return near.length > 0 ? difference(onWall, near) : union(onWall);
}

/** A box that a rectangular wall holds needs no clipping. */
function isWithin(box: Box, on: Region): boolean {
  return on.some((polygon) => isBox(polygon) && boxContains(boxOf(polygon.outer), box));
}

/**
 * How much room a feather has before the nearest edge of a ring, mm; null where none of it is in its way.
 *
 * @param ring of a thing outside the zone, or of the wall itself
 */
export function roomBefore({ piece, width }: FeatheredPiece, ring: Ring): Mm | null {
  const { from, to } = piece;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const n = outward(piece);
  const off = (p: Point) => (p.x - from.x) * n.x + (p.y - from.y) * n.y;
  const along = (p: Point) => -(p.x - from.x) * n.y + (p.y - from.y) * n.x;
  let nearest = toHundredth(width);
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const [ta, tb] = [along(a), along(b)];
    // Of an edge that only touches the side of the strip nothing is in the way.
    if (Math.max(ta, tb) <= 1 || Math.min(ta, tb) >= length - 1) return;
    const share = (t: number) => (ta === tb ? 0 : (Math.min(Math.max(t, 0), length) - ta) / (tb - ta));
    const at = (t: number) => off(a) + (off(b) - off(a)) * share(t);
    const least = ta === tb ? Math.min(off(a), off(b)) : Math.min(at(ta), at(tb));
    if (least >= -1 && least < nearest) nearest = Math.max(0, least);
  });
  return nearest < toHundredth(width) ? Math.round(toMm(nearest) * 10) / 10 : null;
}

/** Strips of pieces that follow on each other smoothly are one, so that a curve is not a fan of slivers. */
function stripsAlong(ring: readonly (FeatheredPiece | null)[]): Polygon[] {
  const strips: Polygon[] = [];
  let chain: FeatheredPiece[] = [];
  let turned = 0;
  const close = () => {
    if (chain.length > 0) strips.push(stripOf(chain));
    [chain, turned] = [[], 0];
  };
  const corner = (one: FeatheredPiece | null | undefined, next: FeatheredPiece | null | undefined) => {
    const wedge = one && next ? wedgeBetween(one, next) : null;
    if (wedge) strips.push(wedge);
  };
  for (const one of ring) {
    if (!one) {
      close();
      continue;
    }
    const last = chain.at(-1);
    const turn = last ? turnBetween(last, one) : 0;
    if (last && (Math.abs(turn) > smooth || turned + turn > mostTurned || last.width !== one.width)) {
      close();
      corner(last, one);
    }
    turned = chain.length > 0 ? turned + turn : 0;
    chain.push(one);
  }
  close();
  if (ring.length > 1) corner(ring.at(-1), ring[0]);
  return strips;
}

/** Radians. A greater turn is a corner. */
const smooth = 0.3;
/** Radians. A strip that turned farther might run into itself. */
const mostTurned = 2;

/** Radians, to the left positive: outwards from the zone. */
function turnBetween(one: FeatheredPiece, next: FeatheredPiece): number {
  const [a, b] = [outward(one.piece), outward(next.piece)];
  return Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
}

function stripOf(chain: readonly FeatheredPiece[]): Polygon {
  const outer: Point[] = chain.map(({ piece }) => piece.from);
  const { piece: lastPiece, width } = chain.at(-1)!;
  const far: Point[] = [shifted(chain[0]!.piece.from, outward(chain[0]!.piece), width)];
  for (const [i, { piece }] of chain.entries()) {
    const [n, next] = [outward(piece), chain[i + 1] && outward(chain[i + 1]!.piece)];
    if (!next) {
      far.push(shifted(piece.to, n, width));
      continue;
    }
    const along = 1 + n.x * next.x + n.y * next.y;
    far.push(shifted(piece.to, { x: (n.x + next.x) / along, y: (n.y + next.y) / along }, width));
  }
  return { outer: [...outer.toReversed(), ...far, lastPiece.to], holes: [] };
}

/** Between two strips that part at a corner which points outwards. */
function wedgeBetween(one: FeatheredPiece, next: FeatheredPiece): Polygon | null {
  const [a, b] = [outward(one.piece), outward(next.piece)];
  const turn = turnBetween(one, next);
  const corner = next.piece.from;
  if (turn < 0.01 || corner.x !== one.piece.to.x || corner.y !== one.piece.to.y) return null;
  const [from, to] = [shifted(corner, a, one.width), shifted(corner, b, next.width)];
  // A corner sharper than 60° is cut off, and so is the step between two widths that hardly turn.
  const isStep = turn < smooth && one.width !== next.width;
  if (turn > (2 * Math.PI) / 3 || isStep) return { outer: [corner, from, to], holes: [] };
  const [wa, wb, sine] = [toHundredth(one.width), toHundredth(next.width), Math.sin(turn)];
  const mitre = {
    x: Math.round(corner.x + (wa * b.y - wb * a.y) / sine) + 0,
    y: Math.round(corner.y + (wb * a.x - wa * b.x) / sine) + 0,
  };
  return { outer: [corner, from, mitre, to], holes: [] };
}

/** The area is on the left of a piece. */
function outward({ from, to }: EdgePiece): { x: number; y: number } {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
}

function shifted({ x, y }: Point, n: { x: number; y: number }, by: Mm): Point {
  const distance = toHundredth(by);
  return { x: Math.round(x + n.x * distance) + 0, y: Math.round(y + n.y * distance) + 0 };
}
