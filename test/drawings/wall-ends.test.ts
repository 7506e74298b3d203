import { describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import { settingOutSheet } from '../../core/drawings/setting-out';
import { formatHundredth } from '../../core/drawings/figures';
import { cornerNotes, wallEnds } from '../../core/drawings/wall-ends';
import { runRoundCorner } from '../../core/job/run-round-corner';
import type { Job, Layout } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { inside, room, steel, wallOf } from '../job/room-walls';
import { fontFiles } from './font-files';
import { textFaults, wordsOf } from './page-checks';

const measure = measureWith(fontFiles);

/** Three walls round an internal corner with a step of 150 in the floor and an external one of 120°. */
function studio(changes: Partial<Layout> = {}, width = 1200): Job {
  const start = { x: 3200 - width, y: 600 };
  const walls = [
    wallOf('A', 3200, inside('B', 150), [
      steel('Z1', [3200 - width, 600, width, 1000], { start, ...changes }),
    ]),
    wallOf('B', 2300, { to: 'C', kind: 'external', angle: 120 }),
    wallOf('C', 1800),
  ];
  let job = room(walls);
  for (const [wall, length] of [
    ['A', undefined],
    ['B', 700],
  ] as const) {
    const result = runRoundCorner(job, wall, 'Z1', 'right', length);
    if ('fault' in result) throw new Error(result.fault);
    job = result.job;
  }
  return job;
}

describe('the ends of a wall that zones run round', () => {
  const worked = workOutFully(studio(), { steps: 5 });
  const ends = worked.walls.map((wall) => wallEnds(worked, wall));

  it('have the distances from the corner to the nearest joints of both walls', () => {
    expect(ends.map((list) => list.map(({ side, other, at }) => [side, other, at]))).toEqual([
      [['right', 'B', 320000]],
      [
        ['left', 'A', 0],
        ['right', 'C', 230000],
      ],
      [['left', 'B', 0]],
    ]);
    // 1200 = 500 + 500 + 200; 300 of that sheet are left, 2300 = 300 + 4 × 500, so the next corner is a joint.
    const [atRight] = ends[0]![0]!.zones;
    expect([atRight!.joints, atRight!.otherJoints]).toEqual([[20000], [30000]]);
    expect([atRight!.heights, atRight!.otherHeights]).toEqual([
      [600, 1600],
      [450, 1450],
    ]);
    expect(ends[1]![1]!.zones[0]!.joints).toEqual([50000]);
  });

  it('are told in sentences on the sheets of both walls', () => {
    expect(cornerNotes(ends[0]!, formatHundredth)).toEqual([
      'Right end, 3200 from the datum, internal corner with wall B: Z1 continues as Z1 on wall B, at 600 to 1600 here and 450 to 1450 there. Nearest joint 200 from the corner here, 300 on wall B. Panel lines continue, counted on the faces of the walls; panels are cut at the corner.',
    ]);
    expect(cornerNotes(ends[1]!, formatHundredth)).toHaveLength(2);
    expect(cornerNotes(ends[1]!, formatHundredth)[1]).toContain('external corner of 120° with wall C');
    for (const i of [0, 1, 2])
      expect(wordsOf(settingOutSheet(worked, i, measure))).toContain('continues on wall');
  });

  it('name a distance for every course where courses are staggered', () => {
    const staggered = workOutFully(studio({ stagger: 0.5 }), { steps: 2 });
    const [end] = wallEnds(staggered, staggered.walls[0]!);
    expect(end!.zones[0]!.joints).toEqual([20000, 45000]);
    expect(cornerNotes([end!], formatHundredth)[0]).toContain(
      'Nearest joint 200 and 450 from the corner here, 300 and 50 on wall B',
    );
  });
});

const rooms = [
  ['plain', studio()],
  ['staggered', studio({ stagger: 0.5, jointGap: 2 })],
  ['with a narrow last panel', studio({ start: { x: 3150, y: 600 } })],
  ['of one panel at the corner', studio({}, 300)],
  [
    'corners without zones',
    room([wallOf('A', 3200, inside('B')), wallOf('B', 20000, inside('C')), wallOf('C', 900)]),
  ],
  [
    'two zones over one another',
    (() => {
      const walls = [
        wallOf('A', 2400, inside('B'), [
          steel('Z1', [900, 500, 1500, 900]),
          steel('Z2', [900, 1480, 1500, 1120]),
        ]),
        wallOf('B', 1500, undefined, [steel('Z1', [0, 500, 900, 900]), steel('Z2', [0, 1480, 900, 1120])]),
      ];
      return ['Z1', 'Z2'].reduce((job, zone) => {
        const result = runRoundCorner(job, 'A', zone, 'right');
        return 'job' in result ? result.job : job;
      }, room(walls));
    })(),
  ],
] as const;

describe.each(rooms)('setting-out sheets of a room, %s', (_, job) => {
  const worked = workOutFully(job, { steps: 2 });
  it('lay no text on another, none out of the frame, none under 2.5 mm', () => {
    for (const i of worked.walls.keys()) {
      expect(textFaults(settingOutSheet(worked, i, measure), measure, true)).toEqual([]);
    }
  });
  it('say on every sheet with a corner which wall is met there', () => {
    worked.walls.forEach((wall, i) => {
      const words = wordsOf(settingOutSheet(worked, i, measure));
      for (const { other } of wallEnds(worked, wall)) expect(words).toContain(`wall ${other}`);
    });
  });
});
