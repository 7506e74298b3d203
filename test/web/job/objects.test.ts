import { describe, expect, it } from 'vitest';
import { newFitting, newOpening, newZone } from '../../../core/job/defaults';
import { readJobObject } from '../../../core/job/read';
import { boxOfObject, findObject, findWall, type MmBox, type ObjectRef } from '../../../core/job/shape';
import type { NamedChange } from '../../../web/job/changes/named-change';
import { copyTo, moveBy, moveWallEdge, redrawOutline, stretchTo } from '../../../web/job/changes/objects';
import { putInFitting, putInOpening, putInZone, setInto } from '../../../web/job/changes/put-in';
import { smallJob, smallWall } from '../proofing-wall';

const socket: ObjectRef = { kind: 'fitting', id: 'K4' };
const zone: ObjectRef = { kind: 'zone', id: 'Z1' };
const zoneBox: MmBox = { x: 1420, y: 700, width: 2000, height: 1750 };
const after = ({ change }: NamedChange) => findWall(change(smallJob), 'A')!;

describe('what a hand does to an object', () => {
  it('moves it', () => {
    const move = moveBy(smallWall, socket, 10, -20);
    expect(move.name).toBe('Move socket K4');
    expect(boxOfObject(findObject(after(move), socket)!)).toEqual({
      x: 2277,
      y: 1137,
      width: 146,
      height: 86,
    });
  });

  it.each([
    [{ ...zoneBox, width: 2100 }, 'Make zone Z1 wider'],
    [{ ...zoneBox, x: 1500, width: 1920 }, 'Make zone Z1 narrower'],
    [{ ...zoneBox, height: 1800 }, 'Make zone Z1 higher'],
    [{ ...zoneBox, y: 800, height: 1650 }, 'Make zone Z1 lower'],
    [{ ...zoneBox, width: 1, height: 1 }, 'Resize zone Z1'],
  ])('into %j: %s', (box, name) => {
    const stretch = stretchTo(smallWall, zone, box);
    expect(stretch.name).toBe(name);
    expect(boxOfObject(findObject(after(stretch), zone)!)).toEqual(box);
  });

  it('copies it, and says what the copy is called', () => {
    const copy = copyTo(smallJob, smallWall, socket, 246, 0);
    expect(copy.name).toBe('Copy socket K4');
    expect(copy.copy.id).not.toBe('K4');
    expect(boxOfObject(findObject(after(copy), copy.copy)!).x).toBe(2513);
    expect(boxOfObject(findObject(after(copy), socket)!).x).toBe(2267);
  });

  it("moves the wall's edge without what hangs on it", () => {
    const move = moveWallEdge(smallWall, 'y', 2700, 2800);
    expect(after(move).outline[3]).toEqual([6500, 2800]);
    expect(after(move).outline[2]).toEqual([8000, 2140]);
    expect(after(move).fittings).toBe(smallWall.fittings);
  });

  it('draws the outline anew', () => {
    const outline = [
      [0, 0],
      [100, 0],
      [0, 100],
    ] as const;
    expect(
      after(
        redrawOutline(
          smallWall,
          outline.map(([x, y]) => [x, y]),
        ),
      ).outline,
    ).toEqual(outline);
  });
});

describe('what is put in', () => {
  it.each([
    [putInOpening(smallWall, newOpening(smallWall, 'window')), 'Put in window W1'],
    [putInFitting(smallWall, newFitting(smallWall, 'socket')), 'Put in socket K1'],
    [putInZone(smallWall, newZone(smallJob, smallWall, zoneBox)), 'Put in zone Z2'],
  ])('%#: has a name, and leaves a job that can be read again', (change, name) => {
    expect(change.name).toBe(name);
    expect(readJobObject(change.change(smallJob)).job).not.toBeNull();
  });

  it('an arch fills its box with a round head', () => {
    const arch = setInto(newOpening(smallWall, 'arch'), { x: 7000, y: 0, width: 900, height: 2000 });
    expect(boxOfObject(arch)).toEqual({ x: 7000, y: 0, width: 900, height: 2000 });
    const { findings } = readJobObject(putInOpening(smallWall, arch).change(smallJob));
    expect(findings).toEqual([]);
  });

  it('a round thing is the largest circle in the middle of its box', () => {
    const light = setInto(newFitting(smallWall, 'light'), { x: 0, y: 0, width: 300, height: 100 });
    expect(light.circle).toMatchObject({ x: 150, y: 50, diameter: 100 });
  });
});
