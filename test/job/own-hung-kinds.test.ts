import { describe, expect, it } from 'vitest';
import { chooseAlternative, copyAlternative } from '../../core/job/alternatives';
import { emptyJob, newWall } from '../../core/job/defaults';
import { addHung, changeHung } from '../../core/job/hung';
import { newHung } from '../../core/job/hung-kinds';
import type { HungItem, HungKind } from '../../core/job/hung-schema';
import {
  bringHungKinds,
  changeHungKind,
  faultOfHungKindName,
  giveHungFigures,
  hungOfKind,
  kindOfItem,
  removeHungKind,
  sizedFigures,
} from '../../core/job/own-hung-kinds';
import { readHungKinds } from '../../core/job/read-kinds';
import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { setHungKind, putInHung } from '../../web/job/changes/hung';
import { addHungKind, takeOutHungKind } from '../../web/job/changes/hung-kinds';

const tray: HungKind = {
  name: 'Ink tray',
  item: {
    width: 300,
    height: 60,
    depth: 80,
    weight: 0.4,
    load: { weight: 1, reach: 80 },
    magnets: {
      magnet: 'N42-30x10',
      places: [
        [40, 40],
        [260, 40],
      ],
    },
    restsOnWall: true,
    use: 'handled',
  },
};
const wall = newWall('A', '', 4000, 2600);
const bare: Job = { ...emptyJob('Studio'), walls: [wall], hungKinds: [tray] };
const item = newHung(bare, wall, 'ink  TRAY', { x: 500, y: 900 });
const job = addHung(bare, 'A', { ...item, kind: 'Ink tray' });
const onWall = (of: Job) => of.walls[0]!.hung!;

describe('own kinds of hung item', () => {
  it('give a new item their figures, also where the job has them not yet', () => {
    expect(item).toEqual({ id: 'H1', kind: 'ink  TRAY', x: 500, y: 900, ...tray.item });
    const other = { ...emptyJob('Next'), walls: [wall] };
    const fresh = newHung(other, wall, 'Ink tray', { x: 0, y: 0 }, [tray]);
    const after = putInHung(wall, fresh, [tray]).change(other);
    expect(after.hungKinds).toEqual([tray]);
    expect(onWall(after)[0]).toMatchObject(tray.item);
    const print = newHung(other, wall, 'print', { x: 0, y: 0 });
    const changed = setHungKind(other, wall, print, 'Ink tray', [tray]).change(addHung(other, 'A', print));
    expect(changed.hungKinds).toEqual([tray]);
    expect(onWall(changed)[0]).toMatchObject({ kind: 'Ink tray', width: 420 });
  });

  it('are made of an item without its place, name, tests and fixing points', () => {
    const tested: HungItem = {
      ...onWall(job)[0]!,
      name: 'Blacks',
      proof: 3,
      condition: 'dusty',
      friction: 0.3,
      stop: true,
      fixingPoints: ['F1'],
      pieces: 3,
      locked: true,
    };
    expect(kindOfItem('Tray 2', tested, [tray])).toEqual({ ...tray, name: 'Tray 2' });
    expect(kindOfItem('Man', { ...tested, marking: { zone: 'Z1', marking: 'M1' } }, []).piece).toBe(true);
    const print = newHung(bare, wall, 'print', { x: 0, y: 0 });
    expect(kindOfItem('Proof', { ...print, use: undefined }, []).item.use).toBe('light-at-reach');
    const made = addHungKind(' Tray 2 ', kindOfItem('', tested, [tray])).change(bare);
    expect(made.hungKinds!.map(({ name }) => name)).toEqual(['Ink tray', 'Tray 2']);
    expect(readJobObject(made).findings.filter(({ level }) => level === 'error')).toEqual([]);
  });

  it.each([
    ['', 'Give the kind a name.'],
    ['Tool-Rack', '“tool rack” is a usual word'],
    ['prints', '“print” is a usual word'],
    ['ink TRAY', 'There is a kind “Ink tray” already'],
    ['<b>tray</b>', 'Begin the name with a letter'],
    ['x'.repeat(41), 'The name has 41 characters; 40 is the most.'],
  ])('cannot be called “%s”', (name, words) => {
    expect(faultOfHungKindName(name, [tray])).toContain(words);
  });

  it('in a file with a name that means something already are refused with their place', () => {
    const { job: read, findings } = readJobObject({ ...bare, hungKinds: [tray, { ...tray, name: 'print' }] });
    expect(read).toBeNull();
    expect(findings[0]!.text).toContain('“print” is a usual word here already');
  });

  it('take their items along under another name, those of other alternatives, too', () => {
    const two = copyAlternative(job, 'V1', 'Second');
    const renamed = changeHungKind(two, 'Ink tray', { name: 'Ink shelf' });
    expect(onWall(renamed)[0]!.kind).toBe('Ink shelf');
    expect(onWall(chooseAlternative(renamed, 'V2'))[0]!.kind).toBe('Ink shelf');
    expect(hungOfKind(renamed, 'ink shelf').map(({ isElsewhere }) => isElsewhere)).toEqual([false, true]);
    expect(onWall(changeHungKind(job, 'Ink tray', { item: { ...tray.item, weight: 2 } }))[0]!.weight).toBe(
      0.4,
    );
  });

  it('give their figures to what hangs, about its middle; what was tested there no longer counts, what is locked stays', () => {
    const wide = changeHungKind(job, 'Ink tray', { item: { ...tray.item, width: 400, load: undefined } });
    const tested = changeHung(wide, 'A', 'H1', { proof: 2, name: 'Blacks' });
    const given = giveHungFigures(tested, 'Ink tray');
    expect(onWall(given)[0]).toMatchObject({ x: 450, y: 900, width: 400, name: 'Blacks', kind: 'Ink tray' });
    expect(onWall(given)[0]).not.toHaveProperty('proof');
    expect(onWall(given)[0]).not.toHaveProperty('load');
    expect(giveHungFigures(given, 'Ink tray')).toBe(given);
    const locked = changeHung(wide, 'A', 'H1', { locked: true });
    expect(giveHungFigures(locked, 'Ink tray')).toBe(locked);
  });

  it('are not deleted while something is of them, and then leave no trace', () => {
    const two = copyAlternative(job, 'V1', 'Second');
    expect(takeOutHungKind(two, 'Ink tray')).toEqual({
      fault:
        '“Ink tray” is the kind of H1 on wall A and H1 on wall A in another alternative; give them another kind first.',
    });
    expect(removeHungKind(bare, 'ink tray')).not.toHaveProperty('hungKinds');
  });

  it('are brought only where a job has none of that name', () => {
    expect(bringHungKinds(job, [{ ...tray, name: 'INK TRAY' }])).toBe(job);
    expect(bringHungKinds(emptyJob(), [tray, { ...tray }]).hungKinds).toEqual([tray]);
  });

  it('that lie on a device are read one by one', () => {
    const kept = JSON.stringify([tray, { ...tray, name: 'Shelf' }, 7, { name: 'Nothing' }, tray]);
    expect(readHungKinds(kept)).toEqual([tray]);
    expect(readHungKinds('{')).toEqual([]);
  });

  it('in another size have their magnets in proportion', () => {
    expect(sizedFigures(tray.item, { width: 600 }).magnets!.places).toEqual([
      [80, 40],
      [520, 40],
    ]);
  });
});
