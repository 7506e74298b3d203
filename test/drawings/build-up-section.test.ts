import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildUpOf, type ResolvedBuildUp } from '../../core/build-up/resolve';
import { drawBuildUpSection, thicknessText } from '../../core/drawings/build-up-section';
import { measureWith } from '../../core/drawings/fonts';
import type { Fill, Page, Stroke } from '../../core/drawings/page';
import { boxesOverlap } from '../../core/drawings/paper';
import { textBoxes } from '../../core/drawings/text';
import { buildUpKinds } from '../../core/job/build-up-kinds';
import { layerKinds } from '../../core/job/product-schema';
import { builtJob, soundGround } from '../build-up/built-wall';
import { fontFiles } from './font-files';

const measure = measureWith(fontFiles);
const at = { left: 20, top: 250, width: 170 };
const sectionOf = (buildUp: ResolvedBuildUp) => drawBuildUpSection(buildUp, at, measure);
const ready = (kind: string) => {
  const job = builtJob(kind);
  return buildUpOf(job, job.walls[0]!.zones[0]!, soundGround);
};
const textsOf = (kind: string) =>
  sectionOf(ready(kind)).items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));

function faults(buildUp: ResolvedBuildUp): string[] {
  const { items, height } = sectionOf(buildUp);
  const page: Page = { format: 'A4', landscape: false, items };
  const boxes = textBoxes(page, measure);
  return boxes.flatMap(({ text, box }, i) => [
    ...(box.left < at.left || box.right > at.left + at.width + 0.01 ? [`${text.text} is too wide`] : []),
    ...(box.top > at.top || box.bottom < at.top - height ? [`${text.text} leaves the block`] : []),
    ...boxes
      .slice(i + 1)
      .flatMap((other) => (boxesOverlap(box, other.box) ? [`${text.text} lies on ${other.text.text}`] : [])),
  ]);
}

describe('a section through a build-up', () => {
  it.each(buildUpKinds)('of $id has no text on another and none outside', ({ id }) => {
    expect(faults(ready(id))).toEqual([]);
  });

  it('of any layers with any names has none either', () => {
    const layer = fc.record({
      layer: fc.record({
        kind: fc.constantFrom(...layerKinds),
        over: fc.constantFrom('face', 'joints', 'edges'),
      }),
      product: fc.option(fc.string({ minLength: 1, maxLength: 200 }).map((name) => ({ name: `M${name}` }))),
      coats: fc.integer({ min: 1, max: 20 }),
      thickness: fc.option(fc.double({ min: 0.001, max: 60, noNaN: true })),
    });
    fc.assert(
      fc.property(fc.array(layer, { maxLength: 40 }), (layers) => {
        expect(faults({ id: 'x', name: '', layers } as unknown as ResolvedBuildUp)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('draws steel as thick as its scale says', () => {
    const { items, scale } = sectionOf(ready('steel-panel'));
    const steel = items.find((item): item is Fill => item.kind === 'fill')!;
    const xs = steel.rings[0]!.map(({ x }) => x);
    const times = Number(scale!.split(' ')[0]);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(0.5 * times, 9);
    expect(times).toBeGreaterThan(1);
  });

  it('stars what is drawn thicker than it is, and nothing else', () => {
    const texts = textsOf('steel-panel');
    expect(texts).toContain('Anti-corrosion metal primer, 40 µm *');
    expect(texts).toContain('Steel panels, 0,5 mm');
    expect(texts).toContain('Fine filler, 2 coats, 1 mm');
    expect(texts.at(-1)).toMatch(/^Section \d+ : 1; \* not to scale$/);
  });

  it('lists layers from the ground to the room, without work and cut edges', () => {
    const texts = textsOf('steel-panel-writable')
      .slice(0, -1)
      .map((text) => text.split(',')[0]);
    expect(texts).toEqual([
      'Plaster primer',
      'Panel adhesive',
      'Steel panels',
      'Anti-corrosion metal primer',
      'Joint tape',
      'Bonding coat',
      'Fine filler',
      'Sealer over filler',
      'Writable finish',
    ]);
  });

  it('keeps every leader clear of the other labels and of the wall', () => {
    const { items } = sectionOf(ready('steel-panel'));
    const leaders = items.filter((item): item is Stroke => item.kind === 'stroke' && item.colour === 'white');
    const heights = leaders.map(({ points }) => points[0]!.y);
    expect(new Set(heights).size).toBe(leaders.length);
    for (const { points } of leaders) expect(points[0]!.x).toBeGreaterThan(at.left + 10);
  });

  it('draws nothing of no layers', () => {
    expect(sectionOf({ id: 'x', name: '', layers: [] })).toEqual({ items: [], height: 0, scale: null });
  });
});

describe('thickness in words', () => {
  it.each([
    [0.04, '40 µm'],
    [0.015, '15 µm'],
    [0.1, '0,1 mm'],
    [0.25, '0,25 mm'],
    [12, '12 mm'],
  ])('of %d mm is %s', (thickness, words) => expect(thicknessText(thickness)).toBe(words));
});
