import { intersection } from '../../geometry/clip';
import { magnetsOf } from '../../holding/ready-magnets';
import type { HungItem } from '../../job/hung-schema';
import { isReadyHungKind } from '../../job/hung-kinds';
import type { Job } from '../../job/schema';
import type { SurveyedWall } from '../../survey/surveyed-wall';
import type { Item } from '../page';
import { plainThing } from './flat-looks';
import { hungLooks } from './hung-looks';
import { boxRegion, regionOf } from './openings';
import type { Pencil, RealBox } from './pencil';
import { castShadow } from './shadows';

/** mm: even paper lifts a little and is seen by the line of its shadow. */
const leastShadow = 4;

/**
 * What hangs on the wall, to its real size and depth: simple drawings of things nobody sells, so that nobody expects just
 * these. Whether they hold is not shown here: the checks say it.
 */
export function drawHung(job: Job, { wall, outline }: SurveyedWall, pencil: Pencil): Item[] {
  const magnets = magnetsOf(job);
  const room = regionOf(outline.ring);
  return (wall.hung ?? []).flatMap((item) => {
    const box = boxOfItem(item);
    const look = isReadyHungKind(item.kind) ? hungLooks[item.kind] : plainThing;
    const { body, casts } = look(box, pencil);
    const shadows = casts.flatMap((part) =>
      pencil.region(
        castShadow(intersection(boxRegion(part), room), Math.max(leastShadow, item.depth), room),
        '#1f2d36',
        0.22,
      ),
    );
    const { places = [], magnet } = item.magnets ?? {};
    const across = magnet === undefined ? undefined : magnets.get(magnet)?.diameter;
    // What lies flat is held from the front, and its magnets are seen.
    const isFlat = item.depth <= 3 && across !== undefined;
    return [
      ...shadows,
      ...body,
      ...(isFlat ? places : []).flatMap(([x, y]) => [
        pencil.disc(box.left + x, box.bottom + y, across! / 2, '#7b8388'),
        pencil.disc(
          box.left + x - across! * 0.08,
          box.bottom + y + across! * 0.08,
          across! * 0.32,
          '#aab1b4',
        ),
      ]),
    ];
  });
}

export function boxOfItem({ x, y, width, height }: Pick<HungItem, 'x' | 'y' | 'width' | 'height'>): RealBox {
  return { left: x, bottom: y, right: x + width, top: y + height };
}
