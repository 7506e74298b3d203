import type { Mm } from '../units';
import { moveItems } from './move-items';
import type { Item } from './page';

/** A drawing with its dimensions round it, its lower left corner at the origin of the paper. */
export interface Sketch {
  readonly width: Mm;
  readonly height: Mm;
  readonly items: readonly Item[];
  /** Whether every mark and size found its place in the drawing itself. */
  readonly isComplete: boolean;
  /** Whether it can be read together with its lists: nothing is left out that only the drawing can show. */
  readonly isLegible: boolean;
}

export function placeSketch(sketch: Sketch, left: Mm, top: Mm): Item[] {
  return moveItems(sketch.items, left, top - sketch.height);
}
