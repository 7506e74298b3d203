import { boxOf } from '../../../core/geometry/polygon';
import type { HungVerdict } from '../../../core/holding/judge-wall';
import type { HungItem } from '../../../core/job/hung-schema';
import { stateOf, stateOnDrawing } from '../../hanging/state-words';
import { toScreen } from '../frame';
import { polygonOf } from '../rings';
import { placeLabels, type PlacedLabel } from './hung-labels';
import { paintHungSymbol } from './hung-symbols';
import { widthOfWords } from './measured-words';
import { condensed, inks, screenBox, type Pen } from './pen';
import { paintStateMark } from './state-mark';
import type { PxArea } from './zone-name';

export interface HungDrawing {
  readonly items: readonly HungItem[];
  /** By the items' ids, as last worked out; null where states are not shown. */
  readonly verdicts: ReadonlyMap<string, HungVerdict> | null;
  /** Of magnets by their ids, mm. */
  readonly diameterOf: (magnet: string) => number | undefined;
  /** Where no label may lie, px. */
  readonly taken: (pen: Pen) => readonly PxArea[];
  /** The item whose handles stand about it. */
  readonly chosen: string | null;
  /** Only outlines: another station's work is in the foreground. */
  readonly faint: boolean;
}

const labelFont = `600 13px ${condensed}`;
/** px between an item and its state, and where handles stand between the two. */
const away = 3;
const awayOfHandles = 17;
/** px that the label of a small item may be wide: enough for its shortest word. */
const leastWords = 60;
/** px to a millimetre from which magnets are shown. */
const zoomedIn = 0.45;

/** What hangs on the wall: each thing as it looks, its state in a shape and in words at its corner. */
export function paintHung(
  pen: Pen,
  { items, verdicts, diameterOf, taken, chosen, faint }: HungDrawing,
): void {
  const { context, frame } = pen;
  if (faint) context.globalAlpha = 0.35;
  const shown = items.map((item) => ({ item, box: boxOnScreen(pen, item) })).filter(isOnScreen(pen));
  for (const { item } of shown) {
    if (faint) outline(pen, item);
    else paintHungItem(pen, item);
  }
  if (faint || !verdicts) return;
  if (frame.scale >= zoomedIn) for (const { item } of shown) paintMagnets(pen, item, diameterOf, inks.soft);
  const judged = shown.flatMap(({ item, box }) => {
    const verdict = verdicts.get(item.id);
    return verdict ? [{ item, box, verdict }] : [];
  });
  // What does not plainly hold has the first choice of places, and all its words.
  judged.sort((a, b) => Number(a.verdict.verdict === 'holds') - Number(b.verdict.verdict === 'holds'));
  const labels = placeLabels(
    judged.map(({ item, box, verdict }) => ({
      box,
      words: stateOnDrawing(verdict),
      widest: verdict.verdict === 'holds' ? Math.max(leastWords, box.right - box.left) : Infinity,
      away: item.id === chosen ? awayOfHandles : away,
    })),
    { left: 0, top: 0, right: frame.width, bottom: frame.height },
    taken(pen),
    (words) => widthOfWords(labelFont, words),
  );
  labels.forEach((label, i) => paintLabel(pen, label, judged[i]!.verdict));
}

export function paintHungItem(pen: Pen, item: HungItem): void {
  const { context } = pen;
  const { left: x, top: y, right, bottom } = boxOnScreen(pen, item);
  const [width, height] = [right - x, bottom - y];
  context.fillStyle = inks.paper;
  context.fillRect(x, y, width, height);
  if (Math.min(width, height) >= 6) {
    context.save();
    context.beginPath();
    context.rect(x, y, width, height);
    context.clip();
    paintHungSymbol(pen, item.kind, { x, y, width, height });
    context.restore();
  }
  outline(pen, item);
}

/** An item in the hand, with its magnets and what was last said of it. */
export function paintHeldItem(
  pen: Pen,
  item: HungItem,
  verdict: HungVerdict | undefined,
  diameterOf: HungDrawing['diameterOf'],
): void {
  paintHungItem(pen, item);
  paintMagnets(pen, item, diameterOf, inks['red-lead']);
  if (!verdict) return;
  const { left, top } = boxOnScreen(pen, item);
  const text = stateOnDrawing(verdict)[0]!;
  paintLabel(pen, { x: left + 7.5, y: top - awayOfHandles - 8.5, text, isSmall: false }, verdict);
}

/** At their places, as large as they are; never too small to be seen. */
export function paintMagnets(
  { context, frame }: Pen,
  { x, y, magnets }: HungItem,
  diameterOf: HungDrawing['diameterOf'],
  ink: string,
): void {
  if (!magnets) return;
  const radius = Math.max(2.5, ((diameterOf(magnets.magnet) ?? 10) / 2) * frame.scale);
  context.strokeStyle = ink;
  context.lineWidth = 1.3;
  for (const [dx, dy] of magnets.places) {
    const { px, py } = toScreen(frame, { x: x + dx, y: y + dy });
    context.beginPath();
    context.arc(px, py, radius, 0, 2 * Math.PI);
    context.stroke();
  }
}

function paintLabel(pen: Pen, { x, y, text, isSmall }: PlacedLabel, verdict: HungVerdict): void {
  const { context } = pen;
  const state = stateOf(verdict);
  paintStateMark(pen, state, x, y, isSmall ? 0.7 : 1);
  if (!text) return;
  context.font = labelFont;
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  context.lineJoin = 'round';
  context.lineWidth = 4;
  context.strokeStyle = inks.paper;
  context.strokeText(text, x + 11.5, y + 0.5);
  context.lineJoin = 'miter';
  context.fillStyle = state === 'does not hold' ? inks['red-lead'] : inks.ink;
  context.fillText(text, x + 11.5, y + 0.5);
}

function outline(pen: Pen, item: HungItem): void {
  const { left, top, right, bottom } = boxOnScreen(pen, item);
  pen.context.strokeStyle = inks.ink;
  pen.context.lineWidth = 1.3;
  pen.context.strokeRect(left, top, right - left, bottom - top);
}

function boxOnScreen({ frame }: Pen, item: HungItem): PxArea {
  const { x, y, width, height } = screenBox(frame, boxOf(polygonOf(item).outer));
  return { left: x, top: y, right: x + width, bottom: y + height };
}

function isOnScreen({ frame }: Pen) {
  return ({ box }: { box: PxArea }) =>
    box.right > 0 && box.left < frame.width && box.bottom > 0 && box.top < frame.height;
}
