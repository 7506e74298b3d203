import { boxOf } from '../geometry/polygon';
import type { HungItem } from '../job/hung-schema';
import { toHundredth, type Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import { wallPicture } from './wall-picture';
import type { FlowBlock } from './flow-table';
import { moveItems } from './move-items';
import type { Item, TextMeasure } from './page';
import { cornersOf, type PaperBox } from './paper';
import type { WriteLength } from './paper-figures';
import { runningFrame } from './running-frame';

/** Of the wall and of the item at most, mm on paper, without their figures. */
const room = { width: 54, height: 40 };
const betweenSketches: Mm = 12;

/**
 * Where an item hangs: the wall with its panels, running figures from the datum; beside it the item from the front with its
 * magnets, running figures from its own lower left corner. Not to a standard scale.
 */
export function hungSketch(
  wall: WorkedWall,
  item: HungItem,
  diameter: Mm | undefined,
  write: WriteLength,
  measure: TextMeasure,
): FlowBlock {
  const onWall = wallSketch(wall, item, write, measure);
  const front = itemSketch(item, diameter, write, measure);
  const [up, foot] = [Math.max(onWall.up, front.up), Math.max(onWall.foot, front.foot)];
  return {
    height: up + foot + 4,
    at: (left, top) => [
      ...moveItems(onWall.items, left + onWall.left, top - up),
      ...moveItems(front.items, left + onWall.left + room.width + betweenSketches + front.left, top - up),
    ],
  };
}

/** Lower left corner of what is drawn at the origin. */
interface SmallSketch {
  readonly items: readonly Item[];
  /** How far it reaches above the origin, and its figures left of it and under it. */
  readonly up: Mm;
  readonly left: Mm;
  readonly foot: Mm;
}

function wallSketch(wall: WorkedWall, item: HungItem, write: WriteLength, measure: TextMeasure): SmallSketch {
  const picture = wallPicture(wall, room, measure);
  const box = boxOf(wall.survey.outline.ring);
  const [from, to] = [
    picture.toPaper({ x: box.left, y: box.bottom }),
    picture.toPaper({ x: box.right, y: box.top }),
  ];
  const corner = picture.toPaper({ x: toHundredth(item.x), y: toHundredth(item.y) });
  const far = picture.toPaper({ x: toHundredth(item.x + item.width), y: toHundredth(item.y + item.height) });
  const here: PaperBox = { left: corner.x, bottom: corner.y, right: far.x, top: far.y };
  const frame = running(
    { left: from.x, bottom: from.y, right: to.x, top: to.y },
    box,
    [toHundredth(item.x)],
    [toHundredth(item.y)],
    write,
    measure,
  );
  return {
    items: [
      ...picture.items.filter(({ kind }) => kind !== 'text'),
      { kind: 'fill', rings: [cornersOf(here)], colour: 'ink' },
      ...frame.items,
    ],
    up: picture.height + 3,
    left: frame.left,
    foot: frame.foot,
  };
}

function itemSketch(
  item: HungItem,
  diameter: Mm | undefined,
  write: WriteLength,
  measure: TextMeasure,
): SmallSketch {
  const scale = Math.min(room.width / item.width, room.height / item.height);
  const box: PaperBox = { left: 0, bottom: 0, right: item.width * scale, top: item.height * scale };
  const places = item.magnets?.places ?? [];
  const frame = running(
    box,
    { left: 0, bottom: 0, right: toHundredth(item.width), top: toHundredth(item.height) },
    places.map(([x]) => toHundredth(x)),
    places.map(([, y]) => toHundredth(y)),
    write,
    measure,
  );
  return {
    items: [
      { kind: 'stroke', points: cornersOf(box), closed: true, width: 0.5 },
      ...(diameter === undefined ? [] : places).map(([x, y]): Item => {
        return {
          kind: 'circle',
          centre: { x: x * scale, y: y * scale },
          radius: (diameter! / 2) * scale,
          width: 0.35,
          fill: 'wash',
        };
      }),
      ...frame.items,
    ],
    up: box.top + 3,
    left: frame.left,
    foot: frame.foot,
  };
}

/** Figures of all places, or where they find no room of the whole alone; none where the datum is not the corner. */
function running(
  box: PaperBox,
  { left, bottom, right, top }: { left: number; bottom: number; right: number; top: number },
  xs: readonly number[],
  ys: readonly number[],
  write: WriteLength,
  measure: TextMeasure,
): { readonly items: readonly Item[]; readonly left: Mm; readonly foot: Mm } {
  const none = { items: [], left: 0, foot: 0 };
  if (left !== 0 || bottom !== 0) return none;
  return (
    runningFrame(box, right, top, xs, ys, write, measure) ??
    runningFrame(box, right, top, [], [], write, measure) ??
    none
  );
}
