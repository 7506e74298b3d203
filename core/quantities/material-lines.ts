import { minorUnitDigits, roundToMinorUnit } from '../job/minor-unit';
import type { LayerKind, Product, ProductPack } from '../job/product-schema';
import type { PieceKind, Sundry } from '../job/quantities-schema';
import type { Job, StockSheet } from '../job/schema';
import { toHundredth, type Hundredth } from '../units';
import type { JobCutting } from '../worked-out';
import { isFilm } from './film-needs';
import { itemOfProduct, itemOfStock, itemOfSundry, itemOfThing, type Need } from './need';
import { onceFor } from './once-for';
import { choosePacks, type PackChoice, type PackOffered } from './packs';
import { chooseRolls } from './rolls';
import type { WallNeeds } from './wall-needs';

/** In the order in which a merchant's counter is gone along. */
export const materialGroups = [
  'steel',
  'adhesives and fillers',
  'coatings',
  'films',
  'tapes and profiles',
  'sundries',
] as const;
export type MaterialGroup = (typeof materialGroups)[number];

/** What is ordered of one thing. Amounts in `unit`, money in minor units of the job's currency. */
export interface MaterialLine {
  readonly item: string;
  /** Id, of stock sheets alone. */
  readonly stock?: string;
  readonly group: MaterialGroup;
  readonly name: string;
  readonly unit: string;
  /** What lies on the wall in the end; of stock sheets: those of the plan. */
  readonly net: number;
  /** With what is lost; of stock sheets: with the spares. */
  readonly withLoss: number;
  /** null: sold by no pack that is known, or in none that a piece of film fits. */
  readonly packs: PackChoice | null;
  /** null: not known. */
  readonly cost: number | null;
  /** Its values are typical ones, to be replaced by the data sheet. */
  readonly typical: boolean;
  readonly byDelivery: readonly {
    readonly delivery: string;
    readonly net: number;
    readonly withLoss: number;
  }[];
}

/**
 * One line for each thing that is needed or planned, by group, in the order in which the needs come.
 *
 * @param ofJob needs of no wall
 */
export function materialLines(
  job: Job,
  walls: readonly WallNeeds[],
  ofJob: readonly Need[],
  products: ReadonlyMap<string, Product>,
  sundries: readonly Sundry[],
  cutting: Pick<JobCutting, 'order' | 'sheets'>,
): MaterialLine[] {
  const things = new Map<string, Thing>([
    ...[...products.values()].map((product): [string, Thing] => [
      itemOfProduct(product.id),
      { source: product, name: product.name, group: groupOf(product.layer), packs: product.packs },
    ]),
    ...sundries.map((sundry): [string, Thing] => [
      itemOfSundry(sundry.id),
      { source: sundry, name: sundry.name, group: groupOfSundry(sundry), packs: sundry.packs },
    ]),
    ...plainThings.map(([kind, group, name]): [string, Thing] => {
      const packs = job.quantities?.pieces?.find((piece) => piece.kind === kind)?.packs ?? noPacks;
      return [itemOfThing(kind), { source: packs === noPacks ? { kind } : packs, name, group, packs }];
    }),
  ]);
  const lines = [
    ...stockLines(job, cutting),
    ...[...summed([...walls.flatMap(sumsOfWall), ...sumsOf(ofJob)])].flatMap(
      ([item, sum]): MaterialLine[] => {
        const thing = things.get(item);
        return thing ? [lineOf(job, item, thing, sum)] : [];
      },
    ),
  ];
  return materialGroups.flatMap((group) => lines.filter((line) => line.group === group));
}

interface Thing {
  readonly source: object;
  readonly name: string;
  readonly group: MaterialGroup;
  readonly packs: readonly ProductPack[];
}

/** Of things that nobody has said the packs of. */
const noPacks: readonly ProductPack[] = [];

const plainThings: readonly (readonly [PieceKind, MaterialGroup, string])[] = [
  ['batten', 'tapes and profiles', 'Starting battens'],
  ['stop-bead', 'tapes and profiles', 'Stop beads'],
  ['trim', 'tapes and profiles', 'Edge trims'],
  ['extension-ring', 'sundries', 'Extension rings for boxes'],
  ['longer-screws', 'sundries', 'Longer screws for faceplates'],
  ['radiator-bracket', 'sundries', 'Longer brackets, sets for a radiator'],
  ['architrave-packing', 'tapes and profiles', 'Packing behind architraves'],
  ['skirting-packing', 'tapes and profiles', 'Packing behind skirting'],
  ['reveal-bead', 'tapes and profiles', 'Corner beads at reveals'],
  ['prop', 'sundries', 'Props for panels, used again'],
];

interface Sum {
  readonly unit: string;
  net: number;
  withLoss: number;
  readonly pieces: Hundredth[];
  readonly byDelivery: Map<string, { net: number; withLoss: number }>;
}

interface WallSum {
  readonly item: string;
  readonly delivery: string;
  readonly unit: string;
  net: number;
  withLoss: number;
  readonly pieces: Hundredth[];
}

const sumsOfWall = onceFor(({ needs }: Pick<WallNeeds, 'needs'>) => sumsOf(needs));

/** Needs of one delivery by item. */
function sumsOf(needs: readonly Need[]): WallSum[] {
  const sums = new Map<string, WallSum>();
  for (const { item, delivery, unit, net, withLoss, pieces } of needs) {
    let sum = sums.get(item);
    if (!sum) sums.set(item, (sum = { item, delivery, unit, net: 0, withLoss: 0, pieces: [] }));
    sum.net += net;
    sum.withLoss += withLoss;
    if (pieces) sum.pieces.push(...pieces);
  }
  return [...sums.values()];
}

function summed(parts: readonly WallSum[]): Map<string, Sum> {
  const sums = new Map<string, Sum>();
  for (const { item, unit, net, withLoss, delivery, pieces } of parts) {
    let sum = sums.get(item);
    if (!sum) sums.set(item, (sum = { unit, net: 0, withLoss: 0, pieces: [], byDelivery: new Map() }));
    sum.net += net;
    sum.withLoss += withLoss;
    sum.pieces.push(...pieces);
    const share = sum.byDelivery.get(delivery) ?? { net: 0, withLoss: 0 };
    sum.byDelivery.set(delivery, { net: share.net + net, withLoss: share.withLoss + withLoss });
  }
  return sums;
}

function lineOf(job: Job, item: string, thing: Thing, sum: Sum): MaterialLine {
  const { source, name, group } = thing;
  const packs = packsFor(job, thing, sum);
  return {
    item,
    group,
    name,
    unit: sum.unit,
    net: sum.net,
    withLoss: sum.withLoss,
    packs,
    // What is used again is bought only by whoever gives it packs.
    cost: packs?.cost ?? (item === itemOfThing('prop') ? 0 : null),
    typical: 'typical' in source && source.typical === true,
    byDelivery: [...sum.byDelivery].map(([delivery, share]) => ({ delivery, ...share })),
  };
}

const chosen = new WeakMap<object, { readonly key: string; readonly packs: PackChoice | null }>();

/** Kept for a thing until its need has changed; one whose packs or prices change is another object. */
function packsFor({ currency }: Job, { source, packs }: Thing, sum: Sum): PackChoice | null {
  const key = JSON.stringify([currency, sum.withLoss, sum.pieces]);
  const known = chosen.get(source);
  if (known?.key === key) return known.packs;
  const offered = packs.map(({ size, price }) => ({ size, price: inMinorUnits(price, currency) }));
  const choice = chooseFor(source, sum, offered);
  chosen.set(source, { key, packs: choice });
  return choice;
}

function chooseFor(
  source: object,
  { withLoss, pieces, unit }: Sum,
  offered: readonly PackOffered[],
): PackChoice | null {
  if (!('rollWidth' in source) || !isFilm(source as Product) || pieces.length === 0) {
    return choosePacks(withLoss, offered);
  }
  return chooseRolls(pieces, withLoss, offered, (size) => rollLength(source as Product, unit, size));
}

/** How long a roll of film is that holds so much, hundredths. */
export function rollLength({ rollWidth }: Product, unit: string, size: number): Hundredth {
  return Math.floor((unit === 'm2' ? (size * 1e10) / toHundredth(rollWidth!) : size * 1e5) + 1e-6);
}

function stockLines(job: Job, { order, sheets }: Pick<JobCutting, 'order' | 'sheets'>): MaterialLine[] {
  return order.map(({ stock, plan, spares }) => {
    const sheet = job.stock.find(({ id }) => id === stock);
    const count = plan + spares;
    const price = inMinorUnits(sheet?.price ?? 0, job.currency);
    const cost = price > 0 ? price * count : null;
    return {
      item: itemOfStock(stock),
      stock,
      group: 'steel',
      name: nameOfStock(stock, sheet),
      unit: 'sheet',
      net: plan,
      withLoss: count,
      packs: { packs: [{ size: 1, price, count }], total: count, leftOver: spares, cost, exact: true },
      cost,
      typical: false,
      byDelivery: byDelivery(stock, sheets),
    };
  });
}

function nameOfStock(id: string, sheet: StockSheet | undefined): string {
  return sheet?.name || `Stock sheet ${id}`;
}

/** Spares are bought once for the job. */
function byDelivery(stock: string, sheets: JobCutting['sheets']): MaterialLine['byDelivery'] {
  const counts = new Map<string, number>();
  for (const sheet of sheets) {
    if (sheet.stock === stock && sheet.fromRack === null) {
      counts.set(sheet.delivery, (counts.get(sheet.delivery) ?? 0) + 1);
    }
  }
  return [...counts].map(([delivery, count]) => ({ delivery, net: count, withLoss: count }));
}

function groupOfSundry({ per }: Sundry): MaterialGroup {
  return per === 'edge' || per === 'joint' ? 'tapes and profiles' : 'sundries';
}

function groupOf(kind: LayerKind): MaterialGroup {
  switch (kind) {
    case 'steel':
      return 'steel';
    case 'adhesive':
    case 'filler':
    case 'smoothing':
      return 'adhesives and fillers';
    case 'magnetic-film':
    case 'writable-film':
    case 'glass-film':
      return 'films';
    case 'reinforcement':
      return 'tapes and profiles';
    case 'degreasing':
    case 'keying':
    case 'sanding':
      return 'sundries';
    default:
      return 'coatings';
  }
}

/** Whole minor units of an amount in the currency. */
export function inMinorUnits(amount: number, currency: string): number {
  return Math.round(roundToMinorUnit(amount, currency) * 10 ** minorUnitDigits(currency));
}
