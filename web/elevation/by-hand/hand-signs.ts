import { boxOf, locate, type Box, type Point } from '../../../core/geometry/polygon';
import type { Zone } from '../../../core/job/schema';
import { handWishes, type HandWish } from '../../../core/panels/by-hand/hand-wishes';
import type { ZoneLayout } from '../../../core/panels/panel';
import { stockTitle } from '../../job/changes/names';
import type { Frame } from '../frame';
import type { Hand } from '../hand.svelte';
import { widthOfWords } from '../layers/measured-words';
import { numberFont, numberOn, sizeFont, sizeOn } from '../layers/panel-texts';
import { acrossOf, condensed, downOf } from '../layers/pen';
import { startHandles } from './move-start';
import { placeSigns, type LooseSign, type PlacedSign, type Px, type PxArea } from './sign-places';

/** A choice by hand as the drawing shows it, and where its sign lies. */
export interface HandSign extends PlacedSign {
  readonly zone: string;
  readonly wish: ShownWish;
  readonly box: Box;
  readonly spot: Px;
  readonly glyph: string;
  readonly isChosen: boolean;
}

export type ShownWish = Exclude<HandWish, { kind: 'lost' | 'unknown' }>;

export const signFont = `600 12px ${condensed}`;

/** The signs of all that was chosen by hand on the wall on the screen, and still has a place there. */
export function handSigns(hand: Hand): HandSign[] {
  const { wall, worked, open } = hand;
  if (!wall || !worked || open.station !== 'panels') return [];
  const { frame } = hand.view;
  const found = worked.zones.flatMap(({ area, layout }) => {
    // What is under the hand is drawn where the hand is, the panels as they were last worked out.
    const zone = wall.zones.find(({ id }) => id === area.zone.id);
    if (!zone?.layout?.byHand || !layout) return [];
    return handWishes(wall, { ...area, zone }).flatMap((wish) =>
      wish.kind === 'lost' || wish.kind === 'unknown'
        ? []
        : [looseSign(hand, { zone, wish, layout, box: area.box }, frame)],
    );
  });
  if (found.length === 0) return [];
  const places = placeSigns(
    found.map(({ loose }) => loose),
    [...takenOn(hand, frame), ...found.flatMap(({ wish, box }) => bracketsOf(wish, box, frame))],
    frame,
  );
  return found.map(({ loose, ...sign }, i) => ({ ...sign, spot: loose.spot, ...places[i]! }));
}

interface Shown {
  readonly zone: Zone;
  readonly wish: ShownWish;
  readonly layout: ZoneLayout;
  readonly box: Box;
}

function looseSign(hand: Hand, { zone, wish, layout, box }: Shown, frame: Frame) {
  const outcome = layout.byHand?.find((one) => one.wish.id === wish.id);
  const { handChoice, selection } = hand.open;
  const isHeld = isSame(hand.byHand.moving, zone.id, wish.id);
  const { at, within } = placeOf(wish, layout, box);
  const isMet = !outcome || outcome.state === 'met';
  const texts = [
    `${wish.id} ${saysOf(hand, wish)}${isMet ? '' : ', not met'}`,
    isMet ? `${wish.id} ${shortOf(wish)}` : `${wish.id}, not met`,
    wish.id,
  ];
  const spot = { x: acrossOf(frame, at.x), y: downOf(frame, at.y) };
  const loose: LooseSign = {
    spot,
    within: within ? onScreen(frame, within) : aboutSpot(spot),
    words: [...new Set(texts)].map((text) => ({ text, width: widthOfWords(signFont, text) })),
    isHeld,
  };
  return {
    loose,
    zone: zone.id,
    wish,
    box,
    glyph: glyphOf(wish),
    isChosen: isSame(handChoice, zone.id, wish.id) && selection?.kind === 'zone' && selection.id === zone.id,
  };
}

function isSame(one: { zone: string; id: string } | null, zone: string, id: string): boolean {
  return one?.zone === zone && one.id === id;
}

/** Where a choice is, and where else its sign may lie: on its line, in its band, in the panel it is about. */
function placeOf(wish: ShownWish, layout: ZoneLayout, zone: Box): { at: Point; within: Box | null } {
  if (wish.kind === 'no-joints') {
    const band = bandBox(wish.band, zone);
    return { at: { x: (band.left + band.right) / 2, y: (band.bottom + band.top) / 2 }, within: band };
  }
  const { at } = wish;
  if (wish.kind === 'joint-on-line') {
    const on = wish.axis === 'x' ? { left: at.x, right: at.x } : { bottom: at.y, top: at.y };
    return { at: clampTo(at, zone), within: { ...zone, ...on } };
  }
  const panel = boxAbout(layout, wish);
  if (wish.kind !== 'split' || !panel) return { at, within: panel };
  const on = wish.axis === 'x' ? { left: at.x, right: at.x } : { bottom: at.y, top: at.y };
  return { at, within: { ...panel, ...on } };
}

/** The box of the panel that a choice is about, if there is one: a split lies in the joint that it has made. */
function boxAbout(layout: ZoneLayout, wish: Exclude<ShownWish, { kind: 'no-joints' }>): Box | null {
  const { at } = wish;
  const outlines = [...layout.panels, ...(layout.leftOut ?? [])].map(({ outline }) => outline);
  const inside = outlines.find((outline) => locate(at, outline) === 'inside');
  if (inside) return boxOf(inside.outer);
  if (wish.kind !== 'split') return null;
  const along = wish.axis === 'x' ? (['bottom', 'top'] as const) : (['left', 'right'] as const);
  const other = wish.axis === 'x' ? at.y : at.x;
  const beside = outlines
    .map(({ outer }) => boxOf(outer))
    .filter((box) => box[along[0]] < other && box[along[1]] > other)
    .sort((a, b) => awayFrom(a, at) - awayFrom(b, at))[0];
  return beside ?? null;
}

function awayFrom({ left, right, bottom, top }: Box, { x, y }: Point): number {
  return Math.max(left - x, x - right, 0) + Math.max(bottom - y, y - top, 0);
}

export function bandBox(band: Extract<ShownWish, { kind: 'no-joints' }>['band'], zone: Box): Box {
  return {
    left: band.left ?? zone.left,
    right: band.right ?? zone.right,
    bottom: band.bottom ?? zone.bottom,
    top: band.top ?? zone.top,
  };
}

function saysOf(hand: Hand, wish: ShownWish): string {
  if (wish.kind === 'other-stock') return `from ${stockTitle(hand.open.job, wish.stock)}`;
  return fullWords[wish.kind];
}

const fullWords = {
  'joint-on-line': 'joint here',
  'no-joints': 'no joints here',
  'whole-panel': 'whole',
  split: 'split',
  join: 'joined',
  'no-panel': 'no panel',
} as const;

function shortOf(wish: ShownWish): string {
  if (wish.kind === 'other-stock') return `from ${wish.stock}`;
  if (wish.kind === 'joint-on-line') return 'joint';
  return wish.kind === 'no-joints' ? 'no joints' : fullWords[wish.kind];
}

function glyphOf(wish: ShownWish): string {
  switch (wish.kind) {
    case 'joint-on-line':
      return wish.axis === 'x' ? '|' : '–';
    case 'split':
      return wish.axis === 'x' ? '↔' : '↕';
    case 'no-joints':
      return '×';
    case 'whole-panel':
      return '■';
    case 'join':
      return '+';
    case 'no-panel':
      return '∅';
    case 'other-stock':
      return '▤';
  }
}

/** Texts on panels and the handles of starts, which no sign may cover. */
function takenOn(hand: Hand, frame: Frame): PxArea[] {
  const texts = hand.panels.flatMap((panel): PxArea[] => {
    const number = numberOn(frame, panel);
    if (!number) return [];
    const size = sizeOn(frame, panel, (words) => widthOfWords(sizeFont, words));
    const areas = [lineArea(number.x, number.y, widthOfWords(numberFont, number.text))];
    return size ? [...areas, lineArea(size.x, size.y, size.width)] : areas;
  });
  const starts = startHandles(hand).map(({ at }) => {
    const [x, y] = [acrossOf(frame, at.x * 100), downOf(frame, at.y * 100)];
    return { left: x - 12, right: x + 12, top: y - 12, bottom: y + 12 };
  });
  return [...texts, ...starts];
}

/** The corners of a band, px: its brackets. */
function bracketsOf(wish: ShownWish, zone: Box, frame: Frame): PxArea[] {
  if (wish.kind !== 'no-joints') return [];
  const { left, right, top, bottom } = onScreen(frame, bandBox(wish.band, zone));
  return [left, right].flatMap((x) =>
    [top, bottom].map((y) => ({ left: x - 3, right: x + 3, top: y - 3, bottom: y + 3 })),
  );
}

/** A line of 12 px about its baseline. */
function lineArea(x: number, baseline: number, width: number): PxArea {
  return { left: x - 1, right: x + width + 1, top: baseline - 10, bottom: baseline + 3 };
}

/** px about a spot that no panel has. */
function aboutSpot({ x, y }: Px): PxArea {
  return { left: x - 44, right: x + 44, top: y - 44, bottom: y + 44 };
}

function onScreen(frame: Frame, { left, right, bottom, top }: Box): PxArea {
  return {
    left: acrossOf(frame, left),
    right: acrossOf(frame, right),
    top: downOf(frame, top),
    bottom: downOf(frame, bottom),
  };
}

function clampTo({ x, y }: Point, { left, right, bottom, top }: Box): Point {
  return { x: Math.min(right, Math.max(left, x)), y: Math.min(top, Math.max(bottom, y)) };
}
