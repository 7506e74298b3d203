import { describe, expect, it } from 'vitest';
import {
  addEmptyAlternative,
  chooseAlternative,
  copyAlternative,
  alternativesOf,
} from '../../core/job/alternatives';
import { copyWall, fitObject, moveObject, removeObject, removeWall } from '../../core/job/changes';
import { demoJob } from '../../core/job/demo';
import * as hung from '../../core/job/hung';
import { newHung, readyHungKinds, useOf } from '../../core/job/hung-kinds';
import type { HungItem } from '../../core/job/hung-schema';
import { mirrored, turnedBy } from '../../core/job/mirror';
import { writeObjects } from '../../core/job/objects-text';
import { readJobObject } from '../../core/job/read';
import { readObjects } from '../../core/job/read-objects-text';
import type { Job } from '../../core/job/schema';
import { findObject, findWall } from '../../core/job/shape';
import { readyMagnets } from '../../core/holding/ready-magnets';

const bare = {
  ...demoJob(),
  walls: demoJob().walls.map(({ hung: _hung, peopleBelow: _below, ...wall }) => ({
    ...wall,
    zones: wall.zones.map(({ pullTests: _, ...zone }) => zone),
  })),
} as Job;
const item: HungItem = {
  id: 'H1',
  kind: 'print',
  x: 1000,
  y: 1200,
  width: 400,
  height: 600,
  depth: 1,
  weight: 0.2,
  magnets: {
    magnet: 'N42-20x5',
    places: [
      [20, 580],
      [380, 580],
    ],
  },
};
const ref = { kind: 'hung', id: 'H1' } as const;
const job = hung.addHung(bare, 'A', item);
const itemOf = (of: Job) => findObject(findWall(of, 'A')!, ref) as HungItem | undefined;

describe('a new item of every ready kind', () => {
  it.each(readyHungKinds)(
    '%s is read back as it was, holds on to a magnet there is, and has it within its edges',
    (kind) => {
      const made = newHung(bare, findWall(bare, 'A')!, kind, { x: 100, y: 100 });
      const read = readJobObject(hung.addHung(bare, 'A', made));
      expect(read.findings.filter(({ level }) => level === 'error')).toEqual([]);
      expect(itemOf(read.job!)).toEqual(made);
      expect(readyMagnets.map(({ id }) => id)).toContain(made.magnets!.magnet);
      const { diameter } = readyMagnets.find(({ id }) => id === made.magnets!.magnet)!;
      for (const [x, y] of made.magnets!.places) {
        expect(Math.min(x, made.width - x, y, made.height - y)).toBeGreaterThanOrEqual(diameter / 2 - 0.01);
      }
    },
  );

  it('counts as what could hurt where nobody knows what it is', () => {
    expect(useOf({ ...item, kind: 'anvil' })).toBe('could-hurt');
    expect(
      useOf({ ...item, kind: 'anvil' }, [
        { name: 'anvil', item: { width: 1, height: 1, depth: 0, use: 'handled' } },
      ]),
    ).toBe('handled');
  });
});

describe('what a hand does to an item', () => {
  it('moving takes its magnets along, as they are counted from its corner', () => {
    const moved = itemOf(moveObject(job, 'A', ref, 10, -20))!;
    expect([moved.x, moved.y]).toEqual([1010, 1180]);
    expect(moved.magnets).toEqual(item.magnets);
  });

  it('what it bore in a test at its place does not go along', () => {
    const tested = hung.changeHung(job, 'A', 'H1', { proof: 3 });
    expect(itemOf(tested)!.proof).toBe(3);
    expect('proof' in itemOf(moveObject(tested, 'A', ref, 1, 0))!).toBe(false);
    expect(
      'proof' in itemOf(fitObject(tested, 'A', ref, { x: 1000, y: 1200, width: 300, height: 600 }))!,
    ).toBe(false);
  });

  it('resizing keeps each magnet where it was in proportion', () => {
    const to = { x: 1000, y: 1200, width: 200, height: 300 };
    expect(itemOf(fitObject(job, 'A', ref, to))!.magnets!.places).toEqual([
      [10, 290],
      [190, 290],
    ]);
  });

  it('a mirror image has its magnets mirrored, four quarter turns give it back', () => {
    const off = { ...item, magnets: { ...item.magnets!, places: [[20, 580]] as [number, number][] } };
    expect(mirrored(job, off, { axis: 'x', at: 1200 }).magnets!.places).toEqual([[380, 580]]);
    expect(mirrored(job, off, { axis: 'y', at: 0 }).magnets!.places).toEqual([[20, 20]]);
    const turned = turnedBy(job, off, { x: 1200, y: 1500 }, 1);
    expect([turned.width, turned.height]).toEqual([600, 400]);
    // 20 from the left, 580 up: 20 below the top, which is the left edge after the turn.
    expect(turned.magnets!.places).toEqual([[20, 20]]);
    expect(turnedBy(job, off, { x: 1200, y: 1500 }, 4)).toEqual(off);
  });

  it('removing and adding again gives the wall back', () => {
    expect(itemOf(removeObject(job, 'A', ref))).toBeUndefined();
  });

  it('goes through the clipboard whole', () => {
    const full: HungItem = {
      ...item,
      load: { weight: 1, reach: 20 },
      marking: { zone: 'Z1', marking: 'M1' },
      stop: true,
      locked: true,
    };
    const text = writeObjects(hung.addHung(bare, 'A', full), findWall(hung.addHung(bare, 'A', full), 'A')!, [
      ref,
    ]);
    const read = readObjects(text);
    expect('objects' in read && read.objects[0]!.object).toEqual(full);
  });
});

describe('alternatives', () => {
  it('have hung items of their own, which come onto the walls with their zones', () => {
    const copied = copyAlternative(job, alternativesOf(job)[0]!.id, 'Film');
    const empty = addEmptyAlternative(copied, 'Bare');
    const [, film, none] = alternativesOf(empty);
    const bareWalls = chooseAlternative(empty, none!.id);
    expect(itemOf(bareWalls)).toBeUndefined();
    expect(itemOf(chooseAlternative(bareWalls, film!.id))).toEqual(item);
    expect(itemOf(chooseAlternative(bareWalls, alternativesOf(empty)[0]!.id))).toEqual(item);
  });

  it('lose or copy the items of a wall with the wall', () => {
    const two = addEmptyAlternative(job, 'Bare');
    const other = chooseAlternative(two, alternativesOf(two)[1]!.id);
    const copy = copyWall(other, 'A', { id: 'X', name: 'Copy' });
    expect(copy.alternatives![0]!.hung).toEqual({ A: [item], X: [item] });
    expect(removeWall(copy, 'A').alternatives![0]!.hung).toEqual({ X: [item] });
  });

  it('ids of their items are their own', () => {
    const two = addEmptyAlternative(job, 'Bare');
    const twice = { ...two, alternatives: [{ ...two.alternatives![0]!, hung: { A: [item, item] } }] };
    expect(readJobObject(twice).findings[0]!.text).toMatch(/alternatives\[0\]\.hung\.A\[1\].*another id/);
  });
});

describe('magnets, tests, kinds and people below', () => {
  const magnet = { ...readyMagnets[0]!, price: 2 };

  it('a magnet takes the place of the one of its id; the last one takes the list away', () => {
    const put = hung.putMagnet(hung.putMagnet(bare, magnet), { ...magnet, price: 3 });
    expect(put.magnets).toEqual([{ ...magnet, price: 3 }]);
    expect(hung.removeMagnet(put, magnet.id)).toEqual(bare);
    expect(hung.removeMagnet(bare, 'gone')).toBe(bare);
  });

  it('no tests are no list, nobody below is a list of nobody', () => {
    const tests = [{ id: 'T1', magnet: magnet.id, between: 0, readings: [10] }];
    const tested = hung.setPullTests(bare, 'A', 'Z1', tests);
    expect(findWall(tested, 'A')!.zones[0]!.pullTests).toEqual(tests);
    expect(hung.setPullTests(tested, 'A', 'Z1', [])).toEqual(bare);
    const nobody = hung.setPeopleBelow(bare, 'A', []);
    expect(findWall(nobody, 'A')!.peopleBelow).toEqual([]);
    expect('peopleBelow' in findWall(hung.setPeopleBelow(nobody, 'A', undefined), 'A')!).toBe(false);
  });
});
