import type { Polygon } from '../geometry/polygon';
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
  if (!lost.some((one, i) => hasOpposite(one, lost, i))) return false;
  const groups = linked(lost, leastWidth);
  let doubtful = false;
  for (let i = 0; i < lost.length; i++) {
    for (let j = i + 1; j < lost.length; j++) {
      if (groups[i] !== groups[j] || !areOpposite(lost[i]!, lost[j]!)) continue;
      if (isStrip(lost[i]!.edge, lost[j]!.edge, runs, leastWidth)) return true;
      doubtful = true;
    }
  }
  return doubtful ? undefined : false;
}

function hasOpposite(one: LostStretch, lost: readonly LostStretch[], i: number): boolean {
  for (let j = i + 1; j < lost.length; j++) if (areOpposite(one, lost[j]!)) return true;
  return false;
}

/** Whether the edges of two stretches are within 30° of opposite directions. */
function areOpposite(a: LostStretch, b: LostStretch): boolean {
  return -(a.ux * b.ux + a.uy * b.uy) >= leastOpposition;
}

/** For each stretch the number of its group: stretches within reach of each other, however often over others. */
function linked(lost: readonly LostStretch[], side: Hundredth): number[] {
  const groups = new Array<number>(lost.length).fill(-1);
  for (let first = 0; first < lost.length; first++) {
    if (groups[first] !== -1) continue;
    groups[first] = first;
    const open = [first];
    for (let i = open.pop(); i !== undefined; i = open.pop()) {
      for (let j = 0; j < lost.length; j++) {
        if (groups[j] !== -1) continue;
        const reach = (lost[i]!.edge.ring === lost[j]!.edge.ring ? side : 3 * side) + slack;
        if (!areNear(lost[i]!, lost[j]!, reach)) continue;
        groups[j] = first;
        open.push(j);
      }
    }
  }
  return groups;
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
