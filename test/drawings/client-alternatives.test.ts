import { describe, expect, it } from 'vitest';
import { clientAlternatives } from '../../core/drawings/client-alternatives';
import { measureWith } from '../../core/drawings/fonts';
import type { Fill } from '../../core/drawings/page';
import { alternativesOf, chooseAlternative, copyAlternative } from '../../core/job/alternatives';
import { demoJob } from '../../core/job/demo';
import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';
import { textFaults, textsOf } from './page-checks';

const measure = measureWith(fontFiles);

const zone = (width: number, buildUp: string) => ({
  id: 'Z1',
  name: 'Proofs',
  buildUp,
  shape: [
    [500, 800],
    [500 + width, 800],
    [500 + width, 1800],
    [500, 1800],
  ],
  ...(buildUp.startsWith('steel') && { layout: { stock: 'S1', start: 'lower-left' } }),
});

/** A bare wall with a zone of one metre in height and sheets of half a metre: everything can be counted in the head. */
const jobWith = (one: object): Job =>
  readJobObject({
    format: 'lodeplan-job',
    version: 1,
    name: 'Print studio',
    revision: 'C',
    stock: [{ id: 'S1', name: 'Steel', width: 500, height: 500, thickness: 0.5 }],
    walls: [
      {
        id: 'A',
        name: 'Proofing wall',
        outline: [
          [0, 0],
          [5000, 0],
          [5000, 2600],
          [0, 2600],
        ],
        zones: [one],
      },
    ],
  }).job!;

const base = jobWith(zone(2000, 'steel-panel'));

const others = [
  ['Wider', zone(3000, 'steel-panel')],
  ['Written on', zone(2000, 'steel-panel-writable')],
  ['Light', zone(1500, 'magnetic-coating')],
  ['Chalk', zone(1000, 'chalk')],
] as const;

function alternatives(count: number) {
  let job = base;
  for (const [name, one] of others.slice(0, count - 1)) {
    job = copyAlternative(job, alternativesOf(job).at(-1)!.id, name);
    const { id } = alternativesOf(job).at(-1)!;
    const first = alternativesOf(job)[0]!.id;
    const chosen = chooseAlternative(job, id);
    const walls = chosen.walls.map((wall) => ({ ...wall, zones: jobWith(one).walls[0]!.zones }));
    job = chooseAlternative({ ...chosen, walls }, first);
  }
  const listed = alternativesOf(job);
  return {
    job,
    drawn: listed.map(({ id, title }) => ({
      title,
      worked: workOutFully(chooseAlternative(job, id), { steps: 1 }),
    })),
  };
}

describe('alternatives side by side for the client', () => {
  it.each([
    [2, 'A4', [2]],
    [3, 'A3', [3]],
    [4, 'A3', [4]],
    [5, 'A3', [3, 2]],
  ] as const)('are %d on %s', (count, format, onPages) => {
    const { job, drawn } = alternatives(count);
    const document = clientAlternatives(job, drawn, measure);
    expect(document.pages.map((page) => page.format)).toEqual(onPages.map(() => format));
    const titles = new Set(drawn.map(({ title }) => title));
    expect(document.pages.map((page) => textsOf(page).filter((text) => titles.has(text)).length)).toEqual(
      onPages,
    );
    expect(textFaults(document, measure, false)).toEqual([]);
    // Every wall is as large as every other: one scale.
    const sizes = document.pages.flatMap((page) =>
      page.items
        .filter((item): item is Fill => item.kind === 'fill' && item.colour === 'paper')
        .map(({ rings }) => {
          const xs = rings[0]!.map(({ x }) => x);
          return (Math.max(...xs) - Math.min(...xs)).toFixed(6);
        }),
    );
    expect(sizes).toHaveLength(count);
    expect(new Set(sizes).size).toBe(1);
  });

  it('give areas, panels, stock sheets and weight that can be counted in the head', () => {
    const { job, drawn } = alternatives(4);
    const texts = textsOf(clientAlternatives(job, drawn, measure).pages[0]!);
    const values = (label: string) => texts.flatMap((text, i) => (text === label ? [texts[i + 1]] : []));
    expect(values('For magnets, heavy duty')).toEqual(['2 m²', '3 m²', '2 m²', 'none']);
    expect(values('For magnets, light to medium duty')).toEqual(['none', 'none', 'none', '1,5 m²']);
    expect(values('To write on')).toEqual(['none', 'none', '2 m²', 'none']);
    expect(values('For chalk')).toEqual([]);
    expect(values('Steel panels')).toEqual([
      '8, 0 of them cut',
      '12, 0 of them cut',
      '8, 0 of them cut',
      'none',
    ]);
    expect(values('Stock sheets to order')).toEqual(['8', '12', '8', '0']);
    // 2 m² · 0.5 mm · 7850 kg/m³ = 7.85 kg (density: EN 1991-1-1, see job-figures).
    expect(values('Weight of the steel on the wall')).toEqual(['7,9 kg', '11,8 kg', '7,9 kg', '0,0 kg']);
  });

  it('show no shop dimension, no panel mark and no price', () => {
    let job = demoJob();
    job = copyAlternative(job, alternativesOf(job)[0]!.id, 'Another');
    const drawn = alternativesOf(job).map(({ id, title }) => ({
      title,
      worked: workOutFully(chooseAlternative(job, id), { steps: 1 }),
    }));
    const document = clientAlternatives(job, drawn, measure);
    expect(document.pages).toHaveLength(3);
    expect(textFaults(document, measure, false)).toEqual([]);
    for (const text of document.pages.flatMap(textsOf)) {
      if (text === '2 March 2026') continue;
      expect(text).not.toMatch(/\d{3,}|EUR|[A-C]-Z\d/);
    }
  });

  it('are not offered for one alternative alone', () => {
    const { job, drawn } = alternatives(1);
    expect(clientAlternatives(job, drawn, measure).pages).toEqual([]);
  });
});

it('names areas in square feet where the job is in feet, in pictures and figures alike', () => {
  const { job, drawn } = alternatives(2);
  const feet = clientAlternatives({ ...job, units: 'ft-in' }, drawn, measure);
  const words = feet.pages.flatMap((page) => textsOf(page)).join(' ');
  expect(words).toContain('ft²');
  expect(words).not.toContain('m²');
});
