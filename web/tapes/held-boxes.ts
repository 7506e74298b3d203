import type { Place } from './place-figures';
import type { Axis } from './typed-figure';

/** A figure with its tick, px along the tape. */
export interface PlacedFigure {
  readonly at: number;
  readonly length: number;
  readonly place: Place | null;
}

/** px on the tape, from its upper left corner. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** px: of a tape from one side to the other, of a row of figures, and of a tick that has no figure. */
export interface TapeSizes {
  readonly axis: Axis;
  readonly across: number;
  readonly rowHeight: number;
  readonly tickLength: number;
}

/** px from the upper side of the tape along the foot to its first row. */
const margin = 7;

/** The frame about the figure of what is held, which has its place; `words`: px that the figure takes up the side. */
export function heldBox({ place, length }: PlacedFigure, words: number, tape: TapeSizes): Box {
  const { row = 0, start = 0 } = place ?? {};
  const height = tape.rowHeight - 2;
  return tape.axis === 'x'
    ? { left: start, top: margin + row * tape.rowHeight, width: length, height }
    : { left: 2, top: start + 1, width: words + 10, height };
}

/** The tick of what is held: as long as its figure's row is deep. */
export function heldTick({ at, place }: PlacedFigure, tape: TapeSizes): Box {
  const { across, rowHeight, tickLength } = tape;
  const along = place ? margin + place.row * rowHeight : tickLength;
  const up = place ? across : tickLength;
  return tape.axis === 'x'
    ? { left: at, top: 0, width: 0, height: along }
    : { left: across - up, top: at, width: up, height: 0 };
}

/** Where figures at rest lie that something held lies over, in part or whole: there they are not to be seen. */
export function hiddenByHeld(
  resting: readonly PlacedFigure[],
  held: readonly Box[],
  tape: TapeSizes,
): readonly Box[] {
  return resting
    .flatMap((figure) => (figure.place ? [restingBox(figure, figure.place, tape)] : []))
    .filter((box) => held.some((over) => meet(box, over)));
}

/** The words of a figure at rest: below the short ticks, or left of them; up the side close to its own tick. */
function restingBox({ at, length }: PlacedFigure, { start, row }: Place, tape: TapeSizes): Box {
  const { across, rowHeight, tickLength } = tape;
  return tape.axis === 'x'
    ? { left: start, top: margin + 4 + row * rowHeight, width: length, height: rowHeight - 6 }
    : { left: 2, top: start < at ? start + 8 : start, width: across - tickLength - 3, height: 16 };
}

function meet(a: Box, b: Box): boolean {
  return (
    a.left < b.left + b.width &&
    b.left < a.left + a.width &&
    a.top < b.top + b.height &&
    b.top < a.top + a.height
  );
}
