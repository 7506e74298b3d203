import { describe, expect, it } from 'vitest';
import { jobDifferences } from '../../core/job/differences/differences';
import { moveMarking } from '../../core/job/markings';
import { mirrored, turnedBy } from '../../core/job/mirror';
import { readJobObject } from '../../core/job/read';
import type { Zone } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { markedJob } from './marked-job';

const patched = (zone: number, patch: object, ofZone: object = {}) => {
  const job = markedJob();
  const [wall] = job.walls;
  const zones = wall!.zones.map((one, i) =>
    i === zone
      ? { ...one, ...ofZone, markings: one.markings!.map((marking) => ({ ...marking, ...patch })) }
      : one,
  );
  return readJobObject({ ...job, walls: [{ ...wall!, zones }] });
};
const codesOf = (zone: number, patch: object, ofZone?: object) =>
  workOutFully(patched(zone, patch, ofZone).job!, { steps: 1 })
    .findings.filter(({ code }) => code.startsWith('marking'))
    .map(({ code }) => code);

describe('findings of markings', () => {
  it('none where all is well', () => expect(codesOf(0, {})).toEqual([]));

  const hole = [
    [700, 1200],
    [900, 1200],
    [900, 1400],
    [700, 1400],
  ];
  it.each([
    ['off its zone', 1, { x: 300 }, {}, ['marking-outside-zone']],
    ['over a hole', 0, {}, { holes: [hole] }, ['marking-over-object']],
    ['letters too large', 0, { letterHeight: 80 }, {}, ['marking-text-too-large']],
    ['a pulled picture', 2, { height: 500 }, {}, ['marking-stretched']],
    ['a pulled picture that may be', 2, { height: 500, stretched: true }, {}, []],
    ['an odd cell', 0, { kind: 'ruled-grid', spacingAcross: 300, spacingUp: 400 }, {}, ['marking-odd-cell']],
  ] as const)('%s', (_, zone, patch, ofZone, codes) => {
    expect(codesOf(zone, patch, ofZone)).toEqual(codes);
  });
});

describe('markings of a file that cannot be', () => {
  it.each([
    ['no spacing', 0, { kind: 'ruled-grid' }, /has no "spacingAcross"; give one/],
    ['too many lines', 0, { kind: 'ruled-lines', spacingUp: 1, lineWidth: 0.1 }, /more than 500 lines/],
    ['lines without a gap', 1, { lineWidth: 100, side: 50 }, /leave nothing between them/],
    ['columns that do not add up', 0, { columnWidths: [1, 1, 1, 1, 1] }, /add up to 5 mm/],
    ['a picture that is not there', 2, { photo: 'a'.repeat(64) }, /has no such photo/],
  ])('%s', (_, zone, patch, says) => {
    const { job, findings } = patched(zone, patch);
    expect(job).toBeNull();
    expect(findings[0]!.text).toMatch(says);
  });
});

describe('a marking', () => {
  it('moved is told by its zone, and nothing else is', () => {
    const before = markedJob();
    const after = moveMarking(before, 'B', { zone: 'Z2', marking: 'M1' }, 20, 0);
    expect(jobDifferences(before, after).map(({ text, object }) => [text, object])).toEqual([
      ['Marking M1 of zone Z2 moved 20 mm right.', 'Z2'],
    ]);
  });

  it('keeps its place in a zone that is mirrored or turned', () => {
    const job = markedJob();
    const zone = {
      ...job.walls[0]!.zones[1]!,
      markings: [{ ...job.walls[0]!.zones[1]!.markings![0]!, x: 30, y: 50, across: 4 }],
    } as Zone;
    // 1200 wide: 30 from the left, 480 wide, so 690 from the right.
    expect(mirrored(job, zone, { axis: 'x', at: 0 }).markings![0]).toMatchObject({ x: 690, y: 50 });
    // A quarter turn anticlockwise: the foot comes to the right, the left side to the foot.
    const turned = turnedBy(job, zone, { x: 0, y: 0 }, 1).markings![0]!;
    expect(turned).toMatchObject({ x: 1200 - 50 - 960, y: 30, across: 8, up: 4 });
  });
});
