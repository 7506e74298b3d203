import { boxOfOutline } from '../geometry/arc';
import { isElectric } from '../job/fitting-kinds';
import { finishLevels } from '../job/offer-schema';
import type { Job, OwnKind } from '../job/schema';
import type { WorkedWall } from '../worked-out';
import { cautions } from './cautions';
import type { PaperFigures, WriteLength } from './paper-figures';
import { closingSign } from './panel-marks';
import { measureFirst } from './panel-words';

/** How a setting-out drawing is read: where its figures run from, and what its colour and hatching mean. */
export function readingNote(wall: WorkedWall, { length, units }: PaperFigures, offer?: Job['offer']): string {
  const steel = wall.zones.some(({ layout }) => layout !== null);
  const closing = wall.zones.some(({ layout }) => layout?.panels.some((panel) => panel.closing));
  const isLeftOut = wall.zones.some(({ layout }) => layout?.leftOut);
  return [
    ...(wall.survey.wall.surveyed === false ? ['Budget only: subject to survey.'] : []),
    `Seen square-on. ${datumNote(wall, length)}`,
    ...(units === 'ft-in' ? ['Figures to the nearest 1/16 inch; panel sizes in mm: see the tables.'] : []),
    ...(steel
      ? [
          `Red lead: steel and its panel lines; hatched: cut panels. Full marks begin with ${wall.survey.wall.id} and the zone.`,
        ]
      : []),
    ...(isLeftOut ? ['Dashed: no panel is fixed there.'] : []),
    ...(closing ? [`${closingSign}: closing panel, ${measureFirst}, fix last.`] : []),
    ...finishNotes(wall, offer),
    ...creepNotes(wall, length),
  ].join(' ');
}

/** Which level of finish is agreed for which zones, and in which light it is accepted. */
function finishNotes({ zones }: WorkedWall, offer: Job['offer']): string[] {
  const levels = finishLevels.flatMap((level) => {
    const ids = zones
      .filter(({ area: { zone } }) => (zone.finishLevel ?? offer?.finish?.level) === level)
      .map(({ area }) => area.zone.id);
    return ids.length > 0 ? [`${level} ${ids.join(', ')}`] : [];
  });
  if (levels.length === 0) return [];
  const light = offer?.finish?.rakingLight ? 'also in raking light' : 'not in raking light';
  return [`Level of finish: ${levels.join('; ')}; accepted ${light}.`];
}

/** By how much the longest row and column may come out off, where the stock sheets' tolerance is known. */
function creepNotes({ zones }: WorkedWall, write: WriteLength): string[] {
  return zones.flatMap(({ layout }) =>
    (layout?.creep ?? []).map(
      ({ axis, from, to, most, likely }) =>
        `${axis === 'x' ? 'Row' : 'Column'} ${from} to ${to} may come out ${write(most)} longer or shorter, likely ${write(likely)}.`,
    ),
  );
}

/** The cautions that apply to what is on a wall. */
export function cautionsFor({ survey, zones }: WorkedWall, own: readonly OwnKind[]): string[] {
  const steel = zones.some(({ layout }) => layout !== null);
  const electric = survey.wall.fittings.some(({ kind }) => isElectric(kind, own));
  return [
    ...(electric ? [cautions.electrics] : []),
    cautions.concealed,
    ...(steel ? [cautions.edges] : []),
    cautions.dust,
    ...(steel ? [cautions.detectors] : []),
  ];
}

/** Walls need not begin at their datum, nor even reach it. */
export function datumNote({ survey }: WorkedWall, write: WriteLength): string {
  const { left, bottom, right, top } = boxOfOutline(survey.outline);
  const away = [
    ...(left > 0 ? [`${write(left)} to its right`] : []),
    ...(right < 0 ? [`${write(-right)} to its left`] : []),
    ...(bottom > 0 ? [`${write(bottom)} above it`] : []),
    ...(top < 0 ? [`${write(-top)} below it`] : []),
  ];
  if (away.length > 0) {
    return `Figures run from a datum off the wall, at finished floor level: the wall begins ${away.join(' and ')}.`;
  }
  const end = left === 0 ? 'at' : `${write(-left)} from`;
  return `Figures run from the datum, the open circle: finished floor level ${end} the left end of the wall.`;
}
