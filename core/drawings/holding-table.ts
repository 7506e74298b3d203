import { checkWall } from '../holding/check-hung';
import { newtonsOfKilograms, poundsOfNewtons } from '../holding/force-units';
import { holdingCautions } from '../holding/safety';
import { hungKindInWords } from '../job/hung-kinds';
import type { WorkedOut } from '../worked-out';
import { csvText, inUnits, type CsvRow } from './csv';
import { stateOfCheck } from './holding-words';

/**
 * One row a hung item with its state and the figures of its check, CSV as the other lists; each row says that it is to be
 * tested. Weights in kg, or in lb where lengths are in feet; never rounded up. undefined where nothing hangs.
 */
export function holdingTable(worked: WorkedOut): string | undefined {
  const { units } = worked.job;
  const isPounds = units === 'ft-in';
  const weigh = (kilograms: number) => {
    const weight = isPounds ? poundsOfNewtons(newtonsOfKilograms(kilograms)) : kilograms;
    return down(weight, 3);
  };
  const unit = isPounds ? 'lb' : 'kg';
  const rows = worked.walls.flatMap(({ survey: { wall }, zones }) =>
    checkWall(worked.job, wall, zones).map((check): CsvRow => {
      const { item, verdict, largestWeight } = check;
      const { factor, asked, governs, utilisation } = verdict;
      return {
        wall: wall.id,
        item: item.id,
        kind: hungKindInWords(item.kind),
        name: item.name ?? '',
        x_mm: item.x,
        y_mm: item.y,
        width_mm: item.width,
        height_mm: item.height,
        zones: verdict.zones.join('; '),
        panels: verdict.panels.join('; '),
        magnet: item.magnets?.magnet ?? '',
        magnets: item.magnets?.places.length ?? 0,
        [`weight_${unit}`]: item.weight === undefined ? '' : weigh(item.weight),
        [`load_${unit}`]: item.load ? weigh(item.load.weight) : '',
        state: stateOfCheck(check),
        factor: factor === undefined ? '' : down(factor, 2),
        asked: asked ?? '',
        governs: governs ?? '',
        used: utilisation === undefined || !Number.isFinite(utilisation) ? '' : -down(-utilisation, 3),
        [`largest_weight_${unit}`]: largestWeight === undefined ? '' : weigh(largestWeight),
        reasons: verdict.reasons.join(' '),
        caution: holdingCautions[0]!.text,
      };
    }),
  );
  const [first] = rows;
  return first && csvText(Object.keys(first), inUnits(rows, units), units);
}

function down(value: number, places: number): number {
  return Math.floor(value * 10 ** places + 1e-9) / 10 ** places;
}
