import { flattenVertices } from '../../geometry/arc';
import { boxOf, type Point } from '../../geometry/polygon';
import { drawMarking } from '../../markings/draw-marking';
import { kindInWords, nameOfWall, nameOfZone, sentence } from '../../job/names';
import type { FixingPoint } from '../../job/ground-schema';
import type { SurveyedWall } from '../../survey/surveyed-wall';
import { toHundredth } from '../../units';
import type { WorkedOut, WorkedWall, WorkedZone } from '../../worked-out';
import { boxOfFixingPoint, middleOfFixingPoint } from '../../survey/fixing-points';
import { wallArcs } from '../panel-arcs';
import { signedMark } from '../panel-marks';
import { whichRevision } from './drawing-words';
import { boxShape, lineShape, outlineShape, ringShape, wordsDown, wordsWithin } from './plain-shapes';
import { wallLayers, type WorkshopDrawing, type WorkshopShape } from './workshop-drawing';

/**
 * Each wall square-on at its true size, datum at the origin: openings, fittings and zones as they are drawn, panels as they
 * are fixed; joints of the ground, fixing points and what is ruled on zones on `mark`; names on `text`.
 */
export function wallDrawings(worked: WorkedOut): WorkshopDrawing[] {
  return worked.walls.map((wall) => ({
    ...namesOf(wall),
    layers: wallLayers,
    shapes: shapesOf(worked, wall),
  }));
}

/** Whether and where a drawing is to be had, without drawing it. */
export function wallDrawingNames({ walls }: WorkedOut): { name: string; title: string }[] {
  return walls.map(namesOf);
}

function namesOf({ survey: { wall } }: WorkedWall): { name: string; title: string } {
  return { name: `elevation-${wall.id}`, title: `Elevation, ${nameOfWall(wall)}` };
}

function shapesOf({ job }: WorkedOut, wall: WorkedWall): WorkshopShape[] {
  const { survey, zones } = wall;
  const foot = boxOf(survey.outline.ring);
  return [
    outlineShape('wall', survey.outline),
    ...keepOutShapes(survey),
    ...zones.flatMap((zone) => zoneShapes(survey, zone)),
    ...jointShapes(survey),
    ...(survey.wall.fixingPoints ?? []).map(fixingShape),
    ...wordsDown(
      [
        whichRevision(job),
        sentence(nameOfWall(survey.wall)),
        'Millimetres, 1:1. The datum is at 0, 0.',
        'Find concealed cables and pipes before drilling; isolate before working round a socket.',
      ],
      foot.left / 100,
      foot.bottom / 100 - 80,
      40,
    ),
  ];
}

function keepOutShapes({ wall, keepOuts }: SurveyedWall): WorkshopShape[] {
  return keepOuts.flatMap(({ kind, id, bare }): WorkshopShape[] => {
    const object = (kind === 'opening' ? wall.openings : wall.fittings).find((one) => one.id === id);
    const name = object ? object.name || kindInWords(object.kind, kind) : '';
    const words = kind === 'opening' ? `${id} ${name}` : id;
    return [outlineShape(kind, bare), wordsWithin({ outer: bare.ring, holes: [] }, words.trim())];
  });
}

function zoneShapes(wall: SurveyedWall, { area, layout }: WorkedZone): WorkshopShape[] {
  const { zone, shape, box } = area;
  const panels = layout?.panels ?? [];
  return [
    outlineShape('zone', shape),
    ...zone.holes.map((hole) => outlineShape('zone', flattenVertices(hole, 'circumscribed'))),
    ...panels.flatMap((panel): WorkshopShape[] => {
      const arcs = wallArcs({ wall, zone: area }, 0, 0);
      const rings = [panel.outline.outer, ...panel.outline.holes];
      return [
        ...rings.map((ring) => ringShape('panel', ring, arcs)),
        wordsWithin(panel.outline, signedMark(panel)),
      ];
    }),
    ...(zone.markings ?? []).flatMap((marking): WorkshopShape[] => {
      const drawn = drawMarking(marking, { x: box.left, y: box.bottom });
      return [
        boxShape('mark', drawn.box),
        ...drawn.lines.map(({ from, to }) => lineShape('mark', from, to)),
        ...drawn.filled.map((square) => boxShape('mark', square)),
      ];
    }),
    {
      kind: 'text',
      text: sentence(nameOfZone(zone)),
      at: [box.left / 100, box.top / 100 + 12],
      height: 30,
      centred: false,
    },
  ];
}

function jointShapes({ wall, movementJoints }: SurveyedWall): WorkshopShape[] {
  const end = ([x, y]: readonly [number, number]): Point => ({ x: toHundredth(x), y: toHundredth(y) });
  return [
    ...movementJoints.map(({ strip }) => ringShape('mark', strip.outer)),
    ...(wall.lines ?? [])
      .filter(({ kind }) => kind !== 'movement-joint')
      .map(({ from, to }) => lineShape('mark', end(from), end(to))),
  ];
}

function fixingShape(point: FixingPoint): WorkshopShape {
  if (point.kind !== 'hole') return boxShape('mark', boxOfFixingPoint(point));
  const { x, y } = middleOfFixingPoint(point);
  const radius = point.width / 2;
  return { kind: 'contour', layer: 'mark', contour: { kind: 'circle', x: x / 100, y: y / 100, radius } };
}
