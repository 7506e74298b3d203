import type { Finding } from '../finding';
import { toMm } from '../units';
import { mostPanels } from './limits';
import { refusal } from './place';
import type { Job, Layout, Wall, Zone } from './schema';
import { boxOfVertices, type MmBox } from './shape';
import { usableSize } from './usable-size';
import { zoneListsOf } from './zone-lists';

/** Layouts whose grid would have more panels than any screen or drawing can hold, alone or together. */
export function checkLayouts(job: Job): Finding[] {
  const findings: Finding[] = [];
  const totals = new Map<number | null, number>();
  for (const { wall, alternative, zones, path } of zoneListsOf(job)) {
    zones.forEach((zone, z) => {
      if (!zone.layout) return;
      const panels = mostPanelsOf(job, wall, zone, zone.layout);
      totals.set(alternative, (totals.get(alternative) ?? 0) + panels);
      if (panels <= mostPanels) return;
      const says = `would make ${panels} panels; the limit is ${mostPanels}, so take a larger stock sheet or a smaller zone.`;
      findings.push(refusal(job, [...path, z, 'layout'], 'too-many-panels', says));
    });
  }
  if (findings.length > 0) return findings;
  return [...totals].flatMap(([alternative, total]) => {
    if (total <= mostPanels) return [];
    const says = `would make ${total} panels together; the limit is ${mostPanels}, so split the job.`;
    const path = alternative === null ? ['walls'] : ['alternatives', alternative];
    return [refusal(job, path, 'too-many-panels', says)];
  });
}

/** Cells of the grid on the part of the zone's box that lies on the wall; of mixed formats the smallest. */
function mostPanelsOf(job: Job, wall: Wall, zone: Zone, layout: Layout): number {
  const box = overlapOf(boxOfVertices(zone.shape), boxOfVertices(wall.outline));
  const ids = [layout.stock, ...(layout.stocks ?? [])];
  const formats = job.stock.filter((sheet) => ids.includes(sheet.id));
  return Math.max(
    0,
    ...formats.map((sheet) => {
      const usable = usableSize(sheet);
      // Margins that leave nothing are refused elsewhere.
      if (usable.width <= 0 || usable.height <= 0) return 0;
      const [width, height] = (
        layout.turned ? [usable.height, usable.width] : [usable.width, usable.height]
      ).map(toMm) as [number, number];
      return cells(box.width, width + layout.jointGap) * cells(box.height, height + layout.jointGap);
    }),
  );
}

function cells(length: number, pitch: number): number {
  // Sums of decimals: 0.1 + 0.2 must not cost a cell.
  return Math.ceil(length / pitch - 1e-9);
}

function overlapOf(a: MmBox, b: MmBox): MmBox {
  const x = Math.max(a.x, b.x);
  const y = Math.max(a.y, b.y);
  const width = Math.max(0, Math.min(a.x + a.width, b.x + b.width) - x);
  const height = Math.max(0, Math.min(a.y + a.height, b.y + b.height) - y);
  return { x, y, width, height };
}
