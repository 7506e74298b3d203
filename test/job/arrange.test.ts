import { describe, expect, it } from 'vitest';
import { alignShifts, placeOfPart, spaceShifts, timesThatFit, type Boxed } from '../../core/job/arrange';
import { extentOf } from '../../core/job/extent';
import { mirrored, turnedBy } from '../../core/job/mirror';
import { scaleObjects } from '../../core/job/scale';
import type { Fitting, Opening, Zone } from '../../core/job/schema';
import { copyObjects, moveObjects, removeObjects } from '../../core/job/several';
import { lockedInTheWay } from '../../core/job/locked';
import { emptyJob, newFitting, newOpening, newWall, newZone } from '../../core/job/defaults';

const wall = newWall('A', 'Type store', 6000, 2700);
const job = { ...emptyJob('Bindery'), walls: [wall] };

function box(id: string, x: number, y: number, width: number, height: number): Boxed {
  return { ref: { kind: 'fitting', id }, box: { x, y, width, height } };
}

const row = [box('A', 0, 0, 100, 50), box('B', 150, 10, 200, 80), box('C', 900, 20, 100, 60)];

describe('align', () => {
  it.each([
    ['left', 0, [0, -150, -900], 'dx'],
    ['right', 1000, [900, 650, 0], 'dx'],
    ['upright middle', 50, [0, -200, -900], 'dx'],
    ['foot', 20, [20, 10, 0], 'dy'],
    ['top', 90, [40, 0, 10], 'dy'],
    ['level middle', 50, [25, 0, 0], 'dy'],
  ] as const)('%s', (part, place, expected, along) => {
    const shifts = alignShifts(row, part, place);
    expect(shifts.map((shift) => shift[along])).toEqual(expected);
    expect(shifts.map((shift) => shift[along === 'dx' ? 'dy' : 'dx'])).toEqual([0, 0, 0]);
  });
});

describe('space equally', () => {
  it('makes the gaps equal: 1000 less 400 of objects leaves two gaps of 300', () => {
    expect(spaceShifts(row, 'x', 'gaps').map(({ dx }) => dx)).toEqual([0, 250, 0]);
  });
  it('makes the distances from middle to middle equal: 50, 500, 950', () => {
    expect(spaceShifts(row, 'x', 'middles').map(({ dx }) => dx)).toEqual([0, 250, 0]);
    expect(spaceShifts([row[2]!, row[0]!, row[1]!], 'x', 'middles', 600).map(({ dx }) => dx)).toEqual([
      0, 400, 300,
    ]);
  });
  it('sets a typed gap from the first on, in their order along the wall', () => {
    const shifts = spaceShifts([row[1]!, row[2]!, row[0]!], 'x', 'gaps', 80);
    expect(shifts.map(({ ref, dx }) => [ref.id, dx])).toEqual([
      ['A', 0],
      ['B', 30],
      ['C', -440],
    ]);
  });
  it('has nothing to do for two without a pitch', () => {
    expect(spaceShifts(row.slice(0, 2), 'x', 'gaps')).toEqual([]);
  });
});

describe('mirror', () => {
  it('takes a door to the other end of the wall with its hinges on the other side and its handle as high', () => {
    const door: Opening = { ...newOpening(wall, 'door'), x: 300 };
    const image = mirrored(job, door, { axis: 'x', at: 3000 });
    expect(image).toMatchObject({ x: 4774, y: 0, width: 926, hinge: 'right', handle: 1050 });
    expect(mirrored(job, image, { axis: 'x', at: 3000 })).toEqual(door);
  });
  it('keeps the bulge of an arch', () => {
    const arch = {
      id: 'A1',
      kind: 'arch',
      shape: [[0, 0], [1000, 0], [1000, 1500], { arcTo: [0, 1500], via: [900, 1800] }],
    } as unknown as Opening;
    const image = mirrored(job, arch, { axis: 'x', at: 1000 });
    expect(image.shape).toEqual([
      [2000, 0],
      [1000, 0],
      [1000, 1500],
      { arcTo: [2000, 1500], via: [1100, 1800] },
    ]);
    expect(extentOf(image)).toEqual({ ...extentOf(arch), x: 2000 - extentOf(arch).x - extentOf(arch).width });
  });
  it('takes the panels of a zone along: start, cell and stagger', () => {
    const zone = newZone(job, wall, { x: 1000, y: 500, width: 2000, height: 1000 });
    const layout = { ...zone.layout!, start: { x: 1100, y: 500 }, stagger: 0.25 };
    const image = mirrored<Zone>(job, { ...zone, layout }, { axis: 'x', at: 3000 });
    // The cell from 1100 to 1600 becomes the one from 4400 to 4900.
    expect(image.layout).toMatchObject({ start: { x: 4400, y: 500 }, stagger: 0.75 });
    const named = { ...zone, layout: { ...zone.layout!, start: 'lower-left' as const } };
    expect(mirrored(job, named, { axis: 'x', at: 0 }).layout!.start).toBe('lower-right');
    expect(mirrored(job, named, { axis: 'y', at: 0 }).layout!.start).toBe('upper-left');
  });
});

describe('turn and scale', () => {
  it('four quarters leave a rectangle as it was, one changes width for height', () => {
    const socket: Fitting = { ...newFitting(wall, 'socket'), x: 1000, y: 300 };
    const about = { x: 1073, y: 343 };
    expect(turnedBy(job, socket, about, 1)).toMatchObject({ x: 1030, y: 270, width: 86, height: 146 });
    expect(turnedBy(job, socket, about, 4)).toEqual(socket);
    expect(turnedBy(job, turnedBy(job, socket, about, 1), about, -1)).toEqual(socket);
  });
  it('a circle stays round when its box is scaled by unlike sides', () => {
    const pipe = { ...newFitting(wall, 'pipe'), circle: { x: 100, y: 100, diameter: 40 } };
    const walls = [{ ...wall, fittings: [pipe] }];
    const from = { x: 0, y: 0, width: 200, height: 200 };
    const scaled = scaleObjects({ ...job, walls }, 'A', [{ kind: 'fitting', id: pipe.id }], from, {
      ...from,
      width: 400,
      height: 300,
    });
    expect(scaled.walls[0]!.fittings[0]!.circle).toEqual({ x: 200, y: 150, diameter: 60 });
  });
});

describe('the true box of an arc', () => {
  it('reaches to the crown of a half circle, wherever it is passed: radius 500 about (500, 1500)', () => {
    const arch = {
      id: 'A1',
      kind: 'arch',
      shape: [[0, 0], [1000, 0], [1000, 1500], { arcTo: [0, 1500], via: [1500 - 600, 1800] }],
    } as unknown as Opening;
    expect(extentOf(arch)).toEqual({ x: 0, y: 0, width: 1000, height: 2000 });
  });
});

describe('several at once', () => {
  const sockets = ['K1', 'K2', 'K3'].map((id, i) => ({ ...newFitting(wall, 'socket'), id, x: 500 * i }));
  const walls = [{ ...wall, fittings: sockets }, newWall('B', '', 3000, 2500)];
  const start = { ...job, walls };
  const refs = [
    { kind: 'fitting', id: 'K3' },
    { kind: 'fitting', id: 'K1' },
  ] as const;

  it('moves those and shares all others', () => {
    const moved = moveObjects(start, 'A', refs, 10, -5);
    expect(moved.walls[0]!.fittings.map(({ x, y }) => [x, y])).toEqual([
      [10, 252],
      [500, 257],
      [1010, 252],
    ]);
    expect(moved.walls[0]!.fittings[1]).toBe(sockets[1]);
    expect(moved.walls[0]!.zones).toBe(walls[0]!.zones);
    expect(moved.walls[1]).toBe(walls[1]);
    expect(moveObjects(start, 'A', refs, 0, 0)).toBe(start);
  });
  it('copies under ids that nothing has, unlocked', () => {
    const locked = { ...start, walls: [{ ...walls[0]!, fittings: [{ ...sockets[0]!, locked: true }] }] };
    const { job: after, copies } = copyObjects(locked, 'A', [{ kind: 'fitting', id: 'K1' }], 100, 0);
    expect(copies).toEqual([{ kind: 'fitting', id: 'K2' }]);
    expect(after.walls[0]!.fittings[1]).toMatchObject({ id: 'K2', x: 100 });
    expect(after.walls[0]!.fittings[1]).not.toHaveProperty('locked');
  });
  it('takes them off the wall', () => {
    expect(removeObjects(start, 'A', refs).walls[0]!.fittings.map(({ id }) => id)).toEqual(['K2']);
    expect(removeObjects(start, 'A', [{ kind: 'zone', id: 'K1' }])).toBe(start);
  });
  it('names what is locked and in the way of a change', () => {
    const held = sockets.map((socket) => (socket.id === 'K2' ? { ...socket, locked: true } : socket));
    const before = { ...start, walls: [{ ...walls[0]!, fittings: held }] };
    const all = held.map(({ id }) => ({ kind: 'fitting', id }) as const);
    expect(lockedInTheWay(before, moveObjects(before, 'A', refs, 5, 5))).toBeNull();
    expect(lockedInTheWay(before, moveObjects(before, 'A', all, 5, 5))?.ref.id).toBe('K2');
    expect(lockedInTheWay(before, removeObjects(before, 'A', all))?.ref.id).toBe('K2');
    expect(lockedInTheWay(before, { ...before, walls: [] })).toBeNull();
  });
});

it('repeats as long as it fits', () => {
  const room = (dx: number) => 100 + 50 + dx <= 1000;
  expect(timesThatFit({ dx: 200, dy: 0 }, room, 50)).toBe(4);
  expect(timesThatFit({ dx: 200, dy: 0 }, room, 3)).toBe(3);
  expect(timesThatFit({ dx: 0, dy: 0 }, room, 50)).toBe(0);
});

it('says where a part of a box is', () => {
  expect(placeOfPart({ x: 10, y: 20, width: 30, height: 40 }, 'level middle')).toBe(40);
});
