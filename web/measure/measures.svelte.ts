import type { MmPoint } from '../../core/job/shape';
import { lengthFigure } from '../look/figures';

/** A distance that was taken on a wall, between two points in mm. */
export interface Measure {
  readonly wallId: string;
  readonly from: MmPoint;
  readonly to: MmPoint;
}

/**
 * Distances taken on the drawing. They stand there until Escape and are no part of the job: what is to stay is a check
 * measure.
 */
export class Measures {
  #list = $state.raw<readonly Measure[]>([]);
  /** Where the next one begins, once that is set, and where it would end. */
  from = $state.raw<MmPoint | null>(null);
  aim = $state.raw<MmPoint | null>(null);

  of(wallId: string): readonly Measure[] {
    return this.#list.filter((measure) => measure.wallId === wallId);
  }

  take(measure: Measure): void {
    this.#list = [...this.#list, measure];
  }

  /** @returns whether there was anything to take away */
  clear(): boolean {
    const had = this.#list.length > 0 || this.from !== null;
    this.#list = [];
    this.from = null;
    this.aim = null;
    return had;
  }
}

/** Of the one drawing on the screen. */
export const measures = new Measures();

/** "Across 1200, up 300, straight 1236.93": what is the same as the straight length is not said twice. */
export function measureWords({ from, to }: Pick<Measure, 'from' | 'to'>): string {
  const [across, up] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
  const straight = Math.hypot(across, up);
  if (up < 0.005) return `across ${lengthFigure(across)}`;
  if (across < 0.005) return `up ${lengthFigure(up)}`;
  return `straight ${lengthFigure(straight)}, across ${lengthFigure(across)}, up ${lengthFigure(up)}`;
}
