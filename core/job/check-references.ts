import type { Finding } from '../finding';
import { refusal, shown, type Path } from './place';
import { toMm } from '../units';
import { hasTrim, trimOf, usableSize } from './usable-size';
import type { Job, StockSheet } from './schema';
import { zoneListsOf } from './zone-lists';

/** Rack pieces and layouts name stock sheets that the job has; margins and kerf leave something of each of them. */
export function checkReferences(job: Job): Finding[] {
  const stock = new Set(job.stock.map((sheet) => sheet.id));
  const known = job.stock.length === 0 ? 'the job has no stock yet' : `the job has ${idsInWords(job)}`;
  const checkStock = (path: Path, id: string): Finding[] =>
    stock.has(id)
      ? []
      : [refusal(job, path, 'unknown-stock', `is ${shown(id)}, but no stock sheet has that id; ${known}.`)];

  return [
    ...job.rack.flatMap((piece, i) => checkStock(['rack', i, 'stock'], piece.stock)),
    ...zoneListsOf(job).flatMap(({ zones, path }) =>
      zones.flatMap(({ layout }, z) => {
        if (!layout) return [];
        const at = [...path, z, 'layout'];
        return [
          ...checkStock([...at, 'stock'], layout.stock),
          ...(layout.stocks ?? []).flatMap((id, i) => checkStock([...at, 'stocks', i], id)),
          ...(layout.cutFrom ?? []).flatMap((id, i) => checkStock([...at, 'cutFrom', i], id)),
        ];
      }),
    ),
    ...checkTrims(job),
    ...checkKerf(job),
  ];
}

function checkKerf(job: Job): Finding[] {
  const { kerf } = job.cutting;
  const least = (sheet: StockSheet) => Math.min(...Object.values(usableSize(sheet)).map(toMm));
  const swallowed = job.stock.find((sheet) => least(sheet) > 0 && kerf >= least(sheet));
  if (!swallowed) return [];
  const left = hasTrim(swallowed) ? 'has only' : 'is only';
  const says = `is ${kerf}; stock sheet ${swallowed.id} ${left} ${least(swallowed)} mm ${hasTrim(swallowed) ? 'between its margins' : 'wide'}, so give the width of the saw's cut.`;
  return [refusal(job, ['cutting', 'kerf'], 'kerf-too-wide', says)];
}

/** Margins that leave nothing of the stock sheet. */
function checkTrims(job: Job): Finding[] {
  return job.stock.flatMap((sheet, i): Finding[] => {
    const { left, right, bottom, top } = trimOf(sheet);
    const usable = usableSize(sheet);
    const across = usable.width <= 0;
    if (!across && usable.height > 0) return [];
    const margins = across
      ? `left ${toMm(left)} and right ${toMm(right)}`
      : `bottom ${toMm(bottom)} and top ${toMm(top)}`;
    const side = across ? `its width of ${sheet.width} mm` : `its height of ${sheet.height} mm`;
    const says = `is ${margins}, which leaves nothing of ${side}; give narrower margins.`;
    return [refusal(job, ['stock', i, 'trim'], 'trim-too-wide', says)];
  });
}

function idsInWords(job: Job): string {
  const ids = job.stock.slice(0, 8).map((sheet) => sheet.id);
  return job.stock.length > ids.length ? `${ids.join(', ')} and more` : ids.join(', ');
}
