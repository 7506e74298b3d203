import type { Point, Polygon } from '../geometry/polygon';
import type { Job, Wall } from '../job/schema';
import { toMm } from '../units';
import { given } from './calculation';
import { checkItem } from './check-item';
import { kilogramsOfNewtons, newtonsOfKilograms } from './force-units';
import { temperaturesOf } from './held-item';
import type { MapBand, MapQuestion } from './holding-map';
import { hook } from './item';
import { unique } from './judge-item';
import { across } from './magnet';
import { magnetsOf } from './ready-magnets';
import { behindMagnet, facesOf } from './wall-faces';
import type { HoldingZone } from './zone-ground';

/** What the figures of a map rest on. */
export interface MapBasis {
  /** What is taken for granted. */
  readonly assumptions: readonly string[];
  /** Where formulas and values come from. */
  readonly sources: readonly string[];
}

/** By the calculation in full of one hook in each band. */
export function mapBasis(
  job: Job,
  wall: Wall,
  zones: readonly HoldingZone[],
  { magnet, reach, use }: MapQuestion,
  bands: readonly Pick<MapBand, 'region' | 'onHook' | 'ifTested'>[],
): MapBasis {
  const faces = facesOf(job, wall, zones, magnetsOf(job));
  const temperatures = temperaturesOf(job);
  const checks = bands.flatMap(({ region: [polygon], onHook, ifTested }) => {
    const at = polygon && placeWithin(polygon);
    const { face, clearance } = at ? behindMagnet(faces, at, across(magnet)) : {};
    if (!face || clearance === undefined) return [];
    const weight = newtonsOfKilograms(onHook || ifTested || kilogramsOfNewtons(0.1));
    const held = hook(weight, reach, { magnet, ground: face.ground, clearance }, use);
    return [checkItem({ ...held, ...(temperatures && { temperatures }) })];
  });
  const plain = new Set([given, 'sum', 'statics', 'layers, hollows and joints of the zone']);
  const sources = checks.flatMap(({ lines }) => lines.map(({ source }) => source.replace(`${given}; `, '')));
  return {
    assumptions: unique(checks.flatMap(({ assumptions }) => assumptions)),
    sources: unique(sources).filter((source) => !plain.has(source)),
  };
}

/** A place inside a polygon, mm: the middle of its widest stretch half way up. */
function placeWithin({ outer, holes }: Polygon): { x: number; y: number } | undefined {
  const ys = outer.map(({ y }) => y);
  // Off the corners, which lie on whole hundredths.
  const y = Math.floor((Math.min(...ys) + Math.max(...ys)) / 2) + 0.5;
  const xs = [outer, ...holes].flatMap((ring) => crossings(ring, y)).sort((a, b) => a - b);
  let widest: readonly [number, number] | undefined;
  for (let i = 0; i + 1 < xs.length; i += 2) {
    const span = [xs[i]!, xs[i + 1]!] as const;
    if (!widest || span[1] - span[0] > widest[1] - widest[0]) widest = span;
  }
  return widest && { x: toMm((widest[0] + widest[1]) / 2), y: toMm(y) };
}

function crossings(ring: readonly Point[], y: number): number[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return a.y <= y !== b.y <= y ? [a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)] : [];
  });
}
