import { describe, expect, it } from 'vitest';
import { addFitting, addZone } from '../../core/job/changes';
import { jobCautions } from '../../core/job/cautions';
import { defaultFitting, emptyJob, newFitting, newWall, newZone } from '../../core/job/defaults';
import { jobDifferences } from '../../core/job/differences/differences';
import {
  bringKinds,
  changeKind,
  faultOfKindName,
  fittingsOfKind,
  removeKind,
  standsOut,
} from '../../core/job/fitting-kinds';
import { giveFigures, giveKind } from '../../core/job/give-kind';
import { writeObjects } from '../../core/job/objects-text';
import { readKinds } from '../../core/job/read-kinds';
import { readObjects } from '../../core/job/read-objects-text';
import type { Job, OwnKind } from '../../core/job/schema';
import { pasteObjects } from '../../web/job/changes/paste';
import { setKind, takeOutKind } from '../../web/job/changes/kinds';

const rail: OwnKind = { name: 'Pin rail', width: 900, height: 60, floor: 1500, clearance: 10, depth: 25 };
const hook: OwnKind = { name: 'Hook 60', round: true, width: 60, floor: 1800, clearance: 4 };
const wall = newWall('A', '', 4000, 2600);
const bare: Job = { ...emptyJob('Studio'), walls: [wall], fittingKinds: [rail, hook] };
const own = bare.fittingKinds!;
const job = addFitting(bare, 'A', newFitting(wall, 'Pin rail', { x: 500 }, own));
const onWall = (of: Job) => of.walls[0]!.fittings;
const texts = (before: Job, after: Job) => jobDifferences(before, after).map(({ text }) => text);

describe('own kinds of fitting', () => {
  it('give a new fitting their figures, round ones by their middle', () => {
    expect(onWall(job)[0]).toEqual({
      id: 'F1',
      kind: 'Pin rail',
      x: 500,
      y: 1500,
      width: 900,
      height: 60,
      clearance: 10,
    });
    const round = newFitting(wall, 'hook  60', { x: 0 }, own);
    expect(round).toMatchObject({ circle: { x: 30, y: 1800, diameter: 60 }, clearance: 4 });
    expect(defaultFitting('Ladder', own)).toBe(defaultFitting('free'));
  });

  it.each([
    ['', 'Give the kind a name.'],
    ['Socket', '“socket” is a usual word'],
    ['beam-ends', '“beam end” is a usual word'],
    ['zone', '“zone” is a usual word'],
    ['pin  RAIL', 'There is a kind “Pin rail” already'],
    ['3 hooks', 'Begin the name with a letter'],
    ['Rail; wide', 'Begin the name with a letter'],
    ['x'.repeat(41), 'The name has 41 characters; 40 is the most.'],
  ])('cannot be called “%s”', (name, words) => {
    expect(faultOfKindName(name, own)).toContain(words);
  });

  it.each(['Rail', 'Hook 60', 'Garderobenhaken (groß)', 'Étagère'])('can be called “%s”', (name) => {
    expect(faultOfKindName(name, [rail])).toBeNull();
  });

  it('take their fittings along under another name, and keep what is on the wall as it is', () => {
    const renamed = changeKind(job, 'Pin rail', { name: 'Cork rail', width: 1200 });
    expect(fittingsOfKind(renamed, 'Cork rail').map(({ fitting }) => fitting.width)).toEqual([900]);
    expect(fittingsOfKind(renamed, 'Pin rail')).toEqual([]);
    expect(onWall(giveFigures(renamed, 'Cork rail'))[0]).toMatchObject({ x: 350, y: 1500, width: 1200 });
    expect(changeKind(job, 'Pin rail', { depth: undefined }).fittingKinds![0]).not.toHaveProperty('depth');
  });

  it('are not deleted while something is of them, and then leave no trace', () => {
    expect(takeOutKind(job, 'Pin rail')).toEqual({
      fault: '“Pin rail” is the kind of F1 on wall A; give it another kind first.',
    });
    expect(removeKind(removeKind(bare, 'Pin rail'), 'Hook 60')).not.toHaveProperty('fittingKinds');
  });

  it('are brought only where a job has none of that name', () => {
    expect(bringKinds(job, [{ ...rail, name: 'PIN RAIL', width: 1 }])).toBe(job);
    expect(bringKinds(emptyJob(), [rail, { ...rail, width: 5 }]).fittingKinds).toEqual([rail]);
  });

  it('that lie on a device are read one by one', () => {
    const kept = JSON.stringify([rail, { ...rail, name: 'Door' }, 7, { ...hook, width: 0 }, hook]);
    expect(readKinds(kept)).toEqual([rail, hook]);
    expect(readKinds('{')).toEqual([]);
    expect(readKinds(undefined)).toEqual([]);
  });
});

describe('a fitting given another kind', () => {
  const [fitting] = onWall(job);

  it('takes its figures about its middle as far as they were the usual ones', () => {
    expect(giveKind(fitting!, 'Hook 60', own)).toEqual({
      id: 'F1',
      kind: 'Hook 60',
      circle: { x: 950, y: 1530, diameter: 60 },
      clearance: 4,
    });
  });

  it('keeps what was measured, and what is locked', () => {
    const measured = { ...fitting!, width: 880, clearance: 12 };
    expect(giveKind(measured, 'socket', own)).toEqual({ ...measured, kind: 'socket' });
    expect(giveKind({ ...fitting!, locked: true }, 'socket', own)).toMatchObject({
      width: 900,
      clearance: 5,
    });
  });

  it('brings a kind that the job has not', () => {
    const { name, change } = setKind(wall, { kind: 'fitting', id: 'F1' }, 'Coat bar', [
      { ...rail, name: 'Coat bar' },
    ]);
    expect(name).toContain('to Coat bar');
    expect(change(job).fittingKinds!.map((kind) => kind.name)).toEqual(['Pin rail', 'Hook 60', 'Coat bar']);
  });
});

describe('where the kind matters', () => {
  it('an electric one in steel has its caution, another has none', () => {
    const zone = newZone(job, wall, { x: 400, y: 1000, width: 2000, height: 1000 });
    const codes = (of: Job) => jobCautions(of).map(({ code }) => code);
    const inSteel = addZone(job, 'A', zone);
    expect(codes(inSteel)).not.toContain('electrics-in-steel');
    expect(codes(changeKind(inSteel, 'Pin rail', { electric: true }))).toContain('electrics-in-steel');
  });

  it('one with a depth stands out of the wall', () => {
    expect([standsOut('Pin rail', own), standsOut('Hook 60', own), standsOut('pipe', own)]).toEqual([
      true,
      false,
      true,
    ]);
  });

  it('differences say what became of it', () => {
    expect(texts(emptyJob(), { ...emptyJob(), fittingKinds: own })).toEqual([
      'Kind of fitting “Pin rail” is new: 900 × 60 mm.',
      'Kind of fitting “Hook 60” is new: Ø 60 mm.',
    ]);
    expect(texts(bare, changeKind(bare, 'Pin rail', { width: 950, electric: true }))).toEqual([
      'Kind of fitting “Pin rail”: width 950 mm instead of 900 mm.',
      'Kind of fitting “Pin rail”: electric yes instead of no.',
    ]);
    expect(texts(bare, changeKind(bare, 'Pin rail', { name: 'Cork rail' }))).toEqual([
      'Kind of fitting “Cork rail” was called “Pin rail” before.',
    ]);
  });

  it('a copied fitting brings its kind into another job', () => {
    const text = writeObjects(job, job.walls[0]!, [{ kind: 'fitting', id: 'F1' }]);
    expect(text).toContain('- fitting F1: kind "Pin rail"; left 500;');
    expect(text).toContain('- kind "Pin rail": width 900; height 60; floor 1500; clearance 10; depth 25');
    expect(text).not.toContain('Hook');
    const { objects, kinds, faults } = readObjects(text);
    expect(faults).toEqual([]);
    expect(kinds).toEqual([rail]);
    const other = { ...emptyJob('Bindery'), walls: [wall] };
    const { change } = pasteObjects(other, wall, objects, kinds);
    expect(change(other).fittingKinds).toEqual([rail]);
    const theirs = { ...other, fittingKinds: [{ ...rail, width: 700 }] };
    const paste = pasteObjects(theirs, wall, objects, kinds);
    expect(paste.notes).toEqual(['The kind “Pin rail” keeps the figures that it has in this job.']);
    expect(paste.change(theirs).fittingKinds).toEqual(theirs.fittingKinds);
  });

  it.each([
    ['- kind "Door": width 5', '“door” is a usual word'],
    ['- kind "Rail": width 0', 'give at least 0.01 mm'],
    ['- kind "Rail": width 5; colour red', '“colour red” is nothing that a kind has'],
  ])('a kind that cannot be one is a fault of its line: %s', (entry, words) => {
    const { kinds, faults } = readObjects(`Lodeplan objects: 1\n${entry}`);
    expect(kinds).toEqual([]);
    expect(faults).toEqual([{ line: 2, text: expect.stringContaining(words) as unknown }]);
  });
});
