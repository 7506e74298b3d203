import type { Finding } from '../finding';
import { refusal, shown, type Path } from './place';
import type { Job } from './schema';

/** Rack pieces and layouts name stock sheets that the job has; the kerf leaves something of each of them. */
export function checkReferences(job: Job): Finding[] {
  const stock = new Set(job.stock.map((sheet) => sheet.id));
  const known = job.stock.length === 0 ? 'the job has no stock yet' : `the job has ${idsInWords(job)}`;
  const checkStock = (path: Path, id: string): Finding[] =>
    stock.has(id)
      ? []
      : [refusal(job, path, 'unknown-stock', `is ${shown(id)}, but no stock sheet has that id; ${known}.`)];

  return [
    ...job.rack.flatMap((piece, i) => checkStock(['rack', i, 'stock'], piece.stock)),
    ...job.walls.flatMap((wall, w) =>
      wall.zones.flatMap((zone, z) => {
        const { layout } = zone;
        if (!layout) return [];
        const at = ['walls', w, 'zones', z, 'layout'];
        return [
          ...checkStock([...at, 'stock'], layout.stock),
          ...(layout.stocks ?? []).flatMap((id, i) => checkStock([...at, 'stocks', i], id)),
          ...(layout.cutFrom ?? []).flatMap((id, i) => checkStock([...at, 'cutFrom', i], id)),
        ];
      }),
    ),
    ...checkKerf(job),
  ];
}

function checkKerf(job: Job): Finding[] {
  const { kerf } = job.cutting;
  const swallowed = job.stock.find((sheet) => kerf >= Math.min(sheet.width, sheet.height));
  if (!swallowed) return [];
  const says = `is ${kerf}; stock sheet ${swallowed.id} is only ${Math.min(swallowed.width, swallowed.height)} mm wide, so give the width of the saw's cut.`;
  return [refusal(job, ['cutting', 'kerf'], 'kerf-too-wide', says)];
}

function idsInWords(job: Job): string {
  const ids = job.stock.slice(0, 8).map((sheet) => sheet.id);
  return job.stock.length > ids.length ? `${ids.join(', ')} and more` : ids.join(', ');
}
