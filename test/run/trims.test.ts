import { describe, expect, test } from 'vitest';
import { demoJob } from '../../core/job/demo';
import { checkJob } from '../../core/job/check';
import type { Job } from '../../core/job/schema';
import { usableSize } from '../../core/job/usable-size';
import { workOutFully } from '../../core/run/pipeline';

const margin = { left: 10, right: 5.5, bottom: 0, top: 4 };

/** The demo job on a stock sheet with margins, or on one as large as what is left between them. */
function jobOn(format: 'trimmed' | 'plain'): Job {
  const job = demoJob();
  return {
    ...job,
    rack: [],
    stock: job.stock.map(({ trim: _, ...stock }) =>
      format === 'plain'
        ? stock
        : {
            ...stock,
            width: stock.width + 15.5,
            height: stock.height + 4,
            trim: margin,
          },
    ),
  };
}

test('what is left between the margins of a stock sheet', () => {
  expect(usableSize({ width: 1000, height: 500, trim: margin })).toEqual({ width: 98450, height: 49600 });
  expect(usableSize({ width: 1000, height: 500 })).toEqual({ width: 100000, height: 50000 });
});

test('a job on trimmed stock sheets is laid and cut like one on stock sheets of the size that is left', () => {
  const [trimmed, plain] = (['trimmed', 'plain'] as const).map((format) =>
    workOutFully(jobOn(format), { steps: 2 }),
  ) as [ReturnType<typeof workOutFully>, ReturnType<typeof workOutFully>];
  const outlines = ({ walls }: typeof plain) =>
    walls.flatMap(({ zones }) =>
      zones.flatMap(({ layout }) => layout?.panels.map(({ outline }) => outline) ?? []),
    );
  expect(outlines(trimmed)).toEqual(outlines(plain));
  expect(trimmed.cutting.newSheets).toBe(plain.cutting.newSheets);
  for (const sheet of trimmed.cutting.sheets) expect(sheet.cuts.length).toBeGreaterThanOrEqual(3);
});

describe('margins that leave nothing', () => {
  const faults = (trim: Partial<typeof margin>) => {
    const job = demoJob();
    const [first, ...others] = job.stock as [Job['stock'][0]];
    const stock = [{ ...first, trim: { left: 0, right: 0, bottom: 0, top: 0, ...trim } }, ...others];
    return { id: first.id, texts: checkJob({ ...job, stock }).map(({ text }) => text), first };
  };

  test('are refused with their place and how to mend it', () => {
    const { texts, first } = faults({ left: demoJob().stock[0]!.width - 1, right: 1 });
    expect(texts).toEqual([
      `stock[0].trim (stock sheet ${first.id}) is left ${first.width - 1} and right 1, which leaves nothing of its width of ${first.width} mm; give narrower margins.`,
    ]);
    expect(faults({ top: 9000 }).texts[0]).toContain('which leaves nothing of its height');
  });

  test('others are not', () => {
    expect(faults({ left: 1 }).texts).toEqual([]);
  });
});
