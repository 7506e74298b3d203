import { describe, expect, it } from 'vitest';
import type { Layout } from '../../core/job/schema';
import { layOutZone } from '../../core/panels/lay-out';
import type { CrackPlaces } from '../../core/survey/crack-places';
import { crackPlaces } from '../../core/survey/crack-places';
import { newWall } from '../../core/job/defaults';
import { mmRectangle, layout, shelfCount, stockSheet, zoneArea, type MmRectangle } from './zones-by-hand';

const stock = stockSheet(500, 500);

/** A window of 600 × 500 mm with 20 mm of clearance in a zone of 2 × 1.5 m. */
const window: MmRectangle = [700, 480, 600, 500];
const grown: MmRectangle = [680, 460, 640, 540];
const wall = {
  ...newWall('A', '', 2000, 1500),
  openings: [
    {
      id: 'W1',
      kind: 'window',
      x: window[0],
      y: window[1],
      width: window[2],
      height: window[3],
      clearance: 20,
    },
  ],
};
const whole = { left: 0, bottom: 0, right: 200_000, top: 150_000 };

function lay(changes: Partial<Layout>, cracks: CrackPlaces = crackPlaces(wall, whole, 10_000)) {
  const area = zoneArea(mmRectangle([0, 0, 2000, 1500]), [mmRectangle(grown)], changes);
  const countStockSheets = shelfCount(50_000, 50_000);
  return layOutZone({
    wallId: 'A',
    area: { ...area, zone: { ...area.zone, layout: layout(changes) } },
    stock: [stock],
    countStockSheets,
    cracks,
  });
}

const nearCodes = (laid: ReturnType<typeof lay>) =>
  laid.findings.filter(({ code }) => code.startsWith('joint-near')).map(({ text }) => text);

describe('joints near corners of openings', () => {
  it('are found with the joint, the corner, the distance and how to mend it', () => {
    const found = nearCodes(lay({ start: { x: 150, y: 0 }, clearOfCorners: 100 }));
    // Upright joints at 650 and 1150: 650 runs past both corners on the left, 50 mm off.
    expect(found).toContain(
      'The upright joint 650 mm from the left of zone Z1 passes the corner of window W1 at (700, 480) by 50 mm, ' +
        'less than 100 mm, where the wall cracks: move the start by 50 mm or more, or let the best start be found.',
    );
    expect(found.some((text) => text.includes('1150 mm from the left'))).toBe(false);
  });

  it('may be as near as the distance asked for, to the hundredth', () => {
    const at = (x: number) =>
      nearCodes(lay({ start: { x, y: 0 }, clearOfCorners: 100 })).filter((text) => text.includes('upright'));
    expect(at(100)).toEqual([]);
    expect(at(100.01)).toHaveLength(2);
  });

  it('are nobody’s business where no distance is asked for', () => {
    expect(nearCodes(lay({ start: { x: 150, y: 0 } }))).toEqual([]);
  });

  it('are avoided by the best start before stock sheets are counted', () => {
    const free = lay({ start: 'best' });
    const clear = lay({ start: 'best', clearOfCorners: 100 });
    expect(clear.chosen!.nearCorners).toBe(0);
    expect(nearCodes(clear)).toEqual([]);
    expect(clear.chosen!.slivers).toBe(free.chosen!.slivers);
    expect(clear.chosen!.stockSheets).toBeGreaterThanOrEqual(free.chosen!.stockSheets);
  });
});

describe('joints beside board joints', () => {
  const cracks = crackPlaces(
    { ...wall, openings: [], lines: [{ id: 'B1', kind: 'board-joint', from: [1520, 0], to: [1520, 1500] }] },
    whole,
    10_000,
  );

  it('are found where they run alongside', () => {
    const [text, ...others] = nearCodes(lay({ start: { x: 0, y: 0 }, clearOfBoardJoints: 50 }, cracks));
    expect(text).toBe(
      'The upright joint 1500 mm from the left of zone Z1 runs beside board joint B1 at 20 mm, less than 50 mm, ' +
        'where the wall cracks: move the start by 30 mm or more, or let the best start be found.',
    );
    expect(others).toEqual([]);
  });

  it('are kept clear of by the best start', () => {
    expect(nearCodes(lay({ start: 'best', clearOfBoardJoints: 50 }, cracks))).toEqual([]);
  });
});

describe('places where a wall cracks', () => {
  it('are corners of openings within the wall, not a door’s foot, and no corner of an arch’s curve', () => {
    const door = { id: 'D1', kind: 'door', x: 300, y: 0, width: 900, height: 1200, clearance: 50 };
    const round = { id: 'O1', kind: 'free', circle: { x: 1600, y: 700, diameter: 300 }, clearance: 0 };
    const { corners } = crackPlaces({ ...wall, openings: [door, round] }, whole, 10_000);
    expect(corners.map(({ opening, x, y }) => [opening, x / 100, y / 100])).toEqual([
      ['D1', 1200, 1200],
      ['D1', 300, 1200],
    ]);
  });
});
