import type { Job, Layout, StockSheet, Zone } from '../job/schema';
import { boxOfVertices, isRectangle, type MmBox } from '../job/shape';
import type { ZoneGrowth } from '../job/zone-edges';
import { toHundredth, toMm, type Hundredth, type Mm } from '../units';
import { modulo, patternOf } from './grid';

/** One side of a zone counted in stock sheets with their joints. */
export interface SheetSpan {
  readonly whole: number;
  /** Width of the cut panel beyond the last whole one, mm; 0 if there is none. */
  readonly over: Mm;
  /** What of a joint stays open at the edge, mm: too little for a panel. */
  readonly open: Mm;
}

export interface SheetCount {
  readonly across: SheetSpan;
  readonly up: SheetSpan;
}

/** A size at which the edges of a rectangular zone cut no panel. */
export interface WholeSize {
  readonly across: number;
  readonly up: number;
  readonly width: Mm;
  readonly height: Mm;
  /** By how much each edge moves outwards to come there. */
  readonly growth: ZoneGrowth;
}

export interface ZoneLength {
  readonly box: MmBox;
  readonly isRectangle: boolean;
  /** Ends that stay in a corner. */
  readonly held?: { readonly left: boolean; readonly right: boolean };
}

export type WholeSizes =
  | { readonly sizes: readonly WholeSize[] }
  /** Why no size keeps every panel whole. */
  | { readonly none: 'not a rectangle' | 'stagger' | 'no room' };

/** A stock sheet as it is laid, and the joint beside it; hundredths. */
export interface SheetPitch {
  readonly width: Hundredth;
  readonly height: Hundredth;
  readonly gap: Hundredth;
}

/** The stock sheet that a layout lays, turned if it says so; undefined if the job has it no more. */
export function sheetPitch(job: Job, layout: Layout | undefined): SheetPitch | undefined {
  const stock = job.stock.find(({ id }) => id === layout?.stock);
  return layout && stock && pitchOf(layout, stock);
}

function pitchOf(layout: Layout, stock: StockSheet): SheetPitch {
  const { width, height, pitchX } = patternOf(layout, stock);
  return { width, height, gap: pitchX - width };
}

/** How many whole sheets a box takes on either side, and what is over; keep-outs are not looked at. */
export function countSheets(
  { width, height }: Pick<MmBox, 'width' | 'height'>,
  sheet: SheetPitch,
): SheetCount {
  return {
    across: spanOf(toHundredth(width), sheet.width, sheet.gap),
    up: spanOf(toHundredth(height), sheet.height, sheet.gap),
  };
}

/** The length of so many sheets with the joints between them, mm. */
export function lengthOfSheets(count: number, sheet: Hundredth, gap: Hundredth): Mm {
  return toMm(count * sheet + (count - 1) * gap);
}

/** As many whole sheets as come nearest to a length, at least one. */
export function nearestSheets(length: Mm, sheet: Hundredth, gap: Hundredth): number {
  return Math.max(1, Math.round((toHundredth(length) + gap) / (sheet + gap)));
}

/**
 * The sizes nearest to a zone's own at which its edges cut no panel, the least change first; [] if it has such a
 * size already. Which edges move follows the layout's start: the corner it names stays, a centre stays the middle
 * (and asks for an even or an odd number of sheets), a picked start keeps its grid. Where the wall ends, the other
 * edge moves instead.
 *
 * @param room the wall's box, mm: no size reaches beyond it
 * @param length what of the zone is one length, in the zone's wall frame; with parts round corners, folded out flat
 */
export function wholeSheetSizes(
  zone: Zone,
  sheet: SheetPitch,
  room: MmBox,
  length: ZoneLength = { box: boxOfVertices(zone.shape), isRectangle: isRectangle(zone.shape) },
): WholeSizes {
  if (!length.isRectangle) return { none: 'not a rectangle' };
  const { box } = length;
  const start = zone.layout?.start ?? 'best';
  const [x, y] = typeof start === 'string' ? rulesOf(start) : [{ at: start.x }, { at: start.y }];
  const { held = { left: false, right: false } } = length;
  const ends = { low: held.left, high: held.right };
  const across = stretches(box.x, box.width, sheet.width, sheet.gap, x, room.x, room.width, ends);
  const up = stretches(box.y, box.height, sheet.height, sheet.gap, y, room.y, room.height);
  const all = across.flatMap((a) => up.map((b) => ({ a, b })));
  const flush = all.filter(({ b }) => !zone.layout?.stagger || b.count === 1);
  if (flush.length === 0) return { none: all.length > 0 ? 'stagger' : 'no room' };
  const sizes = flush.sort((one, other) => one.a.change + one.b.change - other.a.change - other.b.change);
  if (sizes[0]!.a.change + sizes[0]!.b.change === 0) return { sizes: [] };
  return { sizes: sizes.slice(0, mostOffered).map(({ a, b }) => sizeOf(a, b)) };
}

const mostOffered = 3;

function spanOf(length: Hundredth, sheet: Hundredth, gap: Hundredth): SheetSpan {
  const whole = Math.floor((length + gap) / (sheet + gap));
  const rest = whole === 0 ? length : length - (whole * (sheet + gap) - gap);
  const over = whole === 0 ? rest : Math.max(0, rest - gap);
  return { whole, over: toMm(over), open: toMm(over > 0 ? 0 : rest) };
}

type Rule = 'low' | 'high' | 'even' | 'odd' | { readonly at: Mm };

function rulesOf(start: Extract<Layout['start'], string>): readonly [Rule, Rule] {
  if (start === 'centre-on-joint') return ['even', 'even'];
  if (start === 'centre-on-panel') return ['odd', 'odd'];
  return [start.endsWith('right') ? 'high' : 'low', start.startsWith('upper') ? 'high' : 'low'];
}

/** A place for one side of the zone: its ends moved outwards by so much, hundredths. */
interface Stretch {
  readonly count: number;
  readonly low: Hundredth;
  readonly high: Hundredth;
  readonly change: Hundredth;
  readonly length: Hundredth;
}

/** Which ends stay where they are. */
interface Held {
  readonly low: boolean;
  readonly high: boolean;
}

function stretches(
  from: Mm,
  length: Mm,
  sheet: Hundredth,
  gap: Hundredth,
  rule: Rule,
  roomFrom: Mm,
  roomLength: Mm,
  held: Held = { low: false, high: false },
): Stretch[] {
  const low = toHundredth(from);
  const high = toHundredth(from + length);
  const [least, most] = [toHundredth(roomFrom), toHundredth(roomFrom + roomLength)];
  const places =
    typeof rule === 'object'
      ? placesOnGrid(low, high, sheet, gap, toHundredth(rule.at))
      : countsNear(high - low, sheet, gap, rule).map((count) => {
          const by = count * (sheet + gap) - gap - (high - low);
          return { count, ...shared(by, rule, low, high, least, most, held) };
        });
  return places.flatMap(({ count, low: outLow, high: outHigh }) => {
    if ((held.low && outLow !== 0) || (held.high && outHigh !== 0)) return [];
    // Edges are moved one after the other, and none can pass the other on its way.
    const passes = Math.min(outLow, outHigh) < 100 - (high - low);
    const fits = !passes && low - outLow >= Math.min(low, least) && high + outHigh <= Math.max(high, most);
    const change = Math.abs(outLow) + Math.abs(outHigh);
    return fits ? [{ count, low: outLow, high: outHigh, change, length: high - low + outLow + outHigh }] : [];
  });
}

/** The counts below and above a length, or the one that it is. */
function countsNear(length: Hundredth, sheet: Hundredth, gap: Hundredth, rule: Rule): number[] {
  const exact = (length + gap) / (sheet + gap);
  const [step, first] = rule === 'even' ? [2, 2] : rule === 'odd' ? [2, 1] : [1, 1];
  const below = first + Math.floor((exact - first) / step) * step;
  const counts = below === exact ? [below] : [below, below + step];
  return counts.filter((count) => count >= first);
}

/** Which edge takes the change: by the rule, unless the wall ends there and not at the other edge. */
function shared(
  by: Hundredth,
  rule: Rule,
  low: number,
  high: number,
  least: number,
  most: number,
  held: Held,
) {
  if (held.low) return { low: 0, high: by };
  if (held.high) return { low: by, high: 0 };
  if (rule === 'even' || rule === 'odd') return { low: Math.round(by / 2), high: by - Math.round(by / 2) };
  const [down, up] = [
    { low: by, high: 0 },
    { low: 0, high: by },
  ];
  if (rule === 'high') return low - by >= least || high + by > most ? down : up;
  return high + by <= most || low - by < least ? up : down;
}

/** Both edges on lines of a grid that stays where it is. */
function placesOnGrid(low: Hundredth, high: Hundredth, sheet: Hundredth, gap: Hundredth, at: Hundredth) {
  const pitch = sheet + gap;
  // Right edges lie a sheet beyond left ones.
  const [inLow, inHigh] = [modulo(low - at, pitch), modulo(high - at - sheet, pitch)];
  const lows = inLow === 0 ? [0] : [inLow, inLow - pitch];
  const highs = inHigh === 0 ? [0] : [-inHigh, pitch - inHigh];
  return lows
    .flatMap((outLow) => highs.map((outHigh) => ({ low: outLow, high: outHigh })))
    .map((out) => ({ ...out, count: Math.round((high - low + out.low + out.high + gap) / pitch) }))
    .filter(({ count }) => count >= 1);
}

function sizeOf(a: Stretch, b: Stretch): WholeSize {
  const moves = { left: a.low, right: a.high, bottom: b.low, top: b.high };
  const growth = Object.fromEntries(
    Object.entries(moves)
      .filter(([, by]) => by !== 0)
      .map(([edge, by]) => [edge, toMm(by)]),
  ) as ZoneGrowth;
  return { across: a.count, up: b.count, width: toMm(a.length), height: toMm(b.length), growth };
}
