import { boxesMeet, type Box, type Polygon } from '../geometry/polygon';
import type { Hundredth } from '../units';
import { lostStretches, runsOfPanel, type EdgeRun, type LostStretch, type PanelEdge } from './lost-stretches';
import { leastLostArea, roundingOfCurves } from './narrow-place';

const leastOpposition = Math.cos(Math.PI / 6) - 1e-6;
/** What rounding and stretches too short to note may add to the distance of two stretches; hundredths. */
const slack = 30;

/**
 * Whether a panel is a sliver, as `lostToSquare` says, where that can be told without clipping; else undefined.
 *
 * No, where no two edges in opposite directions both have lost stretches that one lost part could touch. Round a
 * lost part run lost stretches and sides of squares in turn, and every such side bears a point of the panel's rim,
 * else its square could be moved: so along one line round it the next stretch is within the square's side. All its
 * stretches of one ring lie on one such line. From one line to another it is within three sides: every point of a
 * lost part is within half a side of the rim, or within one and a half of a place where a square touches the rim.
 *
 * Yes, where two edges face each other, with nothing in between, nearer than the square is wide: any square that
 * holds a point between them holds an end of the level (or upright) chord through it as well.
 *
 *         ╲  w < side  │
 *          ╲←────────→ │       every chord is lost, and so is what they cover
 *           ╲          │
 */
export function quickSliver(panel: Polygon, leastWidth: Hundredth): boolean | undefined {
  const runs = runsOfPanel(panel);
  // Between the square that is asked for and the one that clipping takes: whatever that one loses, this one does.
  const lost = lostStretches(runs, Math.max(1, leastWidth - roundingOfCurves / 2));
  if (!holdsOpposites(directionsOf(lost))) return false;
  let doubtful = false;
  for (const group of linked(chainsOf(lost), leastWidth)) {
    if (!holdsOpposites(directionsOf(group))) continue;
    for (let i = 0; i < group.length; i++) {
      for (let j = i + 1; j < group.length; j++) {
        if (!areOpposite(group[i]!, group[j]!)) continue;
        if (isStrip(group[i]!.edge, group[j]!.edge, runs, leastWidth)) return true;
        doubtful = true;
      }
    }
  }
  return doubtful ? undefined : false;
}

/** Directions of stretches as bits, 15° each: what says at once that nothing in many of them is opposite. */
function directionsOf(lost: readonly LostStretch[]): number {
  let bits = 0;
  for (const { ux, uy } of lost)
    bits |= 1 << Math.min(23, Math.floor(((Math.atan2(uy, ux) + Math.PI) * 12) / Math.PI));
  return bits;
}

/** Whether two of the directions may be within 30° of opposite: nine to fifteen of the 24 bits apart. */
function holdsOpposites(bits: number): boolean {
  for (let apart = 9; apart <= 12; apart++) {
    if (bits & ((bits << apart) | (bits >> (24 - apart)))) return true;
  }
  return false;
}

/** Whether the edges of two stretches are within 30° of opposite directions. */
function areOpposite(a: LostStretch, b: LostStretch): boolean {
  return -(a.ux * b.ux + a.uy * b.uy) >= leastOpposition;
}

/** Stretches that go on from each other, and the box round them. */
interface LostChain extends Box {
  readonly stretches: readonly LostStretch[];
}

function chainsOf(lost: readonly LostStretch[]): LostChain[] {
  const chains: LostStretch[][] = [];
  let last: LostStretch | undefined;
  for (const stretch of lost) {
    const goesOn = last?.bx === stretch.ax && last.by === stretch.ay && last.edge.ring === stretch.edge.ring;
    if (goesOn) chains.at(-1)!.push(stretch);
    else chains.push([stretch]);
    last = stretch;
  }
  return chains.map((stretches) => ({ stretches, ...boxOfStretches(stretches) }));
}

function boxOfStretches(stretches: readonly LostStretch[]): Box {
  const box = { left: Infinity, bottom: Infinity, right: -Infinity, top: -Infinity };
  for (const { ax, ay, bx, by } of stretches) {
    box.left = Math.min(box.left, ax, bx);
    box.right = Math.max(box.right, ax, bx);
    box.bottom = Math.min(box.bottom, ay, by);
    box.top = Math.max(box.top, ay, by);
  }
  return box;
}

/** Stretches in groups: those within reach of each other, however often over others. */
function linked(chains: readonly LostChain[], side: Hundredth): LostStretch[][] {
  const left = new Set(chains);
  const groups: LostStretch[][] = [];
  for (const first of left) {
    left.delete(first);
    const open = [first];
    const group: LostStretch[] = [];
    for (let chain = open.pop(); chain; chain = open.pop()) {
      for (const stretch of chain.stretches) group.push(stretch);
      for (const other of left) {
        if (!areChainsNear(chain, other, side)) continue;
        left.delete(other);
        open.push(other);
      }
    }
    groups.push(group);
  }
  return groups;
}

function areChainsNear(one: LostChain, other: LostChain, side: Hundredth): boolean {
  const isOneRing = one.stretches[0]!.edge.ring === other.stretches[0]!.edge.ring;
  const reach = (isOneRing ? side : 3 * side) + slack;
  return (
    boxesMeet(one, other, reach) &&
    one.stretches.some((a) => other.stretches.some((b) => areNear(a, b, reach)))
  );
}

function areNear(one: LostStretch, other: LostStretch, reach: number): boolean {
  return (
    Math.min(one.ax, one.bx) <= Math.max(other.ax, other.bx) + reach &&
    Math.min(other.ax, other.bx) <= Math.max(one.ax, one.bx) + reach &&
    Math.min(one.ay, one.by) <= Math.max(other.ay, other.by) + reach &&
    Math.min(other.ay, other.by) <= Math.max(one.ay, one.by) + reach
  );
}

/** Whether what lies between two edges is a strip too narrow for the square, with nothing else in it. */
function isStrip(one: PanelEdge, other: PanelEdge, runs: readonly EdgeRun[], leastWidth: number): boolean {
  return (
    isLevelStrip(one, other, runs, leastWidth, false) || isLevelStrip(one, other, runs, leastWidth, true)
  );
}

/** By level chords; by upright ones if `swapped`. */
function isLevelStrip(
  one: PanelEdge,
  other: PanelEdge,
  runs: readonly EdgeRun[],
  leastWidth: number,
  swapped: boolean,
): boolean {
  // With x and y swapped the panel lies on the other side of an edge.
  const runsDown = (edge: PanelEdge) => (swapped ? edge.bx > edge.ax : edge.by < edge.ay);
  if (runsDown(one) === runsDown(other)) return false;
  const [left, right] = runsDown(one) ? [one, other] : [other, one];
  const bottomOf = (e: PanelEdge) => (swapped ? Math.min(e.ax, e.bx) : Math.min(e.ay, e.by));
  const topOf = (e: PanelEdge) => (swapped ? Math.max(e.ax, e.bx) : Math.max(e.ay, e.by));
  let bottom = Math.max(bottomOf(left), bottomOf(right));
  let top = Math.min(topOf(left), topOf(right));
  if (top <= bottom) return false;
  const leftAt = lineOf(left, swapped);
  const rightAt = lineOf(right, swapped);
  const widthAt = (y: number) => rightAt(y) - leftAt(y);
  // The width runs evenly from one end to the other: keep the part where it is less than the square's.
  const most = leastWidth - 4 * roundingOfCurves;
  const [low, high] = [widthAt(bottom), widthAt(top)];
  if (low < 0 || high < 0 || (low >= most && high >= most)) return false;
  const limit = bottom + ((top - bottom) * (most - low)) / (high - low);
  if (low > most) bottom = limit;
  else if (high > most) top = limit;
  // What the rounding of clipping takes off at either end is left out.
  const height = top - bottom - 4 * roundingOfCurves;
  const area = (height * (widthAt(bottom) + widthAt(top))) / 2;
  if (height < leastSureHeight || area < 2 * leastLostArea) return false;
  const from = Math.min(leftAt(bottom), leftAt(top));
  const to = Math.max(rightAt(bottom), rightAt(top));
  const isBetween = (edge: PanelEdge) =>
    edge !== one &&
    edge !== other &&
    bottomOf(edge) < top &&
    topOf(edge) > bottom &&
    (swapped ? Math.min(edge.ay, edge.by) : Math.min(edge.ax, edge.bx)) < to &&
    (swapped ? Math.max(edge.ay, edge.by) : Math.max(edge.ax, edge.bx)) > from;
  return !runs.some(({ edges }) => edges.some(isBetween));
}

/** A strip lower than this touches its edges too little to be sure of; hundredths. */
const leastSureHeight = 30;

function lineOf({ ax, ay, bx, by }: PanelEdge, swapped: boolean): (y: number) => number {
  const [x0, y0, x1, y1] = swapped ? [ay, ax, by, bx] : [ax, ay, bx, by];
  return (y) => x0 + ((x1 - x0) * (y - y0)) / (y1 - y0);
}
