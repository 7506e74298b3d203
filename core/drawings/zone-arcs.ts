import { boxOfOutline, flattenVertices } from '../geometry/arc';
import type { Outline } from '../geometry/outline';
import type { Point } from '../geometry/polygon';
import type { Hundredth } from '../units';
import type { WorkedWall, WorkedZone } from '../worked-out';
import type { Schedule } from './deal-tables';
import { terminator } from './dimension';
import { keepOffLine, placeFirst, placeWithLeader, type LabelRoom } from './label-room';
import type { Item, PaperPoint, Stroke, Text } from './page';
import type { PaperFigures } from './paper-figures';
import { circleOf } from './setting-out-stops';
import { paperPoint, type View } from './setting-out-view';

/*
 * Curved edges of zones as the fitter strikes them: by radius (ISO 129-1: R before the figure, one terminator, at the
 * arc) from the centre where that lies on the wall, else by the rise over the chord.
 */

/** An arc of a zone's edge or of the edge of one of its holes; hundredths, wall frame. */
export interface ZoneArc {
  readonly zone: string;
  readonly from: Point;
  readonly to: Point;
  /** On the arc, half-way. */
  readonly middle: Point;
  readonly centre: { readonly x: number; readonly y: number };
  readonly radius: number;
  /** Height over the chord; of a whole circle its diameter. */
  readonly rise: number;
  readonly isCircle: boolean;
}

export function zoneArcs({ area }: Pick<WorkedZone, 'area'>): ZoneArc[] {
  const { zone, shape } = area;
  const outlines = [shape, ...zone.holes.map((hole) => flattenVertices(hole, 'circumscribed'))];
  return outlines.flatMap((outline) => arcsOf(outline, zone.id));
}

function arcsOf(outline: Outline, zone: string): ZoneArc[] {
  const { ring, arcs } = outline;
  const isCircle = isAllRound(outline);
  return (isCircle ? arcs.slice(0, 1) : arcs).map(({ firstEdge, edges, centre, radius }) => {
    const at = (edge: number) => ring[(firstEdge + edge) % ring.length]!;
    const [from, to, middle] = [at(0), at(edges), at(Math.floor(edges / 2))];
    const chord = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const toChord = Math.hypot(chord.x - centre.x, chord.y - centre.y);
    // More than half a circle stands out beyond its centre.
    const isMore =
      (middle.x - centre.x) * (chord.x - centre.x) + (middle.y - centre.y) * (chord.y - centre.y) < 0;
    const rise = isCircle ? 2 * radius : radius + (isMore ? toChord : -toChord);
    return { zone, from, to, middle, centre, radius, rise, isCircle };
  });
}

/** One circle, drawn as one arc or, as holes are, as several that follow each other. */
function isAllRound(outline: Outline): boolean {
  const { ring, arcs } = outline;
  const [first] = arcs;
  if (!first || circleOf(outline)) return first !== undefined;
  const isOnFirst = ({ centre, radius }: typeof first) =>
    Math.hypot(centre.x - first.centre.x, centre.y - first.centre.y) <= 3 &&
    Math.abs(radius - first.radius) <= 3;
  return arcs.every(isOnFirst) && arcs.reduce((sum, { edges }) => sum + edges, 0) === ring.length;
}

/** Whether the centre can be marked on the wall itself. */
function hasCentreOnWall({ centre }: ZoneArc, outline: Outline): boolean {
  const { left, right, bottom, top } = boxOfOutline(outline);
  return left <= centre.x && centre.x <= right && bottom <= centre.y && centre.y <= top;
}

/** The marks of centres, and from each a line to its arc. */
export function zoneArcMarks({ survey }: WorkedWall, zones: readonly WorkedZone[], view: View): Stroke[] {
  return zones
    .flatMap((zone) => zoneArcs(zone))
    .filter((arc) => hasCentreOnWall(arc, survey.outline))
    .flatMap((arc): Stroke[] => {
      const centre = paperPoint(view, arc.centre);
      const middle = paperPoint(view, arc.middle);
      const line = (a: PaperPoint, b: PaperPoint): Stroke => ({
        kind: 'stroke',
        points: [a, b],
        width: 0.18,
      });
      const reach = 2;
      return [
        line({ x: centre.x - reach, y: centre.y }, { x: centre.x + reach, y: centre.y }),
        line({ x: centre.x, y: centre.y - reach }, { x: centre.x, y: centre.y + reach }),
        line(centre, middle),
        terminator(middle),
      ];
    });
}

/** `R 1000` along the line from the centre and the place of the centre beside it; `R 1450 rise 400` at the arc. */
export function labelZoneArcs(
  { survey }: WorkedWall,
  zones: readonly WorkedZone[],
  view: View,
  room: LabelRoom,
): Item[] {
  return zones
    .flatMap((zone) => zoneArcs(zone))
    .flatMap((arc) => {
      const middle = paperPoint(view, arc.middle);
      if (!hasCentreOnWall(arc, survey.outline)) {
        const words = `R ${view.write(arc.radius)} rise ${view.write(arc.rise)}`;
        const text = placeFirst(room, around(words, middle));
        return text ? [text] : aside(room, words, middle);
      }
      const centre = paperPoint(view, arc.centre);
      keepOffLine(room, [centre, middle], false);
      const words = arc.isCircle ? `Ø ${view.write(2 * arc.radius)}` : `R ${view.write(arc.radius)}`;
      const along = [0.55, 0.7, 0.4, 0.85, 0.25].flatMap((t) =>
        around(words, { x: centre.x + (middle.x - centre.x) * t, y: centre.y + (middle.y - centre.y) * t }),
      );
      const radius = placeFirst(room, along);
      const place = `centre ${view.write(arc.centre.x)} | ${view.write(arc.centre.y)}`;
      const ofCentre = placeFirst(room, around(place, centre, 2.6));
      return [...(radius ? [radius] : aside(room, words, middle)), ...(ofCentre ? [ofCentre] : [])];
    });
}

const base = { kind: 'text', height: 2.5, face: 'condensed' } as const;

function aside(room: LabelRoom, text: string, target: PaperPoint): Item[] {
  const placed = placeWithLeader(room, { ...base, text, at: target }, target);
  return placed ? [...placed.leader, placed.text] : [];
}

function around(text: string, { x, y }: PaperPoint, away = 1.4): Text[] {
  const level = y - base.height / 2;
  return [
    { ...base, text, anchor: 'start', at: { x: x + away, y: level } },
    { ...base, text, anchor: 'end', at: { x: x - away, y: level } },
    { ...base, text, anchor: 'middle', at: { x, y: y + away } },
    { ...base, text, anchor: 'middle', at: { x, y: y - away - base.height } },
    { ...base, text, anchor: 'start', at: { x: x + away, y: y + away } },
    { ...base, text, anchor: 'end', at: { x: x - away, y: y + away } },
    { ...base, text, anchor: 'start', at: { x: x + away, y: y - away - base.height } },
    { ...base, text, anchor: 'end', at: { x: x - away, y: y - away - base.height } },
  ];
}

/** Every curved edge of the zones by its ends, radius, rise and centre: whichever of them it is struck by. */
export function arcSchedule({ zones }: WorkedWall, { length }: PaperFigures): Schedule {
  const right = (heading: string) => ({ heading, align: 'right' }) as const;
  const place = ({ x, y }: { readonly x: Hundredth; readonly y: Hundredth }) => `${length(x)} | ${length(y)}`;
  const rows = zones.flatMap((zone) => zoneArcs(zone));
  return {
    heading: 'Curved edges of zones, places from left | from floor',
    columns: [{ heading: 'Zone', align: 'left' }, ...['from', 'to', 'radius', 'rise', 'centre'].map(right)],
    rows: rows.map((arc) => ({
      kind: 'row',
      cells: [
        arc.zone,
        arc.isCircle ? 'circle' : place(arc.from),
        arc.isCircle ? '–' : place(arc.to),
        `R ${length(arc.radius)}`,
        arc.isCircle ? '–' : length(arc.rise),
        place(arc.centre),
      ],
    })),
  };
}
