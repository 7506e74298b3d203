import { describe, expect, it } from 'vitest';
import type { Advice, AdviceKind } from '../../core/holding/advice';
import { adviseHung } from '../../core/holding/advise';
import { judgeHung } from '../../core/holding/judge-wall';
import { whatToChange } from '../../core/holding/what-to-change';
import { judgeItem } from '../../core/holding/judge-item';
import { flatItem } from '../../core/holding/item';
import { disc } from '../../core/holding/magnet';
import { readJob } from '../../core/job/read';
import { writeJob } from '../../core/job/write';
import type { Job } from '../../core/job/schema';
import { board, firstWall, jobWith, rectangle, type Fields } from './hung-job';
import { steelGround } from './grounds';

/** The pen shelf of the note, example 2, which fails with 2.2 where 3 are asked for. */
const shelf = {
  ...board,
  kind: 'shelf',
  name: 'Pens',
  x: 300,
  width: 400,
  height: 160,
  depth: 120,
  weight: 1.02,
  reach: 60,
  peopleBelow: undefined,
  magnets: {
    magnet: 'N35-20x5',
    places: [
      [100, 10],
      [300, 10],
      [100, 110],
      [300, 110],
    ],
  },
};

/** A second zone on the right, of thicker steel. */
const twoZones: Fields = {
  stock: [
    { id: 'S', width: 1000, height: 2000, thickness: 0.5 },
    { id: 'T', width: 1000, height: 2000, thickness: 1.5 },
  ],
  wall: {
    zones: [zone('Z1', 0, 2000, 'S'), zone('Z2', 2000, 1000, 'T')],
  },
};

function zone(id: string, x: number, width: number, stock: string) {
  return {
    id,
    shape: rectangle(x, 0, width, 2000),
    buildUp: 'steel-panel',
    layers: 'plain',
    layout: { stock, start: { x, y: 0 } },
  };
}

function advised(item: Fields, rest: Fields = {}): { job: Job; advice: Advice[] } {
  const job = jobWith([JSON.parse(JSON.stringify(item))], rest);
  return { job, advice: adviseHung(firstWall(job), 'H1') };
}

const cases: readonly (readonly [string, Fields, Fields])[] = [
  ['a shelf that slips', shelf, {}],
  ['a shelf with another zone beside it', shelf, twoZones],
  [
    'a board whose magnets crowd',
    {
      ...board,
      width: 300,
      magnets: {
        magnet: 'N35-20x5',
        places: [
          [30, 30],
          [50, 30],
          [70, 200],
        ],
      },
    },
    {},
  ],
  [
    'a board over a joint',
    { ...board, x: 960, magnets: { magnet: 'N42-20x5', places: board.magnets.places } },
    {},
  ],
  [
    'a hook with a heavy load',
    {
      ...shelf,
      width: 60,
      height: 80,
      load: { weight: 3, reach: 50 },
      magnets: { magnet: 'Y30-20x5', places: [[30, 60]] },
      use: 'could-hurt',
    },
    twoZones,
  ],
  ['a ferrite board', { ...board, magnets: { ...board.magnets, magnet: 'Y30-25x5' } }, {}],
];

describe.each(cases)('what to change: %s', (_, item, rest) => {
  const { job, advice } = advised(item, rest);
  const before = judgeHung(firstWall(job))[0]!.verdict;

  it('leads, once applied and judged again, to exactly what was promised, in a job that can be read', () => {
    const changes = advice.filter(({ change }) => change);
    expect(changes.length).toBeGreaterThan(0);
    for (const one of changes) {
      const changed = one.change!(job);
      const after = judgeHung(firstWall(changed))[0]!.verdict;
      expect(after.verdict).toBe(one.verdict);
      expect(after.isScrewed).toBe(one.isScrewed);
      expect(after.factor).toBe(one.factor);
      if (one.factor !== undefined) expect(after.asked).toBe(one.asked);
      expect(readJob(writeJob(changed)).job).toEqual(changed);
    }
  });

  it('is ranked: what makes it hold, then a fixing point, then what helps, each by its effect', () => {
    const group = ({ verdict, isScrewed }: Advice) =>
      isScrewed ? 2 : verdict === 'holds' ? 0 : verdict === 'holds only if tested' ? 1 : 3;
    for (const [i, one] of advice.slice(1).entries()) {
      const earlier = advice[i]!;
      expect(group(one)).toBeGreaterThanOrEqual(group(earlier));
      if (one.verdict === earlier.verdict && !one.isScrewed && !earlier.isScrewed)
        expect(one.effect).toBeLessThanOrEqual(earlier.effect);
    }
  });

  it('never leads to less than there is, and every other kind stands once', () => {
    for (const { factor, isScrewed, effect } of advice)
      if (!isScrewed && before.utilisation !== undefined && factor !== undefined)
        expect(effect).toBeGreaterThan(1);
    for (const { verdict, isScrewed } of advice)
      expect(isScrewed || verdict !== 'cannot be judged').toBe(true);
    const kinds = advice.map(({ kind }) => kind).filter((kind) => kind !== 'other-zone');
    expect(new Set(kinds).size).toBe(kinds.length);
  });
});

describe('what to change', () => {
  const kindsOf = (item: Fields, rest: Fields = {}): AdviceKind[] =>
    advised(item, rest).advice.map(({ kind }) => kind);

  it('names rubber, larger, stronger and more magnets, thicker steel and thinner filler', () => {
    const wanted: AdviceKind[] = [
      'rubber',
      'larger-magnets',
      'other-grade',
      'more-magnets',
      'thicker-steel',
      'less-over-steel',
    ];
    expect(kindsOf(shelf)).toEqual(expect.arrayContaining(wanted));
    const elsewhere = advised(shelf).advice.filter(({ at }) => at);
    expect(elsewhere.map(({ kind, at, change }) => [kind, at, change])).toEqual(
      expect.arrayContaining([
        ['thicker-steel', 'Panels', undefined],
        ['less-over-steel', 'Zones', undefined],
      ]),
    );
  });

  it('puts a magnet that the job lacks into its list', () => {
    const own = { id: 'own', name: 'Own', diameter: 22, height: 5, remanence: 1.2, price: 3 };
    const { job, advice } = advised(
      { ...board, weight: 0.6, magnets: { ...board.magnets, magnet: 'own' } },
      { magnets: [own] },
    );
    const rubber = advice.find(({ kind }) => kind === 'rubber')!.change!(job);
    expect(rubber.magnets!.map(({ id }) => id)).toEqual(['own', 'own-rubber']);
    expect(rubber.magnets![1]).toMatchObject({ contact: 'rubber', cover: 1, diameter: 22 });
    expect(rubber.magnets![1]).not.toHaveProperty('price');
    const grade = advice.find(({ kind }) => kind === 'other-grade')!.change!(job);
    expect(grade.magnets![1]).toMatchObject({ id: 'own-N42', remanence: 1.3 });
  });

  it('moves it to the nearest place on the largest panel of another zone, clear of edges', () => {
    const { job, advice } = advised(shelf, twoZones);
    const there = advice.find(({ kind }) => kind === 'other-zone')!;
    expect(there.words).toBe('Hang it on zone Z2, panel A-Z2-01.');
    const [item] = there.change!(job).walls[0]!.hung!;
    // Rims 1.5 D clear of the zone's left edge: 2000 + 2 × 20 − 100.
    expect(item).toMatchObject({ x: 1940, y: 800 });
  });

  it('does not move it over what is on the wall, beyond the wall, or where it is locked', () => {
    const light = { id: 'K1', kind: 'socket', x: 2000, y: 700, width: 700, height: 400 };
    const { job, advice } = advised(shelf, {
      ...twoZones,
      wall: { ...(twoZones.wall as object), fittings: [light] },
    });
    const [item] = advice.find(({ kind }) => kind === 'other-zone')!.change!(job).walls[0]!.hung!;
    expect(item!.y >= 1100 || item!.y + 160 <= 700).toBe(true);
    expect(kindsOf({ ...shelf, locked: true }, twoZones)).not.toContain('other-zone');
    expect(kindsOf({ ...shelf, width: 1200 }, twoZones)).not.toContain('other-zone');
  });

  it('lets go of what was tested with other magnets or at another place', () => {
    const { job, advice } = advised({ ...shelf, proof: 2, friction: 0.15 }, twoZones);
    const itemOf = (kind: AdviceKind) =>
      advice.find((one) => one.kind === kind)!.change!(job).walls[0]!.hung![0]!;
    for (const kind of ['rubber', 'larger-magnets', 'other-zone'] as const) {
      expect(itemOf(kind)).not.toHaveProperty('proof');
      expect(itemOf(kind)).not.toHaveProperty('friction');
    }
    expect(itemOf('more-magnets')).not.toHaveProperty('proof');
  });

  it('moves magnets clear of edges only where their places stay behind the item', () => {
    const overJoint = { ...board, x: 960 };
    const { job, advice } = advised(overJoint);
    const { magnets, width, height } = advice.find(({ kind }) => kind === 'clear-of-edges')!.change!(job)
      .walls[0]!.hung![0]!;
    for (const [x, y] of magnets!.places) {
      expect(x).toBeGreaterThanOrEqual(10);
      expect(x).toBeLessThanOrEqual(width - 10);
      expect(y).toBeLessThanOrEqual(height - 10);
      expect(Math.abs(960 + x - 1000)).toBeGreaterThanOrEqual(40);
    }
    // 60 mm wide and right over the joint at 1000: 30 mm on either side are not enough for 1.5 D of a disc of 20 mm.
    const narrow = { ...board, x: 970, width: 60, magnets: { magnet: 'N42-20x5', places: [[30, 200]] } };
    expect(kindsOf(narrow)).not.toContain('clear-of-edges');
    expect(kindsOf(narrow)).toContain('move-on-panel');
  });

  it('does not advise what would let a neighbour fall', () => {
    const heavy = { ...board, weight: 0.9 };
    const below = { ...board, id: 'H2', y: 535 };
    const more = (job: Job) => adviseHung(firstWall(job), 'H1').find(({ kind }) => kind === 'more-magnets');
    const [alone, crowded] = [jobWith([heavy]), jobWith([heavy, below])];
    const change = more(alone)!.change!;
    const neighbour = (job: Job) => judgeHung(firstWall(job))[1]!.verdict.verdict;
    // Three diameters are 60 mm: as it hangs its magnets stay 65 mm clear of the neighbour's, at its rim they would be at 56.
    expect(neighbour(crowded)).toBe('holds');
    expect(neighbour(change(crowded))).not.toBe('holds');
    expect(more(crowded)).toBeUndefined();
    for (const one of adviseHung(firstWall(crowded), 'H1'))
      if (one.change) expect(neighbour(one.change(crowded))).toBe('holds');
  });

  it('screws what magnets cannot carry to a pattress under it, or to what lies there', () => {
    const bicycle = {
      ...shelf,
      kind: 'bicycle-hook',
      width: 120,
      height: 250,
      depth: 330,
      weight: 0.8,
      load: { weight: 9, reach: 300 },
      use: 'could-hurt',
    };
    const { job, advice } = advised(bicycle);
    expect(advice[0]).toMatchObject({ kind: 'fixing-point', isScrewed: true });
    expect(advice[0]!.also).toContain('before steel hides it');
    const [wall] = advice[0]!.change!(job).walls;
    expect(wall!.fixingPoints).toMatchObject([{ kind: 'pattress', x: 240, y: 800, width: 240, height: 250 }]);
    expect(wall!.hung![0]!.fixingPoints).toEqual([wall!.fixingPoints![0]!.id]);
    const stud = { id: 'U1', kind: 'stud', x: 350, y: 0, width: 50, height: 2000 };
    const withStud = advised(bicycle, { wall: { fixingPoints: [stud] } });
    expect(withStud.advice[0]!.words).toBe('Screw it to stud U1, which lies under it.');
    const changed = withStud.advice[0]!.change!(withStud.job).walls[0]!;
    expect(changed.fixingPoints).toHaveLength(1);
    expect(changed.hung![0]!.fixingPoints).toEqual(['U1']);
  });

  it('is to screw it where nothing can be said, and nothing where it has not been weighed or is screwed', () => {
    expect(kindsOf({ ...board, x: 2600, locked: true })).toContain('fixing-point');
    expect(kindsOf({ ...board, weight: undefined })).toEqual([]);
    const { job, advice } = advised({ ...shelf, weight: 30 });
    const screwed = advice.find(({ kind }) => kind === 'fixing-point')!.change!(job);
    expect(adviseHung(firstWall(screwed), 'H1')).toEqual([]);
  });

  it('promises no more to a heavier item than to a lighter one', () => {
    const weights = [0.6, 0.8, 1, 2, 4];
    const all = weights.map((weight) => advised({ ...shelf, weight }, twoZones).advice);
    for (const kind of ['rubber', 'other-grade', 'thicker-steel', 'less-over-steel', 'other-zone'] as const) {
      const factors = all.map((advice) => advice.find((one) => one.kind === kind)?.factor ?? Infinity);
      for (const [i, factor] of factors.slice(1).entries())
        if (Number.isFinite(factors[i]!)) expect(factor).toBeLessThanOrEqual(factors[i]! * (1 + 1e-9));
    }
  });
});

describe('what to change elsewhere', () => {
  it('offers no thinner filler or thicker steel as tested, when only the wall as it is was', () => {
    const magnet = disc('N42', 20, 5);
    const ground = (tests: readonly number[][]) =>
      steelGround({ tests: tests.map((readings) => ({ magnet, between: 0, readings: [...readings] })) });
    const item = (tests: readonly number[][]) =>
      flatItem(
        8,
        60,
        { x: 100, y: 0 },
        {
          magnets: [20, 120].map((y) => ({ magnet, x: 100, y, ground: ground(tests) })),
          consequence: 'light-at-reach',
        },
      );
    const thicker = (tests: readonly number[][]) =>
      whatToChange(item(tests), judgeItem(item(tests))).find(({ kind }) => kind === 'thicker-steel')!;
    expect(thicker([[60, 60, 60]]).judgement.factor).toBe(thicker([]).judgement.factor);
  });
});
