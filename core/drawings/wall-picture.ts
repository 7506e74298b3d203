import { boxOf, type Ring } from '../geometry/polygon';
import type { Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import { drawBareWall, drawOpeningsAndFittings, type ToPaper } from './client-view-wall';
import { fillZone, zoneNotices } from './client-view-zones';
import { hatch } from './hatch';
import type { Item, Text, TextMeasure } from './page';
import { boxesOverlap, grownBox, type PaperBox } from './paper';

/** A wall small, with zones, panels and everything that stands on it, to be held against another one. */
export interface WallPicture {
  readonly width: Mm;
  readonly height: Mm;
  readonly items: readonly Item[];
  readonly toPaper: ToPaper;
  /** Where a text or an opening stands. */
  readonly taken: readonly PaperBox[];
}

/** Around the wall, for its line. */
const margin: Mm = 2;

/**
 * @param room how wide and high the picture may be; the wall is as large as fits
 * @param corner of the picture on its page, lower left
 */
export function wallPicture(
  { survey, zones }: WorkedWall,
  room: { readonly width: Mm; readonly height: Mm },
  measure: TextMeasure,
  corner: { readonly x: Mm; readonly y: Mm } = { x: 0, y: 0 },
): WallPicture {
  const box = boxOf(survey.outline.ring);
  const [wide, high] = [box.right - box.left, box.top - box.bottom];
  const scale = Math.min((room.width - 2 * margin) / wide, (room.height - 2 * margin) / high);
  const toPaper: ToPaper = ({ x, y }) => ({
    x: corner.x + margin + (x - box.left) * scale,
    y: corner.y + margin + (y - box.bottom) * scale,
  });
  const notices = zoneNotices(zones.map(({ area }) => area));
  const panels = zones.flatMap(({ layout }) => layout?.panels ?? []);
  const ringsOf = ({ outer, holes }: { outer: Ring; holes: readonly Ring[] }) =>
    [outer, ...holes].map((ring) => ring.map(toPaper));
  const taken = survey.keepOuts.map(({ bare }) => paperBoxOf(bare.ring, toPaper));
  const names = zones.flatMap(({ area }) => {
    const name = placeName(area.zone.id, paperBoxOf(area.shape.ring, toPaper), taken, measure);
    if (!name) return [];
    taken.push(name.box);
    return [name.text];
  });
  return {
    width: wide * scale + 2 * margin,
    height: high * scale + 2 * margin,
    toPaper,
    taken,
    items: [
      ...drawBareWall(survey, toPaper),
      ...notices.flatMap((notice) => fillZone(notice, toPaper)),
      ...panels
        .filter(({ full }) => !full)
        .flatMap(({ outline }) =>
          hatch(ringsOf(outline), { spacing: 2.6, angle: 45, width: 0.18, colour: 'red-lead' }),
        ),
      ...panels.flatMap(({ outline }) =>
        ringsOf(outline).map((points): Item => ({
          kind: 'stroke',
          points,
          closed: true,
          width: 0.25,
          colour: 'red-lead',
        })),
      ),
      ...drawOpeningsAndFittings(survey, toPaper),
      ...names.flatMap((text) => [ground(text, measure), text]),
    ],
  };
}

/** In the zone's upper left corner, or above or under it where that is taken. */
function placeName(
  name: string,
  zone: PaperBox,
  taken: readonly PaperBox[],
  measure: TextMeasure,
): { text: Text; box: PaperBox } | undefined {
  const width = measure(name, 2.5, { weight: 'semi-bold' });
  const places = [
    { x: zone.left + 1.5, y: zone.top - 4 },
    { x: zone.right - 1.5 - width, y: zone.top - 4 },
    { x: zone.left + 1.5, y: zone.bottom + 1.5 },
    { x: zone.left, y: zone.top + 1.5 },
  ];
  for (const at of places) {
    const box = grownBox({ left: at.x, right: at.x + width, bottom: at.y, top: at.y + 2.5 }, 0.8);
    if (taken.some((other) => boxesOverlap(other, box))) continue;
    return { text: { kind: 'text', text: name, at, height: 2.5, weight: 'semi-bold', colour: 'ink' }, box };
  }
  return undefined;
}

/** Joints stop for a name. */
function ground({ text, at, height, weight }: Text, measure: TextMeasure): Item {
  const box = grownBox(
    { left: at.x, right: at.x + measure(text, height, { weight }), bottom: at.y, top: at.y + height },
    0.8,
  );
  return {
    kind: 'fill',
    rings: [
      [
        { x: box.left, y: box.bottom },
        { x: box.right, y: box.bottom },
        { x: box.right, y: box.top },
        { x: box.left, y: box.top },
      ],
    ],
    colour: 'white',
  };
}

function paperBoxOf(ring: Ring, toPaper: ToPaper): PaperBox {
  const box = boxOf(ring);
  const low = toPaper({ x: box.left, y: box.bottom });
  const high = toPaper({ x: box.right, y: box.top });
  return { left: low.x, bottom: low.y, right: high.x, top: high.y };
}
