import type { Point } from '../../../core/geometry/polygon';
import { patternOf } from '../../../core/panels/grid';
import { cornerInside, cornerNear, nearestOf, shiftAtHeight } from '../../../core/panels/start-snaps';
import type { MmPoint } from '../../../core/job/shape';
import { setLayout } from '../../job/changes/zones';
import type { Gesture, HandEvent } from '../gestures/gesture';
import type { Hand } from '../hand.svelte';
import { snap, toWholeMm, type SnapLine } from '../snap';
import { snapLines } from '../snap-lines';

/** Where a zone's panels start, and where its handle is: a corner of a cell within the zone, mm. */
export function startHandle(hand: Hand, zoneId: string): MmPoint | null {
  const worked = hand.worked?.zones.find(({ area }) => area.zone.id === zoneId);
  const zone = hand.wall?.zones.find(({ id }) => id === zoneId);
  const stock = hand.open.job.stock.find(({ id }) => id === zone?.layout?.stock);
  if (!worked?.layout || !zone?.layout || !stock || worked.layout.panels.length === 0) return null;
  const { start: chosen } = zone.layout;
  // While it is dragged, the panels lag behind the hand.
  if (typeof chosen !== 'string' && hand.tool.kind === 'start' && hand.tool.zone === zoneId) return chosen;
  const { x, y } = cornerInside(worked.layout.start, worked.area.box, patternOf(zone.layout, stock));
  return { x: x / 100, y: y / 100 };
}

/** Zones whose start can be moved, with their handles; the one in the hand alone, if one is. */
export function startHandles(hand: Hand): { zone: string; at: MmPoint }[] {
  const { tool, open } = hand;
  if (open.station !== 'panels' || tool.kind === 'by-hand') return [];
  return (hand.wall?.zones ?? []).flatMap(({ id }) => {
    if (tool.kind === 'start' && tool.zone !== id) return [];
    const at = startHandle(hand, id);
    return at ? [{ zone: id, at }] : [];
  });
}

/** A press on the handle of a start. */
export function pressStart(hand: Hand, press: HandEvent): Gesture | null {
  const reach = (press.touch ? 22 : 10) / hand.view.frame.scale;
  const handle = startHandles(hand).find(
    ({ at }) => Math.hypot(at.x - press.at.x, at.y - press.at.y) <= reach,
  );
  return handle ? moveStart(hand, press, handle.zone, handle.at) : null;
}

function moveStart(hand: Hand, press: HandEvent, zone: string, from: MmPoint): Gesture | null {
  const { wall } = hand;
  if (!wall) return null;
  if (hand.tool.kind !== 'start') hand.takeUp({ kind: 'start', zone });
  const lines = snapLines(wall, { kind: 'zone', id: zone });
  return {
    move(event) {
      const to = { x: from.x + event.at.x - press.at.x, y: from.y + event.at.y - press.at.y };
      const straight = event.straight
        ? Math.abs(to.x - from.x) >= Math.abs(to.y - from.y)
          ? { x: to.x, y: from.y }
          : { x: from.x, y: to.y }
        : to;
      const at = drawn(hand, straight, lines, hand.snapReachOf(event));
      hand.open.preview(setLayout(wall.id, zone, { start: { ...at } }).change);
      hand.byHand.watch.look(inHundredths(at));
    },
    end() {
      hand.commit(setLayout(wall.id, zone, { start: 'best' }).name);
    },
    cancel() {
      hand.cancel();
    },
  };
}

/** Drawn to the best starts, to places where the panels change, and to edges. */
function drawn(hand: Hand, to: MmPoint, lines: readonly SnapLine[], reach: number): MmPoint {
  const { places, best } = hand.byHand.watch;
  const at = toWholeMm(to);
  if (places && best && reach > 0) {
    const corners = best.map(({ start }) => cornerNear(start, inHundredths(to), places.pattern));
    const near = corners.findIndex(({ x, y }) => Math.hypot(x / 100 - to.x, y / 100 - to.y) <= reach * 1.5);
    const corner = corners[near];
    if (corner) {
      const words = near === 0 ? 'the best start' : `the next best start ${near}`;
      const [x, y] = [corner.x / 100, corner.y / 100];
      hand.guide([
        { axis: 'x', at: x, words },
        { axis: 'y', at: y, words },
      ]);
      return { x, y };
    }
  }
  const parts = [
    { axis: 'x', at: at.x, words: 'start', kind: 'edge' },
    { axis: 'y', at: at.y, words: 'start', kind: 'edge' },
  ] as const;
  const { by, guides } = snap(parts, [...lines, ...changes(hand, at)], reach);
  hand.guide(guides);
  return { x: at.x + by.x, y: at.y + by.y };
}

/** The nearest places, each way, at which something changes. */
function changes(hand: Hand, at: MmPoint): SnapLine[] {
  const { places } = hand.byHand.watch;
  if (!places) return [];
  const { events, pattern, bottom } = places;
  const { x, y } = inHundredths(at);
  const shift = shiftAtHeight(y, bottom, pattern);
  const found = {
    x: nearestOf(events.x, x, pattern.pitchX, shift),
    y: nearestOf(events.y, y, pattern.pitchY, 0),
  };
  return (['x', 'y'] as const).flatMap((axis): SnapLine[] => {
    const place = found[axis];
    const words = 'a place where the panels change';
    return place === null ? [] : [{ axis, at: place / 100, words, kind: 'joint' }];
  });
}

/** An arrow key while the start is in the hand. */
export function nudgeStart(
  hand: Hand,
  zone: string,
  [x, y]: readonly [number, number],
  step: number,
  held: boolean,
): void {
  const at = startHandle(hand, zone);
  if (!at || !hand.wall) return;
  setStart(hand, zone, { x: at.x + x * step, y: at.y + y * step }, held);
}

export function setStart(hand: Hand, zone: string, start: MmPoint | 'best', held = false): boolean {
  return hand.wall
    ? hand.make(setLayout(hand.wall.id, zone, { start: start === 'best' ? start : { ...start } }), {
        merge: held,
      })
    : false;
}

function inHundredths({ x, y }: MmPoint): Point {
  return { x: Math.round(x * 100), y: Math.round(y * 100) };
}
