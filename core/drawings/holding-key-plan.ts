import { boxOf } from '../geometry/polygon';
import { nameOfWall, sentence as capital } from '../job/names';
import { toHundredth, type Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import type { FlowBlock } from './flow-table';
import type { CheckedItem } from './holding-item';
import { stateOfCheck } from './holding-words';
import { moveItems } from './move-items';
import type { Item, Text, TextMeasure } from './page';
import { boxesOverlap, cornersOf, grownBox, type PaperBox } from './paper';
import { stateMark } from './state-mark';
import { fitText } from './text';
import { wallPicture } from './wall-picture';

const betweenWalls: Mm = 6;
const highest: Mm = 42;
const nameHeight: Mm = 5;
/** Half of a state's mark. */
const half: Mm = 1.7;

/** All walls on which something hangs, small, to one scale: each item with the shape of its state and its id. */
export function keyPlanRows(items: readonly CheckedItem[], width: Mm, measure: TextMeasure): FlowBlock[] {
  const walls = [...new Set(items.map(({ wall }) => wall))];
  const sizes = walls.map(({ survey }) => {
    const { left, right, bottom, top } = boxOf(survey.outline.ring);
    return { wide: right - left, high: top - bottom };
  });
  const inOneRow = sizes.reduce((sum, { wide }) => sum + wide, 0);
  const widest = Math.max(...sizes.map(({ wide }) => wide));
  const margins = 4;
  const across =
    walls.length <= 3
      ? (width - (walls.length - 1) * betweenWalls - walls.length * margins) / inOneRow
      : (width - margins) / widest;
  const scale = Math.min(across, highest / Math.max(...sizes.map(({ high }) => high)));
  const plans = walls.map((wall, i) => {
    const room = { width: sizes[i]!.wide * scale + margins, height: sizes[i]!.high * scale + margins };
    return { ...room, items: planOf(wall, items, room, measure) };
  });
  const rows: (typeof plans)[] = [];
  let used = 0;
  for (const plan of plans) {
    const row = rows.at(-1);
    if (row && used + betweenWalls + plan.width <= width + 1e-6) {
      row.push(plan);
      used += betweenWalls + plan.width;
    } else {
      rows.push([plan]);
      used = plan.width;
    }
  }
  return rows.map((row) => {
    const height = Math.max(...row.map((plan) => plan.height));
    return {
      height: height + nameHeight + 2,
      at: (left, top) => {
        let x = left;
        return row.flatMap((plan) => {
          const drawn = moveItems(plan.items, x, top - height);
          x += plan.width + betweenWalls;
          return drawn;
        });
      },
    };
  });
}

/** The wall at the origin, its name under it. */
function planOf(
  wall: WorkedWall,
  items: readonly CheckedItem[],
  room: { readonly width: Mm; readonly height: Mm },
  measure: TextMeasure,
): Item[] {
  const picture = wallPicture(wall, room, measure);
  const own = items.filter((one) => one.wall === wall);
  const boxes = own.map(({ check: { item } }): PaperBox => {
    const low = picture.toPaper({ x: toHundredth(item.x), y: toHundredth(item.y) });
    const high = picture.toPaper({
      x: toHundredth(item.x + item.width),
      y: toHundredth(item.y + item.height),
    });
    return { left: low.x, bottom: low.y, right: high.x, top: high.y };
  });
  const name: Text = {
    kind: 'text',
    text: capital(nameOfWall(wall.survey.wall)),
    at: { x: 2, y: -nameHeight + 1 },
    height: 2.5,
    face: 'condensed',
    colour: 'soft',
  };
  return [
    ...picture.items.filter(({ kind }) => kind !== 'text'),
    ...boxes.flatMap((box): Item[] => [
      { kind: 'fill', rings: [cornersOf(box)], colour: 'white' },
      { kind: 'stroke', points: cornersOf(box), closed: true, width: 0.35 },
    ]),
    ...labelsOf(own, boxes, { left: 0, bottom: 0, right: room.width, top: room.height }, measure),
    fitText(name, room.width - 2, measure),
  ];
}

/**
 * Mark and id of each, on its item, else beside it, rather not over another item; one that has no place is left to the table.
 */
function labelsOf(
  own: readonly CheckedItem[],
  boxes: readonly PaperBox[],
  bounds: PaperBox,
  measure: TextMeasure,
): Item[] {
  const taken: PaperBox[] = [];
  return own.flatMap(({ check }, i) => {
    const { id } = check.item;
    const wide = measure(id, 2.5, { weight: 'semi-bold' });
    const candidates = placesBeside(boxes[i]!, wide);
    const others = boxes.filter((_, j) => j !== i);
    const isFree = ({ box }: LabelPlace, off: readonly PaperBox[]) =>
      box.left >= bounds.left &&
      box.right <= bounds.right &&
      box.bottom >= bounds.bottom &&
      box.top <= bounds.top &&
      !off.some((other) => boxesOverlap(other, box));
    const place =
      candidates.find((one) => isFree(one, [...taken, ...others])) ??
      candidates.find((one) => isFree(one, taken));
    if (!place) return [];
    taken.push(place.box);
    return [
      { kind: 'fill', rings: [cornersOf(place.box)], colour: 'white' },
      ...stateMark(stateOfCheck(check), place.mark, half),
      {
        kind: 'text',
        text: id,
        at: place.id,
        height: 2.5,
        weight: 'semi-bold',
        anchor: 'middle',
      },
    ] satisfies Item[];
  });
}

interface LabelPlace {
  readonly box: PaperBox;
  readonly mark: { readonly x: Mm; readonly y: Mm };
  /** Middle of its baseline. */
  readonly id: { readonly x: Mm; readonly y: Mm };
}

/** Mark over id, or before it: in the middle of the item, over it, under it, right and left of it. */
function placesBeside({ left, right, bottom, top }: PaperBox, wide: Mm): LabelPlace[] {
  const [x, y] = [(left + right) / 2, (bottom + top) / 2];
  const gap = 0.8;
  const row = { width: 2 * half + gap + wide, height: 2 * half };
  const pile = { width: Math.max(2 * half, wide), height: 2 * half + gap + 2.5 };
  const rowAt = (cx: Mm, cy: Mm): LabelPlace => ({
    box: around(cx, cy, row),
    mark: { x: cx - row.width / 2 + half, y: cy },
    id: { x: cx + row.width / 2 - wide / 2, y: cy - 1.25 },
  });
  const pileAt = (cx: Mm, cy: Mm): LabelPlace => ({
    box: around(cx, cy, pile),
    mark: { x: cx, y: cy + pile.height / 2 - half },
    id: { x: cx, y: cy - pile.height / 2 },
  });
  const off = 1;
  return [
    ...(right - left > row.width + 1 && top - bottom > row.height + 1 ? [rowAt(x, y)] : []),
    pileAt(x, y),
    rowAt(x, top + row.height / 2 + off),
    rowAt(x, bottom - row.height / 2 - off),
    rowAt(right + row.width / 2 + off, y),
    rowAt(left - row.width / 2 - off, y),
    pileAt(x, top + pile.height / 2 + off),
    pileAt(x, bottom - pile.height / 2 - off),
  ];
}

function around(x: Mm, y: Mm, { width, height }: { readonly width: Mm; readonly height: Mm }): PaperBox {
  return grownBox(
    { left: x - width / 2, right: x + width / 2, bottom: y - height / 2, top: y + height / 2 },
    0.4,
  );
}
