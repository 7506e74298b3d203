import { freeSpaces, occupy, type FreeSpaces } from './free-spaces';
import type { PanelKind, Pose } from './kinds';
import { arePartedEdgeToEdge, type Boxes } from './separable';

/*
 * Filling one stock sheet, kind after kind, each panel at the place that scores best.
 *
 * Kerf is put on every panel's right and top and on the sheet's own, so that a panel w × h takes
 * (w + kerf) × (h + kerf) of a sheet (W + kerf) × (H + kerf): between two panels there is a kerf, at the
 * sheet's edge there is none.
 *
 * Cut freely, a panel takes only the rectangles that cover it, so that others come to lie in its notches and
 * holes. Cut edge to edge, it takes its whole box; the waste inside becomes a space of its own, opened after
 * the box has been cut out; and a place counts only if all boxes of the space can still be parted by cuts that
 * run right across.
 *
 * Score source for contact: J. Jylänki, A Thousand Ways to Pack the Bin (2010), "Contact Point"; the others
 * are his "Best Area Fit", "Best Short Side Fit", "Best Long Side Fit" and "Bottom-Left".
 */

export type Score = 'contact' | 'area' | 'short-side' | 'long-side' | 'bottom-left';

export interface FilledPlace {
  readonly kind: number;
  readonly pose: number;
  /** In the space's own frame. */
  readonly x: number;
  readonly y: number;
  /** 0 is the sheet itself, the others its `spaces` from 1. */
  readonly space: number;
}

/** The waste of a placed panel as a space: `host` is the number of the place, `waste` of its rectangle. */
export interface WasteSpace {
  readonly host: number;
  readonly waste: number;
}

export interface FilledSheet {
  readonly places: readonly FilledPlace[];
  /** From number 1; number 0 is the sheet. */
  readonly spaces: readonly WasteSpace[];
  /** True area of the panels on it. */
  readonly area: number;
}

export interface FillSettings {
  readonly kinds: readonly PanelKind[];
  readonly kerf: number;
  readonly edgeToEdge: boolean;
  readonly score: Score;
}

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
  const { kinds, kerf, edgeToEdge } = settings;
  const spaces: Space[] = [spaceOf(width + kerf, height + kerf)];
  const places: FilledPlace[] = [];
  const wasteSpaces: WasteSpace[] = [];
  let area = 0;
  for (const number of order) {
    const kind = kinds[number]!;
    while (counts[number]! > 0) {
      const place = bestPlace(settings, spaces, kind);
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
function bestPlace(settings: FillSettings, spaces: readonly Space[], kind: PanelKind): Candidate | null {
  for (let number = spaces.length - 1; number >= 0; number--) {
    const space = spaces[number]!;
    if (!mayFit(space.free, kind, settings.kerf)) continue;
    const place = settings.edgeToEdge
      ? bestPartable(settings, space, number, kind)
      : bestOf(settings, space, number, kind, null);
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
): Candidate | null {
  const refused: Candidate[] = [];
  for (;;) {
    const place = bestOf(settings, space, number, kind, refused);
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
  refused: readonly Candidate[] | null,
): Candidate | null {
  const { kerf, score, edgeToEdge } = settings;
  const { free } = space;
  let best: Candidate | null = null;
  const poses = kind.poses;
  for (let p = 0; p < poses.length; p++) {
    const pose = poses[p]!;
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
        let value: number;
        let tie: number;
        if (score === 'contact') {
          value = contactOf(space, settings, pose, x, y);
          tie = -Math.min(spareX, spareY);
        } else if (score === 'area') {
          value = -((spareX + width) * (spareY + height));
          tie = -Math.min(spareX, spareY);
        } else if (score === 'short-side') {
          value = -Math.min(spareX, spareY);
          tie = -Math.max(spareX, spareY);
        } else if (score === 'long-side') {
          value = -Math.max(spareX, spareY);
          tie = -Math.min(spareX, spareY);
        } else {
          value = -(y + height);
          tie = -x;
        }
        if (best && (value < best.value || (value === best.value && tie <= best.tie))) continue;
        if (refused?.some((place) => place.pose === p && place.x === x && place.y === y)) continue;
        // Two poses with the same box are the same to an edge-to-edge cut.
        if (edgeToEdge && isTwin(poses, p)) continue;
        best = { value, tie, pose: p, x, y, space: number };
      }
    }
  }
  return best;
}

function isTwin(poses: readonly Pose[], p: number): boolean {
  for (let q = 0; q < p; q++) {
    if (poses[q]!.width === poses[p]!.width && poses[q]!.height === poses[p]!.height) return true;
  }
  return false;
}

/** Length of the panel's sides that touch the sheet's edge or a neighbour (a kerf apart). */
function contactOf(space: Space, settings: FillSettings, pose: Pose, x: number, y: number): number {
  if (settings.edgeToEdge || pose.cover.length === 1) {
    return contactOfBox(space, x, y, x + pose.width + settings.kerf, y + pose.height + settings.kerf);
  }
  let contact = 0;
  for (const [left, bottom, right, top] of pose.cover) {
    contact += contactOfBox(space, x + left, y + bottom, x + right + settings.kerf, y + top + settings.kerf);
  }
  return contact;
}

function contactOfBox(space: Space, left: number, bottom: number, right: number, top: number): number {
  let contact = 0;
  if (left === 0) contact += top - bottom;
  if (bottom === 0) contact += right - left;
  if (right === space.width) contact += top - bottom;
  if (top === space.height) contact += right - left;
  const { count, left: L, bottom: B, right: R, top: T } = space.boxes;
  for (let i = 0; i < count; i++) {
    if (L[i] === right || R[i] === left) {
      const shared = Math.min(T[i]!, top) - Math.max(B[i]!, bottom);
      if (shared > 0) contact += shared;
    }
    if (B[i] === top || T[i] === bottom) {
      const shared = Math.min(R[i]!, right) - Math.max(L[i]!, left);
      if (shared > 0) contact += shared;
    }
  }
  return contact;
}
