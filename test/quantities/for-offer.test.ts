import { describe, expect, it } from 'vitest';
import type { OfferMaterial, OfferZone } from '../../core/offer/offer-inputs';
import { measuredBy, measuredMaterials } from '../../core/quantities/for-offer';
import { box, jobOf, wallOf, workedTakeOff } from './worked-jobs';

const { off } = workedTakeOff(
  jobOf({
    quantities: { measurement: 'din-18363' },
    stock: [{ id: 'S1', width: 500, height: 500, thickness: 0.5, price: 6.4, spares: 2 }],
    walls: [
      wallOf({
        openings: [{ id: 'O1', kind: 'window', x: 3500, y: 1200, width: 1000, height: 1000 }],
        zones: [
          {
            id: 'Z1',
            buildUp: 'steel-panel',
            shape: box(200, 1000, 1000, 1000),
            layout: { stock: 'S1', start: 'lower-left' },
          },
          { id: 'Z2', buildUp: 'writable', shape: box(3000, 1000, 2000, 1500) },
        ],
      }),
    ],
  }),
);

describe('what an offer is priced from', () => {
  it('is each zone by a rule of measurement, its true area beside it', () => {
    // The offer reads these as they are.
    const zones: readonly OfferZone[] = off.offerAreas;
    expect(zones).toEqual([
      { wall: 'A', zone: 'Z1', trueArea: 1e10, offerArea: 1e10 },
      { wall: 'A', zone: 'Z2', trueArea: 2e10, offerArea: 3e10 },
    ]);
    expect(measuredBy('net')).toBe('');
    expect(measuredBy('din-18363')).toContain('DIN 18363');
  });

  it('is each material with what is left over, and which zone takes how much', () => {
    const materials: OfferMaterial[] = measuredMaterials(off);
    const steel = materials.find(({ id }) => id === 'stock S1')!;
    expect(steel).toEqual({
      id: 'stock S1',
      name: 'Stock sheet S1, 6 sheets',
      cost: 3840,
      used: 4 / 6,
      needs: [{ wall: 'A', zone: 'Z1', amount: 1 }],
    });
    const sealer = materials.find(({ id }) => id === 'product sealer')!;
    expect(sealer.needs.map(({ zone }) => zone)).toEqual(['Z1', 'Z2']);
    const [all, line] = [
      sealer.needs.reduce((sum, { amount }) => sum + amount, 0),
      off.lines.find(({ item }) => item === 'product sealer')!,
    ];
    expect(all).toBeCloseTo(line.withLoss, 9);
    expect(sealer.used).toBeCloseTo(line.withLoss / line.packs!.total, 9);
  });
});
