import type { Hundredth } from '../units';
import type { Panel } from './panel';
import type { PanelRun } from './panel-runs';

/**
 * By how much a row or column may come out longer or shorter than drawn, because its stock sheets are not exactly
 * their size: all the same way, and likely (root of the sum of squares, taking sheets as independent of each other).
 */
export interface Creep {
  readonly axis: PanelRun['axis'];
  /** Marks of the first and the last panel. */
  readonly from: string;
  readonly to: string;
  /** Panels whose size is the stock sheet's own. */
  readonly whole: number;
  readonly most: Hundredth;
  readonly likely: Hundredth;
}

/** What a stock sheet may be off by, hundredths. */
export interface SheetTolerance {
  readonly size: Hundredth;
  readonly squareness: Hundredth;
}

/** Cut panels are cut to their size, so only whole stock sheets count. Without tolerances there is no creep. */
export function creepOf(
  panels: readonly Panel[],
  runs: readonly PanelRun[],
  tolerance: (stock: string) => SheetTolerance,
): Creep[] {
  return runs.flatMap(({ axis, panels: run }): Creep[] => {
    const whole = run.map((i) => panels[i]!).filter(({ full }) => full);
    let most = 0;
    let squares = 0;
    for (const { stock } of whole) {
      const { size, squareness } = tolerance(stock);
      most += size + squareness;
      squares += size * size + squareness * squareness;
    }
    if (most === 0) return [];
    const [first, last] = [panels[run[0]!]!, panels[run.at(-1)!]!];
    return [
      {
        axis,
        from: first.mark,
        to: last.mark,
        whole: whole.length,
        most,
        likely: Math.round(Math.sqrt(squares)),
      },
    ];
  });
}
