import { tidy } from './changes';
import { extentOf } from './extent';
import type { Marking, MarkingKind } from './marking-schema';
import { freshMarkingId } from './markings';
import type { Photo, Zone } from './schema';
import type { MmBox } from './shape';

/*
 * What a new marking is until someone says otherwise. Spacings, heights and numbers are common practice, no source.
 */

/**
 * A marking over a box, or as large as its zone has room for. Boards and pictures are the largest of their proportions
 * in that box, in its middle.
 *
 * @param box wall frame, mm
 * @param photo of a picture; without one a picture cannot be made
 */
export function newMarking(zone: Zone, kind: MarkingKind, box?: MmBox, photo?: Photo): Marking {
  const whole = extentOf(zone);
  const room = box ?? whole;
  const at = { x: tidy(room.x - whole.x), y: tidy(room.y - whole.y) };
  const own = { id: freshMarkingId(zone), kind, ...at };
  const { width, height } = room;
  switch (kind) {
    case 'ruled-grid':
      return { ...own, width, height, spacingAcross: 100, spacingUp: 100 } as Marking;
    case 'ruled-lines':
      return { ...own, width, height, spacingUp: 60 } as Marking;
    case 'table':
      return {
        ...own,
        width,
        height,
        columns: ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday'],
        rows: ['', '', ''],
        headingHeight: tidy(Math.min(100, height / 2)),
        letterHeight: 30,
      } as Marking;
    case 'board': {
      const side = boardSide(Math.min(width, height) / 8);
      return {
        ...own,
        ...inMiddle(own, room, 8 * side, 8 * side),
        across: 8,
        up: 8,
        side,
        tones: 'two',
      } as Marking;
    }
    case 'picture': {
      const proportion = photo ? photo.width / photo.height : width / height;
      const fitted = tidy(Math.min(width, height * proportion));
      const size = { width: fitted, height: tidy(fitted / proportion) };
      return {
        ...own,
        ...inMiddle(own, room, size.width, size.height),
        ...size,
        photo: photo?.id,
      } as Marking;
    }
  }
}

/** Whole centimetres where there is room for one, so that it can be ticked off on a rule. */
function boardSide(most: number): number {
  return most >= 10 ? Math.floor(most / 10) * 10 : tidy(most);
}

function inMiddle(at: { x: number; y: number }, room: MmBox, width: number, height: number) {
  return { x: tidy(at.x + (room.width - width) / 2), y: tidy(at.y + (room.height - height) / 2) };
}
