import type { Finding } from '../finding';
import { boxesMeet, boxOf, locate, regionArea, type Box, type Point, type Region } from '../geometry/polygon';
import { ownKindsOf, standsOut } from '../job/fitting-kinds';
import { nameOfPlaced, nameOfWall, nameOfZone, sentence } from '../job/names';
import type { EdgeEnd } from '../job/product-schema';
import { polygonOf } from '../job/placed-regions';
import type { Job, Zone } from '../job/schema';
import type { EdgeCause, SurveyedWall } from '../survey/surveyed-wall';
import { toSquareMm, type Mm } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import type { EdgePiece } from './edge-pieces';
import { edgeStretches } from './edge-stretches';
import { featherRegion, roomBefore, usualFeather, type FeatheredPiece } from './feather';
import { figuresOfBuildUp } from './figures';
import { buildUpOf, type ResolvedBuildUp } from './resolve';

export type End = EdgeEnd['end'];

/** How the layers end along a stretch of a zone's edge. */
export interface EdgeRun {
  readonly cause: EdgeCause;
  /** Number of the edge of the zone's shape, from 1; null where the area does not end along one. */
  readonly edge: number | null;
  /** null: nothing to be done, as beside a zone that is as thick, or at a box under its plate. */
  readonly end: End | null;
  /** Of a feather. */
  readonly width: Mm | null;
  readonly length: Mm;
  /** Whether the job says so; else it is what is usual there. */
  readonly isChosen: boolean;
}

/** Where a stretch of the edge ends so; the zone lies on the left. Hundredths, wall frame. */
export interface EdgeStretch extends Pick<EdgeRun, 'width'> {
  readonly end: End;
  /** Two or more; the first again at the end where a whole ring ends so. */
  readonly points: readonly Point[];
}

export interface ZoneEdges {
  readonly runs: readonly EdgeRun[];
  /** Where anything is done to the edge. */
  readonly stretches: readonly EdgeStretch[];
  /** mm of edge that end so. */
  readonly lengths: Readonly<Record<End, Mm>>;
  /** Where feathers lie outside the zone; hundredths, wall frame. */
  readonly feather: Region;
  /** mm² */
  readonly featherArea: number;
  readonly findings: readonly Finding[];
}

/** mm. Layers with filler end without being run out up to here; coats and films always do. */
const thin: Mm = 1;
/** mm. What is taken of layers with steel whose thickness is not known. */
const usualThickness: Mm = 3;

/** Thickness that has to be run out at the edges, mm; 0 for coats and films. */
export function thicknessToEnd(buildUp: ResolvedBuildUp): Mm {
  const { value } = figuresOfBuildUp(buildUp, undefined).thickness;
  const isSteel = buildUp.layers.some(({ layer }) => layer.kind === 'steel');
  if (isSteel) return Math.max(value ?? usualThickness, thin);
  const isFilled = buildUp.layers.some(({ layer }) => layer.kind === 'filler');
  return isFilled && value !== null && value > thin ? value : 0;
}

/**
 * How each stretch of a zone's edge ends. Usual, if nothing was chosen: run to the corner along the wall's own edges, a
 * stop bead along openings and movement joints, nothing along boxes and along zones that are as thick, a feather
 * elsewhere. Common practice, no source.
 *
 * @param rings the edge of the zone's area in pieces, ring by ring, cut at its thick neighbours
 * @param thick its neighbours whose layers have to be run out too
 */
export function zoneEdgeEnds(
  job: Job,
  survey: SurveyedWall,
  area: ZoneArea,
  rings: readonly (readonly EdgePiece[])[],
  thick: readonly Neighbour[],
  buildUp: ResolvedBuildUp,
): ZoneEdges {
  const thickness = thicknessToEnd(buildUp);
  if (thickness === 0) return noEdges;
  const ended = rings.map((pieces) =>
    pieces.map((piece) => ({ piece, ...endOf(piece, area.zone, thickness, thick) })),
  );
  const feathered = ended.map((ring) =>
    ring.map(({ piece, end, width }): FeatheredPiece | null =>
      end === 'feather' && width !== null ? { piece, width } : null,
    ),
  );
  const on: Region = [{ outer: survey.outline.ring, holes: [] }];
  const less: Region = [
    { outer: area.shape.ring, holes: [] },
    ...survey.keepOuts.map(({ bare }) => ({ outer: bare.ring, holes: [] })),
    ...thick.flatMap(({ region }) => region),
  ];
  const feather = featherRegion(feathered, on, less);
  const runs = joined(ended.flat());
  return {
    runs,
    stretches: edgeStretches(ended),
    lengths: lengthsOf(runs),
    feather,
    featherArea: toSquareMm(regionArea(feather)),
    findings: [
      ...roomFindings(
        job,
        survey,
        area,
        feathered.flat().filter((one) => one !== null),
      ),
      ...choiceFindings(survey, area, thickness),
    ],
  };
}

const noEdges: ZoneEdges = {
  runs: [],
  stretches: [],
  lengths: { feather: 0, 'stop-bead': 0, trim: 0, corner: 0 },
  feather: [],
  featherArea: 0,
  findings: [],
};

/** A piece with its end. */
export type Ended = { readonly piece: EdgePiece } & Pick<EdgeRun, 'end' | 'width' | 'isChosen'>;

function endOf(
  piece: EdgePiece,
  zone: Zone,
  thickness: Mm,
  thick: readonly Neighbour[],
): Pick<EdgeRun, 'end' | 'width' | 'isChosen'> {
  const chosen = zone.edges?.findLast(({ edge }) => edge === piece.edge);
  if (isBesideThick(piece, thick)) return { end: null, width: null, isChosen: false };
  const end = chosen?.end ?? usualEnd(piece.cause);
  const width = end === 'feather' ? (chosen?.width ?? usualFeather(thickness)) : null;
  return { end, width, isChosen: chosen !== undefined };
}

function usualEnd(cause: EdgeCause): End | null {
  if (cause.kind === 'rim') return 'corner';
  if (cause.kind === 'opening' || cause.kind === 'movement-joint') return 'stop-bead';
  return cause.kind === 'fitting' ? null : 'feather';
}

export interface Neighbour {
  readonly id: string;
  readonly region: Region;
  readonly box: Box;
}

/** Other zones of the wall whose layers have to be run out too. */
export function thickNeighbours(job: Job, { wall }: SurveyedWall, area: ZoneArea): Neighbour[] {
  return wall.zones.flatMap((other): Neighbour[] => {
    if (other.id === area.zone.id) return [];
    const polygon = polygonOf(other.shape);
    const box = boxOf(polygon.outer);
    if (!boxesMeet(box, area.box, 70_000)) return [];
    if (thicknessToEnd(buildUpOf(job, other, wall.ground)) === 0) return [];
    return [{ id: other.id, region: [polygon], box }];
  });
}

/** Whether a zone with layers to run out lies just outside the piece. */
function isBesideThick({ from, to, cause, edge }: EdgePiece, thick: readonly Neighbour[]): boolean {
  if (cause.kind === 'zone' && edge === null && thick.some(({ id }) => id === cause.id)) return true;
  if (cause.kind !== 'zone') return false;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  // Half a millimetre outside its middle.
  const point: Point = {
    x: Math.round((from.x + to.x) / 2 + ((to.y - from.y) / length) * 50),
    y: Math.round((from.y + to.y) / 2 - ((to.x - from.x) / length) * 50),
  };
  const at = { left: point.x, right: point.x, bottom: point.y, top: point.y };
  return thick.some(
    ({ region, box }) => boxesMeet(box, at) && region.some((polygon) => locate(point, polygon) !== 'outside'),
  );
}

/** Pieces of one edge, cause and end together, in the order in which they come first. */
function joined(pieces: readonly Ended[]): EdgeRun[] {
  const runs = new Map<string, EdgeRun>();
  for (const { piece, end, width, isChosen } of pieces) {
    const { cause, edge, length } = piece;
    const key = JSON.stringify([cause, edge, end, width]);
    const run = runs.get(key) ?? { cause, edge, end, width, length: 0, isChosen };
    runs.set(key, { ...run, length: run.length + length });
  }
  return [...runs.values()];
}

function lengthsOf(runs: readonly EdgeRun[]): ZoneEdges['lengths'] {
  const lengths = { ...noEdges.lengths } as Record<End, Mm>;
  for (const { end, length } of runs) if (end) lengths[end] += length;
  return lengths;
}

/** Where something, or the end of the wall, is nearer than a feather is wide: the nearest thing of each edge. */
function roomFindings(
  job: Job,
  { wall, keepOuts, outline }: SurveyedWall,
  { zone }: ZoneArea,
  feathered: readonly FeatheredPiece[],
): Finding[] {
  const kinds = ownKindsOf(job);
  const inTheWay = keepOuts.flatMap(({ kind, id, bare }) => {
    const { ring } = bare;
    if (kind === 'opening') {
      const opening = wall.openings.find((one) => one.id === id);
      return opening ? [{ name: nameOfPlaced(opening, 'opening'), ring }] : [];
    }
    const fitting = wall.fittings.find((one) => one.id === id);
    return fitting && standsOut(fitting.kind, kinds)
      ? [{ name: nameOfPlaced(fitting, 'fitting'), ring }]
      : [];
  });
  const nearest = new Map<number | null, { room: Mm; name: string; width: Mm }>();
  for (const one of feathered) {
    const rooms = [
      { room: roomBefore(one, outline.ring), name: endOfWall(one.piece) },
      ...inTheWay.map(({ name, ring }) => ({ room: roomBefore(one, ring), name })),
    ];
    for (const { room, name } of rooms) {
      const known = nearest.get(one.piece.edge);
      if (room === null || room >= one.width || (known && known.room <= room)) continue;
      nearest.set(one.piece.edge, { room, name, width: one.width });
    }
  }
  if (nearest.size === 0) return [];
  const edges = [...nearest].map(
    ([edge, { room, name, width }]) =>
      `${edge === null ? 'an edge' : `edge ${edge}`} has ${room} mm to ${name} and its feather wants ${width} mm`,
  );
  const where = `${nameOfZone(zone)} on ${nameOfWall(wall)}`;
  const text = `${where}: ${edges.join(', ')}; run the layers on to there, or end them with a stop bead or a trim.`;
  return [
    { level: 'note', code: 'no-room-for-feather', wall: wall.id, object: zone.id, text: sentence(text) },
  ];
}

function endOfWall({ from, to }: EdgePiece): string {
  if (Math.abs(to.y - from.y) >= Math.abs(to.x - from.x)) return "the wall's end";
  return to.x > from.x ? 'the floor' : 'the ceiling';
}

/** What was chosen for edges that the zone does not have, and feathers too narrow for their thickness. */
function choiceFindings({ wall }: SurveyedWall, { zone }: ZoneArea, thickness: Mm): Finding[] {
  const where = `${nameOfZone(zone)} on ${nameOfWall(wall)}`;
  const say = (level: Finding['level'], code: string, text: string): Finding => {
    return { level, code, wall: wall.id, object: zone.id, text: sentence(text) };
  };
  return (zone.edges ?? []).flatMap(({ edge, end, width }) => {
    if (edge > zone.shape.length) {
      return [
        say(
          'note',
          'lost-edge-end',
          `${where} has an end for edge ${edge}, but only ${zone.shape.length} edges; choose it again for the edge it is meant for.`,
        ),
      ];
    }
    const least = usualFeather(thickness) / 2;
    if (end !== 'feather' || width === undefined || width >= least) return [];
    return [
      say(
        'warning',
        'narrow-feather',
        `edge ${edge} of ${where} is feathered over ${width} mm, too steep for ${Math.round(thickness * 10) / 10} mm of layers; give it ${usualFeather(thickness)} mm, or a stop bead or trim.`,
      ),
    ];
  });
}
