import { holdingMap, type MapBand, type MapQuestion } from '../../core/holding/holding-map';
import { magnetsOf } from '../../core/holding/ready-magnets';
import { uses } from '../../core/job/hung-schema';
import type { Job } from '../../core/job/schema';
import type { WorkedWall } from '../../core/worked-out';

interface Asked {
  readonly magnet: string;
  /** mm. */
  readonly reach: number;
  readonly use: MapQuestion['use'];
  readonly isShown: boolean;
}

const kept = 'lodeplan-holding-map';
const usual: Asked = { magnet: 'N42-20x5', reach: 30, use: 'light-at-reach', isShown: false };

/** What the holding map is asked, on this screen, and its answer. */
class HoldingMaps {
  #asked = $state.raw<Asked>(recall());
  #known = new WeakMap<
    WorkedWall,
    { readonly key: string; readonly magnets: unknown; readonly bands: MapBand[] }
  >();

  get asked(): Asked {
    return this.#asked;
  }

  ask(change: Partial<Asked>): void {
    this.#asked = { ...this.#asked, ...change };
    try {
      localStorage.setItem(kept, JSON.stringify(this.#asked));
    } catch {
      // A browser that keeps nothing still shows the map.
    }
  }

  /** As long as wall, magnets and question stay the same, the same bands. */
  bandsOf(job: Job, worked: WorkedWall | undefined): readonly MapBand[] {
    const { magnet: id, reach, use } = this.#asked;
    const all = magnetsOf(job);
    const magnet = all.get(id) ?? all.get(usual.magnet);
    if (!worked || !magnet) return [];
    const key = `${magnet.id} ${reach} ${use}`;
    const known = this.#known.get(worked);
    if (known?.key === key && known.magnets === job.magnets) return known.bands;
    const bands = holdingMap(job, worked.survey.wall, worked.zones, { magnet, reach, use });
    this.#known.set(worked, { key, magnets: job.magnets, bands });
    return bands;
  }
}

function recall(): Asked {
  try {
    const { magnet, reach, use, isShown } = JSON.parse(localStorage.getItem(kept) ?? '{}') as Partial<Asked>;
    return {
      magnet: typeof magnet === 'string' ? magnet : usual.magnet,
      reach: typeof reach === 'number' && reach >= 0 ? reach : usual.reach,
      use: uses.find((one) => one === use) ?? usual.use,
      isShown: isShown === true,
    };
  } catch {
    return usual;
  }
}

export const holdingMaps = new HoldingMaps();
