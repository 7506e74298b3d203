import { regionArea } from '../geometry/polygon';
import type { Hundredth } from '../units';
import type { AxisStart } from './axis-starts';
import type { CountedStarts } from './count-starts';
import { fittingShifts } from './fitting-shifts';
import { modulo } from './grid';
import { sidesOf, type GrowingSizes, type Reach } from './growing-sizes';
import type { StartQuestion } from './start-figures';
import type { Counts } from './start-meter';

/** Starts between the same events of either axis: all fall into the same panels, but of other sizes. */
export interface StartField {
  /** The start that was counted, and how far the field goes from there. */
  readonly x: Hundredth;
  readonly y: Hundredth;
  readonly reachX: Reach;
  readonly reachY: Reach;
  readonly counts: Counts;
}

/** The fields with the fewest slivers that are wanted for their panels, whatever their sizes. */
export function startFields(
  { area, pattern: { pitchX, pitchY } }: StartQuestion,
  { x, y, counts, leastSlivers }: CountedStarts,
  isWanted: (counts: Counts) => boolean,
): StartField[] {
  const spansX = spansOf(x, pitchX, area.box.left);
  const fields: StartField[] = [];
  for (const { index: j, reach: reachY } of spansOf(y, pitchY, area.box.bottom)) {
    for (const { index: i, reach: reachX } of spansX) {
      const found = counts[j * x.length + i];
      if (found?.slivers !== leastSlivers || !isWanted(found)) continue;
      fields.push({ x: x[i]!.at, y: y[j]!.at, reachX, reachY, counts: found });
    }
  }
  return fields;
}

/** Fewer stock sheets than this no start takes: what of the area lies in no joint has to come from somewhere. */
export function leastSheetsFor({ area, pattern }: StartQuestion): number {
  const { left, right, bottom, top } = area.box;
  const { width, height, pitchX, pitchY } = pattern;
  const inJoints =
    Math.ceil((right - left) / pitchX) * (pitchX - width) * (top - bottom) +
    Math.ceil((top - bottom) / pitchY) * (pitchY - height) * (right - left);
  return Math.ceil((regionArea(area.area) - inJoints) / (width * height) - 1e-9);
}

/**
 * Each event, and the middle of each span between two.
 *
 * @param from where the zone begins: counted from there, the order does not hang on the wall's datum
 */
function spansOf(
  starts: readonly AxisStart[],
  pitch: Hundredth,
  from: Hundredth,
): { readonly index: number; readonly reach: Reach }[] {
  const events = starts.filter(({ isEvent }) => isEvent).map(({ at }) => at);
  if (events.length === 0) return [];
  const spans: { index: number; reach: Reach }[] = [];
  let next = 0;
  starts.forEach(({ at, isEvent }, index) => {
    while (next < events.length && events[next]! < at) next++;
    if (isEvent) {
      spans.push({ index, reach: [0, 0] });
      return;
    }
    const before = next > 0 ? events[next - 1]! : events.at(-1)! - pitch;
    const after = next < events.length ? events[next]! : events[0]! + pitch;
    if (at === before + Math.floor((after - before) / 2))
      spans.push({ index, reach: [before - at, after - at] });
  });
  const turn = ({ index }: { index: number }) => modulo(starts[index]!.at - from, pitch);
  return spans.sort((a, b) => turn(a) - turn(b));
}

/** Shifts along either axis that are tried together in one field; more where the start moves along one alone. */
const mostShifts = 16;
const mostPairs = 100;

/**
 * Where the most panels fit side by side: first up and then along, and the other way about. Along an axis on which no
 * panel shrinks (or none grows) one end has the smallest of them all.
 */
export function* shiftsInField(
  { reachX, reachY }: StartField,
  growing: GrowingSizes,
  sheetSides: readonly Hundredth[],
  kerf: Hundredth,
): Generator<{ readonly dx: Hundredth; readonly dy: Hundredth }, void, void> {
  const along = shiftsAlong(reachX, growing.growsX, (dy) => sidesOf(growing, 'x', dy));
  const up = shiftsAlong(reachY, growing.growsY, (dx) => sidesOf(growing, 'y', dx));
  const [ups, alongs] = [up(0), along(0)];
  const most = (others: readonly unknown[]) => (others.length === 1 ? mostPairs : mostShifts);
  for (const dy of ups.slice(0, most(alongs))) {
    for (const dx of along(dy).slice(0, most(ups))) yield { dx, dy };
  }
  if (ups.length === 1 || alongs.length === 1) return;
  for (const dx of alongs.slice(0, mostShifts)) {
    for (const dy of up(dx).slice(0, mostShifts)) yield { dx, dy };
  }

  function shiftsAlong(
    reach: Reach,
    grows: readonly number[],
    sidesAt: (across: Hundredth) => ReturnType<typeof sidesOf>,
  ): (across: Hundredth) => readonly Hundredth[] {
    const [shrinks, swells] = [grows.some((one) => one < 0), grows.some((one) => one > 0)];
    if (reach[0] === reach[1] || (!shrinks && !swells)) return () => [0];
    if (!shrinks) return () => [reach[0] + 1];
    if (!swells) return () => [reach[1] - 1];
    const known = new Map<Hundredth, readonly Hundredth[]>();
    return (across) => {
      let shifts = known.get(across);
      if (!shifts) {
        known.set(across, (shifts = fittingShifts(sidesAt(across), sheetSides, kerf, reach)));
      }
      return shifts;
    };
  }
}
