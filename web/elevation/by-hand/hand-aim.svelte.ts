import type { MmBox, MmPoint } from '../../../core/job/shape';
import { StartWatch } from '../../results/start-watch.svelte';

/** What the hand aims at while something is chosen by hand. */
export class HandAim {
  /** Weighs starts while one is looked for. */
  readonly watch = new StartWatch();
  /** Where no joint may lie, as it is being drawn. */
  band = $state.raw<MmBox | null>(null);
  /** The panel that is to be joined with another: its mark, and the point of it. */
  first = $state.raw<{ readonly mark: string; readonly at: MmPoint } | null>(null);

  clear(): void {
    this.band = null;
    this.first = null;
  }
}
