import { describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import { handoverPack } from '../../core/drawings/handover/handover-pack';
import { demoJob } from '../../core/job/demo';
import { readJobObject } from '../../core/job/read';
import type { Job } from '../../core/job/schema';
import { priceJob } from '../../core/offer/price-job';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';
import { textFaults, wordsOf } from './page-checks';

const measure = measureWith(fontFiles);

function packOf(job: Job) {
  const worked = workOutFully(job, { steps: 2 });
  return handoverPack(worked, priceJob(worked), measure);
}

const demo = demoJob();
const pack = packOf(demo);
const words = wordsOf(pack);

describe('the handover pack of the demo', () => {
  it('lays no text on another, none off the page, none under 2.5 mm', () => {
    const isPlan = ({ landscape }: (typeof pack.pages)[number]) => landscape;
    expect(textFaults({ ...pack, pages: pack.pages.filter(isPlan) }, measure, true)).toEqual([]);
    const record = pack.pages.filter((page) => !isPlan(page));
    expect(textFaults({ ...pack, pages: record }, measure, false)).toEqual([]);
  });

  it('holds every part of a handover', () => {
    for (const heading of [
      'What it is made of',
      'Test patch',
      'Air in the room',
      'Snags',
      'Warranty',
      'Acceptance',
    ])
      expect(words).toContain(heading);
    expect(words).toContain('Detectors are blind behind steel');
  });

  it('shows each wall with steel, the marks of its panels, and where the cable was found', () => {
    for (const { id, name } of demo.walls) expect(words).toContain(`Wall ${id} ${name}`);
    expect(words).toContain('concealed cable C1');
    for (const figure of ['1275', '1093', '2700']) expect(words.split('\n')).toContain(figure);
    expect(words.split('\n')).toContain('13');
  });

  it('has a line for every working day of the programme', () => {
    const days = words.match(/^\d+ March 2026$/gm) ?? [];
    expect(new Set(days).size).toBeGreaterThan(8);
    expect(words).toContain('________ °C');
  });
});

describe('what was recorded', () => {
  const { id: product } = demo.products?.[0] ?? { id: 'panel-adhesive' };
  const recorded = packOf({
    ...demo,
    handover: {
      batches: [
        { product, number: 'L-2207' },
        { product, number: 'L-2208' },
      ],
      testPatch: 'Behind the door: adhesion class 1',
      climate: [{ date: '2026-03-10', temperature: 19.5, humidity: 52 }],
      snags: [{ words: 'Scratch beside socket K4', by: '2026-04-01', done: true }],
      warranty: 'Two years on workmanship.\nMagnets and pens are not covered.',
    },
  });
  const said = wordsOf(recorded);

  it('stands in place of its blank', () => {
    for (const text of [
      'L-2207, L-2208',
      'Behind the door: adhesion class 1',
      '19.5 °C',
      '52 %',
      'Scratch beside socket K4',
      'Two years on workmanship.',
      'Magnets and pens are not covered.',
    ])
      expect(said).toContain(text);
    expect(said).not.toContain('No terms are entered here');
    expect(words).toContain('No terms are entered here');
  });

  it('stands as a blank where an entry was begun and left empty', () => {
    const { job } = readJobObject({
      ...demo,
      handover: { batches: [{ product }], climate: [{ temperature: 20 }], snags: [{}] },
    });
    const begun = wordsOf(packOf(job!));
    expect(begun).toContain('20 °C');
    expect(begun).not.toContain('undefined');
  });

  it('lays no text on another even if it is long', () => {
    const long = packOf({
      ...demo,
      handover: {
        warranty: 'Terms and conditions without end. '.repeat(400),
        snags: Array.from({ length: 60 }, (_, i) => ({ words: `Snag ${i} ${'very long '.repeat(20)}` })),
      },
    });
    const record = long.pages.filter(({ landscape }) => !landscape);
    expect(record.length).toBeGreaterThan(4);
    expect(textFaults({ ...long, pages: record }, measure, false)).toEqual([]);
  });
});

describe('a job without zones', () => {
  it('has nothing to hand over', () => {
    expect(
      packOf({ ...demo, walls: demo.walls.map((wall) => ({ ...wall, zones: [], hung: [] })) }).pages,
    ).toEqual([]);
  });
});
