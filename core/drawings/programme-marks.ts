import type { Mm } from '../units';
import type { KeyEntry } from './drawing-key';
import type { Item, PaperPoint } from './page';
import { cornersOf, type PaperBox } from './paper';
import { shading } from './programme-axis';
import type { ChartTask } from './programme-rows';

/*
 * How tasks, waits and events are drawn: told apart by their shapes, so that they photocopy. Critical is filled and high,
 * and says so in words beside it.
 */

/** Half heights. */
const criticalBar: Mm = 1.5;
const usualBar: Mm = 0.9;
const eventSize: Mm = 1.5;
/** A task of minutes is still to be seen. */
const leastWidth: Mm = 0.7;

/** What a row shows in its line; nothing of a dummy. */
export function drawTask(
  { mark, critical, start, finish, waits }: ChartTask,
  across: (minute: number) => Mm,
  y: Mm,
): Item[] {
  if (mark === 'none') return [];
  const from = across(start);
  const to = Math.max(across(finish), from + leastWidth);
  const lines = waits.flatMap((wait) => drawWait(across(wait.start), across(wait.finish), y));
  if (mark === 'event') return [...lines, ...drawEvent(from, y, critical)];
  if (mark === 'visit') return drawVisit(from, to, y);
  return [...lines, ...(critical ? drawCritical(from, to, y) : drawUsual(from, to, y))];
}

function drawCritical(from: Mm, to: Mm, y: Mm): Item[] {
  return [{ kind: 'fill', rings: [cornersOf(about(from, to, y, criticalBar))], colour: 'ink' }];
}

function drawUsual(from: Mm, to: Mm, y: Mm): Item[] {
  const corners = cornersOf(about(from, to, y, usualBar));
  return [
    { kind: 'fill', rings: [corners], colour: 'white' },
    { kind: 'stroke', points: corners, closed: true, width: 0.25 },
  ];
}

/** A bracket over its days. */
function drawVisit(from: Mm, to: Mm, y: Mm): Item[] {
  const points = [
    { x: from, y: y - criticalBar },
    { x: from, y: y + usualBar },
    { x: to, y: y + usualBar },
    { x: to, y: y - criticalBar },
  ];
  return [{ kind: 'stroke', points, width: 0.5 }];
}

/** Broken, with a stroke where it is over. */
function drawWait(from: Mm, to: Mm, y: Mm): Item[] {
  return [
    { kind: 'stroke', points: [point(from, y), point(to, y)], width: 0.18, line: 'dashed' },
    { kind: 'stroke', points: [point(to, y - usualBar), point(to, y + usualBar)], width: 0.25 },
  ];
}

function drawEvent(x: Mm, y: Mm, critical: boolean): Item[] {
  const corners: PaperPoint[] = [
    point(x - eventSize, y),
    point(x, y - eventSize),
    point(x + eventSize, y),
    point(x, y + eventSize),
  ];
  return [
    { kind: 'fill', rings: [corners], colour: critical ? 'ink' : 'white' },
    { kind: 'stroke', points: corners, closed: true, width: 0.25 },
  ];
}

/** The signs, explained. */
export const programmeKey: readonly KeyEntry[] = [
  entry('critical task: what delays it delays the handover', drawCritical),
  entry('other task: it may move by its float', drawUsual),
  entry('it dries, hardens or cures; nobody works on it', drawWait),
  entry('event; filled: critical', (left, right, y) => [
    ...drawEvent(left + (right - left) / 4, y, false),
    ...drawEvent(right - (right - left) / 4, y, true),
  ]),
  entry('visit of the crew', drawVisit),
  { words: 'day without work', sample: (box) => shading(box) },
];

function entry(words: string, draw: (left: Mm, right: Mm, y: Mm) => Item[]): KeyEntry {
  return { words, sample: ({ left, right, bottom, top }) => draw(left, right, (bottom + top) / 2) };
}

function about(left: Mm, right: Mm, y: Mm, half: Mm): PaperBox {
  return { left, right, bottom: y - half, top: y + half };
}

function point(x: Mm, y: Mm): PaperPoint {
  return { x, y };
}
