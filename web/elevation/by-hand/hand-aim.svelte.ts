import type { MmBox, MmPoint } from '../../../core/job/shape';
import type { HandChoiceRef } from '../../job/open-job.svelte';
import { HandWatch } from '../../results/hand-watch.svelte';
import { StartWatch } from '../../results/start-watch.svelte';

/** What the hand aims at while something is chosen by hand. */
export class HandAim {
  /** Weighs starts while one is looked for. */
  readonly watch = new StartWatch();
  /** Weighs a choice that is chosen, while it is moved. */
  readonly choiceWatch = new HandWatch();
  /** Where no joint may lie, as it is being drawn. */
  band = $state.raw<MmBox | null>(null);
  /** The panel that is to be joined with another: its mark, and the point of it. */
  first = $state.raw<{ readonly mark: string; readonly at: MmPoint } | null>(null);

  /** The choice whose sign is under the hand. */
  moving = $state.raw<HandChoiceRef | null>(null);

  clear(): void {
    this.moving = null;
    this.band = null;
    this.first = null;
  }
}
