import type { Point } from '../geometry/polygon';
import { surveyLineNames } from '../job/names';
import type { SurveyLine } from '../job/schema';
import { isConcealed, type ConcealedKind } from '../survey/concealed-lines';
import type { SurveyedWall } from '../survey/surveyed-wall';
import { toHundredth } from '../units';
import { placeFirst, type LabelRoom } from './label-room';
import type { Stroke, Text } from './page';
import { paperPoint, paperRing, shows, type View } from './setting-out-view';

/**
 * Joints of the ground: a movement joint by both its banks and a chain line between them, a joint between boards as
 * a thin dashed line (it lies behind what is fixed over it; ISO 128-2: hidden edges dashed, from memory). Cables and pipes
 * in the wall: wide, since whoever drills has to see them.
 */
export function surveyLines({ wall, movementJoints }: SurveyedWall, view: View): Stroke[] {
  return [
    ...movementJoints
      .filter(({ strip }) => shows(view, strip.outer))
      .flatMap(({ from, to, strip }): Stroke[] => [
        { kind: 'stroke', points: paperRing(view, strip.outer), closed: true, width: 0.25 },
        { ...between(view, from, to), width: 0.5, line: 'long-dashed-double-dotted' },
      ]),
    ...(wall.lines ?? [])
      .filter(({ kind }) => kind === 'board-joint')
      .map(endsOf)
      .filter((ends) => shows(view, ends))
      .map(([from, to]): Stroke => ({ ...between(view, from, to), width: 0.18, line: 'dashed' })),
    ...(wall.lines ?? []).filter(isConcealed).flatMap((line): Stroke[] => {
      const [from, to] = endsOf(line);
      return shows(view, [from, to]) ? [{ ...between(view, from, to), ...concealedLine[line.kind] }] : [];
    }),
  ];
}

export const concealedLine: Readonly<Record<ConcealedKind, Pick<Stroke, 'width' | 'line'>>> = {
  cable: { width: 0.5, line: 'long-dashed-dotted' },
  pipe: { width: 0.5, line: 'dashed' },
};

/** Kind and id of each line along it, where there is room. */
export function labelSurveyLines({ wall }: SurveyedWall, view: View, room: LabelRoom): Text[] {
  return (wall.lines ?? []).flatMap((line) => {
    const ends = endsOf(line);
    if (!shows(view, ends)) return [];
    const [a, b] = [paperPoint(view, ends[0]), paperPoint(view, ends[1])];
    const isUpright = Math.abs(b.y - a.y) > Math.abs(b.x - a.x);
    const base = { kind: 'text', height: 2.5, face: 'condensed', anchor: 'middle' } as const;
    const candidates = [`${surveyLineNames[line.kind]} ${line.id}`, line.id].flatMap((text) =>
      [0.5, 0.85, 0.15, 0.7, 0.3].flatMap((t): Text[] => {
        const [x, y] = [a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t];
        return isUpright
          ? [
              { ...base, text, turned: 90, at: { x: x - 1.5, y } },
              { ...base, text, turned: 90, at: { x: x + 1.5 + base.height, y } },
            ]
          : [
              { ...base, text, at: { x, y: y + 1.5 } },
              { ...base, text, at: { x, y: y - 1.5 - base.height } },
            ];
      }),
    );
    const text = placeFirst(room, candidates);
    return text ? [text] : [];
  });
}

function endsOf({ from, to }: SurveyLine): [Point, Point] {
  return [
    { x: toHundredth(from[0]), y: toHundredth(from[1]) },
    { x: toHundredth(to[0]), y: toHundredth(to[1]) },
  ];
}

function between(view: View, from: Point, to: Point): Pick<Stroke, 'kind' | 'points'> {
  return { kind: 'stroke', points: [paperPoint(view, from), paperPoint(view, to)] };
}
