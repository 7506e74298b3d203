import { describe, expect, it } from 'vitest';
import { sumsBy } from '../../core/quantities/areas';
import type { TakeOff } from '../../core/quantities/take-off';
import { box, jobOf, netByItem, wallOf, workedTakeOff } from './worked-jobs';

const paint = {
  id: 'p',
  name: 'Test paint',
  layer: 'decorative',
  unit: 'l',
  coats: 3,
  volumeSolids: 40,
  dryFilm: 100,
  loss: 0.15,
  packs: [
    { size: 2.5, price: 30 },
    { size: 10, price: 90 },
  ],
};
const buildUps = (layers: object[], id = 'own') => [{ id, kind: 'writable', layers }];
const zone = (fields: object) => ({ id: 'Z1', buildUp: 'writable', layers: 'own', ...fields });
/** 5 × 2.5 m: 12.5 m². */
const shape = box(500, 200, 5000, 2500);

const needOf = ({ needs }: TakeOff, item: string) => needs.filter((need) => need.item === `product ${item}`);
const lineOf = ({ lines }: TakeOff, item: string) => lines.find((line) => line.item === `product ${item}`)!;

describe('sound paint under steel', () => {
  // Common practice, no source: paint is cleaned and keyed, and so is the steel that is bonded to it; over its own area each.
  it('is cleaned once, and the backs of panels once', () => {
    const stock = [{ id: 'S', width: 1000, height: 1000, thickness: 0.5 }];
    const steel = {
      id: 'Z1',
      buildUp: 'steel-panel',
      shape: box(500, 500, 3000, 2000),
      layout: { stock: 'S' },
    };
    const job = jobOf({
      stock,
      walls: [
        wallOf({
          ground: { material: 'sound-paint' },
          fittings: [{ id: 'K', kind: 'socket', x: 600, y: 600, width: 100, height: 100, clearance: 10 }],
          zones: [steel],
        }),
      ],
    });
    const { worked, off } = workedTakeOff(job);
    const cleaned = needOf(off, 'degreaser');
    expect(cleaned.map(({ of }) => of)).toEqual(['face', 'panels']);
    const rate = worked.walls[0]!.zones[0]!.buildUp.resolved.layers[0]!.product!.spreadingRate!;
    expect(cleaned[0]!.net * rate).toBeCloseTo(6 - 0.01, 9);
    expect(cleaned[1]!.net * rate).toBeCloseTo(6 - 0.12 * 0.12, 9);
  });
});

describe('the need of a coat', () => {
  // 12.5 m², 40 % solids, 100 µm, 3 coats, 15 % lost: 4.0 → 3.4 m²/l → 11.03 l; TSR and loss as in spreading.reference.
  it('is 11.03 l for 12.5 m² in three coats of 100 µm at 40 % solids and 15 % loss', () => {
    const { off } = workedTakeOff(
      jobOf({
        products: [paint],
        buildUps: buildUps([{ kind: 'decorative', product: 'p' }]),
        walls: [wallOf({ zones: [zone({ shape })] })],
      }),
    );
    const needs = needOf(off, 'p');
    expect(needs.map(({ coat }) => coat)).toEqual([1, 2, 3]);
    expect(needs[0]!.net).toBeCloseTo(12.5 / 4, 9);
    const line = lineOf(off, 'p');
    expect(line.withLoss).toBeCloseTo(11.03, 2);
    expect(line.packs!.total).toBe(12.5);
    expect(line.cost).toBe(12000);
    expect(needs[0]!.how).toBe(
      '12.5 m² at 4 m² a litre (40 % solids, 250 µm wet for 100 µm dry); 15 % lost, so ÷ 0.85.',
    );
  });

  it('goes by the spreading rate of the data sheet where there is one, and by the layer’s own thickness before that', () => {
    const job = (layer: object) =>
      jobOf({
        products: [{ ...paint, spreadingRate: 5, loss: 0 }],
        buildUps: buildUps([{ kind: 'decorative', product: 'p', coats: 1, ...layer }]),
        walls: [wallOf({ zones: [zone({ shape })] })],
      });
    expect(lineOf(workedTakeOff(job({})).off, 'p').net).toBeCloseTo(2.5, 9);
    expect(lineOf(workedTakeOff(job({ thickness: 0.08 })).off, 'p').net).toBeCloseTo(2.5, 9);
    expect(lineOf(workedTakeOff(job({ thickness: 0.2 })).off, 'p').net).toBeCloseTo(6.25, 9);
  });

  it('of filler is area × thickness: 12.5 m² × 0.5 mm is 6.25 l, × 1.6 kg/l in kg (geometry)', () => {
    const filler = { id: 'f', name: 'Filler', layer: 'smoothing', unit: 'kg', thickness: 0.5, density: 1.6 };
    const { off } = workedTakeOff(
      jobOf({
        products: [filler],
        buildUps: buildUps([{ kind: 'smoothing', product: 'f' }]),
        walls: [wallOf({ zones: [zone({ shape })] })],
      }),
    );
    expect(lineOf(off, 'f').net).toBeCloseTo(10, 9);
    expect(off.findings.map(({ code }) => code)).toContain('product-without-packs');
  });

  it('of the first filler grows by the hollows that were surveyed', () => {
    const filler = { id: 'f', name: 'Filler', layer: 'smoothing', unit: 'l', thickness: 0.5 };
    const job = jobOf({
      products: [filler],
      quantities: { hollowShare: 0.5 },
      buildUps: buildUps([{ kind: 'smoothing', product: 'f' }]),
      walls: [wallOf({ ground: { hollow: 3 }, zones: [zone({ shape })] })],
    });
    const needs = needOf(workedTakeOff(job).off, 'f');
    expect(needs.map(({ of, net }) => [of, net])).toEqual([
      ['face', 6.25],
      ['hollows', 18.75],
    ]);
  });
});

describe('what a zone is measured by', () => {
  it('leaves out openings and fittings as they are drawn, not their clearance nor the rim', () => {
    const { off } = workedTakeOff(
      jobOf({
        products: [paint],
        buildUps: buildUps([{ kind: 'decorative', product: 'p' }]),
        walls: [
          wallOf({
            rim: { floor: 100, ceiling: 20, left: 10, right: 10 },
            openings: [{ id: 'D1', kind: 'door', x: 1000, y: 0, width: 1000, height: 2000, clearance: 60 }],
            fittings: [{ id: 'K1', kind: 'socket', x: 3000, y: 300, width: 100, height: 100, clearance: 5 }],
            zones: [zone({ shape: box(0, 0, 6000, 3000) })],
          }),
        ],
      }),
    );
    expect(off.zoneAreas[0]).toMatchObject({ gross: 18e10, face: 18e10 - 2e10 - 0.01e10 });
  });

  it('adds reveals where an opening has a depth of them, along the sides that the zone comes up to', () => {
    const { off } = workedTakeOff(
      jobOf({
        products: [paint],
        buildUps: buildUps([{ kind: 'decorative', product: 'p' }]),
        walls: [
          wallOf({
            openings: [{ id: 'D1', kind: 'door', x: 1000, y: 0, width: 1000, height: 2000, reveal: 100 }],
            zones: [zone({ shape: box(0, 0, 6000, 3000) })],
          }),
        ],
      }),
    );
    // Two jambs of 2 m and a head of 1 m, 0.1 m deep.
    expect(off.layerAreas[0]!.area).toBe(16e10 + 0.5e10);
    expect(needOf(off, 'p').filter(({ of }) => of === 'reveals')).toHaveLength(3);
  });

  it('gives a shared area to the zone listed first, and areas add up exactly by wall, delivery and job', () => {
    const { off } = workedTakeOff(
      jobOf({
        buildUps: buildUps([]),
        walls: [
          wallOf({
            delivery: '1',
            zones: [
              zone({ shape: box(0, 0, 2000.01, 1000) }),
              zone({ id: 'Z2', shape: box(1000, 0, 2000, 1000) }),
            ],
          }),
          wallOf({ id: 'B', delivery: '2', zones: [zone({ shape: box(0, 0, 333.33, 777.77) })] }),
        ],
      }),
    );
    const by = (key: 'wall' | 'delivery') =>
      Object.fromEntries(
        sumsBy(
          off.zoneAreas,
          (row) => row[key],
          ({ face }) => face,
        ),
      );
    expect(by('wall')).toEqual({ A: 3e10, B: 33333 * 77777 });
    expect(by('delivery')).toEqual({ 1: 3e10, 2: 33333 * 77777 });
  });
});

describe('a zone of steel panels', () => {
  const steelJob = (fields: object = {}) =>
    jobOf({
      stock: [{ id: 'S1', width: 500, height: 500, thickness: 0.5, price: 6.4, spares: 1 }],
      walls: [
        wallOf({
          zones: [
            {
              id: 'Z1',
              buildUp: 'steel-panel-writable',
              shape: box(1000, 1000, 2000, 1000),
              layout: { stock: 'S1', start: 'lower-left' },
            },
          ],
        }),
      ],
      ...fields,
    });

  it('takes adhesive by the notches of its trowel: 2 m² × 1 l/m² × 1.5 kg/l (geometry)', () => {
    const { off } = workedTakeOff(steelJob());
    expect(lineOf(off, 'adhesive-two-component').net).toBeCloseTo(3, 9);
  });

  it('takes tape along the joints: one of 2 m level and three of 1 m upright', () => {
    const { off } = workedTakeOff(steelJob());
    expect(lineOf(off, 'joint-tape').net).toBeCloseTo(5, 9);
  });

  it('orders the sheets of the plan and the spares, at their price', () => {
    const line = workedTakeOff(steelJob()).off.lines.find(({ group }) => group === 'steel')!;
    expect(line).toMatchObject({ net: 8, withLoss: 9, cost: 5760, unit: 'sheet' });
  });

  it('takes half a prism of filler in the margin that tapers off from it', () => {
    const { worked, off } = workedTakeOff(steelJob());
    const { featherArea } = worked.walls[0]!.zones[0]!.buildUp.edges;
    expect(featherArea).toBeGreaterThan(6e6 * 0.3);
    const need = needOf(off, 'fine-filler').find(({ of }) => of === 'feather')!;
    // Adhesive 1, steel 0.5, metal primer 0.04, bonding coat 0.1, filler 1 mm; 1.7 kg/l.
    expect(need.net).toBeCloseTo((featherArea / 1e6) * (2.64 / 2) * 1.7, 9);
    // The finish goes over the margin too.
    expect(off.layerAreas.at(-1)!.area).toBeCloseTo(2e10 + featherArea * 1e4, 0);
  });

  it('takes beads and trims where its edges end so, rings and screws where a box comes forward', () => {
    const job = steelJob();
    const [wall] = job.walls;
    const changed = jobOf({
      ...job,
      walls: [
        {
          ...wall,
          fittings: [{ id: 'K1', kind: 'socket', x: 1500, y: 1300, width: 80, height: 80, clearance: 5 }],
          zones: [
            {
              ...wall!.zones[0],
              edges: [
                { edge: 1, end: 'stop-bead' },
                { edge: 2, end: 'trim' },
              ],
            },
          ],
        },
      ],
    });
    const lines = workedTakeOff(changed).off.lines.map(({ item, net }) => [item, net]);
    expect(lines).toContainEqual(['thing stop-bead', 2]);
    expect(lines).toContainEqual(['thing trim', 1]);
    expect(lines).toContainEqual(['thing extension-ring', 1]);
    expect(lines).toContainEqual(['thing longer-screws', 2]);
  });

  it('stands on a starting batten as long as its first course', () => {
    const line = workedTakeOff(steelJob()).off.lines.find(({ item }) => item === 'thing batten')!;
    expect(line).toMatchObject({ net: 2, unit: 'm', group: 'tapes and profiles' });
  });

  it('is masked all round: 2 × (2 + 1) m', () => {
    const line = workedTakeOff(steelJob()).off.lines.find(({ item }) => item === 'sundry masking-tape')!;
    expect(line.net).toBeCloseTo(6, 9);
    expect(line.packs!.packs).toMatchObject([{ size: 50, count: 1 }]);
  });
});

describe('what cannot be worked out', () => {
  const job = (product: object, layer: object = { kind: 'decorative', product: 'p' }) =>
    jobOf({
      products: [{ id: 'p', name: 'Bare paint', layer: 'decorative', unit: 'l', ...product }],
      buildUps: buildUps([layer]),
      walls: [wallOf({ zones: [zone({ shape }), zone({ id: 'Z2', shape: box(0, 0, 400, 400) })] })],
    });
  const said = (of: ReturnType<typeof jobOf>) => workedTakeOff(of).off.findings.map(({ text }) => text);

  it('is said once for a product, with what is missing', () => {
    expect(said(job({}))).toEqual([
      'How much Bare paint is needed cannot be worked out, because the product does not say its spreading rate, or its solids and dry film thickness; enter it from the data sheet.',
    ]);
    expect(said(job({ unit: 'kg', volumeSolids: 40, dryFilm: 50 }))[0]).toContain('its density');
    expect(said(job({ unit: 'piece' }))[0]).toContain('how many m² one piece covers');
  });

  it('is said of a layer without a product, and of one whose product is not there', () => {
    expect(said(job({}, { kind: 'decorative' }))[0]).toContain('has no product');
    expect(said(job({}, { kind: 'decorative', product: 'gone' }))[0]).toContain('product gone');
    expect(said(job({}, { kind: 'sanding' }))).toEqual([]);
  });

  it('is not a pack’s price: then the packs are chosen by what they leave over', () => {
    const packs = [
      { size: 2.5, price: 0 },
      { size: 10, price: 90 },
    ];
    const { off } = workedTakeOff(job({ spreadingRate: 5, packs }));
    expect(off.findings.map(({ code }) => code)).toEqual(['pack-without-price']);
    expect(off.isWholeCost).toBe(false);
  });
});

describe('film', () => {
  const film = {
    id: 'w',
    name: 'Test film',
    layer: 'writable-film',
    unit: 'm2',
    rollWidth: 1220,
    loss: 0.15,
    packs: [{ size: 12.2, price: 200 }],
  };
  const filmJob = (fields: object = {}) =>
    jobOf({
      products: [{ ...film, ...fields }],
      quantities: { filmDirection: 'upright', filmTrim: 25, filmOverlap: 20 },
      buildUps: buildUps([{ kind: 'writable-film', product: 'w' }]),
      walls: [wallOf({ zones: [zone({ shape: box(0, 0, 3000, 2500) })] })],
    });

  it('is taken by its plan of strips, not by its loss: three of 2.55 m', () => {
    const { off } = workedTakeOff(filmJob());
    const [need] = needOf(off, 'w');
    expect(need!.net).toBeCloseTo(7.5, 9);
    expect(need!.withLoss).toBeCloseTo(3 * 2.55 * 1.22, 9);
    expect(need!.how).toBe('3 upright strips, 7.65 m together, of a roll of 1220 mm.');
  });

  it('is bought in rolls that give every strip whole: one of 10 m here, two of 5 m would give two strips', () => {
    expect(lineOf(workedTakeOff(filmJob()).off, 'w').packs!.packs[0]!.count).toBe(1);
    const short = workedTakeOff(filmJob({ packs: [{ size: 6.1, price: 100 }] })).off;
    expect(lineOf(short, 'w').packs!.packs[0]!.count).toBe(3);
  });

  it('that no roll has in one piece is said to be so', () => {
    const { off } = workedTakeOff(filmJob({ packs: [{ size: 2.44, price: 100 }] }));
    expect(off.findings.map(({ code }) => code)).toEqual(['film-longer-than-roll']);
    expect(netByItem(off)['product w']).toBeCloseTo(7.5, 9);
  });
});

describe('what the thickness changes along edges, and props', () => {
  // Common practice, no source; lengths by hand.
  const steel = (fields: object = {}) =>
    jobOf({
      stock: [{ id: 'S', width: 1000, height: 1000, thickness: 0.5 }],
      walls: [
        wallOf({
          openings: [{ id: 'W1', kind: 'window', x: 1500, y: 800, width: 600, height: 500, clearance: 10 }],
          zones: [
            {
              id: 'Z1',
              buildUp: 'steel-panel',
              shape: box(500, 0, 3000, 2000),
              layout: { stock: 'S', start: 'lower-left' },
            },
          ],
        }),
      ],
      ...fields,
    });

  it('are packing behind the architrave and the skirting and a bead round the reveal, by the metre', () => {
    const net = netByItem(workedTakeOff(steel()).off);
    const round = (2 * (620 + 520)) / 1000;
    expect(net['thing architrave-packing']).toBeCloseTo(round, 9);
    expect(net['thing reveal-bead']).toBeCloseTo(round, 9);
    expect(net['thing skirting-packing']).toBeCloseTo(3, 9);
  });

  it('props are for what is propped at one time, used again, and bought only if they have packs', () => {
    const props = (quantities: object) => {
      const { lines } = workedTakeOff(steel({ quantities })).off;
      return lines.find(({ item }) => item === 'thing prop');
    };
    // Six panels of 1 × 1 m, the window cut out of them.
    expect(props({})).toMatchObject({ net: 12, cost: 0 });
    expect(props({ proppedAtOnce: 2, propsPerPanel: 3 })).toMatchObject({ net: 6, cost: 0 });
    expect(props({ propsPerPanel: 0 })).toBeUndefined();
    const pieces = [{ kind: 'prop', packs: [{ size: 4, price: 20 }] }];
    expect(props({ pieces })).toMatchObject({ net: 12, cost: 6000 });
  });
});
