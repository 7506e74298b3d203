import { describe, expect, it } from 'vitest';
import { demoJob } from '../../core/job/demo';
import type { Job } from '../../core/job/schema';
import { readJobObject } from '../../core/job/read';
import { budgetPrice } from '../../core/offer/budget';
import { offerInputs } from '../../core/offer/inputs-of-stages';
import { sumOf } from '../../core/offer/money';
import { keyOf, type OfferInputs } from '../../core/offer/offer-inputs';
import { priceOffer } from '../../core/offer/price';
import { planProgramme } from '../../core/programme/programme';
import { productsOf } from '../../core/build-up/resolve';
import { takeOff } from '../../core/quantities/take-off';
import { workOutFully } from '../../core/run/pipeline';

/** Every pack of every product at 10.00 a unit, and the demo's own dates. */
function pricedDemo(patch: Partial<Job> = {}): Job {
  const job = demoJob();
  const products = [...productsOf(job).values()].map((product) => ({
    ...product,
    packs: product.packs.map((pack) => ({ ...pack, price: pack.size * 10 })),
  }));
  const offer = { labourRates: [{ rate: 50 }], taxes: [{ id: 'V', name: 'VAT', percent: 20 }] };
  const { job: read, findings } = readJobObject({
    ...job,
    products,
    programme: { start: '2026-04-07', crew: 2 },
    offer,
    ...patch,
  });
  if (!read) throw new Error(findings[0]!.text);
  return read;
}

function stagesOf(job: Job) {
  const worked = workOutFully(job, { steps: 1 });
  const quantities = takeOff(job, worked.walls, worked.cutting);
  const programme = planProgramme(job, worked.walls);
  return { worked, quantities, programme, inputs: offerInputs(worked, quantities, programme) };
}

const job = pricedDemo();
const { quantities, programme, inputs, worked } = stagesOf(job);

describe('what an offer is priced from', () => {
  it('has every zone with its areas, the true one as the take-off measures it', () => {
    expect(inputs.zones.map(keyOf)).toEqual(
      worked.walls.flatMap(({ survey, zones }) =>
        zones.map(({ area }) => `${survey.wall.id}/${area.zone.id}`),
      ),
    );
    for (const zone of inputs.zones) {
      expect(zone.trueArea).toBeGreaterThan(0);
      // Net measuring: what is offered is what is coated.
      expect(zone.offerArea).toBe(zone.trueArea);
    }
    expect(inputs.measuredBy).toBe('');
  });

  it('measures by the rule of the job and names it', () => {
    const ruled = stagesOf(
      pricedDemo({ quantities: { measurement: 'din-18363' } as Job['quantities'] }),
    ).inputs;
    expect(ruled.measuredBy).toContain('DIN 18363');
    for (const [i, zone] of ruled.zones.entries()) {
      expect(zone.trueArea).toBe(inputs.zones[i]!.trueArea);
      expect(zone.offerArea).toBeGreaterThanOrEqual(zone.trueArea);
    }
  });

  it('has every line of the take-off with its cost, and the share of it that the work takes', () => {
    expect(inputs.materials.map(({ id }) => id)).toEqual(quantities.lines.map(({ item }) => item));
    expect(sumOf(inputs.materials.map(({ cost }) => cost ?? 0))).toBe(quantities.cost);
    expect(quantities.cost).toBeGreaterThan(0);
    for (const { used } of inputs.materials) {
      expect(used).toBeGreaterThan(0);
      expect(used).toBeLessThanOrEqual(1);
    }
  });

  it('says of every product how much each zone takes of it', () => {
    for (const line of quantities.lines) {
      const needs = inputs.materials.find(({ id }) => id === line.item)!.needs;
      const sum = needs.reduce((all, { amount }) => all + amount, 0);
      const ofJob = quantities.needs.some(({ item, zone }) => item === line.item && zone === '');
      if (ofJob) expect(needs).toEqual([]);
      else if (line.group === 'steel') expect(sum).toBeGreaterThan(0);
      else expect(sum).toBeCloseTo(line.withLoss, 6);
    }
  });

  it('has the hours of everybody: minutes of the crew by the number of people in it', () => {
    const minutes = programme.tasks.reduce((sum, { work }) => sum + work, 0);
    const hours = inputs.labour.reduce((sum, task) => sum + task.hours, 0);
    expect(hours).toBeCloseTo((minutes / 60) * 2, 9);
    expect(inputs.labour.some(({ of }) => of === undefined)).toBe(true);
  });

  it('has visits, working days and dates of the programme', () => {
    expect(inputs.visits).toBe(programme.visits.length);
    const days = programme.visits.reduce((sum, { first, last }) => sum + last - first + 1, 0);
    expect(inputs.workingDays).toBeGreaterThanOrEqual(inputs.visits);
    expect(inputs.workingDays).toBeLessThanOrEqual(days);
    expect(inputs.handover).toMatch(/^2026-\d\d-\d\d$/);
    const magnetic = inputs.ready.filter(({ magnets }) => magnets !== null);
    expect(magnetic.length).toBeGreaterThan(0);
    for (const { magnets, writing } of inputs.ready) {
      for (const day of [magnets, writing]) if (day !== null) expect(day > '2026-04-07').toBe(true);
    }
    const counted = stagesOf(pricedDemo({ programme: undefined }));
    expect(counted.inputs.handover).toMatch(/^day \d+$/);
  });

  it('has no zone ready on a later day than the handover that waited for it', () => {
    const whole = stagesOf(pricedDemo({ programme: { start: '2026-03-09' } }));
    const days = whole.inputs.ready.flatMap(({ magnets, writing }) => [magnets, writing]);
    expect(whole.inputs.handover).not.toBeNull();
    for (const day of days) if (day !== null) expect(day <= whole.inputs.handover!).toBe(true);
    // Handover within the day on which the last zone became ready.
    const quick = stagesOf(pricedDemo({ programme: { start: '2026-03-09', inspection: 0, snags: 0 } }));
    for (const { magnets, writing } of quick.inputs.ready)
      for (const day of [magnets, writing])
        if (day !== null) expect(day <= quick.inputs.handover!).toBe(true);
  });

  it('charges a rack piece that has a value', () => {
    const rack = job.rack.map((piece) => ({ ...piece, value: 3 }));
    const valued = stagesOf(pricedDemo({ rack }));
    const used = valued.worked.cutting.sheets.filter(({ fromRack }) => fromRack !== null).length;
    expect(used).toBeGreaterThan(0);
    const pieces = valued.inputs.materials.filter(({ id }) => id.startsWith('rack '));
    expect(pieces.map(({ cost }) => cost)).toEqual(Array.from({ length: used }, () => 300));
  });
});

describe('the whole way from a job to its price', () => {
  it('leaves nothing unpriced but what has no packs, and no cost behind', () => {
    const { internal, lines, findings } = priceOffer(job, inputs);
    expect(sumOf(lines.map(({ cost }) => cost))).toBe(internal.direct);
    const unpriced = quantities.lines.filter(({ cost }) => cost === null);
    expect(findings.map(({ code }) => code)).toEqual(unpriced.length > 0 ? ['offer-no-price'] : []);
  });

  it('is the way of a budget price too: a wall of twice the width costs more, not less', () => {
    const of = (width: number) =>
      budgetPrice(
        job,
        { name: 'Back wall', width, height: 2500, buildUp: 'magnetic-coating' },
        (budget): OfferInputs => stagesOf(budget).inputs,
      );
    expect(of(3000).priced.gross).toBeGreaterThan(0);
    expect(of(6000).priced.gross).toBeGreaterThan(of(3000).priced.gross);
  });
});
