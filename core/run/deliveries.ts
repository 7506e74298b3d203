import type { CutPanel, CuttingTask } from '../cutting/plan';
import type { Job } from '../job/schema';
import { stocksOfPanel } from '../panels/stocks-of-panel';
import { toHundredth } from '../units';
import { formatOf } from './stock-formats';
import type { WorkedWall } from '../worked-out';

/** What one delivery cuts, before the rack is shared out. */
export interface Delivery {
  readonly name: string;
  readonly task: Omit<CuttingTask, 'rack'>;
}

/** Walls of one delivery together, in the order in which deliveries are first named; walls without come last. */
export function gatherDeliveries(job: Job, walls: readonly WorkedWall[]): Delivery[] {
  const { method, kerf, leastOffcut } = job.cutting;
  const settings = {
    stock: job.stock.map((stock) => formatOf(job, stock)),
    method,
    kerf: toHundredth(kerf),
    leastOffcut: [toHundredth(leastOffcut[0]), toHundredth(leastOffcut[1])] as const,
  };
  const panels = new Map<string, CutPanel[]>();
  for (const wall of walls) {
    const name = wall.survey.wall.delivery ?? '';
    panels.set(name, [...(panels.get(name) ?? []), ...cutPanelsOf(wall)]);
  }
  return [...panels]
    .filter(([, together]) => together.length > 0)
    .sort(([a], [b]) => Number(a === '') - Number(b === ''))
    .map(([name, together]) => ({ name, task: { ...settings, panels: together } }));
}

function cutPanelsOf({ zones }: WorkedWall): CutPanel[] {
  return zones.flatMap(({ area, layout }) =>
    (layout?.panels ?? []).map((panel) => ({
      mark: panel.mark,
      outline: panel.outline,
      stock: stocksOfPanel(panel, area.zone.layout),
    })),
  );
}
