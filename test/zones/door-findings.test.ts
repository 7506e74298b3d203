import { describe, expect, it } from 'vitest';
import { emptyJob } from '../../core/job/defaults';
import { demoJob } from '../../core/job/demo';
import { readJob } from '../../core/job/read';
import type { Corner, Fitting, Job, Opening, Wall, Zone } from '../../core/job/schema';
import { openLeafOf } from '../../core/survey/open-leaf';
import { surveyWall } from '../../core/survey/survey';
import { doorFindings } from '../../core/zones/door-findings';
import { zoneAreas } from '../../core/zones/zone-areas';
import { wallOf } from '../survey/random-walls';

/** Hinged on its right at 1900, so that its leaf lies from 1900 to 2800 on the wall. */
const door: Opening = { id: 'D1', kind: 'door', x: 1000, y: 0, width: 900, height: 2000, clearance: 0, hinge: 'right', swing: 'towards', handle: 1050 }; // prettier-ignore

function zone(left: number, bottom: number, right: number, top: number): Zone {
  return { id: 'Z1', name: 'Proofs', buildUp: 'writable', shape: [[left, bottom], [right, bottom], [right, top], [left, top]], holes: [] }; // prettier-ignore
}

function fitting(kind: string, x: number, y: number, size = 80): Fitting {
  return { id: 'F1', kind, x, y, width: size, height: size, clearance: 5 };
}

const box = (width: number): Wall['outline'] => [[0, 0], [width, 0], [width, 2600], [0, 2600]]; // prettier-ignore

function jobOf(parts: Partial<Wall>, ...others: Wall[]): Job {
  return { ...emptyJob(), walls: [wallOf({ outline: box(6000), openings: [door], ...parts }), ...others] };
}

function textsOf(job: Job): string[] {
  const survey = surveyWall(job.walls[0]!);
  return doorFindings(job, survey, zoneAreas(survey)).map(({ text }) => text);
}

describe('doorFindings', () => {
  it('names, in one sentence, all that the leaf covers and the handle strikes', () => {
    const texts = textsOf(jobOf({ zones: [zone(2000, 700, 4000, 1900)], fittings: [fitting('light', 2500, 1950)] })); // prettier-ignore
    expect(texts).toEqual([
      'Door D1 on wall A can turn back against the wall: the open leaf covers zone Z1 (Proofs) and light F1, and ' +
        'its handle would strike zone Z1 (Proofs); put a door stop in, hang the door on its other side, or keep that ' +
        'part of the wall clear.',
    ]);
  });

  it.each([
    ['a zone that begins where the leaf ends', zone(2800, 700, 4000, 1900), 0],
    ['a zone half a centimetre under the leaf', zone(2795, 700, 4000, 1900), 1],
    ['a zone above the leaf', zone(2000, 2000, 4000, 2500), 0],
    ['a zone on the side of the latch', zone(0, 700, 1000, 1900), 0],
  ])('holds the leaf against %s', (_, one, count) => {
    expect(textsOf(jobOf({ zones: [one] }))).toHaveLength(count);
  });

  it('leaves flush plates to the handle, which touches 55 to 65 mm from the edge of the leaf', () => {
    const says = (kind: string, x: number, y = 1010) => textsOf(jobOf({ fittings: [fitting(kind, x, y)] }));
    expect(says('socket', 2000)).toEqual([]);
    expect(says('radiator', 2000)).toHaveLength(1);
    expect(says('socket', 2700)[0]).toContain('its handle would strike socket F1');
    expect(says('socket', 2700)[0]).not.toContain('covers');
    // Ends at 2735, where the handle's reach begins.
    expect(says('switch', 2655)).toEqual([]);
    expect(says('switch', 2660)).toHaveLength(1);
    expect(says('switch', 2745)).toEqual([]);
    expect(says('switch', 2700, 1060)).toEqual([]);
  });

  it.each([
    ['opens away', { swing: 'away' as const }],
    ['has a stop', { stop: true }],
    ['is no door', { kind: 'arch' }],
    ['is hung on the other side', { hinge: 'left' as const }],
  ])('says nothing of what %s', (_, parts) => {
    const job = jobOf({ openings: [{ ...door, ...parts }], zones: [zone(2000, 700, 4000, 1900)] });
    expect(textsOf(job)).toEqual([]);
  });

  it('warns for doors of which neither side nor way is given: the screen shows left and towards the room', () => {
    const { hinge: _hinge, swing: _swing, handle: _handle, ...bare } = door;
    const texts = textsOf(jobOf({ openings: [bare], zones: [zone(0, 700, 1000, 1900)] }));
    expect(texts).toHaveLength(1);
    expect(texts[0]).toContain('strike');
  });

  it('has nothing to say of the demo, whose door has only a free end of the wall beside its hinges', () => {
    const job = demoJob();
    expect(textsOf(job)).toEqual([]);
    expect(openLeafOf(job, job.walls[0]!, job.walls[0]!.openings[0]!)!.handle).toBeNull();
  });
});

describe('openLeafOf', () => {
  const leafOf = (width: number, corner?: Corner) => {
    const job = jobOf({ outline: box(width), corner }, wallOf({ id: 'B' }));
    return openLeafOf(job, job.walls[0]!, door);
  };

  it('covers the wall from the hinges by the width of the leaf, in hundredths', () => {
    expect(leafOf(6000)).toEqual({
      box: { left: 190000, right: 280000, bottom: 0, top: 200000 },
      handle: { left: 273500, right: 274500, bottom: 104000, top: 106000 },
    });
  });

  it('covers no more than there is of the wall, and then has no wall behind its handle', () => {
    expect(leafOf(2300)).toMatchObject({ box: { left: 190000, right: 230000 }, handle: null });
    expect(leafOf(2300, { to: 'B', kind: 'external' })).toBeDefined();
    expect(leafOf(1900)).toBeUndefined();
  });

  it('stands off the wall where the next one stops it in an internal corner', () => {
    expect(leafOf(2799, { to: 'B', kind: 'internal' })).toBeUndefined();
    expect(leafOf(2800, { to: 'B', kind: 'internal' })).toBeDefined();
    expect(leafOf(2799, { to: 'B', kind: 'internal', angle: 135 })).toBeUndefined();
    // At 60° the next wall stands 900 square from the hinges where 900 / sin 60° = 1039.2 of this wall is left.
    expect(leafOf(1900 + 1039, { to: 'B', kind: 'internal', angle: 60 })).toBeUndefined();
    expect(leafOf(1900 + 1040, { to: 'B', kind: 'internal', angle: 60 })).toBeDefined();
  });

  it('knows the corner at the left end, which the wall before it tells', () => {
    const left: Opening = { ...door, x: 500, hinge: 'left' };
    const before = wallOf({ id: 'B', corner: { to: 'A', kind: 'internal' } });
    const alone = jobOf({ openings: [left] });
    expect(openLeafOf(alone, alone.walls[0]!, left)).toBeDefined();
    const met = jobOf({ openings: [left] }, before);
    expect(openLeafOf(met, met.walls[0]!, left)).toBeUndefined();
  });

  it('reads a stop from the file and refuses what is none', () => {
    const file = (stop: unknown) => {
      const job = demoJob();
      const openings = job.walls[0]!.openings.map((one) => ({ ...one, stop }));
      return readJob(
        JSON.stringify({ ...job, walls: [{ ...job.walls[0]!, openings }, ...job.walls.slice(1)] }),
      );
    };
    const read = file(true);
    expect('job' in read && read.job?.walls[0]!.openings[0]!.stop).toBe(true);
    expect(JSON.stringify(file('yes'))).toContain('"level":"error"');
  });
});
