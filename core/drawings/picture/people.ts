import type { Mm } from '../../units';
import type { Colour, Fill, PaperPoint } from '../page';
import { figureHeight, figureWidth, standingFigure } from '../standing-figure';

/** mm; about the median of girls and boys of six (WHO growth reference for 5 to 19 years, 2007; from memory). */
export const childHeight: Mm = 1160;

const childWidth: Mm = 400;
const between: Mm = 140;

/** Real width that both need, mm. */
export const peopleWidth: Mm = figureWidth + between + childWidth;

/**
 * An adult and a child side by side, for scale, each as one quiet fill.
 *
 * @param left paper point at the left foot of the room that they take
 * @param mmPerPaperMm real mm for one mm on paper
 */
export function standingPeople(left: PaperPoint, mmPerPaperMm: number, colour: Colour): Fill[] {
  const at = (x: Mm): PaperPoint => ({ x: left.x + x / mmPerPaperMm, y: left.y });
  return [
    ...standingFigure(at(figureWidth / 2), mmPerPaperMm, colour),
    ...child(at(figureWidth + between + childWidth / 2), mmPerPaperMm, colour),
  ];
}

/** Heads of children are larger for their height: about a sixth of it at six years, an eighth of an adult (common practice, no source). */
const headShare = 1.3;

function child(foot: PaperPoint, mmPerPaperMm: number, colour: Colour): Fill[] {
  const scale = childHeight / figureHeight;
  const [body, head] = standingFigure(foot, mmPerPaperMm / scale, colour);
  const points = head!.rings.flat();
  const top = Math.max(...points.map(({ y }) => y));
  const grown =
    (by: number) =>
    ({ x, y }: PaperPoint): PaperPoint => ({
      x: foot.x + (x - foot.x) * by,
      y: top + (y - top) * by,
    });
  // The head grows downwards from its crown; the body gives way by as much.
  const low = Math.min(...points.map(({ y }) => y));
  const lower = (low - (top - low) * (headShare - 1) - foot.y) / (low - foot.y);
  return [
    {
      ...body!,
      rings: body!.rings.map((ring) => ring.map(({ x, y }) => ({ x, y: foot.y + (y - foot.y) * lower }))),
    },
    { ...head!, rings: head!.rings.map((ring) => ring.map(grown(headShare))) },
  ];
}
