import type { Mm } from '../units';
import type { Item, PaperPoint, Stroke, Text, TextMeasure } from './page';
import { grownBox, type PaperBox } from './paper';
import { createPlacedBoxes, type PlacedBoxes } from './place-labels';
import { crosses } from './setting-out-view';
import { textBox } from './text';

/** A page that fills up with labels: what they must not touch, and what they should rather not. */
export interface LabelRoom {
  readonly bounds: PaperBox;
  readonly measure: TextMeasure;
  /** Texts and symbols: never touched. */
  readonly taken: PlacedBoxes;
  /** Lines: crossed only where there is no other place; they are broken round the text then. */
  readonly lines: PlacedBoxes;
  /** Boxes of the texts alone, for breaking lines. */
  readonly textBoxes: PaperBox[];
}

export function createLabelRoom(bounds: PaperBox, measure: TextMeasure): LabelRoom {
  return { bounds, measure, taken: createPlacedBoxes(), lines: createPlacedBoxes(), textBoxes: [] };
}

/** Free space round every text. */
const clearance = 0.5;

/** A text that stands where it must, such as a figure of a running dimension. */
export function occupy(room: LabelRoom, text: Text): void {
  const box = grownBox(textBox(text, room.measure), clearance);
  room.taken.add(box);
  room.textBoxes.push(box);
}

/** A line's place, for labels to keep off: straight pieces as thin boxes, slanted ones as a row of them. */
export function keepOffLine(room: LabelRoom, points: readonly PaperPoint[], closed: boolean): void {
  const ends = closed ? [...points, points[0]!] : points;
  for (let i = 0; i + 1 < ends.length; i++) {
    const a = ends[i]!;
    const b = ends[i + 1]!;
    const slanted = Math.min(Math.abs(b.x - a.x), Math.abs(b.y - a.y)) > 0.1;
    const pieces = slanted ? Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 1.5) : 1;
    for (let p = 0; p < pieces; p++) {
      const from = between(a, b, p / pieces);
      const to = between(a, b, (p + 1) / pieces);
      room.lines.add({
        left: Math.min(from.x, to.x) - 0.1,
        right: Math.max(from.x, to.x) + 0.1,
        bottom: Math.min(from.y, to.y) - 0.1,
        top: Math.max(from.y, to.y) + 0.1,
      });
    }
  }
}

/**
 * The first candidate that touches nothing, else the first that touches only lines. It is then part of the
 * room.
 *
 * @param candidates asked for one by one, so that a list may be long where the first mostly fits
 * @param accept what else must hold for a candidate's box
 * @returns undefined if none has a place
 */
export function placeFirst(
  room: LabelRoom,
  candidates: Iterable<Text>,
  accept: (box: PaperBox) => boolean = () => true,
): Text | undefined {
  let onLines: { text: Text; box: PaperBox } | undefined;
  for (const text of candidates) {
    const box = grownBox(textBox(text, room.measure), clearance);
    const free = isInside(box, room.bounds) && room.taken.isFree(box);
    if (!free || (onLines && !room.lines.isFree(box)) || !accept(box)) continue;
    if (room.lines.isFree(box)) return settle(room, text, box);
    onLines = { text, box };
  }
  return onLines && settle(room, onLines.text, onLines.box);
}

function settle(room: LabelRoom, text: Text, box: PaperBox): Text {
  room.taken.add(box);
  room.textBoxes.push(box);
  return text;
}

const reaches: readonly Mm[] = [6, 9, 12, 16, 20, 25, 30, 36, 43, 50];
const directions = 24;

/**
 * A text beside what it names, joined to it by a leader that ends in a dot there and crosses no other text.
 *
 * @returns undefined if there is no such place within 50 mm
 */
export function placeWithLeader(
  room: LabelRoom,
  text: Text,
  target: PaperPoint,
): { text: Text; leader: Item[] } | undefined {
  const half = room.measure(text.text, text.height, text) / 2;
  for (const avoidLines of [true, false]) {
    for (const reach of reaches) {
      for (let d = 0; d < directions; d++) {
        const angle = (2 * Math.PI * (d + 0.5)) / directions + Math.PI / 4;
        const middle = { x: target.x + reach * Math.cos(angle), y: target.y + reach * Math.sin(angle) };
        const candidate: Text = {
          ...text,
          at: { x: middle.x - half, y: middle.y - text.height / 2 },
          anchor: 'start',
        };
        const box = grownBox(textBox(candidate, room.measure), clearance);
        if (!isInside(box, room.bounds) || !room.taken.isFree(box)) continue;
        if (avoidLines && !room.lines.isFree(box)) continue;
        const end = edgeTowards(box, target);
        if (room.textBoxes.some((other) => crosses(target, end, other))) continue;
        room.taken.add(box);
        room.textBoxes.push(box);
        keepOffLeader(room, target, end);
        return { text: candidate, leader: leaderItems(target, end, text.colour) };
      }
    }
  }
  return undefined;
}

/** Later texts must not stand on a leader. */
function keepOffLeader(room: LabelRoom, from: PaperPoint, to: PaperPoint): void {
  const steps = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y));
  for (let i = 0; i <= steps; i++) {
    const { x, y } = between(from, to, i / steps);
    room.taken.add({ left: x - 0.3, right: x + 0.3, bottom: y - 0.3, top: y + 0.3 });
  }
}

function leaderItems(target: PaperPoint, end: PaperPoint, colour: Text['colour']): Item[] {
  const line: Stroke = { kind: 'stroke', points: [target, end], width: 0.18, ...(colour && { colour }) };
  return [line, { kind: 'circle', centre: target, radius: 0.45, fill: colour ?? 'ink' }];
}

/** The point of a box nearest to a target outside it. */
function edgeTowards({ left, bottom, right, top }: PaperBox, { x, y }: PaperPoint): PaperPoint {
  return { x: Math.min(Math.max(x, left), right), y: Math.min(Math.max(y, bottom), top) };
}

function isInside(box: PaperBox, bounds: PaperBox): boolean {
  return (
    bounds.left <= box.left &&
    box.right <= bounds.right &&
    bounds.bottom <= box.bottom &&
    box.top <= bounds.top
  );
}

function between(a: PaperPoint, b: PaperPoint, t: number): PaperPoint {
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}
