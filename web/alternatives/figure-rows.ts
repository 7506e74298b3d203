import { buildUpKind } from '../../core/job/build-up-kinds';
import type { AlternativeFigures } from '../../core/run/alternative-figures';
import { moneyInWords } from '../../core/run/whole-money';
import { areaFigure, areaUnit, massFigure, metresFigure, percentFigure } from '../look/figures';

export interface FigureRow {
  readonly label: string;
  /** One for each alternative; … while it is not known. */
  readonly values: readonly string[];
  readonly differs: boolean;
}

/** Figures of alternatives under each other, in the words of the screen. */
export function figureRows(
  figures: readonly (AlternativeFigures | null)[],
  currency: string,
): readonly FigureRow[] {
  const row = (label: string, say: (of: AlternativeFigures) => string): FigureRow => {
    const values = figures.map((of) => (of ? say(of) : '…'));
    const known = values.filter((_, i) => figures[i]);
    return { label, values, differs: new Set(known).size > 1 };
  };
  const buildUps = [...new Set(figures.flatMap((of) => (of?.areas ?? []).map(({ buildUp }) => buildUp)))];
  return [
    ...buildUps.map((id) =>
      row(`${buildUpKind(id).label}, ${areaUnit()}`, ({ areas }) => {
        const found = areas.find(({ buildUp }) => buildUp === id);
        return found ? areaFigure(found.area) : 'none';
      }),
    ),
    row('Panels', ({ panels, whole, cut }) => `${panels}: ${whole} whole, ${cut} cut`),
    row('Slivers', ({ slivers }) => `${slivers}`),
    row('Stock sheets to order', ({ planned, spares, toOrder }) =>
      spares > 0 ? `${toOrder}: ${planned} + ${spares} spare` : `${toOrder}`,
    ),
    row('No plan needs fewer than', ({ lowerBound, leastPossible }) =>
      leastPossible ? `${lowerBound}, reached` : `${lowerBound}`,
    ),
    row('Price of the stock sheets without spares', ({ cost }) => moneyInWords(cost, currency)),
    row('Rack pieces used', ({ rackPieces }) => `${rackPieces}`),
    row('Offcuts to keep', ({ offcutsKept }) => `${offcutsKept.length}`),
    row(
      'Waste',
      ({ wasteArea, wasteShare }) => `${percentFigure(wasteShare)}, ${areaFigure(wasteArea)} ${areaUnit()}`,
    ),
    row('Length to cut', ({ cutLength }) => metresFigure(cutLength)),
    row('Steel on the wall', ({ steelMass }) => (steelMass === null ? 'not known' : massFigure(steelMass))),
    row('Findings to mend', ({ toMend }) => `${toMend}`),
  ];
}
