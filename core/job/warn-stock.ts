import type { Finding } from '../finding';
import type { Job } from './schema';

/** Rack pieces that cannot be what they say, and ids that would be mistaken for those of bought stock sheets. */
export function stockWarnings(job: Job): Finding[] {
  return job.rack.flatMap((piece) => {
    const findings: Finding[] = [];
    const sheet = job.stock.find(({ id }) => id === piece.stock);
    if (sheet && !fits(piece, sheet)) {
      findings.push({
        level: 'warning',
        code: 'rack-piece-too-large',
        object: piece.id,
        text: `Rack piece ${piece.id} is ${piece.width} × ${piece.height} mm, larger than stock sheet ${sheet.id} it was cut from; measure it again or name its stock sheet.`,
      });
    }
    if (/^N\d+$/.test(piece.id)) {
      findings.push({
        level: 'warning',
        code: 'rack-id-like-bought',
        object: piece.id,
        text: `Rack piece ${piece.id} is called like a bought stock sheet on the cut sheets; give it another id, such as R${piece.id.slice(1)}.`,
      });
    }
    return findings;
  });
}

function fits(piece: { width: number; height: number }, sheet: { width: number; height: number }): boolean {
  const [shortSide, longSide] = [Math.min(sheet.width, sheet.height), Math.max(sheet.width, sheet.height)];
  return Math.min(piece.width, piece.height) <= shortSide && Math.max(piece.width, piece.height) <= longSide;
}
