import type { Advice } from '../../core/holding/advice';
import { adviseHung } from '../../core/holding/advise';
import { checkHung, type HungCheck } from '../../core/holding/check-hung';
import { wallOfItems } from '../../core/holding/judge-wall';
import { suggestMagnets, type Suggestions } from '../../core/holding/suggest';
import type { Job } from '../../core/job/schema';
import type { WorkedWall } from '../../core/worked-out';

/**
 * The calculation of one item, then what to change, then magnets for it: each in a turn of its own, so that no frame
 * waits for more than one of them.
 */
export class ItemCheck {
  check = $state.raw<HungCheck | null>(null);
  advice = $state.raw<readonly Advice[] | null>(null);
  suggestions = $state.raw<Suggestions | null>(null);

  /** Not read from the state: who asks would then ask again with every answer. */
  #about: string | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** What stood before stays until the new is there. */
  ask(job: Job, { survey: { wall }, zones }: WorkedWall, id: string): void {
    this.stop();
    if (this.#about !== id) this.advice = this.suggestions = null;
    this.#about = id;
    const steps = [
      () => (this.check = checkHung(job, wall, zones, id) ?? null),
      () => (this.advice = adviseHung(wallOfItems(job, wall, zones), id)),
      () => (this.suggestions = suggestMagnets(wallOfItems(job, wall, zones), id)),
    ];
    const next = () => {
      steps.shift()?.();
      if (steps.length > 0) this.#timer = setTimeout(next);
    };
    this.#timer = setTimeout(next);
  }

  stop(): void {
    clearTimeout(this.#timer);
  }
}
