import { regionArea } from '../geometry/polygon';
import { buildUpKind, type BuildUpKind } from '../job/build-up-kinds';
import type { LengthUnits } from '../lengths';
import type { WorkedOut } from '../worked-out';
import { massText } from './figure-text';
import { figuresOf } from './job-figures';
import { paperFigures } from './paper-figures';

/** A figure that a client weighs alternatives by. */
export interface ClientRow {
  readonly label: string;
  /** One for each alternative, in their order. */
  readonly values: readonly string[];
  readonly differs: boolean;
}

const uses: readonly (readonly [label: string, is: (kind: BuildUpKind) => boolean])[] = [
  ['For magnets, heavy duty', ({ magnetic }) => magnetic === 'steel'],
  ['For magnets, light to medium duty', ({ magnetic }) => magnetic === 'coating'],
  ['To write on', ({ surface }) => surface === 'writable'],
  ['For chalk', ({ surface }) => surface === 'chalk'],
];

/**
 * Figures of whole jobs side by side: usable areas by what they are for (a zone that is written on and holds magnets
 * counts for both), panels, stock sheets and the weight of the steel. A use that none has is left out.
 */
export function figureRowsOf(jobs: readonly WorkedOut[], units?: LengthUnits): ClientRow[] {
  const { roughly } = paperFigures(units);
  const figures = jobs.map((worked) => figuresOf(worked));
  const row = (label: string, values: readonly string[]): ClientRow => ({
    label,
    values,
    differs: new Set(values).size > 1,
  });
  const areas = uses.flatMap(([label, is]) => {
    const sums = jobs.map((worked) => areaFor(worked, is));
    if (sums.every((sum) => sum === 0)) return [];
    return [
      row(
        label,
        sums.map((sum) => (sum === 0 ? 'none' : roughly(sum))),
      ),
    ];
  });
  if (figures.every(({ panels }) => panels === 0)) return areas;
  return [
    ...areas,
    row(
      'Steel panels',
      figures.map(({ panels, cut }) => (panels === 0 ? 'none' : `${panels}, ${cut} of them cut`)),
    ),
    row(
      'Stock sheets to order',
      figures.map(({ toOrder }) => String(toOrder)),
    ),
    row(
      'Weight of the steel on the wall',
      figures.map(({ steelMass }) => (steelMass === null ? 'not known' : massText(steelMass))),
    ),
  ];
}

function areaFor({ walls }: WorkedOut, is: (kind: BuildUpKind) => boolean): number {
  return walls
    .flatMap(({ zones }) => zones)
    .filter(({ area }) => is(buildUpKind(area.zone.buildUp)))
    .reduce((sum, { area }) => sum + regionArea(area.area), 0);
}
