import type { CutStep } from './cut-steps';
import type { Item, PaperPoint, Text, TextMeasure } from './page';
import { boxesOverlap, cornersOf, type PaperBox } from './paper';
import { spreadAlong } from './place-labels';
import type { Mm } from '../units';

/** Space that flags take outside the sketch, at its head and at its right. */
export const flagDepth: Mm = 7;
/** Space above a sketch without flags there: its running dimensions reach so far. */
const clearOfSketch: Mm = 2;

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
 * @returns items; the boxes of flags inside the sheet, which no label may cover; the space they take above the
 *   sketch; whether every cut has its flag
 */
export function drawFlags(
  steps: readonly CutStep[],
  box: PaperBox,
  toPaper: (point: { x: number; y: number }) => PaperPoint,
  measure: TextMeasure,
): { items: Item[]; inside: PaperBox[]; above: Mm; isComplete: boolean } {
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
      within.push({
        flag,
        spots: [0.85, 0.7, 0.5, 0.3, 0.15, 0.95, 0.05].map((share) => between(near, end, share)),
      });
    }
  }
  const inside: PaperBox[] = [];
  const items: Item[] = [];
  let isComplete = true;
  for (const { flag, spots } of within) {
    const free = spots
      .flatMap((spot) => offsets.map(([x, y]) => ({ spot, centre: { x: spot.x + x, y: spot.y + y } })))
      .sort((one, other) => distance(one) - distance(other))
      .map(({ spot, centre }) => ({ spot, area: flagBox(centre, flag.width) }))
      .find(({ area }) => isInside(area, box) && inside.every((other) => !boxesOverlap(area, other)));
    if (!free) {
      // The list still says where the cut lies.
      isComplete = false;
      continue;
    }
    inside.push(free.area);
    items.push(...leader(free.spot, free.area), ...flagItems(free.area, flag));
  }
  for (const along of [flagsAlong(head, 'head', box), flagsAlong(right, 'right', box)]) {
    items.push(...along.items);
    isComplete &&= along.isComplete;
  }
  return { items, inside, above: head.length > 0 ? flagDepth : clearOfSketch, isComplete };
}

/** Beside a crowded cut the flag stands off it, tied by a leader. */
const offsets: readonly (readonly [Mm, Mm])[] = [0, 5, 9].flatMap((far): [Mm, Mm][] =>
  far === 0
    ? [[0, 0]]
    : [
        [far, 0],
        [-far, 0],
        [0, far],
        [0, -far],
      ],
);

function distance({ spot, centre }: { spot: PaperPoint; centre: PaperPoint }): Mm {
  return Math.hypot(spot.x - centre.x, spot.y - centre.y);
}

function isInside(one: PaperBox, box: PaperBox): boolean {
  return one.left >= box.left && one.right <= box.right && one.bottom >= box.bottom && one.top <= box.top;
}

function leader(spot: PaperPoint, flag: PaperBox): Item[] {
  const centre = { x: (flag.left + flag.right) / 2, y: (flag.bottom + flag.top) / 2 };
  if (distance({ spot, centre }) < 0.01) return [];
  return [{ kind: 'stroke', points: [spot, centre], width: 0.25, colour: 'red-lead' }];
}

function flagsAlong(
  flags: { at: Mm; flag: Flag }[],
  side: 'head' | 'right',
  box: PaperBox,
): { items: Item[]; isComplete: boolean } {
  const sorted = [...flags].sort((a, b) => a.at - b.at);
  const labels = sorted.map(({ at, flag }) => ({ at, size: side === 'head' ? flag.width : flagHeight }));
  const [low, high] = side === 'head' ? [box.left, box.right + flagDepth] : [box.bottom, box.top];
  const spread = spreadAlong(labels, betweenFlags, low, high);
  const places = spread ?? keptApart(labels);
  const items = sorted.flatMap(({ at, flag }, i): Item[] => {
    const place = places[i];
    if (place === undefined) return [];
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
  return { items, isComplete: spread !== undefined };
}

const betweenFlags: Mm = 0.7;

/** Where there is no room for all, those that stand at their cut clear of the one before. */
function keptApart(labels: readonly { readonly at: Mm; readonly size: Mm }[]): (Mm | undefined)[] {
  let end = -Infinity;
  return labels.map(({ at, size }) => {
    if (at - size / 2 < end + betweenFlags) return undefined;
    end = at + size / 2;
    return at;
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
