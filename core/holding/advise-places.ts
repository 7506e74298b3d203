import { boxesMeet, locate, polygonArea, type Box, type Polygon } from '../geometry/polygon';
import type { HungItem } from '../job/hung-schema';
import { nameOfZone } from '../job/names';
import { boxOfObject, pointOf } from '../job/shape';
import type { Wall } from '../job/schema';
import { toHundredth, toMm, type Mm } from '../units';
import type { Candidate } from './advice';
import { withMagnets } from './advise-magnets';
import { across } from './magnet';
import { edgeDistance, neighbourDistance } from './derating';
import type { Places } from './magnet-layouts';
import type { Trials } from './trials';
import { behindMagnet, type Face } from './wall-faces';

/** Other places for the item on its wall, and for its magnets behind it. */
export function advisePlaces(trials: Trials): Candidate[] {
  const { item } = trials;
  if (!item.magnets?.places.length || item.marking) return [];
  return [...clearOfEdges(trials), ...(item.locked ? [] : [...onPanel(trials), ...otherZones(trials)])];
}

/** Each magnet that is too near an edge to the nearest place behind the item that is clear of edges and of the others. */
function clearOfEdges({ item, on, now }: Trials): Candidate[] {
  const magnet = on.magnets.get(item.magnets!.magnet);
  const near = now.judgement.magnets.flatMap(({ derating }, i) => (derating.isNearEdge ? [i] : []));
  if (!magnet || near.length === 0) return [];
  const diameter = across(magnet);
  const isClear = (x: Mm, y: Mm) =>
    behindMagnet(on.faces, { x: item.x + x, y: item.y + y }, diameter).clearance >= edgeDistance * diameter;
  const places: (readonly [Mm, Mm])[] = [...item.magnets!.places];
  for (const i of near) {
    const others = places.filter((_, j) => j !== i && !(near.includes(j) && j > i));
    const found = grid(item, diameter, places[i]!).find(
      ([x, y]) =>
        others.every(([u, v]) => Math.hypot(u - x, v - y) >= neighbourDistance * diameter - 1e-9) &&
        isClear(x, y),
    );
    if (!found) return [];
    places[i] = found;
  }
  return [
    {
      kind: 'clear-of-edges',
      words: `Move its magnets behind it until their rims are at least ${edgeDistance * diameter} mm clear of edges, joints, holes and screws.`,
      patch: withMagnets(item, { places }),
    },
  ];
}

const gridSteps = 40;

/** Places behind an item, the nearest to a given one first. */
function grid({ width, height }: HungItem, diameter: Mm, [x, y]: readonly [Mm, Mm]): Places {
  const rim = diameter / 2;
  const along = (size: Mm) =>
    size < diameter
      ? []
      : Array.from({ length: gridSteps + 1 }, (_, i) => rim + ((size - diameter) * i) / gridSteps);
  return along(width)
    .flatMap((u) => along(height).map((v) => [Math.round(u), Math.round(v)] as const))
    .sort((a, b) => Math.hypot(a[0] - x, a[1] - y) - Math.hypot(b[0] - x, b[1] - y));
}

function onPanel({ item, now, ...trials }: Trials): Candidate[] {
  const isWanting = now.judgement.magnets.some(
    ({ derating: { isNearEdge, isNearNeighbour } }) => isNearEdge || isNearNeighbour,
  );
  const face = now.placed.behind.find((one) => one !== undefined);
  const at = isWanting && face && placeOn({ item, now, ...trials }, face);
  if (!at) return [];
  const [dx, dy] = [at.x - item.x, at.y - item.y];
  if (dx === 0 && dy === 0) return [];
  return [
    {
      kind: 'move-on-panel',
      words: `Move it ${shiftInWords(dx, dy)}, where its magnets are clear of edges and of others.`,
      patch: { ...at, proof: undefined },
    },
  ];
}

function shiftInWords(dx: Mm, dy: Mm): string {
  return [
    ...(dx === 0 ? [] : [`${Math.abs(dx)} mm to the ${dx > 0 ? 'right' : 'left'}`]),
    ...(dy === 0 ? [] : [`${Math.abs(dy)} mm ${dy > 0 ? 'up' : 'down'}`]),
  ].join(' and ');
}

/** For each other zone that draws magnets, the best place on its largest panel. */
function otherZones(trials: Trials): Candidate[] {
  const { item, on, now } = trials;
  const zones = new Set(on.faces.faces.map(({ zone }) => zone));
  return [...zones].flatMap((zone): Candidate[] => {
    const { id } = zone.area.zone;
    if (now.verdict.zones.includes(id)) return [];
    const [face] = on.faces.faces
      .filter((one) => one.zone === zone)
      .sort((a, b) => polygonArea(b.outline) - polygonArea(a.outline));
    const at = placeOn(trials, face!);
    if (!at) return [];
    return [
      {
        kind: 'other-zone',
        words: `Hang it on ${nameOfZone(zone.area.zone)}${face!.panel ? `, panel ${face!.panel}` : ''}.`,
        // How the face under its magnets grips, and what it bore, was of the other zone.
        patch: {
          ...at,
          proof: undefined,
          friction: undefined,
          ...(item.condition === 'clean-dry' && { condition: undefined }),
        },
      },
    ];
  });
}

const placesTried = 12;

/**
 * The place on a face, nearest to where the item hangs, where all its magnets are clear of edges and of other magnets, the
 * item is within the wall and over nothing that is on it. Undefined where there is none.
 */
function placeOn({ item, on }: Trials, face: Face): { readonly x: Mm; readonly y: Mm } | undefined {
  const { magnets, faces, crowd, wall } = on;
  const magnet = magnets.get(item.magnets!.magnet);
  if (!magnet) return undefined;
  const diameter = across(magnet);
  const reach = (edgeDistance + 0.5) * diameter;
  const { places } = item.magnets!;
  const taken = takenBoxes(wall, item);
  const isFree = (x: Mm, y: Mm) => {
    const box = boxAt(item, x, y);
    if (!isWithinWall(wall, box)) return false;
    if (taken.some((other) => boxesMeet(box, other))) return false;
    return places.every(([dx, dy]) => {
      const centre = { x: x + dx, y: y + dy };
      const behind = behindMagnet(faces, centre, diameter);
      const other = crowd.nearest(item.id, centre, diameter) ?? Infinity;
      return (
        behind.face === face &&
        behind.clearance >= edgeDistance * diameter &&
        other >= neighbourDistance * diameter
      );
    });
  };
  const { left, right, bottom, top } = face.box;
  const xs = tried(
    toMm(left) + reach,
    toMm(right) - reach,
    places.map(([x]) => x),
    item.x,
  );
  const ys = tried(
    toMm(bottom) + reach,
    toMm(top) - reach,
    places.map(([, y]) => y),
    item.y,
  );
  return xs
    .flatMap((x) => ys.map((y) => ({ x, y })))
    .sort((a, b) => far(a, item) - far(b, item))
    .find(({ x, y }) => isFree(x, y));
}

/** Where the item may stand so that magnets at these places of it lie between two ends: as it is, or evenly spread. */
function tried(from: Mm, to: Mm, places: readonly Mm[], now: Mm): Mm[] {
  const least = Math.ceil(from - Math.min(...places));
  const most = Math.floor(to - Math.max(...places));
  if (least > most) return [];
  const spread = Array.from(
    { length: placesTried + 1 },
    (_, i) => least + ((most - least) * i) / placesTried,
  );
  const nearest = now < least || now > most ? Math.min(Math.max(now, least), most) : now;
  return [...new Set([nearest, ...spread.map(Math.round)])];
}

function far(at: { readonly x: Mm; readonly y: Mm }, { x, y }: HungItem): Mm {
  return Math.hypot(at.x - x, at.y - y);
}

/** Of everything else that the item would hang over. */
function takenBoxes(wall: Wall, item: HungItem): Box[] {
  const others = (wall.hung ?? []).filter(({ id }) => id !== item.id);
  return [...wall.openings, ...wall.fittings, ...others].map((object) => {
    const { x, y, width, height } = boxOfObject(object);
    return boxAt({ width, height }, x, y);
  });
}

/** Edges that only touch do not meet. */
function boxAt({ width, height }: { readonly width: Mm; readonly height: Mm }, x: Mm, y: Mm): Box {
  return {
    left: toHundredth(x) + 1,
    bottom: toHundredth(y) + 1,
    right: toHundredth(x + width) - 1,
    top: toHundredth(y + height) - 1,
  };
}

/** An arc of the outline counts as its chord. */
function isWithinWall({ outline }: Wall, { left, right, bottom, top }: Box): boolean {
  const corners = outline.map((vertex) => {
    const { x, y } = pointOf(vertex);
    return { x: toHundredth(x), y: toHundredth(y) };
  });
  const polygon: Polygon = { outer: corners, holes: [] };
  const own = [left, right].flatMap((x) => [bottom, top].map((y) => ({ x, y })));
  const isInside = ({ x, y }: { x: number; y: number }) => x > left && x < right && y > bottom && y < top;
  return own.every((point) => locate(point, polygon) !== 'outside') && !corners.some(isInside);
}
