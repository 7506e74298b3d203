import { intersection } from '../geometry/clip';
import { boxOfRegion, rectangleOfBox, type Box } from '../geometry/polygon';
import type { Layout, StockSheet } from '../job/schema';
import type { Hundredth } from '../units';
import { modulo, patternOf, type Grid, type Pattern } from './grid';
import type { JointCell } from './joint-cells';
import { cellsOf, type DividedPart } from './lay-format';

/** A place of a zone that may be divided in one way or another, the others being left as they are. */
export interface Slot {
  /** The first is the large format's own grid. */
  readonly ways: readonly (readonly JointCell[])[];
}

/** A part of a zone taken apart: what stays as it is, and the places that other formats may be laid in. */
export interface SlottedPart {
  readonly part: DividedPart;
  readonly kept: readonly JointCell[];
  readonly slots: readonly Slot[];
}

interface SlotQuestion {
  readonly layout: Layout;
  /** Formats to fill with; the part's own may be among them and is passed over. */
  readonly fillers: readonly StockSheet[];
  readonly gap: Hundredth;
}

/**
 * The places in which smaller formats may take over from a large one's grid: the strips between the outermost
 * cells that are whole and the zone's edge, and cells that an opening cuts.
 *
 *     ┌──┬────┬────┬──┐        H: strips below and above run right across
 *     ├──┼────┼────┼──┤        V: strips left and right run the full height
 *     │  │    │ ▢  │  │
 *     ├──┼────┼────┼──┤        Where courses are staggered, strips lie below and above alone, and the cut
 *     └──┴────┴────┴──┘        ends of courses are cells of their own.
 */
export function slottedWays(part: DividedPart, question: SlotQuestion): SlottedPart[] {
  const filled = part.cells.filter(({ pieces }) => pieces.length > 0);
  if (filled.length === 0) return [];
  const isWhole = (cell: JointCell) => cell.pieces.length === 1 && fillsItsCell(cell);
  const whole = filled.filter(isWhole);
  if (whole.length === 0) {
    const area = boxOfRegion(part.area);
    const slot = slotOf(part, filled, area, area, question, [area.left, area.bottom]);
    return [slot ? { part, kept: [], slots: [slot] } : { part, kept: filled, slots: [] }];
  }
  const body = boxRound(whole);
  return (part.grid.stagger > 0 ? (['H'] as const) : (['H', 'V'] as const)).map((corners) =>
    slotted(part, filled, body, corners, isWhole, question),
  );
}

function slotted(
  part: DividedPart,
  filled: readonly JointCell[],
  body: Box,
  corners: 'H' | 'V',
  isWhole: (cell: JointCell) => boolean,
  question: SlotQuestion,
): SlottedPart {
  const { gap } = question;
  const area = boxOfRegion(part.area);
  const across = { left: area.left, right: area.right };
  const up = { bottom: area.bottom, top: area.top };
  const [inX, inY] = [
    { left: body.left, right: body.right },
    { bottom: body.bottom, top: body.top },
  ];
  const strips: { box: Box; inner: readonly [Hundredth, Hundredth] }[] = [
    {
      box: { ...(corners === 'H' ? across : inX), bottom: area.bottom, top: body.bottom - gap },
      inner: [body.left, body.bottom - gap],
    },
    {
      box: { ...(corners === 'H' ? across : inX), bottom: body.top + gap, top: area.top },
      inner: [body.left, body.top + gap],
    },
  ];
  if (part.grid.stagger === 0) {
    strips.push(
      {
        box: { ...(corners === 'H' ? inY : up), left: area.left, right: body.left - gap },
        inner: [body.left - gap, body.bottom],
      },
      {
        box: { ...(corners === 'H' ? inY : up), left: body.right + gap, right: area.right },
        inner: [body.right + gap, body.bottom],
      },
    );
  }
  const slots: Slot[] = [];
  let rest = [...filled];
  for (const { box, inner } of strips) {
    if (box.right <= box.left || box.top <= box.bottom) continue;
    const own = rest.filter((cell) => liesIn(cell, box, area));
    if (own.length === 0) continue;
    const slot = slotOf(part, own, box, area, question, inner);
    if (!slot) continue;
    rest = rest.filter((cell) => !own.includes(cell));
    slots.push(slot);
  }
  // Cells that an opening cuts, those with the most steel first.
  const cut = rest.filter((cell) => !isWhole(cell)).slice(0, mostCutCells);
  for (const cell of cut) {
    const slot = slotOf(part, [cell], cell.box, area, question, nearest(cell.box, body));
    if (!slot) continue;
    rest = rest.filter((other) => other !== cell);
    slots.push(slot);
  }
  return { part, kept: rest, slots };
}

const mostCutCells = 12;

/** The corner of a cell that is nearest to the body. */
function nearest(cell: Box, body: Box): readonly [Hundredth, Hundredth] {
  return [cell.left < body.left ? cell.right : cell.left, cell.bottom < body.bottom ? cell.top : cell.bottom];
}

/** A place with the ways of dividing it; null where another format does not fit it in any other way. */
function slotOf(
  part: DividedPart,
  own: readonly JointCell[],
  place: Box,
  area: Box,
  { layout, fillers }: SlotQuestion,
  [innerX, innerY]: readonly [Hundredth, Hundredth],
): Slot | null {
  const region = intersection(part.area, [rectangleOfBox(place)]);
  if (region.length === 0) return null;
  const ways: (readonly JointCell[])[] = [own];
  const box = boxOfRegion(region);
  for (const filler of fillers) {
    if (filler === own[0]!.stock) continue;
    for (const turned of filler.width === filler.height ? [false] : [layout.turned, !layout.turned]) {
      const pattern = patternOf({ ...layout, turned, stagger: 0 }, filler);
      for (const start of startsIn(box, pattern, innerX, innerY)) {
        if (endsInJoint(place, area, { ...pattern, start })) continue;
        const cells = cellsOf(region, { ...pattern, start }, filler)
          .filter(({ pieces }) => pieces.length > 0)
          .map((cell) => ({
            ...cell,
            box: within(cell.box, place, area),
            course: courseOf(cell, part.grid),
          }));
        if (cells.length <= mostCellsOfPlace) ways.push(cells);
      }
    }
  }
  return ways.length > 1 ? { ways } : null;
}

const mostCellsOfPlace = 400;

/** Whether a place begins or ends, beside other panels, in a joint of the grid in it: two joints would be one wide one. */
function endsInJoint(place: Box, area: Box, { start, width, height, pitchX, pitchY }: Grid): boolean {
  const beginsInJoint = (at: number, from: number, size: number, pitch: number) =>
    modulo(at - from, pitch) >= size;
  // An end is in a joint where the mirrored grid would begin in one.
  const stopsInJoint = (at: number, from: number, size: number, pitch: number) =>
    modulo(from + size - at, pitch) >= size;
  return (
    (place.left > area.left && beginsInJoint(place.left, start.x, width, pitchX)) ||
    (place.bottom > area.bottom && beginsInJoint(place.bottom, start.y, height, pitchY)) ||
    (place.right < area.right && stopsInJoint(place.right, start.x, width, pitchX)) ||
    (place.top < area.top && stopsInJoint(place.top, start.y, height, pitchY))
  );
}

/** A joint or an outer side of the filler on a joint of the large format, or on either end of the place. */
function startsIn(box: Box, pattern: Pattern, innerX: Hundredth, innerY: Hundredth) {
  const along = (low: number, high: number, inner: number, size: number, pitch: number) => {
    // The inner side is the place's own end, or a joint that passes through it.
    const anchors = inner >= high ? [high - size] : inner <= low ? [low] : [inner, low, high - size];
    return anchors.filter((at, i) => anchors.findIndex((other) => modulo(other - at, pitch) === 0) === i);
  };
  const xs = along(box.left, box.right, innerX, pattern.width, pattern.pitchX);
  const ys = along(box.bottom, box.top, innerY, pattern.height, pattern.pitchY);
  return xs.flatMap((x) => ys.map((y) => ({ x, y }))).slice(0, 6);
}

/** A cell ends where its place does, but at the area's own edge. */
function within(cell: Box, place: Box, area: Box): Box {
  return {
    left: place.left > area.left ? Math.max(cell.left, place.left) : cell.left,
    right: place.right < area.right ? Math.min(cell.right, place.right) : cell.right,
    bottom: place.bottom > area.bottom ? Math.max(cell.bottom, place.bottom) : cell.bottom,
    top: place.top < area.top ? Math.min(cell.top, place.top) : cell.top,
  };
}

/** The course of the large format in which a small cell begins. */
function courseOf({ box }: JointCell, { start, pitchY }: Grid): number {
  return Math.floor((box.bottom - start.y) / pitchY);
}

function liesIn({ box }: JointCell, place: Box, area: Box): boolean {
  const reach = within(box, area, { left: -Infinity, right: Infinity, bottom: -Infinity, top: Infinity });
  return (
    reach.left >= place.left &&
    reach.right <= place.right &&
    reach.bottom >= place.bottom &&
    reach.top <= place.top
  );
}

function boxRound(cells: readonly JointCell[]): Box {
  return boxOfRegion(cells.map(({ box }) => rectangleOfBox(box)));
}

function fillsItsCell({ box, pieces }: JointCell): boolean {
  const [piece] = pieces;
  return (
    piece!.holes.length === 0 &&
    piece!.outer.length === 4 &&
    piece!.outer.every(
      ({ x, y }) => (x === box.left || x === box.right) && (y === box.bottom || y === box.top),
    )
  );
}
