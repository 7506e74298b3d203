import { holdingMap, type MapBand } from '../../core/holding/holding-map';
import { mapQuestionOf } from '../../core/holding/map-question';
import type { Job } from '../../core/job/schema';
import type { WorkedWall } from '../../core/worked-out';

const kept = 'lodeplan-holding-map';

/** Whether the drawing of this screen shows the holding map, and the map of each wall as the job asks for it. */
class HoldingMaps {
  #isShown = $state.raw(recall());
  #known = new WeakMap<
    WorkedWall,
    { readonly key: string; readonly magnets: unknown; readonly bands: MapBand[] }
  >();

  get isShown(): boolean {
    return this.#isShown;
  }

  show(isShown: boolean): void {
    this.#isShown = isShown;
    try {
      localStorage.setItem(kept, JSON.stringify({ isShown }));
    } catch {
      // A browser that keeps nothing still shows the map.
    }
  }

  /** As long as wall, magnets and question stay the same, the same bands. */
  bandsOf(job: Job, worked: WorkedWall | undefined): readonly MapBand[] {
    if (!worked) return [];
    const question = mapQuestionOf(job);
    const { magnet, reach, use } = question;
    const key = `${magnet.id} ${reach} ${use}`;
    const known = this.#known.get(worked);
    if (known?.key === key && known.magnets === job.magnets) return known.bands;
    const bands = holdingMap(job, worked.survey.wall, worked.zones, question);
    this.#known.set(worked, { key, magnets: job.magnets, bands });
    return bands;
  }
}

function recall(): boolean {
  try {
    const { isShown } = JSON.parse(localStorage.getItem(kept) ?? '{}') as { isShown?: unknown };
    return isShown === true;
  } catch {
    return false;
  }
}

export const holdingMaps = new HoldingMaps();
