import { describe, expect, it } from 'vitest';
import { checkHung, checkWall } from '../../core/holding/check-hung';
import { judgeHung, type JudgedHung } from '../../core/holding/judge-wall';
import { pullOnSheet } from '../../core/holding/pull';
import { standardGravity } from '../../core/holding/force-units';
import type { HungItem } from '../../core/job/hung-schema';
import type { Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { board, corners, firstWall, glue, jobWith, levelling, rectangle, type Fields } from './hung-job';

function judged(job: Job): JudgedHung[] {
  return judgeHung(firstWall(job));
}

describe('the examples of the note on holding force, section 4, hung on a wall', () => {
  it('example 1, a picture board: slip decides at 3.06, and it holds', () => {
    const [one] = judged(jobWith([board]));
    expect(one!.verdict).toMatchObject({ verdict: 'holds', governs: 'slip', asked: 3, panels: ['A-Z1-01'] });
    expect(one!.verdict.factor).toBeCloseTo(3.06, 1);
    expect(one!.judgement.state!.T[2]).toBeCloseTo(0.045, 3);
    expect(one!.judgement.state!.C).toBeCloseTo(0.098, 3);
  });

  const shelf = {
    ...board,
    kind: 'shelf',
    height: 120,
    width: 400,
    depth: 120,
    weight: 10 / standardGravity,
    reach: 60,
    magnets: {
      magnet: 'N42-30x10',
      places: [
        [100, 10],
        [300, 10],
        [100, 110],
        [300, 110],
      ],
    },
  };

  it('example 2, a pen shelf: 2.2 fails, with 1 mm of rubber 3.7 does', () => {
    const [bare] = judged(jobWith([shelf]));
    expect(bare!.verdict).toMatchObject({ verdict: 'does not hold', governs: 'slip' });
    expect(bare!.verdict.factor).toBeCloseTo(2.2, 1);
    const rubber = { ...shelf, magnets: { ...shelf.magnets, magnet: 'N42-30x10-rubber' } };
    const [covered] = judged(jobWith([rubber]));
    expect(covered!.verdict.factor).toBeCloseTo(3.7, 1);
    expect(covered!.verdict.verdict).toBe('holds');
  });

  it('example 3, one hook: 1.5 N fails at 1.7, the largest weight is 0.98 N', () => {
    const hook = {
      ...board,
      width: 20,
      height: 20,
      restsOnWall: false,
      weight: 1.5 / standardGravity,
      reach: 30,
      magnets: { magnet: 'N42-20x5', places: [[10, 10]] },
    };
    const job = jobWith([hook]);
    const thin = {
      ...job,
      buildUps: [
        {
          ...job.buildUps![0]!,
          layers: job.buildUps![0]!.layers.map((layer) =>
            layer.kind === 'filler' ? { ...layer, thickness: 0.5 } : layer,
          ),
        },
      ],
    } as Job;
    const { survey, zones } = workOutFully(thin).walls[0]!;
    const check = checkHung(thin, survey.wall, zones, 'H1')!;
    expect(check.judgement.magnets[0]!.pull.nominal).toBeCloseTo(17.6, 1);
    expect(check.verdict).toMatchObject({ verdict: 'does not hold', governs: 'slip' });
    expect(check.verdict.factor! / 3).toBeCloseTo(1.7 / 3, 1);
    expect(check.largestWeight! * standardGravity).toBeCloseTo(0.98, 2);
  });
});

describe('what lies behind an item', () => {
  const at = (x: number, changes: Fields = {}) => ({ ...board, x, ...changes });

  it('is its panel, or two of them; near the joint half is counted, beside the steel nothing', () => {
    const shares = (x: number) =>
      judged(jobWith([at(x)]))[0]!.judgement.magnets.map(({ derating }) => derating.share);
    // Rims 1.5 diameters, 30 mm, from the joint at 1000: magnet at x + 180 + 10 + 30.
    expect(shares(780)).toEqual([1, 1, 1, 1]);
    expect(shares(781)).toEqual([1, 0.5, 1, 0.5]);
    expect(shares(811)).toEqual([1, 0, 1, 0]);
    const [over] = judged(jobWith([at(1900)]));
    expect(over!.verdict.panels).toEqual(['A-Z1-02']);
    expect(over!.verdict.reasons.join(' ')).toContain('no steel');
    expect(judged(jobWith([at(900)]))[0]!.verdict.panels).toEqual(['A-Z1-01', 'A-Z1-02']);
    expect(judged(jobWith([at(2400)]))[0]!.verdict).toMatchObject({
      verdict: 'does not hold',
      factor: 0,
      zones: [],
    });
  });

  it('is the zone with its own layers: over two zones each magnet has its own', () => {
    const zones = [
      {
        id: 'Z1',
        shape: rectangle(0, 0, 1000, 2000),
        buildUp: 'steel-panel',
        layers: 'plain',
        layout: { stock: 'S', start: { x: 0, y: 0 } },
      },
      { id: 'Z2', shape: rectangle(1000, 0, 1000, 2000), buildUp: 'magnetic-coating' },
    ];
    const [one] = judged(jobWith([at(900)], { wall: { zones } }));
    expect(one!.verdict.zones).toEqual(['Z1', 'Z2']);
    expect(one!.judgement.magnets.map(({ place }) => place.ground.kind)).toEqual([
      'steel',
      'coating',
      'steel',
      'coating',
    ]);
    expect(one!.verdict.verdict).toBe('cannot be judged');
  });

  it('counts another item’s magnets within three diameters, those of a screwed one, too', () => {
    const other = at(490, { id: 'H2' });
    const shares = (items: Fields[]) =>
      judged(jobWith(items))[0]!.judgement.magnets.map(({ derating }) => derating.share);
    // 300 + 180 and 490 + 20 are 30 mm apart, less than 60.
    expect(shares([at(300), other])).toEqual([1, 0.5, 1, 0.5]);
    expect(shares([at(300), at(520, { id: 'H2' })])).toEqual([1, 1, 1, 1]);
    // 80 mm apart: more than 3 × 20, less than 3 × 30; of two the larger sets the distance.
    const large = at(560, { id: 'H2', magnets: { magnet: 'N42-30x10', places: [[0, 20]] } });
    expect(shares([at(300), large])).toEqual([1, 0.5, 1, 1]);
    expect(shares([at(300), { ...other, fixingPoints: ['F1'] }])).toEqual([1, 0.5, 1, 0.5]);
  });

  const mixed = (other: Fields, layout: Fields) =>
    judged(
      jobWith([at(1100)], {
        stock: [
          { id: 'S', width: 1000, height: 2000, thickness: 0.5 },
          { id: 'X', width: 500, height: 2000, thickness: 0.5, ...other },
        ],
        zone: {
          shape: rectangle(0, 0, 1500, 2000),
          layout: { stock: 'S', start: { x: 0, y: 0 }, ...layout },
        },
      }),
    )[0]!;

  it('is steel of one kind: a format of stainless is not mixed in, nor a panel judged that may be cut from it', () => {
    const stainless = { steel: 'austenitic-stainless' };
    const kinds = (one: JudgedHung) => one.placed.behind.map((face) => face!.ground.kind);
    const laid = mixed(stainless, { stocks: ['X'] });
    expect(
      laid.placed.behind.map((face) => face!.zone.layout!.panels.map(({ stock }) => stock)),
    ).toContainEqual(['S', 'S']);
    expect(laid.verdict.verdict).toBe('holds');
    const cut = mixed(stainless, { cutFrom: ['X'] });
    expect(kinds(cut)).toEqual(Array(4).fill('unknown'));
    expect(cut.verdict).toMatchObject({ verdict: 'cannot be judged' });
    expect(cut.verdict.reasons[0]).toContain('different steel (S, X)');
    // Whole stock sheets come from nowhere else.
    expect(
      judged(
        jobWith([at(100)], {
          stock: [
            { id: 'S', width: 1000, height: 2000, thickness: 0.5 },
            { id: 'X', width: 500, height: 2000, thickness: 0.5, ...stainless },
          ],
          zone: { layout: { stock: 'S', cutFrom: ['X'], start: { x: 0, y: 0 } } },
        }),
      )[0]!.verdict.verdict,
    ).toBe('holds');
  });

  it('is the thinnest steel that its panel may be cut from', () => {
    const thickness = (other: number) => {
      const { ground } = mixed({ thickness: other }, { cutFrom: ['X'] }).placed.behind[0]!;
      return ground.kind === 'steel' && ground.thickness;
    };
    expect([thickness(0.4), thickness(0.5), thickness(0.6)]).toEqual([0.4, 0.5, 0.5]);
  });

  const window = (y: number, height: number) => ({
    openings: [{ id: 'O1', kind: 'window', x: 100, y, width: 1000, height }],
  });
  const outside: Fields = { ...board, restsOnWall: false, weight: 0.1, reach: 60, depth: 120 };

  it('bears on the wall alone: before an opening it turns about the lowest rim that does', () => {
    const tensions = (item: Fields, wall: Fields = {}) =>
      judged(jobWith([item], { wall }))[0]!.judgement.state!.T;
    const turning = 0.1 * standardGravity * 60;
    // Rims 10 mm below: y = 10 and 210, or 10 alone. T = W e y / Σy².
    expect(tensions(outside)[2]).toBeCloseTo((turning * 210) / (2 * (10 ** 2 + 210 ** 2)), 9);
    expect(tensions(outside, window(500, 400))[2]).toBeCloseTo(turning / (2 * 10), 9);
    expect(tensions({ ...outside, y: -100 })[2]).toBeCloseTo(turning / (2 * 10), 9);
    // Its edge at 800 rests on the wall, or before the window.
    const resting = {
      ...outside,
      restsOnWall: true,
      magnets: { magnet: 'N42-20x5', places: corners.slice(2) },
    };
    expect(tensions(resting)[0]).toBeCloseTo(turning / (2 * 220), 9);
    expect(tensions(resting, window(500, 400))[0]).toBeCloseTo(turning / (2 * 10), 9);
  });

  it('is not known to lie flat where the wall stands out differently: a wedge only a test settles', () => {
    const low = { shape: rectangle(0, 900, 2000, 1000) };
    const [flat, wedged] = [{}, low].map((zone) => judged(jobWith([{ ...outside, reach: 5 }], { zone }))[0]!);
    expect(flat!.verdict.verdict).toBe('holds');
    expect(wedged!.verdict.verdict).toBe('holds only if tested');
    expect(wedged!.verdict.reasons[0]).toContain('lie flat');
  });

  it('is not known where its magnets and another item lie over each other', () => {
    const two = judged(jobWith([board, at(400, { id: 'H2', y: 950 })]));
    expect(two.map(({ verdict }) => verdict.verdict)).toEqual(Array(2).fill('holds only if tested'));
    expect(two[0]!.verdict.reasons[0]).toContain('print H2');
    const beside = judged(jobWith([board, at(580, { id: 'H2' })]));
    expect(beside.map(({ verdict }) => verdict.verdict)).toEqual(['holds', 'holds']);
  });

  it('is the gap of the layers, larger over a surveyed hollow', () => {
    const job = (hollow: number) => jobWith([at(300)], { wall: { ground: { hollow } } });
    const [flat, hollow, deep] = [0, 1, 3].map((mm) => judged(job(mm))[0]!);
    const gap = (one: JudgedHung) =>
      one.judgement.magnets[0]!.place.ground as { gap: number; gapMost: number };
    expect([flat, hollow, deep].map((one) => gap(one!).gap)).toEqual([1, 1, 1]);
    expect([flat, hollow, deep].map((one) => gap(one!).gapMost)).toEqual([1, 2, 4]);
    expect(hollow!.judgement.magnets[0]!.pull.least).toBeLessThan(flat!.judgement.magnets[0]!.pull.least);
    expect([flat!.verdict.verdict, deep!.verdict.verdict]).toEqual(['holds', 'holds only if tested']);
    expect(deep!.verdict.reasons.join(' ')).toContain('up to 4 mm');
  });

  it('is what was measured there, for every item of the zone', () => {
    const F = pullOnSheet({ Br: 1.3, mur: 1.05, R: 0.01, H: 0.005, t: 0.0005, g: 0.0016, saturation: 1 }).F;
    const pullTests = [{ id: 'T1', magnet: 'N42-20x5', readings: [F, F + 0.2, F + 0.1] }];
    const item = at(300, { magnets: { magnet: 'N42-15x3', places: corners } });
    const [one] = judged(jobWith([item], { zone: { pullTests } }));
    const asIf = pullOnSheet({
      Br: 1.3,
      mur: 1.05,
      R: 0.0075,
      H: 0.003,
      t: 0.0005,
      g: 0.0016,
      saturation: 1,
    }).F;
    expect(one!.judgement.magnets[0]!.pull.nominal).toBeCloseTo(asIf, 3);
  });
});

describe('what is asked before a verdict', () => {
  it('a weight, magnets, and magnets that the job has', () => {
    const first = (changes: Fields) => judged(jobWith([{ ...board, ...changes }]))[0]!.verdict;
    expect(first({ weight: undefined }).reasons[0]).toContain('not been weighed');
    expect(first({ magnets: undefined }).reasons[0]).toContain('no magnets');
    expect(first({ magnets: { magnet: 'gone', places: corners } }).reasons[0]).toContain('“gone”');
    expect(first({ weight: undefined }).verdict).toBe('cannot be judged');
  });

  it('that its magnets are behind it, each at its own place', () => {
    const first = (places: number[][]) =>
      judged(jobWith([{ ...board, magnets: { magnet: 'N42-20x5', places } }]))[0]!.verdict;
    expect(first([...corners, [180, 900]])).toMatchObject({ verdict: 'cannot be judged' });
    expect(first([...corners, [180, 900]]).reasons[0]).toContain('lies beside it, at 180, 900 mm');
    expect(first([...corners, [190, 220]]).reasons[0]).toContain('lie over each other');
    expect(first([...corners, [160, 220]]).reasons.join(' ')).not.toContain('lie over each other');
  });

  it('above 1.5 kg nothing is light: its fall could hurt', () => {
    const of = (weight: number) => judged(jobWith([{ ...board, weight }]))[0]!;
    expect(of(1.5).verdict.asked).toBe(3);
    expect(of(1.51).verdict.asked).toBe(5);
    expect(of(1.51).placed.notes.join(' ')).toContain('more than 1.5 kg');
  });

  it('above 1 kg, where people are below; over them nothing hangs on magnets alone', () => {
    const verdict = (weight: number, peopleBelow: unknown, changes: Fields = {}) =>
      judged(jobWith([{ ...board, weight, ...changes }], { wall: { peopleBelow } }))[0]!.verdict;
    expect(verdict(1.01, undefined)).toMatchObject({ verdict: 'cannot be judged' });
    expect(verdict(1.01, undefined).reasons[0]).toContain('under this wall');
    expect(verdict(0.4, undefined).verdict).toBe('holds');
    expect(verdict(1.01, []).factor).toBeDefined();
    const bed = [{ id: 'P1', kind: 'bed', x: 400, width: 900 }];
    expect(verdict(0.2, bed)).toMatchObject({ verdict: 'does not hold', asked: 5 });
    expect(verdict(0.2, bed).reasons[0]).toContain('mechanical stop');
    expect(verdict(0.2, bed, { stop: true }).verdict).not.toBe('does not hold');
    expect(verdict(0.2, [{ ...bed[0], x: 500 }]).verdict).toBe('holds');
    expect(verdict(0.2, [{ ...bed[0], y: 1100 }]).verdict).toBe('holds');
  });

  it('an item that is screwed on is not the magnets’ to carry', () => {
    const [one] = judged(jobWith([{ ...board, weight: 40, fixingPoints: ['F1'] }]));
    expect(one!.verdict).toMatchObject({ isScrewed: true, verdict: 'cannot be judged' });
    expect(
      workOutFully(jobWith([{ ...board, weight: 40, fixingPoints: ['F1'] }])).walls[0]!.hungFindings,
    ).toEqual([]);
  });
});

describe('a piece that is moved about on a marking', () => {
  const piece = {
    ...board,
    kind: 'game-piece',
    width: 30,
    height: 30,
    weight: 0.01,
    use: 'handled',
    restsOnWall: false,
    magnets: { magnet: 'N42-10x3', places: [[15, 15]] },
    marking: { zone: 'Z1', marking: 'M1' },
  };
  const withBoard = (x: number, fields: Partial<typeof piece> = {}) =>
    jobWith([{ ...piece, x: x + 100, ...fields }], {
      zone: { markings: [{ id: 'M1', kind: 'board', x, y: 600, across: 8, up: 8, side: 50 }] },
    });
  const first = (job: Job) => judged(job)[0]!;
  const codes = (job: Job) => workOutFully(job).walls[0]!.hungFindings.map(({ code }) => code);

  it('counts where it holds worst: half, if a joint runs across, all of it on one panel', () => {
    expect(first(withBoard(200)).judgement.magnets[0]!.derating.share).toBe(1);
    expect(first(withBoard(800)).judgement.magnets[0]!.derating.share).toBe(0.5);
    expect(first(withBoard(800)).placed.notes.join(' ')).toContain('over a joint');
  });

  it('does not hold where a part of its board has no steel behind it, wherever it lies itself', () => {
    const over = first(withBoard(1800));
    expect(over.verdict.verdict).toBe('does not hold');
    expect(over.placed.notes.join(' ')).toContain('nothing behind it that draws a magnet');
    const socket = { id: 'K1', kind: 'socket', x: 400, y: 700, width: 80, height: 80, clearance: 5 };
    const withSocket = jobWith([{ ...piece, x: 300, y: 900 }], {
      zone: { markings: [{ id: 'M1', kind: 'board', x: 200, y: 600, across: 8, up: 8, side: 50 }] },
      wall: { fittings: [socket] },
    });
    expect(first(withSocket).verdict.verdict).toBe('does not hold');
  });

  it('off its board, or when that has gone, it is judged where it lies, and a finding says so', () => {
    const off = withBoard(800, { x: 300 });
    expect(first(off).judgement.magnets[0]!.derating.share).toBe(1);
    expect(codes(off)).toContain('piece-off-marking');
    expect(codes(withBoard(800))).not.toContain('piece-off-marking');
    const gone = withBoard(200, { marking: { zone: 'Z1', marking: 'M7' } });
    expect(codes(gone)).toContain('piece-without-marking');
    expect(first(gone).judgement.magnets[0]!.derating.share).toBe(1);
  });

  it('counts the next one beside it, as near as two can lie, and all of them on its panel', () => {
    const of = (width: number, pieces: number) =>
      judged(
        jobWith([{ ...piece, width, pieces, magnets: { magnet: 'N42-10x3', places: [[width / 2, 15]] } }], {
          zone: { markings: [{ id: 'M1', kind: 'board', x: 200, y: 600, across: 8, up: 8, side: 50 }] },
        }),
      )[0]!;
    const share = (one: JudgedHung) => one.judgement.magnets[0]!.derating.share;
    // Three diameters are 30 mm.
    expect([share(of(30, 32)), share(of(29, 32)), share(of(29, 1))]).toEqual([1, 0.5, 1]);
    expect(of(29, 32).verdict.verdict).toBe('holds only if tested');
    const weight = (pieces: number) => of(30, pieces).bonds[0]!.result.weight;
    expect(weight(32) - weight(1)).toBeCloseTo(31 * 0.01 * standardGravity, 9);
  });
});

describe('the adhesive behind it', () => {
  it('bears the panel and what hangs there: G = m g A + ΣW, τ = G / (κ A)', () => {
    const [one] = judged(jobWith([board]));
    const { result } = one!.bonds[0]!;
    // By hand: 1 mm of adhesive at 1.5 kg/l, 0.5 mm of steel at 7.85, 1 mm of filler at 1.2.
    const area = 2;
    const mass = 1.5 + 0.5 * 7.85 + 1.2;
    expect(result.weight).toBeCloseTo(mass * 9.80665 * area + 4, 6);
    expect(result.shearUtilisation).toBeCloseTo(result.weight / (0.8 * area * 1e6) / (0.1 * 1), 9);
    expect(result.verdict).toBe('holds');
  });

  it('peels where a magnet pulls at the edge: no strength stated, no verdict', () => {
    const near = { ...board, x: 815, weight: 0.1 };
    const stated = judged(jobWith([near]))[0]!;
    const unstated = judged(
      jobWith([near], {
        products: [glue, levelling],
      }),
    )[0]!;
    expect(stated.verdict.verdict).not.toBe('cannot be judged');
    expect(unstated.verdict.verdict).toBe('cannot be judged');
    expect(unstated.verdict.reasons.join(' ')).toContain('peel strength');
  });
});

it('the pipeline keeps a verdict for each item, in their order, and a finding for what does not plainly hold', () => {
  const heavy: Partial<HungItem> = { id: 'H2', x: 1200, weight: 0.9 };
  const worked = workOutFully(jobWith([board, { ...board, ...heavy }]));
  const [wall] = worked.walls;
  expect(wall!.hung.map(({ id, verdict }) => [id, verdict])).toEqual([
    ['H1', 'holds'],
    ['H2', 'does not hold'],
  ]);
  const found = worked.findings.filter(({ code }) => code.startsWith('hung-'));
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({ level: 'warning', code: 'hung-does-not-hold', wall: 'A', object: 'H2' });
  const { survey, zones } = wall!;
  expect(checkWall(worked.job, survey.wall, zones).map(({ verdict }) => verdict)).toEqual(wall!.hung);
});
