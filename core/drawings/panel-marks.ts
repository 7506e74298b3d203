import { boxOf, type Polygon } from '../geometry/polygon';
import type { Panel } from '../panels/panel';
import type { Mm } from '../units';
import { placeFirst, placeWithLeader, type LabelRoom } from './label-room';
import type { Item, PaperPoint, Text, TextHeight } from './page';
import { boxHeight, boxWidth, type PaperBox } from './paper';
import { boxWithin, crossingsAt } from './ring-places';
import { paperBox, paperRing, type View } from './setting-out-view';

/**
 * The number of each panel in its lower left corner, where the fitter begins to read it; elsewhere inside the
 * panel if that is taken; beside it with a leader if it is too small.
 *
 * @returns the marks drawn, and the panels that had room for none
 */
export function markPanels(
  panels: readonly Panel[],
  view: View,
  room: LabelRoom,
): { items: Item[]; unmarked: string[] } {
  const height = markHeight(panels, view);
  const items: Item[] = [];
  const unmarked: string[] = [];
  // Inside first for all, so that no leader's number takes the place of a panel's own.
  const homeless = panels.filter((panel) => {
    const text = placeFirst(room, candidatesFor(panel, view, room, height), insideOf(panel.outline, view));
    if (text) items.push(text);
    return !text;
  });
  // What stands mostly beyond a match line has its mark on the other sheet.
  for (const panel of homeless.filter(({ outline }) => isMostlyShown(outline, view))) {
    const target = widestPlace(panel.outline, view, room.bounds);
    const aside = placeWithLeader(room, { ...baseOf(panel, 2.5), at: target }, target);
    if (aside) items.push(...aside.leader, aside.text);
    else unmarked.push(panel.mark);
  }
  return { items, unmarked };
}

/** "07" of "A-Z1-07": wall and zone are named on the drawing. */
export function shortMark({ mark }: Pick<Panel, 'mark'>): string {
  return mark.slice(mark.lastIndexOf('-') + 1);
}

/** Stands after the number of a closing panel; the drawing's note says what it means. */
export const closingSign = 'C';

/** `A-Z1-07`, `A-Z1-07 C` if it is a closing panel. */
export function signedMark({ mark, closing }: Pick<Panel, 'mark' | 'closing'>): string {
  return closing ? `${mark} ${closingSign}` : mark;
}

function isMostlyShown({ outer }: Polygon, { shown }: View): boolean {
  const box = boxOf(outer);
  const x = (box.left + box.right) / 2;
  const y = (box.bottom + box.top) / 2;
  return shown.left <= x && x <= shown.right && shown.bottom <= y && y <= shown.top;
}

/** One height for all marks of a drawing: large where most panels have room for it. */
function markHeight(panels: readonly Panel[], view: View): TextHeight {
  const roomy = panels.filter(({ outline }) => {
    const box = paperBox(view, boxOf(outline.outer));
    return Math.min(boxWidth(box), boxHeight(box)) >= 11;
  });
  return roomy.length * 3 >= panels.length * 2 ? 3.5 : 2.5;
}

function baseOf(panel: Panel, height: TextHeight): Omit<Text, 'at'> {
  return {
    kind: 'text',
    text: signedMark({ ...panel, mark: shortMark(panel) }),
    height,
    face: 'condensed',
    weight: 'semi-bold',
    colour: 'red-lead',
  };
}

const inset = 1.3;
const step = 2;

function* candidatesFor(panel: Panel, view: View, room: LabelRoom, height: TextHeight): Generator<Text> {
  const heights = height === 2.5 ? ([2.5] as const) : ([height, 2.5] as const);
  for (const h of heights) yield* placesIn(panel.outline, baseOf(panel, h), view, room);
}

function* placesIn(outline: Polygon, base: Omit<Text, 'at'>, view: View, room: LabelRoom): Generator<Text> {
  const box = overlap(paperBox(view, boxOf(outline.outer)), room.bounds);
  const { height } = base;
  const width = room.measure(base.text, height, base);
  for (const at of gridPlaces(box, width, height)) yield { ...base, at };
  for (const { x, y } of gridPlaces(box, height, width)) {
    yield { ...base, turned: 90, at: { x: x + height, y } };
  }
}

/** A text within a place of the wall, else beside it with a leader; [] where there is room for neither. */
export function labelPlace(outline: Polygon, base: Omit<Text, 'at'>, view: View, room: LabelRoom): Item[] {
  if (!isMostlyShown(outline, view)) return [];
  const inside = placeFirst(room, placesIn(outline, base, view, room), insideOf(outline, view));
  if (inside) return [inside];
  const target = widestPlace(outline, view, room.bounds);
  const aside = placeWithLeader(room, { ...base, at: target }, target);
  return aside ? [...aside.leader, aside.text] : [];
}

/** Lower left corners for a label, row by row from the lower left. */
function gridPlaces(box: PaperBox, width: Mm, height: Mm): PaperPoint[] {
  const spanX = boxWidth(box) - width - 2 * inset;
  const spanY = boxHeight(box) - height - 2 * inset;
  if (spanX < -1.4 || spanY < -1.4) return [];
  const columns = Math.max(1, Math.min(16, Math.floor(spanX / step) + 1));
  const rows = Math.max(1, Math.min(16, Math.floor(spanY / step) + 1));
  const along = (start: Mm, span: Mm, i: number, count: number) =>
    span <= 0 ? start + inset + span / 2 : start + inset + (count > 1 ? (span * i) / (count - 1) : 0);
  return Array.from({ length: rows * columns }, (_, n) => ({
    x: along(box.left, spanX, n % columns, columns),
    y: along(box.bottom, spanY, Math.floor(n / columns), rows),
  }));
}

function insideOf(outline: Polygon, view: View): (box: PaperBox) => boolean {
  const rings = [outline.outer, ...outline.holes].map((ring) => paperRing(view, ring));
  return (box) => boxWithin(box, rings);
}

/** The middle of the widest of some level lines across a panel: a point well inside it. */
function widestPlace(outline: Polygon, view: View, bounds: PaperBox): PaperPoint {
  const rings = [outline.outer, ...outline.holes].map((ring) => paperRing(view, ring));
  const box = overlap(paperBox(view, boxOf(outline.outer)), bounds);
  let best = { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 };
  let width = 0;
  for (let i = 1; i < 8; i++) {
    const y = box.bottom + (boxHeight(box) * (i === 1 ? 4 : i < 5 ? i - 1 : i)) / 8;
    const crossings = crossingsAt(rings, y);
    for (let c = 0; c + 1 < crossings.length; c += 2) {
      const from = Math.max(crossings[c]!, bounds.left);
      const to = Math.min(crossings[c + 1]!, bounds.right);
      if (to - from > width + 0.01) {
        width = to - from;
        best = { x: (from + to) / 2, y };
      }
    }
  }
  return best;
}

function overlap(a: PaperBox, b: PaperBox): PaperBox {
  return {
    left: Math.max(a.left, b.left),
    bottom: Math.max(a.bottom, b.bottom),
    right: Math.min(a.right, b.right),
    top: Math.min(a.top, b.top),
  };
}
