import type { WorkPlace } from './calendar';
import type { NetworkTask } from './network';
import { earliestPlace } from './placement';

/** A stretch of the crew's working minutes, from its first to after its last. */
export interface Stretch {
  readonly from: WorkPlace;
  readonly to: WorkPlace;
}

/** What of the crew's time nobody has taken yet. */
export class CrewTime {
  /** In order, apart from one another; the last has no end. */
  private readonly free: Stretch[] = [{ from: -Infinity, to: Infinity }];

  /** @param least working minutes of the shortest task: what is shorter is free for nobody */
  constructor(private readonly least: number) {}

  /**
   * The first place from `ready` on where the task fits whole into free time.
   *
   * @param besides taken too, if only for now
   */
  firstPlace(task: NetworkTask, ready: WorkPlace, besides: readonly Stretch[] = []): WorkPlace {
    let place = earliestPlace(task, ready);
    for (let i = this.firstEndingAfter(place); ; i++) {
      const { from, to } = this.free[i]!;
      place = clearOf(besides, task, earliestPlace(task, Math.max(place, from)));
      if (place + task.work <= to) return place;
    }
  }

  /** Takes time that is free. */
  take({ from, to }: Stretch): void {
    const i = this.firstEndingAfter(from);
    const free = this.free[i]!;
    if (free.from > from || free.to < to) throw new Error('the crew is taken twice');
    const left = [
      { from: free.from, to: from },
      { from: to, to: free.to },
    ].filter((stretch) => stretch.to - stretch.from >= this.least);
    this.free.splice(i, 1, ...left);
  }

  private firstEndingAfter(place: WorkPlace): number {
    let low = 0;
    let high = this.free.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.free[middle]!.to <= place) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

function clearOf(taken: readonly Stretch[], task: NetworkTask, from: WorkPlace): WorkPlace {
  let place = from;
  for (;;) {
    const met = taken.find((stretch) => place < stretch.to && stretch.from < place + task.work);
    if (!met) return place;
    place = earliestPlace(task, met.to);
  }
}
