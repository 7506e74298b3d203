import type { CalculationLine } from '../holding/calculation';
import type { HungCheck } from '../holding/check-hung';

/** The calculation of a pull, which every item with that magnet on that ground shares. */
export interface SharedPull {
  /** `P2` */
  readonly name: string;
  readonly lines: readonly CalculationLine[];
  readonly usedBy: readonly string[];
}

/** What is calculated of items alone; of those alike once. */
export interface OwnCalculation {
  /** `A-H1` */
  readonly marks: readonly string[];
  readonly pulls: readonly SharedPull[];
  readonly lines: readonly CalculationLine[];
}

/** Lines of the calculations of several items, each said once; together they are all lines of each. */
export interface SharedCalculations {
  readonly pulls: readonly SharedPull[];
  readonly own: readonly OwnCalculation[];
  /** Of all lines, in the order in which they first come. */
  readonly sources: readonly string[];
}

export interface MarkedCheck {
  readonly mark: string;
  readonly check: Pick<HungCheck, 'result' | 'bonds'>;
}

/** Items without a line of calculation are left out. */
export function shareCalculations(checks: readonly MarkedCheck[]): SharedCalculations {
  const pulls = new Map<string, { name: string; lines: readonly CalculationLine[]; usedBy: string[] }>();
  const own = new Map<string, { marks: string[]; pulls: SharedPull[]; lines: CalculationLine[] }>();
  for (const { mark, check } of checks) {
    const { lines = [], magnets = [] } = check.result ?? {};
    if (lines.length === 0) continue;
    const used = new Set(magnets.map(({ pull }) => pull.lines).filter((of) => of.length > 0));
    const named = [...used].map((of) => {
      const key = JSON.stringify(of);
      const pull = pulls.get(key) ?? { name: `P${pulls.size + 1}`, lines: of, usedBy: [] };
      pulls.set(key, pull);
      if (!pull.usedBy.includes(mark)) pull.usedBy.push(mark);
      return pull;
    });
    const shared = new Set([...used].flat().map(keyOf));
    const rest = lines.filter((line) => !shared.has(keyOf(line)));
    const distinct = [...new Set(named)];
    const key = JSON.stringify([distinct.map(({ name }) => name), rest]);
    const alike = own.get(key) ?? { marks: [], pulls: distinct, lines: rest };
    own.set(key, alike);
    alike.marks.push(mark);
  }
  const all = [...pulls.values(), ...own.values()].flatMap(({ lines }) => lines);
  const bonds = checks.flatMap(({ check }) => check.bonds.flatMap(({ result }) => result.lines));
  return {
    pulls: [...pulls.values()],
    own: [...own.values()],
    sources: [...new Set([...all, ...bonds].map(({ source }) => source))],
  };
}

function keyOf(line: CalculationLine): string {
  return JSON.stringify(line);
}
