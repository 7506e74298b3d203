import { boxOf } from '../geometry/polygon';
import type { LengthUnits } from '../lengths';
import { drawMarking } from '../markings/draw-marking';
import { inkOf } from '../markings/ink';
import type { Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import { drawBareWall, drawOpeningsAndFittings, type ToPaper } from './client-view-wall';
import { fillZone, labelZone, zoneNotices } from './client-view-zones';
import { lookOfMarking } from './marking-items';
import type { Item, TextMeasure } from './page';
import type { PaperBox } from './paper';
import { noPictures, type Pictures } from './pictures';

export interface ClientPictureOptions {
  /** mm on paper for a hundredth on the wall; absent: as large as its room lets it be. */
  readonly scale?: number;
  readonly units?: LengthUnits;
  /** Whether markings are shown too. */
  readonly marked?: boolean;
  readonly pictures?: Pictures;
}

/** A wall for the client, its zones in colour and named, from the upper left corner of its room. */
export function clientWallPicture(
  { survey, zones }: WorkedWall,
  room: PaperBox,
  measure: TextMeasure,
  { scale: given, units, marked = false, pictures = noPictures }: ClientPictureOptions = {},
): { items: Item[]; bottom: Mm } {
  const box = boxOf(survey.outline.ring);
  const scale =
    given ??
    Math.min(
      (room.right - room.left) / (box.right - box.left),
      (room.top - room.bottom) / (box.top - box.bottom),
    );
  const bottom = room.top - (box.top - box.bottom) * scale;
  const toPaper: ToPaper = ({ x, y }) => ({
    x: room.left + (x - box.left) * scale,
    y: bottom + (y - box.bottom) * scale,
  });
  const notices = zoneNotices(
    zones.map(({ area }) => area),
    units,
  );
  const shown = !marked
    ? []
    : zones.flatMap(({ area: { zone, box: of } }) =>
        (zone.markings ?? []).map((marking) => ({
          ink: inkOf(marking, zone),
          drawn: drawMarking(marking, { x: of.left, y: of.bottom }),
        })),
      );
  const taken = [
    ...survey.keepOuts.map(({ bare }) => boxOf(bare.ring)),
    ...shown.map(({ drawn }) => drawn.box),
  ];
  const obstacles = taken.map(({ left, bottom: foot, right, top }) => {
    const [low, high] = [toPaper({ x: left, y: foot }), toPaper({ x: right, y: top })];
    return { left: low.x, bottom: low.y, right: high.x, top: high.y };
  });
  const items = [
    ...drawBareWall(survey, toPaper),
    ...notices.flatMap((notice) => fillZone(notice, toPaper)),
    ...shown.flatMap(({ ink, drawn }) =>
      lookOfMarking(drawn, ink, { toPaper, perMm: scale * 100 }, pictures),
    ),
    ...drawOpeningsAndFittings(survey, toPaper),
    ...notices.flatMap((notice) => labelZone(notice, toPaper, obstacles, measure)),
  ];
  return { items, bottom };
}
