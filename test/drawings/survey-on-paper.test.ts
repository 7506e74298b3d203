import { describe, expect, it } from 'vitest';
import { composeDocuments } from '../../core/drawings/compose';
import { measureWith } from '../../core/drawings/fonts';
import { boxOf } from '../../core/geometry/polygon';
import { demoJob } from '../../core/job/demo';
import type { Job } from '../../core/job/schema';
import { lengthUnits } from '../../core/lengths';
import { workOutFully } from '../../core/run/pipeline';
import { reservationsOf } from '../../core/survey/ground-blanks';
import { fontFiles } from './font-files';
import { textFaults, textsOf, wordsOf, unframed } from './page-checks';

const measure = measureWith(fontFiles);

/** The proofing wall of the demo with its studs, a pattress, drillings and joints, put down for a budget. */
function surveyedJob(): Job {
  const [first, ...rest] = demoJob().walls;
  return {
    ...demoJob(),
    walls: [
      {
        ...first!,
        surveyed: false,
        ground: { material: 'old-coating', age: '12 years', state: 'chalks', hollow: 3.5, escapeRoute: true },
        fixingPoints: [
          ...[2, 3, 4, 5].map((i) => ({
            id: `U${i}`,
            kind: 'stud' as const,
            x: 600 * i - 25,
            y: 0,
            width: 50,
            height: 2700,
          })),
          { id: 'G1', kind: 'pattress', x: 1500, y: 1500, width: 600, height: 200, name: 'shelf' },
          { id: 'X1', kind: 'hole', x: 2613, y: 1617, width: 8 },
          { id: 'X2', kind: 'hole', x: 3277, y: 333, width: 10, name: 'lamp' },
        ],
        lines: [
          { id: 'L1', kind: 'board-joint', from: [1250, 0], to: [1250, 2700] },
          { id: 'L2', kind: 'movement-joint', from: [3500, 0], to: [3500, 2700], width: 20 },
        ],
      },
      ...rest,
    ],
  };
}

describe('a wall with fixing points, joints and a ground', () => {
  const worked = workOutFully(surveyedJob(), { steps: 2 });
  const documents = composeDocuments(worked, measure);
  const sheet = documents.find(({ name }) => name === 'setting-out-A')!;

  it('lays no text on another in any unit', () => {
    for (const units of lengthUnits) {
      for (const document of composeDocuments({ ...worked, job: { ...worked.job, units } }, measure)) {
        const framed = !unframed.includes(document.name);
        expect([units, document.name, textFaults(document, measure, framed)]).toEqual([
          units,
          document.name,
          [],
        ]);
      }
    }
  });

  it('dimensions drillings both ways and studs to their middle', () => {
    const texts = textsOf(sheet.pages[0]!);
    for (const figure of ['2613', '1617', '3277', '333', '1200', '1800', '2400', '3000']) {
      expect(texts).toContain(figure);
    }
    expect(texts.some((text) => text.startsWith('X1'))).toBe(true);
    expect(texts.some((text) => text.startsWith('U3'))).toBe(true);
  });

  it('explains the signs that it has, and no others', () => {
    const texts = textsOf(sheet.pages[0]!);
    const key = ['board joint', 'movement joint: no panel bridges it', 'stud, with its centre line'];
    for (const words of [...key, 'pattress behind the board', 'drilling, made before steel hides the wall'])
      expect(texts).toContain(words);
    const other = textsOf(documents.find(({ name }) => name === 'setting-out-B')!.pages[0]!);
    for (const words of key) expect(other).not.toContain(words);
  });

  it('lists where each fixing point is and which panel hides it', () => {
    const texts = sheet.pages.slice(1).flatMap(textsOf);
    const row = texts.slice(texts.indexOf('X1'), texts.indexOf('X1') + 7);
    const panels = worked.walls[0]!.zones.flatMap(({ layout }) => layout?.panels ?? []);
    const over = panels.filter(({ outline }) => {
      const { left, right, bottom, top } = boxOf(outline.outer);
      return left <= 261300 && 261300 <= right && bottom <= 161700 && 161700 <= top;
    });
    expect(over).toHaveLength(1);
    expect(row).toEqual(['X1', 'drilling', 'centre 2613', '1617', 'Ø 8', '–', over[0]!.mark]);
    expect(texts.slice(texts.indexOf('X2'), texts.indexOf('X2') + 7).at(-1)).toBe('–');
    expect(texts).toContain('pattress, shelf');
  });

  it('tells the ground as found, and what is blank and matters', () => {
    const texts = sheet.pages.slice(1).flatMap(textsOf);
    const said = (label: string) => texts[texts.indexOf(label) + 1];
    expect(said('made of')).toBe('old coating');
    expect(said('coating')).toBe('12 years, chalks');
    expect(said('deepest hollow under 2 m')).toBe('3,5 mm');
    expect(said('on an escape route')).toBe('yes');
    expect(said('moisture')).toBe('not recorded');
    expect(texts).not.toContain('exposure');
  });

  it('says on every page of the wall that it is a budget, and of no other wall', () => {
    for (const page of sheet.pages) expect(textsOf(page)).toContain('Budget until surveyed');
    expect(wordsOf(documents.find(({ name }) => name === 'setting-out-B')!)).not.toContain('Budget');
    for (const name of ['cut-sheets', 'cut-list']) {
      for (const page of documents.find((one) => one.name === name)!.pages)
        expect(textsOf(page)).toContain('Budget until surveyed: wall A');
    }
  });

  it('gives the client every reservation of the wall that is shown, and only those', () => {
    const [first, second] = documents.find(({ name }) => name === 'client-view')!.pages;
    const words = (page: typeof first) => textsOf(page!).join(' ');
    const reservations = reservationsOf(worked.job.walls[0]!);
    expect(reservations).toHaveLength(4);
    for (const sentence of reservations) expect(words(first)).toContain(sentence);
    expect(words(first)).toContain('Budget until surveyed');
    expect(words(second)).not.toContain('Reservations');
    expect(words(second)).not.toContain('Budget');
  });
});

it('calls a drilled fixing point a drilling, as a hole is what a zone has', () => {
  const words = composeDocuments(workOutFully(surveyedJob(), { steps: 1 }), measure)
    .map(wordsOf)
    .join('\n');
  expect(words).not.toMatch(/drilled hole|\bhole X\d/);
});
