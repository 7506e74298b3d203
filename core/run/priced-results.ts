import type { PricedJob } from '../offer/price-job';
import type { Minute } from '../programme/calendar';
import { endText, startText } from '../programme/day-text';
import type { MaterialLine } from '../quantities/material-lines';
import { toMm, toSquareMm } from '../units';
import type { WorkedOut, WorkedZone } from '../worked-out';
import { fromMinorUnits } from './whole-money';

/**
 * What the results file says beyond panels and cutting: `buildUps`, `quantities`, `programme`, `offer`. Lengths in mm, areas
 * in mm², masses in kg/m², amounts in their `unit`, work in hours of the whole crew, money in the job's currency; null is
 * not known. Dates are `2026-03-02 08:00`, or `day 3 08:00` from the first day of work of a job that names no days.
 * `netPrice` is before tax. What the firm reckons with (costs, markup) is left out.
 *
 * @param priced of the same job
 */
export function pricedResults({ job, walls }: WorkedOut, { takeOff, programme, offer }: PricedJob) {
  const money = (minor: number) => fromMinorUnits(minor, job.currency);
  const begins = (minute: Minute) => startText(minute, programme.settings);
  const ends = (minute: Minute | null) => (minute === null ? null : endText(minute, programme.settings));
  return {
    buildUps: walls.flatMap(({ survey, zones }) => zones.map((zone) => buildUpResult(survey.wall.id, zone))),
    quantities: {
      zones: takeOff.offerAreas.map(({ wall, zone, trueArea, offerArea }) => ({
        wall,
        zone,
        trueArea: toSquareMm(trueArea),
        offerArea: toSquareMm(offerArea),
      })),
      materials: takeOff.lines.map((line) => materialResult(line, money)),
      materialCost: money(takeOff.cost),
      isWholeMaterialCost: takeOff.isWholeCost,
      films: takeOff.films.map(({ wall, zone, layer, product, plan }) => ({
        wall,
        zone,
        layer: layer + 1,
        product,
        direction: plan.direction,
        seams: plan.seams.map(toMm),
        strips: plan.strips.map(({ from, to, pieces }) => ({
          from: toMm(from),
          to: toMm(to),
          pieces: pieces.map((piece) => [toMm(piece.from), toMm(piece.to)] as const),
        })),
        leastPossible: plan.exact,
      })),
    },
    programme: {
      begins:
        programme.tasks.length === 0 ? null : begins(Math.min(...programme.tasks.map(({ start }) => start))),
      readyForMagnets: ends(programme.ready.magnets),
      readyForWriting: ends(programme.ready.writing),
      handover: ends(programme.handover),
      visits: programme.visits.length,
      tasks: programme.tasks.map(({ id, kind, name, wall, zone, work, start, finish }) => ({
        id,
        kind,
        name,
        ...(wall === undefined ? {} : { wall }),
        ...(zone === undefined ? {} : { zone }),
        work: work / 60,
        begins: begins(start),
        ends: ends(finish),
      })),
    },
    offer: {
      currency: offer.currency,
      lines: offer.lines.map(({ id, kind, title, quantity, unit, unitPrice, amount }) => ({
        ...{ id, kind, title, quantity, unit },
        unitPrice: money(unitPrice),
        amount: money(amount),
      })),
      netPrice: money(offer.net),
      taxes: offer.taxes.map(({ words, base, amount }) => ({
        name: words,
        base: money(base),
        amount: money(amount),
      })),
      price: money(offer.gross),
      payments: offer.payments.map(({ name, amount }) => ({ name, amount: money(amount) })),
      validUntil: offer.validUntil,
    },
  };
}

export type PricedResults = ReturnType<typeof pricedResults>;

/** Layers count from the wall; `gap` is between magnet and steel. */
function buildUpResult(wall: string, { area, buildUp: { resolved, figures } }: WorkedZone) {
  const { gap, mass, thickness, coats } = figures;
  return {
    wall,
    zone: area.zone.id,
    layers: resolved.layers.map(({ layer, product, coats: times, thickness: thick }) => ({
      kind: layer.kind,
      over: layer.over,
      product: product?.id ?? null,
      coats: times,
      thickness: thick,
    })),
    gap: gap && { least: gap.least.value, nominal: gap.nominal.value, greatest: gap.greatest.value },
    mass: mass.value,
    thickness: thickness.value,
    coats,
  };
}

function materialResult(line: MaterialLine, money: (minor: number) => number) {
  const { item, name, unit, net, withLoss, packs, cost, typical } = line;
  return {
    ...{ item, name, unit, net, withLoss },
    packs: packs && packs.packs.map(({ size, count }) => ({ size, count })),
    ordered: packs?.total ?? null,
    cost: cost === null ? null : money(cost),
    typical,
  };
}
