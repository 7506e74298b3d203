import type { Mm } from '../units';
import { drawOverall } from './dimension';
import type { Item, Stroke, Text, TextHeight, TextMeasure } from './page';
import { boxesOverlap, type PaperBox } from './paper';
import type { WriteLength } from './paper-figures';
import { paperX, paperY, type View, type WallPart } from './setting-out-view';
import { textBox } from './text';
import { cornerWords, distances, type WallEnd, type ZoneAtEnd } from './wall-ends';

/** By how much dimensions stand further off where words stand between them and a corner. */
export const besideFold: Mm = 5;

/** The ends of a wall that this part of it reaches. */
export function endsOfPart(ends: readonly WallEnd[], { beyond }: WallPart): WallEnd[] {
  return ends.filter(({ side }) => beyond[side] === undefined);
}

/**
 * The corners at the ends of a wall: a chain line, words along it that say which wall and which zones go on there, and from
 * the corner to the nearest joint a dimension.
 */
export function foldMarks(
  ends: readonly WallEnd[],
  view: View,
  box: PaperBox,
  height: TextHeight,
  measure: TextMeasure,
): Item[] {
  const items: Item[] = [];
  for (const end of ends) {
    items.push(
      chain(end.side === 'right' ? box.right : box.left, box),
      ...wordsAlong(end, box, view.write, measure),
    );
    for (const zone of end.zones) {
      const dimension = toJoint(end, zone, view, height, measure);
      // Between zones close over one another there may be no room; the notes have the figure.
      if (!liesOn(dimension, items, measure)) items.push(...dimension);
    }
  }
  return items;
}

function liesOn(added: readonly Item[], items: readonly Item[], measure: TextMeasure): boolean {
  const boxes = (list: readonly Item[]) =>
    list.flatMap((item) => (item.kind === 'text' ? [textBox(item, measure)] : []));
  const there = boxes(items);
  return boxes(added).some((box) => there.some((other) => boxesOverlap(box, other)));
}

function chain(x: Mm, { bottom, top }: PaperBox): Stroke {
  return {
    kind: 'stroke',
    points: [
      { x, y: bottom - 4 },
      { x, y: top + 4 },
    ],
    width: 0.35,
    line: 'long-dashed-double-dotted',
  };
}

function wordsAlong(end: WallEnd, box: PaperBox, write: WriteLength, measure: TextMeasure): Text[] {
  const height: TextHeight = 2.5;
  const style = { face: 'condensed', weight: 'semi-bold' } as const;
  const y = (box.bottom + box.top) / 2;
  const most = box.top - box.bottom - 2;
  const lines = [
    [cornerWords(end), `${end.corner.kind}, wall ${end.other}`, `wall ${end.other}`],
    end.zones.length > 0
      ? [
          `${goingOn(end)}${firstJoints(end, write)}`,
          goingOn(end),
          `${end.zones.map(({ id }) => id).join(', ')}: wall ${end.other}`,
        ]
      : [],
  ];
  return lines.flatMap((variants, i): Text[] => {
    const text = variants.find((words) => measure(words, height, style) <= most);
    if (!text) return [];
    const away = 1.6 + i * (height + 1.6);
    const x = end.side === 'right' ? box.right + away + height : box.left - away;
    return [{ kind: 'text', text, height, ...style, anchor: 'middle', turned: 90, at: { x, y } }];
  });
}

function goingOn({ zones, other }: WallEnd): string {
  const ids = zones.map(({ id }) => id);
  return `${ids.join(', ')} ${ids.length === 1 ? 'continues' : 'continue'} on wall ${other}`;
}

/** Only of a single zone: of several the notes say it. */
function firstJoints({ zones }: WallEnd, write: WriteLength): string {
  const [zone, more] = zones;
  if (!zone || more || zone.otherJoints.length === 0) return '';
  return `, first joint ${distances(zone.otherJoints, write)} from the corner`;
}

/** Over the zone, or under it where it reaches the top: from the corner to the joint of the lowest course. */
function toJoint(
  end: WallEnd,
  { heights, joints }: ZoneAtEnd,
  view: View,
  height: TextHeight,
  measure: TextMeasure,
): Item[] {
  const [joint] = joints;
  if (joint === undefined || !heights) return [];
  const { left, right, bottom, top } = view.shown;
  const place = end.side === 'right' ? end.at - joint : end.at + joint;
  const [foot, head] = heights.map((mm) => mm * 100) as [number, number];
  if (place < left || place > right || foot < bottom || head > top) return [];
  const isOver = paperY(view, top) - paperY(view, head) > height + 6;
  const edge = isOver ? paperY(view, head) : paperY(view, foot);
  const line = isOver ? edge + 3 : edge - height - 2.2;
  const [a, b] = [paperX(view, place), paperX(view, end.at)].sort((one, other) => one - other) as [Mm, Mm];
  const figure = view.write(joint);
  const items = drawOverall('foot', line, a, b, figure, height);
  const width = measure(figure, height, { face: 'condensed' });
  const ticks: Stroke[] = [a, b]
    .filter((x) => Math.abs(x - paperX(view, end.at)) > 0.01)
    .map((x) => ({
      kind: 'stroke',
      points: [
        { x, y: isOver ? edge + 0.8 : edge - 0.8 },
        { x, y: isOver ? line + 1.5 : line - 1.5 },
      ],
      width: 0.18,
      colour: 'soft',
    }));
  if (width + 2 <= b - a) return [...ticks, ...items];
  // Too narrow for its figure, which then stands on the side away from the corner.
  const outside: Text = {
    kind: 'text',
    text: figure,
    height,
    face: 'condensed',
    anchor: end.side === 'right' ? 'end' : 'start',
    at: { x: end.side === 'right' ? a - 1.5 : b + 1.5, y: line - height / 2 },
  };
  return [...ticks, ...items.filter(({ kind }) => kind !== 'text'), outside];
}
