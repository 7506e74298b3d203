import type { Polygon, Region } from '../../geometry/polygon';
import type { Mm } from '../../units';
import type { OnPaper } from '../marking-items';
import type { Art, PaperPoint, PictureColour } from '../page';

/* What a wall as it will look is drawn with: areas and lines given in mm of the wall, with colours of their own. */

/** A box of the wall, mm. */
export interface RealBox {
  readonly left: Mm;
  readonly bottom: Mm;
  readonly right: Mm;
  readonly top: Mm;
}

type RealPoint = readonly [x: Mm, y: Mm];

/** mm on paper: what is finer is lost in print and on a screen. */
const finest: Mm = 0.12;

export interface Pencil {
  readonly onPaper: OnPaper;
  /** An area of the wall's kernel, hundredths. */
  readonly region: (region: Region, colour: PictureColour, opacity?: number) => Art[];
  readonly area: (points: readonly RealPoint[], colour: PictureColour, opacity?: number) => Art;
  readonly box: (box: RealBox, colour: PictureColour, opacity?: number) => Art;
  /** `width` in mm of the wall. */
  readonly line: (points: readonly RealPoint[], width: Mm, colour: PictureColour, opacity?: number) => Art;
  readonly lines: (chains: readonly (readonly RealPoint[])[], width: Mm, colour: PictureColour) => Art;
  readonly rim: (region: Region, width: Mm, colour: PictureColour, opacity?: number) => Art[];
  readonly disc: (x: Mm, y: Mm, radius: Mm, colour: PictureColour, opacity?: number) => Art;
}

export function pencilFor(onPaper: OnPaper): Pencil {
  const { toPaper, perMm } = onPaper;
  const at = ([x, y]: RealPoint): PaperPoint => toPaper({ x: x * 100, y: y * 100 });
  const filled = (
    rings: readonly (readonly PaperPoint[])[],
    colour: PictureColour,
    opacity: number | undefined,
  ): Art => ({
    kind: 'art',
    chains: rings.map((points) => ({ points, closed: true })),
    fill: colour,
    evenOdd: true,
    stroke: null,
    width: 0,
    ...through(opacity),
  });
  const drawn = (
    chains: Art['chains'],
    width: Mm,
    colour: PictureColour,
    opacity: number | undefined,
  ): Art => ({
    kind: 'art',
    chains,
    fill: null,
    evenOdd: false,
    stroke: colour,
    width: Math.max(finest, width * perMm),
    ...through(opacity),
  });
  const area: Pencil['area'] = (points, colour, opacity) => filled([points.map(at)], colour, opacity);
  return {
    onPaper,
    area,
    region: (region, colour, opacity) =>
      region.length === 0
        ? []
        : [
            filled(
              region.flatMap(ringsOf).map((ring) => ring.map(toPaper)),
              colour,
              opacity,
            ),
          ],
    box: ({ left, bottom, right, top }, colour, opacity) =>
      area(
        [
          [left, bottom],
          [right, bottom],
          [right, top],
          [left, top],
        ],
        colour,
        opacity,
      ),
    line: (points, width, colour, opacity) =>
      drawn([{ points: points.map(at), closed: false }], width, colour, opacity),
    lines: (chains, width, colour) =>
      drawn(
        chains.map((points) => ({ points: points.map(at), closed: false })),
        width,
        colour,
        undefined,
      ),
    rim: (region, width, colour, opacity) =>
      region.length === 0
        ? []
        : [
            drawn(
              region.flatMap(ringsOf).map((ring) => ({ points: ring.map(toPaper), closed: true })),
              width,
              colour,
              opacity,
            ),
          ],
    disc: (x, y, radius, colour, opacity) => area(circle(x, y, radius, perMm), colour, opacity),
  };
}

export function ringsOf({ outer, holes }: Polygon) {
  return [outer, ...holes];
}

export function inset({ left, bottom, right, top }: RealBox, x: Mm, y: Mm = x): RealBox {
  return { left: left + x, bottom: bottom + y, right: right - x, top: top - y };
}

/** With as many corners as its size on paper asks for. */
function circle(x: Mm, y: Mm, radius: Mm, perMm: number): RealPoint[] {
  const corners = Math.max(10, Math.min(48, Math.ceil(10 * Math.sqrt(radius * perMm * 4))));
  return Array.from({ length: corners }, (_, i): RealPoint => {
    const turn = (i * 2 * Math.PI) / corners;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });
}

function through(opacity: number | undefined): { opacity?: number } {
  return opacity === undefined || opacity >= 1 ? {} : { opacity };
}
