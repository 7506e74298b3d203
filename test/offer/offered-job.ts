import type { Offer } from '../../core/job/offer-schema';
import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import type { OfferInputs } from '../../core/offer/offer-inputs';

/** A print studio with three zones on two walls, its offer and what it is priced from; all figures invented. */
export function offeredJob(offer: Partial<Offer> = {}, currency = 'EUR'): Job {
  const { job, findings } = readJobObject({
    format: 'lodeplan-job',
    version: 1,
    name: 'Print studio',
    client: 'Hand press club',
    reference: 'LP-12',
    date: '2026-03-02',
    currency,
    stock: [{ id: 'S1', width: 500, height: 500, thickness: 0.5, price: 6.4 }],
    walls: [
      {
        id: 'A',
        name: 'Proofing wall',
        outline: box(0, 0, 5000, 2700),
        zones: [
          zone('Z1', 'Proofs', 'steel-panel-writable', box(500, 900, 2000, 1000)),
          zone('Z2', 'Week plan', 'writable', box(3000, 900, 1000, 1000)),
        ],
      },
      {
        id: 'B',
        name: 'Type store',
        outline: box(0, 0, 3000, 2700),
        zones: [zone('Z1', 'Formes', 'magnetic-coating', box(500, 900, 1500, 1000))],
      },
    ],
    offer: { locale: 'en-GB', ...offer },
  });
  if (!job) throw new Error(findings.map(({ text }) => text).join(' '));
  return job;
}

export const inputs: OfferInputs = {
  zones: [
    { wall: 'A', zone: 'Z1', trueArea: 1.9e10, offerArea: 2e10 },
    { wall: 'A', zone: 'Z2', trueArea: 1e10, offerArea: 1e10 },
    { wall: 'B', zone: 'Z1', trueArea: 1.5e10, offerArea: 1.5e10 },
  ],
  materials: [
    {
      id: 'adhesive',
      name: 'Panel adhesive, 1 × 6 kg',
      cost: 9_000,
      used: 0.75,
      needs: [{ wall: 'A', zone: 'Z1', amount: 4.5 }],
    },
    {
      id: 'sealer',
      name: 'Sealer, 1 × 2.5 l',
      cost: 3_000,
      used: 0.4,
      needs: [
        { wall: 'A', zone: 'Z1', amount: 0.2 },
        { wall: 'A', zone: 'Z2', amount: 0.1 },
        { wall: 'B', zone: 'Z1', amount: 0.1 },
      ],
    },
    { id: 'tape', name: 'Masking tape, 2 pieces', cost: 900, used: 1, needs: [] },
  ],
  labour: [
    { kind: 'bond', hours: 4, of: { wall: 'A', zone: 'Z1' } },
    { kind: 'coat', hours: 2, of: { wall: 'A', zone: 'Z2' } },
    { kind: 'coat', hours: 3, of: { wall: 'B', zone: 'Z1' } },
    { kind: 'protect', hours: 0.9 },
  ],
  visits: 3,
  workingDays: 4,
  measuredBy: '',
  ready: [
    { wall: 'A', zone: 'Z1', magnets: '2026-03-20', writing: '2026-03-24' },
    { wall: 'A', zone: 'Z2', magnets: null, writing: '2026-03-24' },
    { wall: 'B', zone: 'Z1', magnets: '2026-03-18', writing: null },
  ],
  handover: '2026-03-24',
};

function zone(id: string, name: string, buildUp: string, shape: [number, number][]) {
  const layout = buildUp.startsWith('steel') ? { layout: { stock: 'S1' } } : {};
  return { id, name, buildUp, shape, ...layout };
}

function box(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}
