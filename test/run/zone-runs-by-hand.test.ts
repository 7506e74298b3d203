import { describe, expect, it } from 'vitest';
import { changeWall } from '../../core/job/changes';
import { runRoundCorner } from '../../core/job/run-round-corner';
import type { HandChoice, Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { inside, room, sheet, steel, wallOf } from '../job/room-walls';

/*
 * Worked by hand: zones of 700 mm on each side of an inside corner, of sheets of 400 × 500 mm, so that joints of the
 * second part lie 400 mm apart, counted from those of the first.
 */
const at = (x: number, y: number): Pick<HandChoice, 'at'> => ({ at: { x, y } });

function laid(onFirst: readonly HandChoice[], onSecond: readonly HandChoice[]) {
  const walls = [
    wallOf('A', 2000, inside('B'), [steel('Z1', [1300, 300, 700, 1000], { start: 'best' })]),
    wallOf('B', 2000),
  ];
  const made = runRoundCorner(room(walls, sheet(400, 500)), 'A', 'Z1', 'right', 700);
  if ('fault' in made) throw new Error(made.fault);
  const choose = (job: Job, id: string, byHand: readonly HandChoice[]) =>
    changeWall(job, id, (wall) => ({
      ...wall,
      zones: wall.zones.map((zone) => ({ ...zone, layout: { ...zone.layout!, byHand: [...byHand] } })),
    }));
  const job = choose(choose(made.job, 'A', onFirst), 'B', onSecond);
  const [a, b] = workOutFully(job).walls.map(({ zones }) => zones[0]!.layout!);
  return { a: a!, b: b! };
}

const joint = (x: number): HandChoice => ({
  id: 'H1',
  kind: 'joint-on-line',
  direction: 'upright',
  ...at(x, 500),
});

describe('a zone that runs on round a corner', () => {
  it('carries a line that was chosen on the first part round to the second', () => {
    const { a, b } = laid([joint(1450)], [joint(250)]);
    expect(a.byHand).toMatchObject([{ state: 'met' }]);
    // The lines go on to 1450 + 2 × 400 = 2250, which is 250 past the corner.
    expect(b.byHand).toMatchObject([{ state: 'met' }]);
  });

  it('says that the second part follows the first where its own choices cannot be met', () => {
    const whole: HandChoice = { id: 'H2', kind: 'whole-panel', ...at(100, 500) };
    const band: HandChoice = { id: 'H3', kind: 'no-joints', left: 200, right: 300 };
    const { a, b } = laid([joint(1450)], [joint(333), whole, band]);
    expect(a.byHand).toMatchObject([{ state: 'met' }]);
    expect(b.byHand!.map(({ state }) => state)).toEqual(['unmet', 'unmet', 'unmet']);
    expect(b.findings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['joint-off-line', 'panel-not-whole', 'joints-in-band']),
    );
    for (const { why } of b.byHand!) expect(why).toContain('come round the corner from the wall before');
  });

  it('splits and joins on either part without moving the lines', () => {
    const plain = laid([joint(1450)], []);
    const split: HandChoice = { id: 'H2', kind: 'split', direction: 'upright', ...at(350, 500) };
    const { b } = laid([joint(1450)], [split]);
    expect(b.start).toEqual(plain.b.start);
    expect(b.byHand).toMatchObject([{ state: 'met' }]);
    expect(b.panels).toHaveLength(plain.b.panels.length + 1);
  });
});
