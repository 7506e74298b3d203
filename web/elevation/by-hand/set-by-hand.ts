import { locate } from '../../../core/geometry/polygon';
import type { HandChoice, HandPlace, HandPoint, Zone } from '../../../core/job/schema';
import type { MmBox, MmPoint } from '../../../core/job/shape';
import { pointWithin } from '../../../core/panels/by-hand/neighbours';
import type { Panel } from '../../../core/panels/panel';
import { toHundredth } from '../../../core/units';
import { putInHandChoice } from '../../job/changes/by-hand';
import type { Gesture, HandEvent } from '../gestures/gesture';
import type { Hand } from '../hand.svelte';
import { snap, toWholeMm, type SnapPart } from '../snap';
import { choose, type HandToolName } from '../tool';
import { anchorLines, type AnchorLine } from './anchor-lines';
import { joinByHand } from './join-by-hand';

/** Shows where what is chosen by hand would lie. */
export function aimByHand(hand: Hand, what: HandToolName, event: HandEvent): void {
  const axis = axisOf(what);
  const zone = axis && zoneAt(hand, event.at);
  if (!axis || !zone) {
    hand.guides = [];
    return;
  }
  const { guide } = aimedAt(hand, axis, event, zone);
  hand.guide([guide]);
}

/** A click with a tool in the hand. */
export function setByHand(hand: Hand, what: HandToolName, event: HandEvent): void {
  if (what === 'join') return pickForJoin(hand, event.at);
  if (what === 'no-joints') {
    hand.said = 'Drag from corner to corner over the place where no joint may lie';
    return;
  }
  const zone = zoneAt(hand, event.at);
  if (!zone) {
    hand.open.refused = 'There is no zone with steel panels there; click within one.';
    return;
  }
  const axis = axisOf(what);
  put(
    hand,
    zone,
    axis ? onLine(what, aimedAt(hand, axis, event, zone).at) : atPoint(what, { ...toWholeMm(event.at) }),
  );
}

/** The same in the middle of the chosen panel, as Enter does. */
export function setByHandAtChosen(hand: Hand, what: HandToolName): boolean {
  const { selection } = hand.open;
  const panel = selection?.kind === 'panel' && hand.panels.find(({ mark }) => mark === selection.id);
  if (!panel) {
    hand.said = 'Choose a panel first, or click on the drawing';
    return true;
  }
  const zone = zoneOfPanel(hand, panel);
  if (!zone || what === 'join' || what === 'no-joints') return true;
  setAtPanel(hand, what, panel, zone);
  return true;
}

export function setAtPanel(hand: Hand, what: HandToolName, panel: Panel, zone: Zone): void {
  const { x, y } = pointWithin(panel.outline);
  const at = { x: x / 100, y: y / 100 };
  put(hand, zone, axisOf(what) ? onLine(what, at) : atPoint(what, { ...at }));
}

/** A rectangle drawn over the place where no joint may lie. */
export function pressByHand(hand: Hand, start: HandEvent, what: HandToolName): Gesture | null {
  const zone = what === 'no-joints' ? zoneAt(hand, start.at) : undefined;
  if (!zone || !hand.wall) return null;
  const lines = anchorLines(hand.wall, zone.id);
  const corner = (event: HandEvent) => {
    const at = toWholeMm(event.at);
    const { by, guides } = snap(corners(at), lines, hand.snapReachOf(event));
    hand.guide(guides);
    return { x: at.x + by.x, y: at.y + by.y };
  };
  const from = corner(start);
  let to = from;
  return {
    move(event) {
      to = corner(event);
      hand.byHand.band = boxBetween(from, to);
    },
    end() {
      const { x, y, width, height } = boxBetween(from, to);
      hand.byHand.band = null;
      hand.guides = [];
      if (width < 1 || height < 1) return setByHand(hand, what, start);
      const place = (axis: 'x' | 'y', at: number) => placeOf(lines, axis, at);
      put(hand, zone, {
        kind: 'no-joints',
        left: place('x', x),
        right: place('x', x + width),
        bottom: place('y', y),
        top: place('y', y + height),
      });
    },
    cancel() {
      hand.byHand.band = null;
      hand.guides = [];
    },
  };
}

function pickForJoin(hand: Hand, at: MmPoint): void {
  const panel = panelAt(hand, at);
  const { first } = hand.byHand;
  if (!panel) {
    hand.open.refused = 'There is no panel there; click a panel, then the one beside it.';
    return;
  }
  if (!first || first.mark === panel.mark) {
    hand.byHand.first = first ? null : { mark: panel.mark, at: toWholeMm(at) };
    hand.said = first ? 'Nothing picked to join' : `Panel ${panel.mark} picked; now the one beside it`;
    return;
  }
  const one = hand.panels.find(({ mark }) => mark === first.mark);
  hand.byHand.first = null;
  if (one && joinByHand(hand, one, panel, [first.at, toWholeMm(at)])) hand.takeUp(choose);
}

/** Made, said, and the tool put away; what refuses it stays in the hand. */
function put(hand: Hand, zone: Zone, choice: Omit<HandChoice, 'id'>): void {
  if (hand.wall && hand.make(putInHandChoice(hand.wall.id, zone, choice))) hand.takeUp(choose);
}

function onLine(what: HandToolName, at: HandPoint): Omit<HandChoice, 'id'> {
  const direction = axisOf(what) === 'y' ? 'level' : 'upright';
  return { kind: what.startsWith('split') ? 'split' : 'joint-on-line', direction, at };
}

function atPoint(what: HandToolName, at: HandPoint): Omit<HandChoice, 'id'> {
  return { kind: what, at };
}

function axisOf(what: HandToolName): 'x' | 'y' | null {
  if (what === 'upright-joint' || what === 'split-upright') return 'x';
  return what === 'level-joint' || what === 'split-level' ? 'y' : null;
}

/** On whole millimetres, or on an edge that is near, which it then stays with. */
function aimedAt(hand: Hand, axis: 'x' | 'y', event: HandEvent, zone: Zone) {
  const at = toWholeMm(event.at);
  const lines = hand.wall ? anchorLines(hand.wall, zone.id) : [];
  const part: SnapPart = { axis, at: at[axis], words: 'joint', kind: 'edge' };
  const { by, guides } = snap([part], lines, hand.snapReachOf(event));
  const line = at[axis] + by[axis];
  const place = guides.length > 0 ? placeOf(lines, axis, line) : line;
  return {
    at: { ...at, [axis]: place } as HandPoint,
    guide: guides[0] ?? { axis, at: line, words: `${axis === 'x' ? 'upright' : 'level'} joint at ${line}` },
  };
}

function placeOf(lines: readonly AnchorLine[], axis: 'x' | 'y', at: number): HandPlace {
  return lines.find((line) => line.axis === axis && Math.abs(line.at - at) < 0.005)?.place ?? at;
}

function corners({ x, y }: MmPoint): SnapPart[] {
  return [
    { axis: 'x', at: x, words: 'corner', kind: 'edge' },
    { axis: 'y', at: y, words: 'corner', kind: 'edge' },
  ];
}

function boxBetween(a: MmPoint, b: MmPoint): MmBox {
  const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)];
  return { x, y, width: Math.abs(a.x - b.x), height: Math.abs(a.y - b.y) };
}

/** The zone with steel that has a point: in its area first, else within its shape. */
export function zoneAt(hand: Hand, { x, y }: MmPoint): Zone | undefined {
  const at = { x: toHundredth(x), y: toHundredth(y) };
  const steel = hand.worked?.zones.filter(({ layout }) => layout) ?? [];
  const found =
    steel.find(({ area }) => area.area.some((part) => locate(at, part) !== 'outside')) ??
    steel.find(({ area }) => locate(at, area.shapePolygon) !== 'outside');
  return hand.wall?.zones.find(({ id }) => id === found?.area.zone.id);
}

export function panelAt(hand: Hand, { x, y }: MmPoint): Panel | undefined {
  const at = { x: toHundredth(x), y: toHundredth(y) };
  return hand.panels.find(({ outline }) => locate(at, outline) === 'inside');
}

export function zoneOfPanel(hand: Hand, panel: Panel): Zone | undefined {
  const worked = hand.worked?.zones.find(({ layout }) => layout?.panels.includes(panel));
  return hand.wall?.zones.find(({ id }) => id === worked?.area.zone.id);
}
