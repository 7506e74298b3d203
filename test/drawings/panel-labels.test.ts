import { describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import type { Item } from '../../core/drawings/page';
import { pageSize, type PaperBox } from '../../core/drawings/paper';
import { labelBox, panelLabels } from '../../core/drawings/panel-labels';
import { placedPanels } from '../../core/drawings/placed-panels';
import { textBox } from '../../core/drawings/text';
import { checkJob } from '../../core/job/check';
import { demoJob } from '../../core/job/demo';
import { labelSheetOf, labelSize, usualLabelSheets } from '../../core/job/label-sheets';
import type { Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import type { WorkedOut } from '../../core/worked-out';
import { fontFiles } from './font-files';
import { oddWalls } from './odd-walls';
import { textFaults, textsOf, wordsOf } from './page-checks';
import { workedJobs } from './worked-jobs';

const measure = measureWith(fontFiles);
const withLabels = (worked: WorkedOut, labels: NonNullable<Job['printing']>['labels']): WorkedOut => ({
  ...worked,
  job: { ...worked.job, printing: { labels } },
});
const marksOf = (worked: WorkedOut) => placedPanels(worked).map(({ panel }) => panel.mark);

function boxOfItem(item: Item): PaperBox {
  if (item.kind === 'text') return textBox(item, measure);
  if (item.kind !== 'fill') throw new Error(`A label has no ${item.kind}.`);
  const points = item.rings.flat();
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

const isWithin = (a: PaperBox, b: PaperBox) =>
  a.left >= b.left && a.right <= b.right && a.bottom >= b.bottom && a.top <= b.top;

const jobs: readonly (readonly [string, WorkedOut])[] = [...workedJobs, ['odd walls', oddWalls]];

describe.each(jobs)('panel labels of the job %s', (_, worked) => {
  it.each(
    usualLabelSheets.map((sheet) => [`${sheet.paper} ${sheet.columns} × ${sheet.rows}`, sheet] as const),
  )('lie wholly on a label of %s, no text on another', (__, sheet) => {
    const printed = withLabels(worked, { ...sheet });
    const labels = panelLabels(printed, measure);
    expect(textFaults(labels, measure, false)).toEqual([]);
    const boxes = Array.from({ length: sheet.columns * sheet.rows }, (___, i) => labelBox(sheet, i));
    for (const { items } of labels.pages) {
      for (const item of items) {
        const box = boxOfItem(item);
        expect(boxes.filter((one) => isWithin(box, one)).length, JSON.stringify(item)).toBe(1);
      }
    }
    const words = labels.pages.flatMap(textsOf);
    for (const mark of marksOf(worked)) expect(words.filter((text) => text === mark)).toHaveLength(1);
  });

  it('are the same twice', () => {
    expect(panelLabels(worked, measure)).toEqual(panelLabels(worked, measure));
  });
});

describe('panel labels', () => {
  const worked = workOutFully(demoJob(), { steps: 2 });

  it('begin where a used sheet has its first label left', () => {
    const whole = panelLabels(withLabels(worked, { columns: 3, rows: 7 }), measure);
    const begun = panelLabels(withLabels(worked, { columns: 3, rows: 7, first: 21 }), measure);
    expect(begun.pages).toHaveLength(Math.ceil((marksOf(worked).length + 20) / 21));
    const marks = new Set(marksOf(worked));
    const first = begun.pages[0]!.items.filter((item) => item.kind === 'text' && marks.has(item.text));
    expect(first).toHaveLength(1);
    const last = labelBox(labelSheetOf(withLabels(worked, { columns: 3, rows: 7 }).job), 20);
    expect(isWithin(boxOfItem(first[0]!), last)).toBe(true);
    expect(wordsOf(begun)).toBe(wordsOf(whole));
  });

  it('fill the sheet: margins, labels and gaps add up to the paper', () => {
    for (const sheet of usualLabelSheets) {
      const { width, height } = pageSize({ format: sheet.paper, landscape: false });
      const size = labelSize(sheet);
      const last = labelBox(sheet, sheet.columns * sheet.rows - 1);
      expect(last.right + sheet.right).toBeCloseTo(width, 9);
      expect(last.bottom - sheet.bottom).toBeCloseTo(0, 9);
      expect(sheet.left + sheet.columns * size.width + (sheet.columns - 1) * sheet.gapAcross).toBeCloseTo(
        last.right,
        9,
      );
      expect(sheet.top + sheet.rows * size.height + (sheet.rows - 1) * sheet.gapDown).toBeCloseTo(
        height - last.bottom,
        9,
      );
    }
  });

  it('keep names that are far too long on their label, and the mark whole', () => {
    const long = 'A very long name of a wall in a very long corridor '.repeat(4);
    const job = demoJob();
    const named = workOutFully(
      { ...job, walls: job.walls.map((wall) => ({ ...wall, name: long, room: long })) },
      { steps: 1 },
    );
    const sheet = { columns: 4, rows: 12, left: 0, right: 0, top: 0, bottom: 0 };
    const labels = panelLabels(withLabels(named, sheet), measure);
    expect(textFaults(labels, measure, false)).toEqual([]);
    const words = labels.pages.flatMap(textsOf);
    for (const mark of marksOf(named)) expect(words).toContain(mark);
  });

  it.each([
    [{ columns: 30 }, /leave no room for 30 × 7 labels on A4|make 30 × 7 labels on A4 only/],
    [{ rows: 20 }, /make 2 × 20 labels on A4 only .* needs 40 × 22 mm/],
    [{ left: 110, right: 110 }, /leave no room for 2 × 7 labels on A4/],
    [{ first: 15 }, /first is 15, but the sheet has 14 labels/],
  ])('with %o are refused with a sentence', (labels, says) => {
    const faults = checkJob({ ...demoJob(), printing: { labels } });
    expect(faults.map(({ text }) => text)).toEqual([expect.stringMatching(says)]);
  });
});
