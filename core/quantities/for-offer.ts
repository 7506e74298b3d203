import type { MeasurementRuleId } from '../job/quantities-schema';
import type { MaterialLine } from './material-lines';
import { measurementRule } from './measurement-rules';
import type { TakeOff } from './take-off';

/** A material as an offer is priced from it. */
export interface MeasuredMaterial {
  readonly id: string;
  /** `Fine filler, 2 × 20 kg` */
  readonly name: string;
  /** Minor units; null: not known. */
  readonly cost: number | null;
  /** The share of what is bought that the work takes, above 0 to 1; 1 where nothing says what is bought. */
  readonly used: number;
  /** How much each zone takes, with loss, in the material's unit; [] for what the whole job takes. */
  readonly needs: readonly { readonly wall: string; readonly zone: string; readonly amount: number }[];
}

/** Every line of the take-off. Stock sheets are shared out by the steel that each zone has of them. */
export function measuredMaterials(takeOff: TakeOff): MeasuredMaterial[] {
  return takeOff.lines.map((line) => ({
    id: line.item,
    name: nameWithPacks(line),
    cost: line.cost,
    used: line.packs && line.packs.total > 0 ? Math.min(1, usedOf(line) / line.packs.total) : 1,
    needs: line.stock === undefined ? needsOf(takeOff, line) : steelNeeds(takeOff, line.stock),
  }));
}

/** The rule in words, for whoever reads the offer; empty for true areas. */
export function measuredBy(id: MeasurementRuleId): string {
  return id === 'net' ? '' : measurementRule(id).name;
}

function usedOf(line: MaterialLine): number {
  return line.stock === undefined ? line.withLoss : line.net;
}

function nameWithPacks({ name, packs, unit, withLoss, stock }: MaterialLine): string {
  if (stock !== undefined) return `${name}, ${withLoss} ${withLoss === 1 ? 'sheet' : 'sheets'}`;
  const words = packs?.packs.map(({ size, count }) => `${count} × ${size} ${unit === 'm2' ? 'm²' : unit}`);
  return words && words.length > 0 ? `${name}, ${words.join(' + ')}` : name;
}

function needsOf({ needs }: TakeOff, { item }: MaterialLine): MeasuredMaterial['needs'] {
  const sums = new Map<string, { wall: string; zone: string; amount: number }>();
  for (const { item: own, wall, zone, withLoss } of needs) {
    if (own !== item || zone === '') continue;
    const key = JSON.stringify([wall, zone]);
    const sum = sums.get(key) ?? { wall, zone, amount: 0 };
    sums.set(key, { ...sum, amount: sum.amount + withLoss });
  }
  return [...sums.values()];
}

/** m² of panels laid from that stock; cut panels may in the end come from another. */
function steelNeeds({ zoneAreas }: TakeOff, stock: string): MeasuredMaterial['needs'] {
  return zoneAreas.flatMap(({ wall, zone, steel }) => {
    const area = steel[stock] ?? 0;
    return area > 0 ? [{ wall, zone, amount: area / 1e10 }] : [];
  });
}
