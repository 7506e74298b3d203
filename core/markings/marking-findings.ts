import type { Finding } from '../finding';
import { difference, intersection } from '../geometry/clip';
import { boxesMeet, boxOf, rectangle, regionArea, type Polygon } from '../geometry/polygon';
import type { Marking } from '../job/marking-schema';
import { proportionOf, sizeOfMarking } from '../job/markings';
import { nameOfPlaced, nameOfWall, nameOfZone } from '../job/names';
import { findPhoto } from '../job/photos';
import type { Job } from '../job/schema';
import type { SurveyedWall } from '../survey/surveyed-wall';
import type { Hundredth } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import { drawMarking } from './draw-marking';
import { letteringWidth } from './lettering';
import type { MarkingDrawing } from './marking-drawing';
import { titleOfMarking } from './marking-words';

/** What a marking may reach beyond something by rounding alone, hundredths squared for each hundredth of its edge. */
const perEdge = 2;

/** Places and sizes of markings that want a decision: off the zone, over something, words too large, shapes pulled. */
export function markingFindings(job: Job, survey: SurveyedWall, area: ZoneArea): Finding[] {
  const { zone, box } = area;
  return (zone.markings ?? []).flatMap((marking) => {
    const drawn = drawMarking(marking, { x: box.left, y: box.bottom });
    const where = `Marking ${titleOfMarking(marking)} of ${nameOfZone(zone)} on ${nameOfWall(survey.wall)}`;
    const say = (level: 'warning' | 'note', code: string, says: string): Finding => ({
      level,
      code,
      wall: survey.wall.id,
      object: zone.id,
      text: `${where} ${says}`,
    });
    return [
      ...placeFindings(drawn, survey, area, say),
      ...textFindings(drawn, say),
      ...restFindings(marking, drawn, say),
      ...shapeFindings(job, marking, say),
    ];
  });
}

type Say = (level: 'warning' | 'note', code: string, says: string) => Finding;

function placeFindings(drawn: MarkingDrawing, survey: SurveyedWall, area: ZoneArea, say: Say): Finding[] {
  const { box } = drawn;
  const place = rectangle(box.left, box.bottom, box.right - box.left, box.top - box.bottom);
  const least = (box.right - box.left + box.top - box.bottom) * perEdge;
  const covers = (shape: Polygon) =>
    boxesMeet(boxOf(shape.outer), box) && regionArea(intersection([place], [shape])) > least;
  const findings: Finding[] = [];
  const shape: Polygon = { outer: area.shape.ring, holes: [] };
  if (regionArea(difference([place], [shape])) > least)
    findings.push(
      say('warning', 'marking-outside-zone', 'reaches beyond its zone; move it inside or make it smaller.'),
    );
  const over = [
    ...area.shapePolygon.holes
      .filter((hole) => covers({ outer: [...hole].reverse(), holes: [] }))
      .map(() => 'a hole of the zone')
      .slice(0, 1),
    ...survey.keepOuts
      .filter(({ bare }) => covers({ outer: bare.ring, holes: [] }))
      .map(({ kind, id }) => {
        const list = kind === 'opening' ? survey.wall.openings : survey.wall.fittings;
        return nameOfPlaced(
          list.find((object) => object.id === id)!,
          kind,
        );
      }),
  ];
  if (over.length > 0)
    findings.push(
      say(
        'warning',
        'marking-over-object',
        `lies over ${listed(over)}; move it clear, or leave that part of it out.`,
      ),
    );
  return findings;
}

/** A heading is as wide as its letters and half as high again as a capital, with what hangs below the line. */
function textFindings({ texts }: MarkingDrawing, say: Say): Finding[] {
  const large = texts.filter(({ text, cell, height }) => {
    const [width, high] = [cell.right - cell.left, cell.top - cell.bottom];
    return letteringWidth(text, height) > width || height * 1.3 > high;
  });
  const [first] = large;
  if (!first) return [];
  const wide = letteringWidth(first.text, first.height);
  const room = `${figure(first.cell.right - first.cell.left)} × ${figure(first.cell.top - first.cell.bottom)} mm`;
  const more = large.length > 1 ? `, and so are ${large.length - 1} more` : '';
  return [
    say(
      'warning',
      'marking-text-too-large',
      `has the heading “${first.text}”, which is about ${figure(Math.round(wide / 100) * 100)} mm wide in capitals of ${figure(first.height)} mm and too large for its cell of ${room}${more}; give smaller letters, a shorter word or a larger cell.`,
    ),
  ];
}

/** A grid whose spacing does not go into its size. */
function restFindings(marking: Marking, { lines }: MarkingDrawing, say: Say): Finding[] {
  if (marking.kind !== 'ruled-grid') return [];
  const of = (axis: 'x' | 'y') =>
    lines.filter(({ from, to }) => from[axis] === to[axis]).map(({ from }) => from[axis]);
  const rest = (places: readonly Hundredth[]) => {
    const [last, before, first, second] = [places.at(-1)!, places.at(-2), places[0]!, places[1]];
    if (before === undefined || second === undefined || places.length < 3) return null;
    return last - before < second - first ? last - before : null;
  };
  const says = [
    [rest(of('x')), 'column', 'wide'],
    [rest(of('y')), 'row', 'high'],
  ] as const;
  return says.flatMap(([left, cell, long]) =>
    left === null
      ? []
      : [
          say(
            'note',
            'marking-odd-cell',
            `ends in a ${cell} only ${figure(left)} mm ${long}; choose a size that its spacing goes into.`,
          ),
        ],
  );
}

function shapeFindings(job: Job, marking: Marking, say: Say): Finding[] {
  const own = proportionOf(job, marking);
  if (marking.kind !== 'picture' || own === null) return [];
  const { width, height } = sizeOfMarking(marking);
  // A picture of so and so many pixels has its proportions to about one of them.
  const photo = findPhoto(job, marking.photo!)!;
  const off = Math.abs(width / own - height) / height;
  return off <= 1 / Math.max(100, Math.min(photo.width, photo.height)) + 1e-4
    ? []
    : [
        say(
          'warning',
          'marking-stretched',
          `is ${figure(width * 100)} × ${figure(height * 100)} mm, which are not the proportions of its picture; give ${figure(Math.round((width / own) * 100))} mm as its height, or let it be stretched.`,
        ),
      ];
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

function figure(length: Hundredth): string {
  return String(Math.round(length) / 100);
}
