import { eachInterlockedPlace } from './interlock';
import { freeSpaces, occupy, type FreeSpaces } from './free-spaces';
import type { PanelKind, Pose } from './kinds';
import { contactAt, fitValue, tieValue, type Score, type Trial } from './score-place';
import { arePartedEdgeToEdge, type Boxes } from './separable';

/*
 * Filling one stock sheet, kind after kind, each panel at the place that scores best.
 *
 * Kerf is put on every panel's right and top and on the stock sheet's own, so that a panel w × h takes
 * (w + kerf) × (h + kerf) of a stock sheet (W + kerf) × (H + kerf): between two panels there is a kerf, at the
 * stock sheet's edge there is none.
 *
 * Cut freely, a panel takes only the rectangles that cover it, so that others come to lie in its notches and
 * holes. Cut edge to edge, it takes its whole box; the waste inside becomes a space of its own, opened after
 * the box has been cut out; and a place counts only if all boxes of the space can still be parted by cuts that
 * run right across.
 */

export interface FilledPlace {
  readonly kind: number;
  readonly pose: number;
  /** In the space's own frame. */
  readonly x: number;
  readonly y: number;
  /** 0 is the stock sheet itself, the others its `spaces` from 1. */
  readonly space: number;
}

/** The waste of a placed panel as a space: `host` is the number of the place, `waste` of its rectangle. */
export interface WasteSpace {
  readonly host: number;
  readonly waste: number;
}

export interface FilledSheet {
  readonly places: readonly FilledPlace[];
  /** From number 1; number 0 is the stock sheet. */
  readonly spaces: readonly WasteSpace[];
  /** True area of the panels on it. */
  readonly area: number;
}

export interface FillSettings {
  readonly kinds: readonly PanelKind[];
  readonly kerf: number;
  readonly edgeToEdge: boolean;
  readonly score: Score;
  /** Which way round each kind is tried first, by number; see `NestRule`. */
  readonly ways?: readonly Way[];
}

/** Which way round a panel lies: its box wider than high, higher than wide, or as the score has it. */
export type Way = 'lying' | 'standing' | 'either';

interface Space {
  readonly width: number;
  readonly height: number;
  readonly free: FreeSpaces;
  /** What is placed, kerf included. */
  readonly boxes: Boxes;
}

interface Candidate {
  value: number;
  tie: number;
  pose: number;
  x: number;
  y: number;
  space: number;
}

/**
 * Places as many panels as come to fit; takes them off `counts`.
 *
 * @param width, height of the sheet, without kerf
 * @param order numbers of kinds, tried in this order, each until no more of it fits
 * @param counts how many of each kind are left; changed
 * @returns null if nothing fits
 */
export function fillSheet(
  settings: FillSettings,
  width: number,
  height: number,
  order: readonly number[],
  counts: number[],
): FilledSheet | null {
  const { kinds, kerf, edgeToEdge, ways } = settings;
  const spaces: Space[] = [spaceOf(width + kerf, height + kerf)];
  const places: FilledPlace[] = [];
  const wasteSpaces: WasteSpace[] = [];
  let area = 0;
  for (const number of order) {
    const kind = kinds[number]!;
    const way = ways?.[number] ?? 'either';
    while (counts[number]! > 0) {
      const place =
        bestPlace(settings, spaces, kind, way) ??
        (way === 'either' ? null : bestPlace(settings, spaces, kind, 'either'));
      if (!place) break;
      const pose = kind.poses[place.pose]!;
      takePlace(settings, spaces[place.space]!, pose, place);
      if (edgeToEdge) {
        pose.waste.forEach(([left, bottom, right, top], waste) => {
          spaces.push(spaceOf(right - left + kerf, top - bottom + kerf));
          wasteSpaces.push({ host: places.length, waste });
        });
      }
      places.push({ kind: number, pose: place.pose, x: place.x, y: place.y, space: place.space });
      counts[number]!--;
      area += kind.area;
    }
  }
  return places.length === 0 ? null : { places, spaces: wasteSpaces, area };
}

function spaceOf(width: number, height: number): Space {
  return {
    width,
    height,
    free: freeSpaces(0, 0, width, height),
    boxes: { count: 0, left: [], bottom: [], right: [], top: [] },
  };
}

function takePlace(settings: FillSettings, space: Space, pose: Pose, { x, y }: Candidate): void {
  const { kerf, edgeToEdge } = settings;
  const take = (left: number, bottom: number, right: number, top: number) => {
    occupy(space.free, x + left, y + bottom, x + right + kerf, y + top + kerf, kerf + 1);
    addBox(space.boxes, x + left, y + bottom, x + right + kerf, y + top + kerf);
  };
  if (edgeToEdge) take(0, 0, pose.width, pose.height);
  else for (const [left, bottom, right, top] of pose.cover) take(left, bottom, right, top);
}

function addBox(boxes: Boxes, left: number, bottom: number, right: number, top: number): void {
  const i = boxes.count++;
  boxes.left[i] = left;
  boxes.bottom[i] = bottom;
  boxes.right[i] = right;
  boxes.top[i] = top;
}

/** Waste spaces come first: what fits there costs nothing. */
function bestPlace(
  settings: FillSettings,
  spaces: readonly Space[],
  kind: PanelKind,
  way: Way,
): Candidate | null {
  for (let number = spaces.length - 1; number >= 0; number--) {
    const space = spaces[number]!;
    if ((kind.isRectangle || settings.edgeToEdge) && !mayFit(space.free, kind, settings.kerf)) continue;
    const place = settings.edgeToEdge
      ? bestPartable(settings, space, number, kind, way)
      : bestOf(settings, space, number, kind, way, null);
    if (place) return place;
  }
  return null;
}

function mayFit(free: FreeSpaces, kind: PanelKind, kerf: number): boolean {
  const long = kind.longSide + kerf;
  const short = kind.shortSide + kerf;
  for (let i = 0; i < free.count; i++) {
    const width = free.right[i]! - free.left[i]!;
    const height = free.top[i]! - free.bottom[i]!;
    if ((width >= long && height >= short) || (width >= short && height >= long)) return true;
  }
  return false;
}

/** The best place at which the space still parts edge to edge. */
function bestPartable(
  settings: FillSettings,
  space: Space,
  number: number,
  kind: PanelKind,
  way: Way,
): Candidate | null {
  const refused: Candidate[] = [];
  for (;;) {
    const place = bestOf(settings, space, number, kind, way, refused);
    if (!place) return null;
    const pose = kind.poses[place.pose]!;
    const { boxes } = space;
    const { x, y } = place;
    addBox(boxes, x, y, x + pose.width + settings.kerf, y + pose.height + settings.kerf);
    const parts = arePartedEdgeToEdge(boxes);
    boxes.count--;
    if (parts) return place;
    refused.push(place);
  }
}

function bestOf(
  settings: FillSettings,
  space: Space,
  number: number,
  kind: PanelKind,
  way: Way,
  refused: readonly Candidate[] | null,
): Candidate | null {
  const { kerf, score, edgeToEdge } = settings;
  const { free, boxes } = space;
  const { poses } = kind;
  let best: Candidate | null = null;
  const consider = (pose: number, trial: Trial) => {
    const { x, y } = trial;
    const value =
      score === 'contact'
        ? contactAt(boxes, space.width, space.height, poses[pose]!, x, y, kerf, edgeToEdge)
        : fitValue(score, trial);
    if (best && value < best.value) return;
    const tie = tieValue(score, trial);
    if (best && value === best.value && tie <= best.tie) return;
    if (refused?.some((place) => place.pose === pose && place.x === x && place.y === y)) return;
    best = { value, tie, pose, x, y, space: number };
  };
  for (let p = 0; p < poses.length; p++) {
    const pose = poses[p]!;
    if (way === 'lying' ? pose.width < pose.height : way === 'standing' && pose.width > pose.height) continue;
    // Two poses with the same box are the same to an edge-to-edge cut.
    if (edgeToEdge && isTwin(poses, p)) continue;
    const width = pose.width + kerf;
    const height = pose.height + kerf;
    for (let i = 0; i < free.count; i++) {
      const left = free.left[i]!;
      const bottom = free.bottom[i]!;
      const spareX = free.right[i]! - left - width;
      const spareY = free.top[i]! - bottom - height;
      if (spareX < 0 || spareY < 0) continue;
      const corners = score === 'contact' ? 4 : 1;
      for (let corner = 0; corner < corners; corner++) {
        if ((corner & 1 && spareX === 0) || (corner & 2 && spareY === 0)) continue;
        const x = corner & 1 ? left + spareX : left;
        const y = corner & 2 ? bottom + spareY : bottom;
        consider(p, { x, y, width, height, spareX, spareY });
      }
    }
    if (edgeToEdge || kind.isRectangle) continue;
    eachInterlockedPlace(free, pose, kerf, (x, y) =>
      consider(p, { x, y, width, height, spareX: 0, spareY: 0 }),
    );
  }
  return best;
}

function isTwin(poses: readonly Pose[], p: number): boolean {
  for (let q = 0; q < p; q++) {
    if (poses[q]!.width === poses[p]!.width && poses[q]!.height === poses[p]!.height) return true;
  }
  return false;
}
