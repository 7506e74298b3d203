import { locate } from '../geometry/polygon';
import { fixingPointNames } from '../job/names';
import type { FixingPoint } from '../job/ground-schema';
import type { WorkedWall } from '../worked-out';
import type { Schedule } from './deal-tables';
import { boxOfFixingPoint, middleOfFixingPoint } from '../survey/fixing-points';
import type { PaperFigures } from './paper-figures';

/** Every fixing point by number: where it is, and which panel will hide its middle. */
export function fixingSchedule({ survey, zones }: WorkedWall, { length }: PaperFigures): Schedule {
  const panels = zones.flatMap(({ layout }) => layout?.panels ?? []);
  const behind = (point: FixingPoint) =>
    panels.find(({ outline }) => locate(middleOfFixingPoint(point), outline) !== 'outside')?.mark ?? '–';
  return {
    heading: 'Fixing points',
    columns: [
      { heading: 'Mark', align: 'left' },
      { heading: 'What', align: 'left', most: 50 },
      { heading: 'from left', align: 'right' },
      { heading: 'from floor', align: 'right' },
      { heading: 'width', align: 'right' },
      { heading: 'height', align: 'right' },
      { heading: 'behind panel', align: 'left' },
    ],
    rows: (survey.wall.fixingPoints ?? []).map((point) => ({
      kind: 'row',
      cells: [
        point.id,
        [fixingPointNames[point.kind], point.name].filter(Boolean).join(', '),
        ...placeCells(point, length),
        behind(point),
      ],
    })),
  };
}

/** A drilling by its middle and diameter, a stud or pattress by its lower left corner. */
function placeCells(point: FixingPoint, write: PaperFigures['length']): string[] {
  const { left, bottom, right, top } = boxOfFixingPoint(point);
  if (point.kind !== 'hole') return [left, bottom, right - left, top - bottom].map(write);
  const { x, y } = middleOfFixingPoint(point);
  return [`centre ${write(x)}`, write(y), `Ø ${write(right - left)}`, '–'];
}
