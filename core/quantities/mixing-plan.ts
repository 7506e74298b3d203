import type { Product } from '../job/product-schema';
import { withLoss } from './spreading';

/** A stretch of work that begins and ends where a lap does not show: at a corner, a zone's edge, a panel's joint. */
export interface WorkSection {
  /** Such as `zone Z1 (Proofs) on wall A`. */
  readonly name: string;
  /** m² */
  readonly area: number;
}

/** Under what a two-component product is worked. */
export interface MixingConditions {
  /** °C */
  readonly temperature: number;
  readonly hands: number;
  /** Kelvin of warming that halve the pot life. */
  readonly potLifeHalves: number;
}

export interface MixPart {
  readonly section: string;
  /** m² */
  readonly area: number;
  /** Whether this ends within the section: a lap in the face. */
  readonly endsInFace: boolean;
}

/** What is mixed at once and laid before it sets. */
export interface Mix {
  /** From 1 in each coat. */
  readonly number: number;
  readonly parts: readonly MixPart[];
  /** m² */
  readonly area: number;
  /** From mixing until it is laid. */
  readonly minutes: number;
  /** In the product's unit, with what is lost. */
  readonly amount: number;
  /** Of each component, in the order of `mixing.parts` and in `componentUnit`; null where no density turns one into the other. */
  readonly components: readonly [number, number] | null;
  /** Of the smallest kit: 1 is a whole one. */
  readonly kits: number | null;
  /** Minutes after mixing by which the tape along what it covered has to be off; null: it stays on for the next coat, or there is none. */
  readonly maskingOff: number | null;
}

export interface MixingPlan {
  readonly product: string;
  readonly coat: number;
  /** As its components are measured out. */
  readonly componentUnit: 'l' | 'kg';
  /** Minutes at the temperature of work. */
  readonly potLife: number;
  /** m² that can be laid within it. */
  readonly mostArea: number;
  readonly mixes: readonly Mix[];
  /** Laps within a face that no division avoids. */
  readonly lapsInFace: number;
}

/** Pot life at another temperature. That every 10 K halve it is common practice, no source; a stated, changeable assumption. */
export function potLifeAt(minutes: number, at: number, temperature: number, halves: number): number {
  return minutes * 2 ** ((at - temperature) / halves);
}

/**
 * How a two-component product is mixed for each coat: never more at once than can be laid within its pot life.
 *
 * Of all divisions of the sections, taken in their order, those with fewest laps within a face are best, of these the
 * one with fewest mixes. It is found by going along: what is left of a mix is used for the next section unless that
 * would cost it one more lap; a mix saved can never cost more later than it saved, for a fresh one can be begun anywhere.
 *
 * @param perArea what a m² of one coat takes before any loss, in the product's unit
 * @returns null for a product that is not mixed, or of which nobody knows how fast it is laid
 */
export function mixingPlans(
  product: Product,
  sections: readonly WorkSection[],
  coats: number,
  perArea: number,
  conditions: MixingConditions,
): MixingPlan[] | null {
  const { mixing, pace } = product;
  if (!mixing || pace === undefined) return null;
  const minutes = (life: number) =>
    potLifeAt(life, mixing.potLifeAt, conditions.temperature, conditions.potLifeHalves);
  const potLife = minutes(mixing.potLife);
  const perMinute = (pace * conditions.hands) / 60;
  const mostArea = perMinute * potLife;
  const divided = divide(sections, mostArea);
  // Tape comes off while the coat is open: after that it tears the film, or lifts it.
  const off = Math.min(potLife, minutes(mixing.openTime ?? mixing.potLife));
  return Array.from({ length: coats }, (_, c) => ({
    product: product.id,
    coat: c + 1,
    componentUnit: mixing.by === 'weight' ? 'kg' : 'l',
    potLife,
    mostArea,
    mixes: divided.map((parts, i) => {
      const area = parts.reduce((sum, part) => sum + part.area, 0);
      const amount = withLoss(area * perArea, product.loss ?? 0);
      return {
        number: i + 1,
        parts,
        area,
        minutes: area / perMinute,
        amount,
        components: componentsOf(product, amount, mixing),
        kits: kitsOf(product, amount),
        maskingOff: c + 1 === coats && product.layer !== 'adhesive' ? off : null,
      };
    }),
    lapsInFace: divided.flat().filter(({ endsInFace }) => endsInFace).length,
  }));
}

/** Areas this far beyond the most that can be laid are binary dust, m². */
const DUST = 1e-9;

function divide(sections: readonly WorkSection[], most: number): MixPart[][] {
  const mixes: MixPart[][] = [];
  let room = 0;
  for (const { name, area } of sections) {
    if (area <= 0) continue;
    const fresh = piecesFor(area, most) - 1;
    const goesOn = room > DUST && (area <= room + DUST || piecesFor(area - room, most) <= fresh);
    let left = area;
    if (!goesOn) room = 0;
    while (left > DUST) {
      if (room <= DUST) {
        mixes.push([]);
        room = most;
      }
      const laid = left <= room + DUST ? left : room;
      left -= laid;
      room -= laid;
      mixes.at(-1)!.push({ section: name, area: laid, endsInFace: left > DUST });
    }
  }
  return mixes;
}

function piecesFor(area: number, most: number): number {
  return Math.ceil(area / most - DUST);
}

function componentsOf(
  { unit, density }: Product,
  amount: number,
  { parts: [a, b], by }: NonNullable<Product['mixing']>,
): [number, number] | null {
  const isMeasuredSo = by === 'weight' ? unit === 'kg' : unit === 'l';
  if (!isMeasuredSo && density === undefined) return null;
  const all = isMeasuredSo ? amount : by === 'weight' ? amount * density! : amount / density!;
  return [(all * a) / (a + b), (all * b) / (a + b)];
}

function kitsOf({ packs }: Product, amount: number): number | null {
  const smallest = Math.min(...packs.map(({ size }) => size));
  return packs.length > 0 ? amount / smallest : null;
}
