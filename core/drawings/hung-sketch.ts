import { boxOf } from '../geometry/polygon';
import type { HungItem } from '../job/hung-schema';
import { toHundredth, type Mm } from '../units';
import type { WorkedWall } from '../worked-out';
import { moveItems } from './move-items';
import type { Item, Text, TextMeasure } from './page';
import { boxesOverlap, cornersOf, grownBox, type PaperBox } from './paper';
import type { WriteLength } from './paper-figures';
import { runningFrame } from './running-frame';
import type { Sketch } from './sketch';
import { textBox } from './text';
import { wallPicture } from './wall-picture';

/* An item as a fitter needs it: where it hangs on the wall, and where its magnets sit on it. Not to a standard scale. */

export interface SketchRoom {
  readonly width: Mm;
  readonly height: Mm;
}

const above: Mm = 3;
/** A wall or an item that is drawn smaller than this is a dot between its figures. */
const legible: Mm = 11;
/** Figures that stand too near each other may lead so far beyond the sketch. */
const right: Mm = 6;

/** The wall with its panels and the items filled in; running figures of their lower left corners from the datum. */
export function whereSketch(
  wall: WorkedWall,
  items: readonly HungItem[],
  room: SketchRoom,
  write: WriteLength,
  measure: TextMeasure,
): Sketch {
  return fitted(room, (drawn) => drawWhere(wall, items, drawn, write, measure));
}

function drawWhere(
  wall: WorkedWall,
  items: readonly HungItem[],
  drawn: SketchRoom,
  write: WriteLength,
  measure: TextMeasure,
): Sketch {
  const picture = wallPicture(wall, drawn, measure);
  const box = boxOf(wall.survey.outline.ring);
  const [from, to] = [
    picture.toPaper({ x: box.left, y: box.bottom }),
    picture.toPaper({ x: box.right, y: box.top }),
  ];
  const here = items.map(({ x, y, width, height }): PaperBox => {
    const corner = picture.toPaper({ x: toHundredth(x), y: toHundredth(y) });
    const far = picture.toPaper({ x: toHundredth(x + width), y: toHundredth(y + height) });
    return { left: corner.x, bottom: corner.y, right: far.x, top: far.y };
  });
  const frame = running(
    { left: from.x, bottom: from.y, right: to.x, top: to.y },
    box,
    items.map(({ x }) => toHundredth(x)),
    items.map(({ y }) => toHundredth(y)),
    write,
    measure,
  );
  return atOrigin(
    [
      ...picture.items.filter(({ kind }) => kind !== 'text'),
      { kind: 'fill', rings: here.map(cornersOf), colour: 'ink' },
      ...frame.items,
    ],
    { ...frame, right: picture.width + right, top: picture.height + above },
  );
}

/** The item from the front with its numbered magnets; running figures from its own lower left corner. */
export function magnetSketch(
  item: HungItem,
  diameter: Mm | undefined,
  room: SketchRoom,
  write: WriteLength,
  measure: TextMeasure,
): Sketch {
  return fitted(room, (drawn) => drawMagnets(item, diameter, drawn, write, measure));
}

function drawMagnets(
  item: HungItem,
  diameter: Mm | undefined,
  drawn: SketchRoom,
  write: WriteLength,
  measure: TextMeasure,
): Sketch {
  const scale = Math.min(drawn.width / item.width, drawn.height / item.height);
  const box: PaperBox = { left: 0, bottom: 0, right: item.width * scale, top: item.height * scale };
  const places = diameter === undefined ? [] : (item.magnets?.places ?? []);
  const frame = running(
    box,
    { left: 0, bottom: 0, right: toHundredth(item.width), top: toHundredth(item.height) },
    places.map(([x]) => toHundredth(x)),
    places.map(([, y]) => toHundredth(y)),
    write,
    measure,
  );
  const circles = places.map(([x, y]) => ({
    centre: { x: x * scale, y: y * scale },
    // A dot at least, so that it is seen where it sits.
    radius: Math.max(0.6, ((diameter ?? 0) / 2) * scale),
  }));
  return atOrigin(
    [
      { kind: 'stroke', points: cornersOf(box), closed: true, width: 0.5 },
      ...circles.map((circle): Item => ({ kind: 'circle', ...circle, width: 0.35, fill: 'wash' })),
      ...numbersOf(circles, box, measure),
      ...frame.items,
    ],
    { ...frame, right: box.right + right, top: box.top + above },
  );
}

interface DrawnCircle {
  readonly centre: { readonly x: Mm; readonly y: Mm };
  readonly radius: Mm;
}

/** Within its circle, or beside it where nothing else stands; one without a place is found by its figures in the table. */
function numbersOf(circles: readonly DrawnCircle[], box: PaperBox, measure: TextMeasure): Text[] {
  const rings = circles.map(({ centre: { x, y }, radius }) =>
    grownBox({ left: x, right: x, bottom: y, top: y }, radius),
  );
  const taken: PaperBox[] = [];
  return circles.flatMap(({ centre: { x, y }, radius }, i) => {
    const words = String(i + 1);
    const width = measure(words, 2.5, {});
    const text = (dx: Mm, dy: Mm): Text => ({
      kind: 'text',
      text: words,
      at: { x: x + dx - width / 2, y: y + dy - 1.25 },
      height: 2.5,
    });
    const [aside, over] = [radius + width / 2 + 0.7, radius + 2.1];
    const toMiddle = x < (box.left + box.right) / 2 ? 1 : -1;
    const candidates = [
      ...(radius > Math.hypot(width, 2.5) / 2 ? [text(0, 0)] : []),
      ...[0, 1.2, -1.2, 2.4, -2.4].map((up) => text(toMiddle * aside, up)),
      text(-toMiddle * aside, 0),
      text(0, -over),
      text(0, over),
    ];
    const room = grownBox(box, -0.3);
    const free = candidates.find((one) => {
      const own = grownBox(textBox(one, measure), 0.2);
      return (
        own.left >= room.left &&
        own.right <= room.right &&
        own.bottom >= room.bottom &&
        own.top <= room.top &&
        ![...taken, ...rings.filter((_, j) => j !== i)].some((other) => boxesOverlap(own, other))
      );
    });
    if (!free) return [];
    taken.push(grownBox(textBox(free, measure), 0.2));
    return [free];
  });
}

/** How much figures take beside a sketch is known only once they are drawn. */
function fitted(room: SketchRoom, draw: (drawn: SketchRoom) => Sketch): Sketch {
  let drawn: SketchRoom = { width: room.width - 20, height: room.height - 20 };
  let sketch = draw(drawn);
  for (let i = 0; i < 4 && (sketch.width > room.width || sketch.height > room.height); i++) {
    drawn = {
      width: Math.max(5, drawn.width - Math.max(0, sketch.width - room.width)),
      height: Math.max(5, drawn.height - Math.max(0, sketch.height - room.height)),
    };
    sketch = draw(drawn);
  }
  return sketch;
}

/** Moved so that the lower left corner of all that is drawn lies at the origin. */
function atOrigin(
  items: readonly Item[],
  reach: { readonly left: Mm; readonly foot: Mm; readonly right: Mm; readonly top: Mm },
): Sketch {
  return {
    width: reach.left + reach.right,
    height: reach.foot + reach.top,
    items: moveItems(items, reach.left, reach.foot),
    isComplete: true,
    isLegible: Math.max(reach.right - right, reach.top - above) >= legible,
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
