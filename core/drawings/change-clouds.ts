import { toHundredth, type Mm } from '../units';
import type { MmBox } from '../job/shape';
import type { ChangeGroup } from './change-groups';
import type { ToPaper } from './client-view-wall';
import type { Item, PaperPoint, Stroke, Text, TextMeasure } from './page';
import { boxesOverlap, grownBox, type PaperBox } from './paper';

/*
 * Clouds round what has changed, each with the number that the list gives it. No standard rules the cloud; it is common
 * practice of drawing offices, no source.
 */

/** Around a thing, so that its own line stays visible. */
const clearance: Mm = 1.6;
const bow: Mm = 3.2;
const numberHeight = 2.5;
/** Half the height of a number's tag. */
const tag: Mm = 2.4;

export interface DrawnClouds {
  readonly items: readonly Item[];
  /** Numbers that found no place clear of everything else; they stand where they may cover a line. */
  readonly crowded: readonly number[];
}

/**
 * @param taken boxes that no number may cover
 * @param within all numbers stay inside it
 */
export function drawClouds(
  groups: readonly ChangeGroup[],
  toPaper: ToPaper,
  taken: readonly PaperBox[],
  within: PaperBox,
  measure: TextMeasure,
): DrawnClouds {
  const used = [...taken];
  const crowded: number[] = [];
  const items = groups.flatMap(({ number, places }) =>
    joinedWhereTheyMeet(places.map((place) => paperBoxOf(place, toPaper))).flatMap((box): Item[] => {
      const found = placeTag(String(number), box, used, within, measure);
      if (!found.isFree) crowded.push(number);
      used.push(found.box);
      return [cloud(box), ...drawTag(String(number), found.box)];
    }),
  );
  return { items, crowded };
}

/** One cloud about both where a thing was and where it is, if two would run into each other. */
function joinedWhereTheyMeet(boxes: readonly PaperBox[]): PaperBox[] {
  return boxes.reduce<PaperBox[]>((apart, next) => {
    const meets = apart.findIndex((box) => boxesOverlap(withBows(box), withBows(next)));
    if (meets < 0) return [...apart, next];
    const other = apart[meets]!;
    const both = {
      left: Math.min(other.left, next.left),
      bottom: Math.min(other.bottom, next.bottom),
      right: Math.max(other.right, next.right),
      top: Math.max(other.top, next.top),
    };
    return joinedWhereTheyMeet([...apart.toSpliced(meets, 1), both]);
  }, []);
}

function withBows(box: PaperBox): PaperBox {
  return grownBox(box, bow * 0.33);
}

/** A closed line of outward bows round a box. */
function cloud({ left, bottom, right, top }: PaperBox): Stroke {
  const corners = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
  const points = corners.flatMap((from, i) => {
    const to = corners[(i + 1) % 4]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const bows = Math.max(1, Math.round(length / bow));
    return Array.from({ length: bows }, (_, b) =>
      bowPoints(along(from, to, b / bows), along(from, to, (b + 1) / bows)),
    ).flat();
  });
  return { kind: 'stroke', points, closed: true, width: 0.35, colour: 'red-lead' };
}

/** An arc of a third of its chord in height, to the right of the way from `a` to `b`: outside, as the box goes anticlockwise. */
function bowPoints(a: PaperPoint, b: PaperPoint): PaperPoint[] {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  return [0, 0.2, 0.4, 0.6, 0.8].map((t) => {
    const rise = 4 * t * (1 - t) * 0.33;
    return { x: a.x + dx * t + dy * rise, y: a.y + dy * t - dx * rise };
  });
}

function placeTag(
  number: string,
  box: PaperBox,
  used: readonly PaperBox[],
  within: PaperBox,
  measure: TextMeasure,
): { box: PaperBox; isFree: boolean } {
  const half = Math.max(tag, measure(number, numberHeight, { weight: 'semi-bold' }) / 2 + 1);
  const out = grownBox(box, bow * 0.33 + 0.4);
  const [middleX, middleY] = [(box.left + box.right) / 2, (box.bottom + box.top) / 2];
  const centres: readonly (readonly [Mm, Mm])[] = [
    [out.right + half, out.top + tag],
    [out.left - half, out.top + tag],
    [middleX, out.top + tag],
    [out.right + half, out.bottom - tag],
    [out.left - half, out.bottom - tag],
    [middleX, out.bottom - tag],
    [out.right + half, middleY],
    [out.left - half, middleY],
    [box.right - half - 1, box.top - tag - 1],
    [box.left + half + 1, box.bottom + tag + 1],
    [middleX, middleY],
    ...[1, 2, 3, 4].flatMap((row): (readonly [Mm, Mm])[] => [
      [out.right + half + 5 * row, out.top + tag + 5 * row],
      [out.left - half - 5 * row, out.top + tag + 5 * row],
      [out.right + half + 5 * row, out.bottom - tag - 5 * row],
      [out.left - half - 5 * row, out.bottom - tag - 5 * row],
    ]),
  ];
  const boxes = centres.map(([x, y]): PaperBox => ({
    left: x - half,
    right: x + half,
    bottom: y - tag,
    top: y + tag,
  }));
  const inside = boxes.filter(
    (one) =>
      one.left >= within.left &&
      one.right <= within.right &&
      one.bottom >= within.bottom &&
      one.top <= within.top,
  );
  const free = inside.find((one) => !used.some((other) => boxesOverlap(one, other)));
  return { box: free ?? inside[0] ?? boxes[0]!, isFree: free !== undefined };
}

function drawTag(number: string, { left, bottom, right, top }: PaperBox): Item[] {
  const corners = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
  const text: Text = {
    kind: 'text',
    text: number,
    at: { x: (left + right) / 2, y: (bottom + top) / 2 - numberHeight / 2 },
    height: numberHeight,
    weight: 'semi-bold',
    anchor: 'middle',
    colour: 'red-lead',
  };
  return [
    { kind: 'fill', rings: [corners], colour: 'white' },
    { kind: 'stroke', points: corners, closed: true, width: 0.35, colour: 'red-lead' },
    text,
  ];
}

function paperBoxOf({ x, y, width, height }: MmBox, toPaper: ToPaper): PaperBox {
  const low = toPaper({ x: toHundredth(x), y: toHundredth(y) });
  const high = toPaper({ x: toHundredth(x + width), y: toHundredth(y + height) });
  return grownBox({ left: low.x, bottom: low.y, right: high.x, top: high.y }, clearance);
}

function along(a: PaperPoint, b: PaperPoint, t: number): PaperPoint {
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}
