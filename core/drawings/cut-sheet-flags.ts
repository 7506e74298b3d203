import type { CutStep } from './cut-steps';
import type { Item, PaperPoint, Text, TextMeasure } from './page';
import { boxesOverlap, cornersOf, type PaperBox } from './paper';
import { spreadAlong } from './place-labels';
import type { Mm } from '../units';

/** Space that flags take outside the sketch, at its head and at its right. */
export const flagDepth: Mm = 7;

const flagHeight = 4;
const pole = 2;

interface Flag {
  readonly number: number;
  readonly width: Mm;
}

/**
 * A numbered flag at the end of each cut: at the head for upright cuts, at the right for level ones; cuts that end inside
 * the sheet carry it on their line.
 *
 * @param box the stock sheet on paper
 * @returns items, and the boxes of flags inside the sheet, which no label may cover
 */
export function drawFlags(
  steps: readonly CutStep[],
  box: PaperBox,
  toPaper: (point: { x: number; y: number }) => PaperPoint,
  measure: TextMeasure,
): { items: Item[]; inside: PaperBox[] } {
  const head: { at: Mm; flag: Flag }[] = [];
  const right: { at: Mm; flag: Flag }[] = [];
  const within: { flag: Flag; spots: PaperPoint[] }[] = [];
  for (const step of steps) {
    const flag = { number: step.number, width: measure(String(step.number), 2.5, flagStyle) + 1.8 };
    if (step.kind === 'open') {
      const ends = step.lines.flatMap(({ from, to }) => [toPaper(from), toPaper(to)]);
      const middles = step.lines.map(({ from, to }) => between(toPaper(from), toPaper(to), 0.5));
      within.push({ flag, spots: [...middleOf(ends, flag.width), ...middles] });
      continue;
    }
    const [from, to] = [toPaper(step.from), toPaper(step.to)];
    const high = Math.max(from.y, to.y);
    const far = Math.max(from.x, to.x);
    if (step.direction === 'upright' && high > box.top - 0.05) head.push({ at: from.x, flag });
    else if (step.direction === 'level' && far > box.right - 0.05) right.push({ at: from.y, flag });
    else {
      const [near, end] = from.x + from.y < to.x + to.y ? [from, to] : [to, from];
      within.push({ flag, spots: [0.85, 0.7, 0.5, 0.3, 0.15].map((share) => between(near, end, share)) });
    }
  }
  const inside: PaperBox[] = [];
  const items: Item[] = [];
  for (const { flag, spots } of within) {
    const boxes = spots.map((spot) => flagBox(spot, flag.width));
    const free = boxes.find((one) => inside.every((other) => !boxesOverlap(one, other))) ?? boxes[0]!;
    inside.push(free);
    items.push(...flagItems(free, flag));
  }
  items.push(...flagsAlong(head, 'head', box), ...flagsAlong(right, 'right', box));
  return { items, inside };
}

function flagsAlong(flags: { at: Mm; flag: Flag }[], side: 'head' | 'right', box: PaperBox): Item[] {
  const sorted = [...flags].sort((a, b) => a.at - b.at);
  const labels = sorted.map(({ at, flag }) => ({ at, size: side === 'head' ? flag.width : flagHeight }));
  const [low, high] = side === 'head' ? [box.left, box.right + flagDepth] : [box.bottom, box.top];
  const places = spreadAlong(labels, 0.7, low, high) ?? labels.map(({ at }) => at);
  return sorted.flatMap(({ at, flag }, i) => {
    const place = places[i]!;
    const centre =
      side === 'head'
        ? { x: place, y: box.top + pole + flagHeight / 2 }
        : { x: box.right + pole + flag.width / 2, y: place };
    const [foot, end] =
      side === 'head'
        ? [
            { x: at, y: box.top },
            { x: place, y: box.top + pole },
          ]
        : [
            { x: box.right, y: at },
            { x: box.right + pole, y: place },
          ];
    return [
      { kind: 'stroke', points: [foot, end], width: 0.25, colour: 'red-lead' } as Item,
      ...flagItems(flagBox(centre, flag.width), flag),
    ];
  });
}

const flagStyle = { face: 'condensed', weight: 'semi-bold' } as const;

function flagItems(box: PaperBox, { number }: Flag): Item[] {
  const ring = cornersOf(box);
  const text: Text = {
    kind: 'text',
    text: String(number),
    at: { x: (box.left + box.right) / 2, y: box.bottom + (flagHeight - 2.5) / 2 },
    height: 2.5,
    anchor: 'middle',
    colour: 'red-lead',
    ...flagStyle,
  };
  return [
    { kind: 'fill', rings: [ring], colour: 'white' },
    { kind: 'stroke', points: ring, closed: true, width: 0.25, colour: 'red-lead' },
    text,
  ];
}

function flagBox({ x, y }: PaperPoint, width: Mm): PaperBox {
  return { left: x - width / 2, right: x + width / 2, bottom: y - flagHeight / 2, top: y + flagHeight / 2 };
}

function between(a: PaperPoint, b: PaperPoint, share: number): PaperPoint {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

/** The middle of a cutout that is large enough to hold the flag. */
function middleOf(points: readonly PaperPoint[], width: Mm): PaperPoint[] {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [bottom, top] = [Math.min(...ys), Math.max(...ys)];
  if (right - left < width || top - bottom < flagHeight) return [];
  return [{ x: (left + right) / 2, y: (bottom + top) / 2 }];
}
