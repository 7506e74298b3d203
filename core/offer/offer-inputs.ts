import type { Minor } from './money';

/*
 * What an offer is priced from. The stages before it work these out; nothing here is money that a client sees.
 */

/** A zone by its wall; ids of zones are only unique on their wall. */
export interface ZoneRef {
  readonly wall: string;
  readonly zone: string;
}

export interface OfferZone extends ZoneRef {
  /** Of the zone as it is built, hundredths squared. */
  readonly trueArea: number;
  /** By the rule of measurement, hundredths squared. */
  readonly offerArea: number;
}

export interface OfferMaterial {
  readonly id: string;
  /** `Fine filler, 2 × 25 kg` */
  readonly name: string;
  /** What all packs together cost; null: a price is not known. */
  readonly cost: Minor | null;
  /** The share of what is bought that the work takes, above 0 to 1. */
  readonly used: number;
  /** How much each zone takes, in one unit; [] for what the whole job takes. */
  readonly needs: readonly (ZoneRef & { readonly amount: number })[];
}

export interface OfferLabour {
  /** As the programme names it: `fill`. */
  readonly kind: string;
  /** Hours of one person. */
  readonly hours: number;
  /** Absent: work on the whole job. */
  readonly of?: ZoneRef;
}

/** ISO 8601 days, or `day 12` where the programme has no date; null: it never is, or not known. */
export interface ReadyDates extends ZoneRef {
  readonly magnets: string | null;
  readonly writing: string | null;
}

export interface OfferInputs {
  readonly zones: readonly OfferZone[];
  readonly materials: readonly OfferMaterial[];
  readonly labour: readonly OfferLabour[];
  readonly visits: number;
  /** Days on which somebody works on site. */
  readonly workingDays: number;
  /** The rule of measurement in words; empty: true areas. */
  readonly measuredBy: string;
  readonly ready: readonly ReadyDates[];
  readonly handover: string | null;
}

export function keyOf({ wall, zone }: ZoneRef): string {
  return `${wall}/${zone}`;
}
