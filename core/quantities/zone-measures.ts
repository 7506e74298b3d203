import { flattenVertices } from '../geometry/arc';
import { difference, intersection } from '../geometry/clip';
import {
  boxesMeet,
  boxOf,
  perimeter,
  polygonArea,
  regionArea,
  type Box,
  type Region,
} from '../geometry/polygon';
import { isElectric } from '../job/fitting-kinds';
import type { OwnKind, Zone } from '../job/schema';
import type { ZoneLayout } from '../panels/panel';
import { jointRuns, seamsOf, type JointRun } from '../panels/seams';
import type { SurveyedWall } from '../survey/surveyed-wall';
import { toHundredth, type Hundredth } from '../units';
import type { WorkedWall } from '../worked-out';
import { rimShared } from './shared-rim';

/** Inner faces of an opening that are coated with the zone. */
export interface Reveal {
  readonly opening: string;
  /** Of the opening's rim that the zone comes up to. */
  readonly length: number;
  readonly depth: Hundredth;
  /** Hundredths squared. */
  readonly area: number;
}

/** What is measured of a zone; wall frame, lengths in hundredths, areas in hundredths squared. */
export interface ZoneMeasures {
  readonly zone: Zone;
  /** The shape on the wall less zones listed before it; openings are not out. */
  readonly gross: Region;
  /** `gross` less openings and fittings as they are drawn: what is coated. Rim and clearances are for steel alone. */
  readonly face: Region;
  readonly grossArea: number;
  readonly faceArea: number;
  /** Of its panels, all and by the stock they are laid from, and how long the cut edges of all of them are. */
  readonly steelArea: number;
  readonly steelByStock: Readonly<Record<string, number>>;
  readonly cutEdges: number;
  readonly panels: number;
  readonly joints: readonly JointRun[];
  readonly jointLength: number;
  /** Area of the gaps between panels. */
  readonly gapArea: number;
  /** Rim of the face, less where it meets a zone of the same layers. */
  readonly edgeLength: number;
  readonly reveals: readonly Reveal[];
  readonly battenLength: number;
  readonly battens: number;
  /** Electrical boxes in the zone. */
  readonly boxes: number;
}

/**
 * Every zone of a wall measured, in listed order.
 *
 * Promised: faces share no area; faces of rectilinear walls and zones, and what openings and fittings take of them, add
 * up exactly. A zone cut in two parts has the same face, steel apart, the same edges and the same reveals as its parts.
 */
export function measureZones({ survey, zones }: WorkedWall, own: readonly OwnKind[]): ZoneMeasures[] {
  const drawn = zones.map(({ area }) => shapeOf(area.zone, area.shape.ring));
  const gross = drawn.map(({ region, box }, i) => {
    const earlier = drawn.slice(0, i).filter((other) => boxesMeet(other.box, box));
    return difference(
      intersection(region, [{ outer: survey.outline.ring, holes: [] }]),
      earlier.flatMap((other) => other.region),
    );
  });
  const faces = gross.map((region, i) => difference(region, bareNear(survey, drawn[i]!.box)));
  const boxes = boxesOf(survey, gross, own);
  return zones.map(({ area, layout }, i) => {
    const { zone } = area;
    const alike = faces.filter(
      (_, k) =>
        k !== i && hasSameLayers(zones[k]!.area.zone, zone) && boxesMeet(drawn[k]!.box, drawn[i]!.box, 2),
    );
    const rim = faces[i]!.reduce((sum, polygon) => sum + perimeter(polygon), 0);
    return {
      zone,
      gross: gross[i]!,
      face: faces[i]!,
      grossArea: regionArea(gross[i]!),
      faceArea: regionArea(faces[i]!),
      ...steelOf(layout, toHundredth(zone.layout?.jointGap ?? 0)),
      edgeLength: rim - rimShared(faces[i]!, alike.flat()),
      reveals: revealsOf(survey, faces[i]!, drawn[i]!.box),
      boxes: boxes[i]!,
    };
  });
}

interface DrawnShape {
  readonly region: Region;
  readonly box: Box;
}

function shapeOf(zone: Zone, ring: Region[number]['outer']): DrawnShape {
  const outer = { outer: ring, holes: [] };
  const holes = zone.holes.map((hole) => ({ outer: flattenVertices(hole, 'circumscribed').ring, holes: [] }));
  return { region: holes.length > 0 ? difference([outer], holes) : [outer], box: boxOf(ring) };
}

export function hasSameLayers(a: Zone, b: Zone): boolean {
  return a.buildUp === b.buildUp && a.layers === b.layers;
}

function bareNear({ keepOuts }: SurveyedWall, box: Box): Region {
  return keepOuts
    .map(({ bare }) => ({ outer: bare.ring, holes: [] }))
    .filter(({ outer }) => boxesMeet(boxOf(outer), box));
}

function steelOf(layout: ZoneLayout | null, gap: Hundredth) {
  const panels = layout?.panels ?? [];
  const outlines = panels.map(({ outline }) => outline);
  const joints = jointRuns(seamsOf(outlines, gap));
  const jointLength = joints.reduce((sum, { from, to }) => sum + to - from, 0);
  const battens = layout?.fixing.battens ?? [];
  return {
    steelArea: outlines.reduce((sum, outline) => sum + polygonArea(outline), 0),
    steelByStock: byStock(panels),
    cutEdges: panels.reduce((sum, panel) => sum + cutEdgesOf(panel), 0),
    panels: panels.length,
    joints,
    jointLength,
    gapArea: jointLength * gap,
    battenLength: battens.reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0),
    battens: battens.length,
  };
}

function byStock(panels: ZoneLayout['panels']): Record<string, number> {
  const areas = new Map<string, number>();
  for (const { stock, outline } of panels) areas.set(stock, (areas.get(stock) ?? 0) + polygonArea(outline));
  return Object.fromEntries(areas);
}

/** How long the edges of a panel are that its stock sheet did not have, hundredths. */
export function cutEdgesOf({ outline, causes }: ZoneLayout['panels'][number]): number {
  const rings = [outline.outer, ...outline.holes];
  return rings.reduce((sum, ring, r) => {
    const cut = ring.map((from, i) => {
      const to = ring[(i + 1) % ring.length]!;
      return causes[r]?.[i]?.kind === 'stock-edge' ? 0 : Math.hypot(to.x - from.x, to.y - from.y);
    });
    return sum + cut.reduce((length, edge) => length + edge, 0);
  }, 0);
}

function revealsOf({ wall, keepOuts }: SurveyedWall, face: Region, box: Box): Reveal[] {
  return wall.openings.flatMap(({ id, reveal = 0 }): Reveal[] => {
    const bare = keepOuts.find((keepOut) => keepOut.kind === 'opening' && keepOut.id === id)?.bare;
    if (reveal <= 0 || !bare || !boxesMeet(boxOf(bare.ring), box, 2)) return [];
    const length = rimShared(face, [{ outer: bare.ring, holes: [] }]);
    const depth = toHundredth(reveal);
    return length > 0 ? [{ opening: id, length, depth, area: Math.round(length * depth) }] : [];
  });
}

/** How many electrical boxes each zone has; one that two zones share belongs to the one with more of it. */
function boxesOf(
  { wall, keepOuts }: SurveyedWall,
  gross: readonly Region[],
  own: readonly OwnKind[],
): number[] {
  const counts = gross.map(() => 0);
  for (const { kind, id, bare } of keepOuts) {
    if (kind !== 'fitting') continue;
    const fitting = wall.fittings.find((one) => one.id === id);
    if (!fitting || !isElectric(fitting.kind, own)) continue;
    const box = boxOf(bare.ring);
    const shares = gross.map((region) =>
      region.some(({ outer }) => boxesMeet(boxOf(outer), box))
        ? regionArea(intersection(region, [{ outer: bare.ring, holes: [] }]))
        : 0,
    );
    const most = Math.max(0, ...shares);
    if (most > 0) counts[shares.indexOf(most)]!++;
  }
  return counts;
}
