import type { Panel } from '../../core/panels/panel';
import { rowsOfRoom } from '../../core/job/corners';
import { boxOfVertices, type MmPoint } from '../../core/job/shape';
import { roomStrip, stripAbout, type StripFold, type StripWall } from '../../core/survey/room-strip';
import type { OpenJob } from '../job/open-job.svelte';
import type { Results } from '../results/results.svelte';
import type { View } from './view.svelte';

/**
 * The walls of the room beside the wall on the screen, which stays in its own place: what a hand does there, tapes and all,
 * goes on as it does on the wall alone.
 */
export class Room {
  readonly #open: OpenJob;
  readonly #results: Results;
  /** Whether the drawing shows the room and not the wall alone. */
  wanted = $state.raw(false);

  constructor(open: OpenJob, results: Results) {
    this.#open = open;
    this.#results = results;
  }

  /** Whether the wall on the screen has others in its room. */
  readonly isThere: boolean = $derived.by(() => {
    const { job, wall } = this.#open;
    if (!wall) return false;
    const rows = rowsOfRoom(job, wall.id);
    return rows.length > 1 || (rows[0]?.walls.length ?? 0) > 1;
  });

  /** The strip in the frame of the wall on the screen; null where that is shown alone. */
  readonly strip = $derived.by(() => {
    const { job, wall } = this.#open;
    return this.wanted && this.isThere && wall ? stripAbout(roomStrip(job, wall.id), wall.id) : null;
  });

  #neighbours: readonly StripWall[] = [];
  /** The same list while none of them changes, so that they are not painted anew with every change of the wall itself. */
  readonly neighbours: readonly StripWall[] = $derived.by(() => {
    const id = this.#open.wall?.id;
    const now = this.strip?.walls.filter(({ wall }) => wall.id !== id) ?? [];
    return (this.#neighbours = alike(this.#neighbours, now));
  });

  #folds: readonly StripFold[] = [];
  readonly folds: readonly StripFold[] = $derived.by(() => {
    const now = this.strip?.folds ?? [];
    return (this.#folds = alike(this.#folds, now, ['left', 'right']));
  });

  /** The panels of one of the walls, as last worked out. */
  panelsOf(wallId: string): readonly Panel[] {
    const worked = this.#results.worked?.walls.find(({ survey }) => survey.wall.id === wallId);
    return worked?.zones.flatMap(({ layout }) => layout?.panels ?? []) ?? [];
  }

  /** The neighbour at a point of the wall's frame. */
  neighbourAt({ x, y }: MmPoint): StripWall | undefined {
    return this.neighbours.find(({ wall, dx, dy }) => {
      const box = boxOfVertices(wall.outline);
      const [left, foot] = [box.x + dx, box.y + dy];
      return x > left && x < left + box.width && y > foot && y < foot + box.height;
    });
  }

  /** Keeps the strip where it is on the screen while another of its walls takes the place of the one shown. */
  stay(view: View, before: string, now: string): boolean {
    const from = this.strip?.walls.find(({ wall }) => wall.id === before);
    if (!from || before === now) return false;
    // In the frame of the wall that is shown now, the one before lies where it did as seen from there.
    view.shift(-from.dx * view.frame.scale, from.dy * view.frame.scale);
    return true;
  }
}

/** The earlier list if the later one says the same, but for the fields that do not matter. */
function alike<T extends object>(
  earlier: readonly T[],
  later: readonly T[],
  but: readonly (keyof T)[] = [],
): readonly T[] {
  const isSame = (a: T, b: T) =>
    (Object.keys(b) as (keyof T)[]).every((key) => but.includes(key) || a[key] === b[key]);
  return earlier.length === later.length && later.every((one, i) => isSame(earlier[i]!, one))
    ? earlier
    : later;
}
