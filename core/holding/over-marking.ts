import { difference, offsetMitred } from '../geometry/clip';
import { boxContains, boxesMeet, isBox, rectangleOfBox, type Box } from '../geometry/polygon';
import { boxOfMarking } from '../job/markings';
import type { PlayedMarking } from '../job/pieces';
import { toHundredth, type Mm } from '../units';
import { edgeDistance } from './derating';
import { behindMagnet, type BehindMagnet, type WallFaces } from './wall-faces';

/** What is behind a magnet wherever it is moved on a marking. */
export type OverMarking = BehindMagnet & { readonly note: string };

/** The same for every piece on a marking: a game has dozens of them. */
const known = new WeakMap<WallFaces, Map<string, OverMarking>>();

/**
 * A piece that is moved about counts where it holds worst: within reach of a joint, if there is one on its marking. Over the
 * joint itself it may slide. Where a part of the marking has nothing behind it that draws a magnet, nothing is what counts.
 *
 * @param diameter of its magnet, mm
 */
export function overMarking(faces: WallFaces, { zone, marking }: PlayedMarking, diameter: Mm): OverMarking {
  const { x, y, width, height } = boxOfMarking(zone, marking);
  const key = [x, y, width, height, diameter].join(' ');
  const ofFaces = known.get(faces) ?? new Map<string, OverMarking>();
  known.set(faces, ofFaces);
  const found = ofFaces.get(key) ?? worstIn(faces, { x, y, width, height }, diameter);
  ofFaces.set(key, found);
  return found;
}

function worstIn(
  faces: WallFaces,
  box: { readonly x: Mm; readonly y: Mm; readonly width: Mm; readonly height: Mm },
  diameter: Mm,
): OverMarking {
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const inMiddle = behindMagnet(faces, middle, diameter);
  const grown = (by: Mm): Box => ({
    left: toHundredth(box.x - by),
    right: toHundredth(box.x + box.width + by),
    bottom: toHundredth(box.y - by),
    top: toHundredth(box.y + box.height + by),
  });
  // A rectangular face that holds the whole marking with that margin has no edge on it.
  const reach = (edgeDistance + 0.5) * diameter;
  if (inMiddle.face && isBox(inMiddle.face.outline) && boxContains(inMiddle.face.box, grown(reach)))
    return { ...inMiddle, note: 'It is moved about clear of every edge and joint.' };
  if (isBareSomewhere(faces, grown(0), diameter))
    return {
      clearance: -diameter / 2,
      note: 'A part of the marking that it is moved about on has nothing behind it that draws a magnet: there it falls.',
    };
  return {
    ...inMiddle,
    clearance: 0,
    note: 'It is moved about over edges or joints: half of its pull is counted, and right over a joint it may slide.',
  };
}

/** Whether half of a magnet, or more, finds nothing somewhere: a joint is narrower than that. */
function isBareSomewhere({ faces }: WallFaces, box: Box, diameter: Mm): boolean {
  const near = faces.filter(({ box: own }) => boxesMeet(own, box)).map(({ outline }) => outline);
  const bare = difference([rectangleOfBox(box)], near);
  return offsetMitred(bare, toHundredth(-diameter / 4)).length > 0;
}
