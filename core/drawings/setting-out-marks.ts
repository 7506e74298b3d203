import { placeFirst, type LabelRoom } from './label-room';
import type { Item, Stroke, Text, TextHeight } from './page';
import type { PaperBox } from './paper';
import { paperPoint, paperX, paperY, type View, type WallPart } from './setting-out-view';

/** The datum on the wall: an open circle with its centre lines; nothing where it is not on the page. */
export function datumMark(view: View): Item[] {
  const { left, right, bottom, top } = view.shown;
  if (left > 0 || right < 0 || bottom > 0 || top < 0) return [];
  const { x, y } = paperPoint(view, { x: 0, y: 0 });
  const reach = 3;
  return [
    { kind: 'circle', centre: { x, y }, radius: 1.5, width: 0.35, fill: 'white' },
    line({ x: x - reach, y }, { x: x + reach, y }, 0.25),
    line({ x, y: y - reach }, { x, y: y + reach }, 0.25),
  ];
}

/** The level that heights are taken from, as a chain line past both ends of the wall, and its name. */
export function levelLine(view: View, box: PaperBox, room: LabelRoom): { lines: Stroke[]; texts: Text[] } {
  if (view.shown.bottom > 0 || view.shown.top < 0) return { lines: [], texts: [] };
  const y = paperY(view, 0);
  const base = { kind: 'text', text: 'datum level: finished floor', height: 2.5, face: 'condensed' } as const;
  const below = y - 1.4 - base.height;
  const datum = paperX(view, 0);
  const candidates: Text[] = [
    { ...base, at: { x: box.right, y: below }, anchor: 'end' },
    { ...base, at: { x: Math.max(box.left, datum) + 5, y: below }, anchor: 'start' },
    { ...base, at: { x: (box.left + box.right) / 2, y: below }, anchor: 'middle' },
  ];
  const bounds: PaperBox = { ...box, bottom: box.bottom - 8.5, left: box.left - 8.5, right: box.right + 30 };
  const text = placeFirst({ ...room, bounds }, candidates);
  const chain: Stroke = {
    ...line({ x: box.left - 7, y }, { x: box.right + 7, y }, 0.18),
    line: 'long-dashed-dotted',
  };
  return { lines: [chain], texts: text ? [text] : [] };
}

/** Chain lines where the wall goes on, with the sheet that shows how. */
export function matchLines({ beyond }: WallPart, box: PaperBox, height: TextHeight): Item[] {
  const items: Item[] = [];
  const middleX = (box.left + box.right) / 2;
  const middleY = (box.bottom + box.top) / 2;
  const mark = (sheet: number, a: { x: number; y: number }, b: { x: number; y: number }, text: Text) => {
    items.push({ ...line(a, b, 0.35), line: 'long-dashed-double-dotted' });
    items.push({ ...text, text: `continues on sheet ${sheet}` });
  };
  const base = {
    kind: 'text',
    text: '',
    height,
    face: 'condensed',
    weight: 'semi-bold',
    anchor: 'middle',
  } as const;
  const { left, right, bottom, top } = beyond;
  if (left !== undefined) {
    const text: Text = { ...base, turned: 90, at: { x: box.left - 2, y: middleY } };
    mark(left, { x: box.left, y: box.bottom }, { x: box.left, y: box.top }, text);
  }
  if (right !== undefined) {
    const text: Text = { ...base, turned: 90, at: { x: box.right + 2 + height, y: middleY } };
    mark(right, { x: box.right, y: box.bottom }, { x: box.right, y: box.top }, text);
  }
  if (top !== undefined) {
    const text: Text = { ...base, at: { x: middleX, y: box.top + 2 } };
    mark(top, { x: box.left, y: box.top }, { x: box.right, y: box.top }, text);
  }
  if (bottom !== undefined) {
    const text: Text = { ...base, at: { x: middleX, y: box.bottom - 2 - height } };
    mark(bottom, { x: box.left, y: box.bottom }, { x: box.right, y: box.bottom }, text);
  }
  return items;
}

function line(a: { x: number; y: number }, b: { x: number; y: number }, width: Stroke['width']): Stroke {
  return { kind: 'stroke', points: [a, b], width };
}
