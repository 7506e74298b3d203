import { describe, expect, it } from 'vitest';
import { emptyJob, newFitting, newOpening, newWall, newZone } from '../../../core/job/defaults';
import type { Job } from '../../../core/job/schema';
import { setBox, setDiameter, setField, setMiddle, takeOut } from '../../../web/job/changes/fields';
import { setDetail } from '../../../web/job/changes/job-details';
import { putOnRack } from '../../../web/job/changes/rack';
import { setCutting, setStock, stockInUse, takeOutStock } from '../../../web/job/changes/stock';
import { copyWall, reorderWall, setDelivery, setRim } from '../../../web/job/changes/walls';
import { moveZoneInList, setBuildUp, setLayout } from '../../../web/job/changes/zones';

function studio(): Job {
  const empty = emptyJob('Studio');
  const bare = newWall('A', 'North', 4200, 2600);
  const wall = {
    ...bare,
    openings: [newOpening(bare, 'door', { x: 300 })],
    fittings: [newFitting(bare, 'socket', { x: 1500 }), newFitting(bare, 'pipe', { x: 3000 })],
  };
  const box = { x: 1500, y: 900, width: 2000, height: 1000 };
  const zones = [newZone(empty, wall, box)];
  zones.push(newZone(empty, { ...wall, zones }, box, 'writable'));
  return { ...empty, walls: [{ ...wall, zones }] };
}

describe('changes say what they do, as it stands after "Undo"', () => {
  const job = studio();
  const wall = job.walls[0]!;
  const socket = { kind: 'fitting', id: 'K1' } as const;
  const door = { kind: 'opening', id: 'D1' } as const;
  const pipe = { kind: 'fitting', id: 'P1' } as const;
  const zone = { kind: 'zone', id: 'Z1' } as const;

  it.each([
    [setBox(wall, socket, { x: 1600 }), 'Move socket K1'],
    [setBox(wall, zone, { width: 2500 }), 'Make zone Z1 wider'],
    [setBox(wall, zone, { height: 500 }), 'Make zone Z1 lower'],
    [setMiddle(wall, pipe, { x: 3100 }), 'Move pipe P1'],
    [setDiameter(wall, pipe, 60), 'Resize pipe P1'],
    [setField(wall, door, { hinge: 'right' }), 'Change hinge side of door D1'],
    [setField(wall, socket, { clearance: 10 }), 'Set clearance of socket K1'],
    [takeOut(wall, socket), 'Delete socket K1'],
    [setRim('A', 'floor', 80), 'Set rim of wall A'],
    [setDelivery('A', '1'), 'Set delivery of wall A'],
    [setBuildUp('A', 'Z1', 'chalk'), 'Set build-up of zone Z1'],
    [setLayout('A', 'Z1', { jointGap: 2 }), 'Set joint gap of zone Z1'],
    [moveZoneInList('A', 'Z1', 1), 'List zone Z1 later'],
    [setStock('S1', { spares: 2 }), 'Set spares of stock sheet S1'],
    [setCutting({ method: 'free' }), 'Set way of cutting'],
    [putOnRack({ id: 'R1', stock: 'S1', width: 200, height: 500 }), 'Put R1 on the rack'],
    [setDetail('client', 'A school'), 'Set client'],
  ])('%#', ({ name, change }, expected) => {
    expect(name).toBe(expected);
    expect(change(job)).not.toBe(job);
  });
});

describe('a typed figure', () => {
  it('moves the middle of a pipe and keeps its diameter', () => {
    const job = studio();
    const after = setMiddle(job.walls[0]!, { kind: 'fitting', id: 'P1' }, { y: 500 }).change(job);
    const before = job.walls[0]!.fittings[1]!.circle!;
    expect(after.walls[0]!.fittings[1]!.circle).toEqual({ ...before, y: 500 });
  });

  it('changes one side of a box and leaves the others', () => {
    const job = studio();
    const after = setBox(job.walls[0]!, { kind: 'fitting', id: 'K1' }, { width: 80 }).change(job);
    const { x, y, height } = job.walls[0]!.fittings[0]!;
    expect(after.walls[0]!.fittings[0]).toMatchObject({ x, y, height, width: 80 });
  });
});

describe('the build-up of a zone', () => {
  it('brings a layout when it becomes steel and takes it away when it no longer is', () => {
    const job = studio();
    const steel = setBuildUp('A', 'Z2', 'steel-panel-chalk').change(job);
    expect(steel.walls[0]!.zones[1]!.layout?.stock).toBe('S1');
    const coat = setBuildUp('A', 'Z1', 'magnetic-coating').change(job);
    expect(coat.walls[0]!.zones[0]).not.toHaveProperty('layout');
  });

  it('keeps the layout from one steel build-up to another', () => {
    const job = setLayout('A', 'Z1', { stagger: 0.5 }).change(studio());
    const after = setBuildUp('A', 'Z1', 'steel-panel-writable').change(job);
    expect(after.walls[0]!.zones[0]!.layout).toEqual(job.walls[0]!.zones[0]!.layout);
  });
});

describe('walls', () => {
  it('are copied under the next free letter, beside the original', () => {
    const after = copyWall('A').change(studio());
    expect(after.walls.map(({ id, name }) => [id, name])).toEqual([
      ['A', 'North'],
      ['B', 'North, copy'],
    ]);
  });

  it('stay in place at the ends of the list', () => {
    const job = studio();
    expect(reorderWall('A', -1).change(job)).toBe(job);
  });

  it('leave their delivery with an empty name', () => {
    const grouped = setDelivery('A', '1').change(studio());
    expect(grouped.walls[0]!.delivery).toBe('1');
    expect(setDelivery('A', '').change(grouped).walls[0]).not.toHaveProperty('delivery');
  });
});

describe('stock', () => {
  it('that a zone is laid with says so before it goes', () => {
    expect(stockInUse(studio(), 'S1')).toBe(
      'Zone Z1 on wall A is laid with it; choose another stock sheet there first.',
    );
    expect(stockInUse(studio(), 'S2')).toBeNull();
  });

  it('takes its rack pieces with it', () => {
    const racked = putOnRack({ id: 'R1', stock: 'S2', width: 200, height: 500 }).change(studio());
    const after = takeOutStock('S2').change(racked);
    expect(after.stock.map(({ id }) => id)).toEqual(['S1']);
    expect(after.rack).toEqual([]);
  });
});
