import { describe, expect, it } from 'vitest';
import { drawClouds } from '../../core/drawings/change-clouds';
import { groupChanges, type ChangeGroup } from '../../core/drawings/change-groups';
import type { ToPaper } from '../../core/drawings/client-view-wall';
import type { Item, TextMeasure } from '../../core/drawings/page';
import type { Difference } from '../../core/job/differences/difference';

/** 1:20, so that 20 mm of the wall are 1 mm of the paper; points of a wall are counted in hundredths. */
const toPaper: ToPaper = ({ x, y }) => ({ x: x / 2000, y: y / 2000 });
const measure: TextMeasure = (text, height) => text.length * height * 0.6;
const within = { left: 0, bottom: 0, right: 200, top: 120 };

const group = (number: number, ...places: [number, number, number, number][]): ChangeGroup => ({
  number,
  wall: 'A',
  texts: ['Socket K1 moved.'],
  places: places.map(([x, y, width, height]) => ({ x, y, width, height })),
});

const clouds = (items: readonly Item[]) =>
  items.filter((item) => item.kind === 'stroke').filter(({ points }) => points.length > 4);
const tags = (items: readonly Item[]) => items.filter((item) => item.kind === 'text');

function boxOfItem(item: Item) {
  const points = item.kind === 'stroke' ? item.points : [];
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

describe('drawClouds', () => {
  it('draws a cloud clear of what it goes round, and its number once beside it', () => {
    const { items, crowded } = drawClouds([group(3, [1000, 600, 200, 100])], toPaper, [], within, measure);
    expect(crowded).toEqual([]);
    const [cloud, ...more] = clouds(items);
    expect(more).toEqual([]);
    // The thing lies on the paper from (50, 30) to (60, 35).
    const box = boxOfItem(cloud!);
    expect(box.left).toBeLessThan(49);
    expect(box.right).toBeGreaterThan(61);
    expect(box.bottom).toBeLessThan(29);
    expect(box.top).toBeGreaterThan(36);
    expect(tags(items).map(({ text }) => text)).toEqual(['3']);
    const at = tags(items)[0]!.at;
    expect(at.x < box.left || at.x > box.right || at.y < box.bottom || at.y > box.top).toBe(true);
  });

  it('draws two clouds about a thing that went far, one about a thing that went a little way', () => {
    const far = drawClouds([group(1, [400, 600, 80, 80], [2400, 600, 80, 80])], toPaper, [], within, measure);
    expect(clouds(far.items)).toHaveLength(2);
    const near = drawClouds([group(1, [400, 600, 80, 80], [500, 600, 80, 80])], toPaper, [], within, measure);
    expect(clouds(near.items)).toHaveLength(1);
    expect(tags(near.items)).toHaveLength(1);
    const box = boxOfItem(clouds(near.items)[0]!);
    expect(box.left).toBeLessThan(20);
    expect(box.right).toBeGreaterThan(29);
    // Clouds of different things stay apart, however near they are.
    const two = drawClouds(
      [group(1, [400, 600, 80, 80]), group(2, [500, 600, 80, 80])],
      toPaper,
      [],
      within,
      measure,
    );
    expect(clouds(two.items)).toHaveLength(2);
  });

  it('joins a third place that only the first two together meet', () => {
    const { items } = drawClouds(
      [group(1, [400, 600, 80, 80], [600, 900, 80, 80], [400, 900, 300, 80], [400, 600, 300, 200])],
      toPaper,
      [],
      within,
      measure,
    );
    expect(clouds(items)).toHaveLength(1);
  });

  it('says of a number that has no free place that it may cover a line', () => {
    const { items, crowded } = drawClouds(
      [group(7, [1000, 600, 200, 100])],
      toPaper,
      [within],
      within,
      measure,
    );
    expect(crowded).toEqual([7]);
    expect(tags(items)).toHaveLength(1);
  });
});

describe('groupChanges', () => {
  const difference = (text: string, of: Partial<Difference>): Difference => ({
    kind: 'changed',
    subject: 'zone',
    text,
    places: [],
    ...of,
  });

  it('numbers things wall by wall, all of a thing together, the job as a whole last', () => {
    const place = { x: 0, y: 0, width: 10, height: 10 };
    const groups = groupChanges([
      difference('The job: client.', { subject: 'job' }),
      difference('Zone Z1 moved.', { wall: 'A', object: 'Z1', places: [place] }),
      difference('Zone Z1 on B.', { wall: 'B', object: 'Z1' }),
      difference('Zone Z1: panels.', { subject: 'panels', wall: 'A', object: 'Z1', places: [{ ...place }] }),
      difference('Plan: stock sheets.', { subject: 'plan' }),
    ]);
    expect(groups.map(({ number, wall, texts }) => [number, wall, texts])).toEqual([
      [1, 'A', ['Zone Z1 moved.', 'Zone Z1: panels.']],
      [2, 'B', ['Zone Z1 on B.']],
      [3, null, ['The job: client.']],
      [4, null, ['Plan: stock sheets.']],
    ]);
    expect(groups[0]!.places).toEqual([place]);
  });
});
