import { union } from '../geometry/clip';
import { locate, rectangleOfBox, type Box, type Polygon, type Region } from '../geometry/polygon';
import type { Job, Wall } from '../job/schema';
import { toHundredth, type Mm } from '../units';
import { edgeDistance } from './derating';
import type { HoldingGround } from './ground';
import { bandsOfFace, splitByRegion } from './face-bands';
import { temperaturesOf } from './held-item';
import { hookOnFace, hookOnGround, type HookOnGround, type HookQuestion } from './hook-figures';
import type { Verdict } from './judge-item';
import { across, type Magnet } from './magnet';
import type { PullAtPlace } from './pull-at-place';
import { magnetsOf } from './ready-magnets';
import type { Consequence } from './safety';
import { facesOf, type Face } from './wall-faces';
import type { HoldingZone } from './zone-ground';

/** What the map of a wall is asked. */
export interface MapQuestion {
  readonly magnet: Magnet;
  /** Of the hook's weight from the wall's face, mm. */
  readonly reach: Mm;
  readonly use: Exclude<Consequence, 'above-people'>;
}

/** An area of a wall over which the same figures hold. */
export interface MapBand {
  /** Where the magnet's centre may be; wall frame, hundredths. Bands are disjoint. */
  readonly region: Region;
  /** Ids of its zones and marks of its panels, in the order of the wall; a coating has no panels. */
  readonly zones: readonly string[];
  readonly panels: readonly string[];
  /** Half of the pull is counted: an edge, joint, hole or screw is nearer than 1.5 diameters. */
  readonly isNearEdge: boolean;
  /** People lie, sit, play or pass beneath. */
  readonly isOverPeople: boolean;
  /** N, as counted there: as designed, and with every tolerance against it. 0 where nothing can be said or nothing holds. */
  readonly pull: number;
  readonly leastPull: number;
  readonly by: PullAtPlace['by'];
  /** Of `onHook`, or where that is 0 of `ifTested`: as such a hung item is judged there. */
  readonly verdict: Verdict;
  /** What may hang on one magnet with a hook, both included, kg. */
  readonly onHook: number;
  /** What it holds as designed, kg; beyond `onHook` only a test on its very place can allow it. */
  readonly ifTested: number;
  /** How many times over it holds `onHook`. */
  readonly asked: number;
  /** Why nothing can be said, or why no more. */
  readonly reasons: readonly string[];
}

/**
 * The holding map of a wall: what one magnet pulls, and what may hang on a hook of it, over every panel and coated area, with
 * nothing else within three diameters and a hook no wider than the magnet. At every point it says what `behindMagnet`, `derating`
 * and `pullAtPlace` say, and what `judgeHung` says of such a hook, but within 0.05 mm of a band's edge. Where no band is, the
 * magnet is not wholly over steel or coating, and nothing holds.
 *
 * @returns bands of different figures, those that hold most first; [] if the wall has nothing that holds magnets
 */
export function holdingMap(
  job: Job,
  wall: Wall,
  zones: readonly HoldingZone[],
  question: MapQuestion,
): MapBand[] {
  const { magnet } = question;
  const { faces, screws } = facesOf(job, wall, zones, magnetsOf(job));
  const temperatures = temperaturesOf(job);
  const hung: HookQuestion = {
    ...question,
    ...(temperatures && { temperatures }),
    isPeopleUnknown: wall.peopleBelow === undefined,
  };
  const askedOf = { false: hung, true: { ...hung, use: 'above-people' } as const };
  const onGround = hooksByGround(magnet);
  const overPeople = regionOverPeople(wall, faces, across(magnet));

  const bands = new Map<string, GrowingBand>();
  const add = (face: Face, region: Region, isNearEdge: boolean, isOverPeople: boolean) => {
    if (region.length === 0) return;
    const hook = onGround(askedOf[`${isOverPeople}`], face.ground, isNearEdge);
    const figures = figuresOf(hook, face, isNearEdge, isOverPeople);
    const key = JSON.stringify(figures);
    const band = bands.get(key) ?? { figures, polygons: [], zones: new Set(), panels: [] };
    bands.set(key, band);
    band.polygons.push(...region);
    band.zones.add(face.zone.area.zone.id);
    if (face.panel !== undefined && band.panels.at(-1) !== face.panel) band.panels.push(face.panel);
  };
  for (const face of faces) {
    // Of a ground of which nothing is known, or that draws no magnet, edges are no worse than the rest.
    if (onGround(hung, face.ground, false).pull.by === 'nothing') {
      add(face, [face.outline], false, false);
      continue;
    }
    const { clear, near } = bandsOfFace(face, screws, across(magnet));
    for (const [isNearEdge, region] of [clear, near].entries()) {
      const { within, without } = splitByRegion(region, overPeople);
      add(face, without, isNearEdge === 1, false);
      add(face, within, isNearEdge === 1, true);
    }
  }
  return [...bands.values()].map(finished).sort(byStrength);
}

/** The band that holds a point of the wall; undefined where nothing holds. @param at mm */
export function bandAt(
  bands: readonly MapBand[],
  at: { readonly x: Mm; readonly y: Mm },
): MapBand | undefined {
  const point = { x: toHundredth(at.x), y: toHundredth(at.y) };
  return bands.find(({ region }) => region.some((polygon) => locate(point, polygon) !== 'outside'));
}

type Figures = Omit<MapBand, 'region' | 'zones' | 'panels'>;

interface GrowingBand {
  readonly figures: Figures;
  readonly polygons: Polygon[];
  readonly zones: Set<string>;
  readonly panels: string[];
}

function figuresOf(on: HookOnGround, face: Face, isNearEdge: boolean, isOverPeople: boolean): Figures {
  const { verdict, weight, ifTested, reasons } = hookOnFace(on, face);
  const { pull, share, asked } = on;
  return {
    isNearEdge,
    isOverPeople,
    pull: pull.nominal * share,
    leastPull: pull.least * share,
    by: pull.by,
    verdict,
    onHook: weight,
    ifTested,
    asked,
    reasons,
  };
}

function finished({ figures, polygons, zones, panels }: GrowingBand): MapBand {
  // Full and half bands keep off the edges of their faces; only whole faces may share an edge.
  const region = figures.by === 'nothing' ? union(polygons) : polygons;
  return { ...figures, region, zones: [...zones], panels };
}

function byStrength(a: MapBand, b: MapBand): number {
  return b.onHook - a.onHook || b.ifTested - a.ifTested || b.pull - a.pull;
}

/** The same magnet on the same ground is worked out once. */
function hooksByGround(magnet: Magnet) {
  const known = new Map<HookQuestion, Map<HoldingGround, Map<boolean, HookOnGround>>>();
  return (question: HookQuestion, ground: HoldingGround, isNearEdge: boolean): HookOnGround => {
    const ofQuestion = orNew(known, question);
    const ofGround = orNew(ofQuestion, ground);
    // Any clearance within the band leads to the same figures.
    const hook =
      ofGround.get(isNearEdge) ??
      hookOnGround(question, ground, isNearEdge ? 0 : edgeDistance * across(magnet));
    ofGround.set(isNearEdge, hook);
    return hook;
  };
}

function orNew<K, A, B>(map: Map<K, Map<A, B>>, key: K): Map<A, B> {
  const there = map.get(key) ?? new Map<A, B>();
  map.set(key, there);
  return there;
}

/** Where a hook as wide as its magnet hangs over people: from where its own edge does. */
function regionOverPeople({ peopleBelow = [] }: Wall, faces: readonly Face[], diameter: Mm): Region {
  if (peopleBelow.length === 0 || faces.length === 0) return [];
  const top = faces.reduce((most, { box }) => Math.max(most, box.top), -Infinity) + 1;
  const boxes = peopleBelow.map(({ x, width, y = 0 }): Box => ({
    left: toHundredth(x - diameter / 2),
    right: toHundredth(x + width + diameter / 2),
    bottom: toHundredth(y - diameter / 2),
    top,
  }));
  return union(boxes.filter(({ bottom }) => bottom < top).map(rectangleOfBox));
}
