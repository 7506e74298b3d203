import { describe, expect, it } from 'vitest';
import { changeObject, changeStock, changeWall } from '../../../core/job/changes';
import { emptyJob, newFitting, newWall, newZone } from '../../../core/job/defaults';
import { jobDifferences } from '../../../core/job/differences/differences';
import type {
  Corner,
  Fitting,
  Job,
  Photo,
  Pin,
  RunsOn,
  Wall,
  WallPhoto,
  Zone,
} from '../../../core/job/schema';

const empty = emptyJob('Studio');
const bare = newWall('A', '', 4200, 2600);
const wall: Wall = { ...bare, fittings: [newFitting(bare, 'socket', { x: 1500 })] };
const job: Job = {
  ...empty,
  walls: [
    { ...wall, zones: [newZone(empty, wall, { x: 1500, y: 900, width: 2000, height: 1000 })] },
    newWall('B', '', 3000, 2500),
  ],
};

const on = (patch: Partial<Wall>, of = job) => changeWall(of, 'A', (one) => ({ ...one, ...patch }));
const texts = (before: Job, after: Job) => jobDifferences(before, after).map(({ text }) => text);

const photoOf = (letter: string, name?: string) =>
  ({ id: letter.repeat(64), type: 'image/jpeg', width: 400, height: 300, ...(name && { name }) }) as Photo;
const under = (patch: Partial<WallPhoto> = {}) =>
  ({ photo: 'a'.repeat(64), points: [], fade: 0.3, shown: true, ...patch }) as WallPhoto;
const pin = (patch: Partial<Pin> = {}) =>
  ({ id: 'N1', photo: 'a'.repeat(64), at: [1000, 500], date: '', note: '', ...patch }) as Pin;
const corner = (patch: Partial<Corner> = {}) => ({ to: 'B', kind: 'internal', ...patch }) as Corner;
const runs = (patch: Partial<RunsOn> = {}) =>
  ({ wall: 'B', zone: 'Z3', lines: 'continue', ...patch }) as RunsOn;
const zoneRuns = (runsOn: RunsOn) => changeObject<Zone>(job, 'A', { kind: 'zone', id: 'Z1' }, { runsOn });
const stud = { id: 'U1', kind: 'stud', x: 600, y: 0, width: 50, height: 2600 } as const;
const hole = { id: 'X1', kind: 'hole', x: 600, y: 500, width: 8 } as const;

describe('jobDifferences, what a survey records', () => {
  it.each<[string, Job, Job, string[]]>([
    ['units that say what was so', job, { ...job, units: 'mm' }, []],
    [
      'units',
      { ...job, units: 'm' },
      { ...job, units: 'ft-in' },
      ['The job: lengths are shown in feet and inches instead of metres.'],
    ],
    [
      'temperatures',
      job,
      { ...job, temperatures: { low: -5, high: 40, atFixing: 18 } } as Job,
      ['The job: temperatures of the steel -5 °C to 40 °C, 18 °C when it is fixed instead of not given.'],
    ],
    [
      'margins of stock sheets',
      job,
      changeStock(job, 'S1', { trim: { left: 5, right: 0, bottom: 0, top: 10 } } as object),
      [
        expect.stringMatching(
          /^Stock sheet S1.*: margins to trim left 5 mm, top 10 mm instead of none\.$/,
        ) as string,
      ],
    ],
    [
      'a lock',
      job,
      changeObject<Fitting>(job, 'A', { kind: 'fitting', id: 'K1' }, { locked: true }),
      ['Socket K1 is locked now.'],
    ],
    [
      'the ground for the first time',
      job,
      on({ ground: { material: 'gypsum-board', moisture: { value: 0.4, unit: 'CM-%' } } as Wall['ground'] }),
      [
        'Wall A, ground: material gypsum board instead of not recorded.',
        'Wall A, ground: moisture 0.4 CM-% instead of not recorded.',
      ],
    ],
    [
      'the ground again',
      on({ ground: { suction: 'normal', adhesion: { test: 'ISO 4624', result: 1 } } as Wall['ground'] }),
      on({ ground: { suction: 'none', adhesion: { test: 'ISO 4624', result: 1.5 } } as Wall['ground'] }),
      [
        'Wall A, ground: suction none instead of normal.',
        'Wall A, ground: adhesion 1.5 N/mm² by ISO 4624 instead of 1 N/mm² by ISO 4624.',
      ],
    ],
    ['a stud', job, on({ fixingPoints: [stud] }), ['Stud U1 is new: 50 × 2600 mm at (600, 0).']],
    [
      'a stud and a drilling elsewhere',
      on({ fixingPoints: [stud, hole] }),
      on({
        fixingPoints: [
          { ...stud, x: 625 },
          { ...hole, y: 480, width: 10 },
        ],
      }),
      [
        'Stud U1 moved 25 mm right.',
        'Drilling X1 moved 20 mm down.',
        'Drilling X1 has a diameter of 10 mm instead of 8 mm.',
      ],
    ],
    ['a corner', job, on({ corner: corner() }), ['Wall A meets wall B at an internal corner of 90° now.']],
    [
      'an angle and a level',
      on({ corner: corner() }),
      on({ corner: corner({ kind: 'external', angle: 87.5, rise: -20 }) }),
      [
        'Wall A meets wall B at an external corner of 87.5°, 20 mm lower, instead of wall B at an internal corner of 90°.',
      ],
    ],
    ['no corner', on({ corner: corner() }), job, ['Wall A no longer meets wall B at its right end.']],
    [
      'a zone round the corner',
      job,
      zoneRuns(runs()),
      ['Zone Z1 runs on round the corner now as zone Z3 of wall B, its lines continued.'],
    ],
    [
      'lines round the corner',
      zoneRuns(runs()),
      zoneRuns(runs({ lines: 'anew' })),
      [
        'Zone Z1 runs on round the corner as zone Z3 of wall B, its lines begun anew instead of as zone Z3 of wall B, its lines continued.',
      ],
    ],
    [
      'no zone round the corner',
      zoneRuns(runs()),
      job,
      ['Zone Z1 no longer runs on round the corner as zone Z3.'],
    ],
    [
      'check measures',
      on({ checkMeasures: [{ from: 1, to: 3, length: 4940 }] }),
      on({ checkMeasures: [{ from: 1, to: 3, length: 4939.5 }] }),
      ['Wall A: check measures corner 1 to 3 4939.5 mm instead of corner 1 to 3 4940 mm.'],
    ],
    [
      'a wall put down for a budget',
      job,
      on({ surveyed: false }),
      ['Wall A is put down for a budget, not measured.'],
    ],
    ['a photo of the wall', job, on({ photo: under() }), ['Wall A has a photo under its drawing now.']],
    [
      'how the photo lies',
      on({ photo: under() }),
      on({ photo: under({ fade: 0.5, points: [{ px: [0, 0], at: [0, 0] }] as WallPhoto['points'] }) }),
      [
        'Wall A, photo under the drawing: fitted by 1 point instead of by 0 points.',
        'Wall A, photo under the drawing: faded by 50 % instead of 30 %.',
      ],
    ],
    [
      'another photo of the wall',
      on({ photo: under() }),
      on({ photo: under({ photo: 'b'.repeat(64) }) }),
      ['Wall A, photo under the drawing is another one.'],
    ],
    [
      'a pin',
      on({ pins: [pin()] }),
      on({ pins: [pin({ at: [1000, 530], note: 'Damp' })] }),
      ['Pin N1 moved 30 mm up.', 'Pin N1: note “Damp” instead of none.'],
    ],
    ['a pin that came', job, on({ pins: [pin()] }), ['Pin N1 is new: a photo at (1000, 500).']],
    [
      'photos of the job',
      { ...job, photos: [photoOf('a', 'corner.jpg')] },
      { ...job, photos: [photoOf('b')] },
      ['A photo without a name is new.', 'Photo “corner.jpg” is gone.'],
    ],
    [
      'a photo with its bytes',
      { ...job, photos: [photoOf('a')] },
      { ...job, photos: [{ ...photoOf('a'), data: 'AAAA' }] },
      [],
    ],
  ])('%s', (_, before, after, expected) => {
    expect(texts(before, after)).toEqual(expected);
    expect(texts(after, before)).toHaveLength(expected.length);
  });

  it('tells of fields of another program within a corner, a ground and a fixing point', () => {
    const with1 = (value: number): Job =>
      on({
        corner: { ...corner(), filler: value } as Corner,
        ground: { painter: value } as Wall['ground'],
        fixingPoints: [{ ...stud, screw: value }] as unknown as Wall['fixingPoints'],
      });
    expect(texts(with1(1), with1(2))).toEqual([
      'Wall A has another corner at its right end.',
      'Wall A, ground: painter 2 instead of 1.',
      'Stud U1: screw 2 instead of 1.',
    ]);
  });
});
