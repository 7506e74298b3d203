import { alternativesOf } from '../../../core/job/alternatives';
import { addStock, changeJob, changeStock, removeStock } from '../../../core/job/changes';
import type { CuttingSettings, Job, StockSheet } from '../../../core/job/schema';
import { zoneListsOf } from '../../../core/job/zone-lists';
import type { NamedChange } from './named-change';

const stockWords: Readonly<Record<string, string>> = {
  name: 'name',
  width: 'width',
  height: 'height',
  thickness: 'thickness',
  price: 'price',
  hasFace: 'face side',
  spares: 'spares',
  coating: 'coating',
  available: 'number available',
  trim: 'margins',
  tolerance: 'tolerance',
};

export function putInStock(stock: StockSheet): NamedChange {
  return { name: `Add stock sheet ${stock.id}`, change: (job) => addStock(job, stock) };
}

export function setStock(id: string, patch: Partial<StockSheet>): NamedChange {
  const [field = ''] = Object.keys(patch);
  return {
    name: `Set ${stockWords[field] ?? field} of stock sheet ${id}`,
    change: (job) => changeStock(job, id, patch),
  };
}

/** Takes the stock sheet out, and the rack pieces that were cut from it. */
export function takeOutStock(id: string): NamedChange {
  return {
    name: `Delete stock sheet ${id}`,
    change: (job) => {
      const without = removeStock(job, id);
      return { ...without, rack: without.rack.filter((piece) => piece.stock !== id) };
    },
  };
}

/** What stands in the way of taking a stock sheet out, in words, or null; other alternatives count too. */
export function stockInUse(job: Job, id: string): string | null {
  const others = alternativesOf(job).filter(({ isChosen }) => !isChosen);
  const users = zoneListsOf(job).flatMap(({ wall, zones, alternative }) =>
    zones
      .filter(
        ({ layout }) =>
          layout && [layout.stock, ...(layout.stocks ?? []), ...(layout.cutFrom ?? [])].includes(id),
      )
      .map((zone) => {
        const where = `${zone.id} on wall ${wall.id}`;
        return alternative === null ? where : `${where} in “${others[alternative]!.title}”`;
      }),
  );
  return users.length > 0
    ? `Zone ${users[0]} is laid with it; choose another stock sheet there first.`
    : null;
}

const cuttingWords: Readonly<Record<string, string>> = {
  method: 'way of cutting',
  kerf: 'kerf',
  leastOffcut: 'least offcut',
};

export function setCutting(patch: Partial<CuttingSettings>): NamedChange {
  const [field = ''] = Object.keys(patch);
  return {
    name: `Set ${cuttingWords[field] ?? 'cutting'}`,
    change: (job) => changeJob(job, { cutting: { ...job.cutting, ...patch } as CuttingSettings }),
  };
}

/** `prefix` and the lowest number that no entry of the list has. */
export function freshListId(list: readonly { readonly id: string }[], prefix: string): string {
  const taken = new Set(list.map(({ id }) => id));
  for (let n = 1; ; n++) if (!taken.has(prefix + n)) return prefix + n;
}
