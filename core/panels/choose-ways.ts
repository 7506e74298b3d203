import type { Hundredth } from '../units';
import type { JointCell } from './joint-cells';
import { fitsStock } from './laid-piece';
import type { StockSheet } from '../job/schema';
import type { DividedPart } from './lay-format';
import type { Steps } from './pace';
import type { PanelCosts } from './panel-costs';
import { quickFigures, weighPiece, type QuickFigures, type WeighedPiece } from './quick-cost';
import type { SlottedPart } from './rim-strips';

export interface ChosenWays {
  readonly divided: readonly DividedPart[];
  readonly figures: QuickFigures;
}

/** How layouts are compared: slivers before cost, or cost alone before anything else. */
export type Preference = 'no-slivers' | 'least-cost';

interface Way {
  readonly cells: readonly JointCell[];
  readonly pieces: readonly WeighedPiece[];
}

const mostRounds = 3;

/**
 * For every place the way of dividing it that costs least together with all others: one place after the other,
 * again and again until nothing gets better, from the large format everywhere and from each other format wherever
 * it may be; then cut pieces are taken from whichever format costs less.
 *
 * @param budget how many layouts may be costed; what it ends with is then the best so far
 */
export function* chooseWaysInSteps(
  slotted: readonly SlottedPart[],
  formats: readonly StockSheet[],
  { costs, leastWidth, preference, budget }: Choosing,
): Steps<ChosenWays> {
  const weigh = (cells: readonly JointCell[]): Way => ({
    cells,
    pieces: cells.flatMap(({ box, course, stock, pieces }) =>
      pieces.map((polygon) => weighPiece({ polygon, cell: box, course, stock }, leastWidth)),
    ),
  });
  const kept = slotted.map((one) => weigh(one.kept));
  const slots = slotted.flatMap(({ slots: ways }, part) =>
    ways.map((slot) => ({ part, ways: slot.ways.map(weigh) })),
  );
  const keptPieces = kept.flatMap(({ pieces }) => pieces);
  const figuresOf = (picked: readonly number[]) =>
    quickFigures([...keptPieces, ...slots.flatMap(({ ways }, i) => [...ways[picked[i]!]!.pieces])], costs);

  let best: { picked: readonly number[]; figures: QuickFigures } | undefined;
  let left = budget;
  for (const first of firstPicks(
    slots.map(({ ways }) => ways),
    formats,
  )) {
    let picked = first;
    let figures = figuresOf(picked);
    for (let round = 0, better = true; better && round < mostRounds && left > 0; round++) {
      better = false;
      for (const [i, { ways }] of slots.entries()) {
        for (let way = 0; way < ways.length && left > 0; way++) {
          if (way === picked[i]) continue;
          const other = picked.with(i, way);
          const otherFigures = figuresOf(other);
          left--;
          yield;
          if (compareQuick(otherFigures, figures, preference) >= 0) continue;
          [picked, figures, better] = [other, otherFigures, true];
        }
      }
    }
    if (!best || compareQuick(figures, best.figures, preference) < 0) best = { picked, figures };
  }

  const cells = slotted.map((_, part) => [
    ...kept[part]!.cells,
    ...slots.flatMap((slot, i) => (slot.part === part ? slot.ways[best!.picked[i]!]!.cells : [])),
  ]);
  const assigned = yield* assignStock(cells, formats, weigh, costs);
  return {
    divided: slotted.map(({ part }, i) => ({ ...part, cells: assigned.cells[i]!, isPlain: false })),
    figures: assigned.figures,
  };
}

export interface Choosing {
  readonly costs: PanelCosts;
  readonly leastWidth: Hundredth;
  readonly preference: Preference;
  readonly budget: number;
}

/** The large format everywhere; and each other one wherever it may be, with the fewest panels. */
function firstPicks(slots: readonly (readonly Way[])[], formats: readonly StockSheet[]): number[][] {
  const plain = slots.map(() => 0);
  const picks = formats.map((format) =>
    slots.map((ways) => {
      let pick = 0;
      ways.forEach(({ cells, pieces }, i) => {
        if (i === 0 || cells[0]?.stock !== format) return;
        if (pick === 0 || pieces.length < ways[pick]!.pieces.length) pick = i;
      });
      return pick;
    }),
  );
  return [plain, ...picks.filter((pick) => pick.some((way) => way > 0))];
}

/** Cells whose pieces are cut are laid from another format that they fit, all of a size together, where that costs less. */
function* assignStock(
  cells: readonly (readonly JointCell[])[],
  formats: readonly StockSheet[],
  weigh: (cells: readonly JointCell[]) => Way,
  costs: PanelCosts,
): Steps<{ cells: readonly (readonly JointCell[])[]; figures: QuickFigures }> {
  const figuresOf = (all: readonly (readonly JointCell[])[]) =>
    quickFigures(
      all.flatMap((part) => weigh(part).pieces),
      costs,
    );
  let best = cells;
  let figures = figuresOf(best);
  const sizes = new Set(cells.flat().map(sizeKey));
  for (const size of [...sizes].slice(0, mostSizes)) {
    for (const format of formats) {
      const moves = (cell: JointCell) =>
        sizeKey(cell) === size &&
        cell.stock !== format &&
        cell.pieces.length > 0 &&
        cell.pieces.every((piece) => fitsStock(piece, format));
      if (!best.some((part) => part.some(moves))) continue;
      const other = best.map((part) => part.map((cell) => (moves(cell) ? { ...cell, stock: format } : cell)));
      const otherFigures = figuresOf(other);
      if (otherFigures.cost < figures.cost) [best, figures] = [other, otherFigures];
      yield;
    }
  }
  return { cells: best, figures };
}

const mostSizes = 24;

/** Cells that hold pieces of the same sizes. */
function sizeKey({ pieces }: JointCell): string {
  return pieces
    .map(({ outer }) => {
      const xs = outer.map(({ x }) => x);
      const ys = outer.map(({ y }) => y);
      return `${Math.max(...xs) - Math.min(...xs)}x${Math.max(...ys) - Math.min(...ys)}`;
    })
    .join(' ');
}

export function compareQuick(a: QuickFigures, b: QuickFigures, preference: Preference): number {
  const rest = a.cut - b.cut || a.panels - b.panels;
  if (preference === 'no-slivers') return a.slivers - b.slivers || a.cost - b.cost || rest;
  return a.cost - b.cost || a.slivers - b.slivers || rest;
}
