import { beforeAll, describe, expect, it } from 'vitest';
import { cutList } from '../../core/drawings/cut-list';
import { cutPatterns } from '../../core/drawings/cut-patterns';
import { cutSheets } from '../../core/drawings/cut-sheets';
import { measureWith } from '../../core/drawings/fonts';
import { formatHundredth } from '../../core/drawings/figures';
import type { LodeplanDocument } from '../../core/drawings/page';
import { boxOf } from '../../core/geometry/polygon';
import { emptyJob } from '../../core/job/defaults';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';
import { textFaults, textsOf, wordsOf } from './page-checks';
import { placedPanels } from '../../core/drawings/placed-panels';
import { workedJobs } from './worked-jobs';

const measure = measureWith(fontFiles);

describe.each(workedJobs)('cut sheets and cut list of the job %s', (_, worked) => {
  const panels = placedPanels(worked);
  let sheets: LodeplanDocument;
  let list: LodeplanDocument;
  beforeAll(() => {
    sheets = cutSheets(worked, measure);
    list = cutList(worked, measure);
  });

  it('lay no text on another, none out of the frame, none under 2.5 mm', () => {
    expect(textFaults(sheets, measure, true)).toEqual([]);
    expect(textFaults(list, measure, true)).toEqual([]);
  });

  it('name every panel, the cut list and the cut sheets alike', () => {
    const named = (document: LodeplanDocument) => {
      const words = new Set(wordsOf(document).split(/[\s,;:]+/));
      return panels.map(({ panel }) => panel.mark).filter((mark) => words.has(mark));
    };
    expect(named(list)).toEqual(panels.map(({ panel }) => panel.mark));
    expect(named(sheets)).toEqual(panels.map(({ panel }) => panel.mark));
  });

  it('name every planned sheet and rack piece', () => {
    const words = wordsOf(sheets);
    for (const { patterns, whole } of [cutPatterns(worked)]) {
      for (const { sheets: alike } of patterns) expect(words).toContain(alike[0]!.id);
      for (const { sheets: alike, racked } of whole)
        for (const { id, fromRack } of alike) {
          expect(words).toContain(`${id}:`);
          // What lies on the rack is not counted among the sheets that are bought.
          expect(fromRack !== null).toBe(racked);
        }
    }
  });

  it('print each panel in the list with the size of its outline', () => {
    const texts = list.pages.flatMap(textsOf);
    for (const { panel } of panels) {
      const { left, bottom, right, top } = boxOf(panel.outline.outer);
      const size = `${formatHundredth(right - left)} × ${formatHundredth(top - bottom)}`;
      expect(texts[texts.indexOf(panel.mark) + 1]).toBe(size);
    }
  });

  it('print in ink and red lead alone, so that they photocopy', () => {
    const allowed = new Set([undefined, 'ink', 'soft', 'red-lead', 'white']);
    for (const page of [...sheets.pages, ...list.pages]) {
      for (const item of page.items)
        expect(allowed.has('colour' in item ? item.colour : undefined)).toBe(true);
    }
  });

  it('say on each page which revision they show, and which page of how many it is', () => {
    for (const document of [sheets, list]) {
      document.pages.forEach((page, i) => {
        const texts = textsOf(page);
        expect(texts[texts.indexOf('Revision') + 1]).toBe(worked.job.revision);
        expect(texts).toContain(`${i + 1} of ${document.pages.length}`);
      });
    }
  });

  it('say of every sketch that it is seen from the face', () => {
    const sketches = cutPatterns(worked).patterns.length;
    const faces = sheets.pages.flatMap(textsOf).filter((text) => text.endsWith('seen from the face'));
    expect(faces.length).toBeGreaterThanOrEqual(sketches);
  });

  it('show a pattern once, drawn or with the panel that it is, and list the page it is on', () => {
    const { patterns } = cutPatterns(worked);
    const shown = sheets.pages.map((page) =>
      textsOf(page).flatMap(
        (text) => /^Pattern (\d+)(?:$|: \d+ (?:stock sheet|rack piece))/.exec(text)?.[1] ?? [],
      ),
    );
    expect(
      shown
        .flat()
        .map(Number)
        .sort((a, b) => a - b),
    ).toEqual(patterns.map(({ number }) => number));
    const index = textsOf(sheets.pages[0]!);
    for (const { number, sheets: alike } of patterns) {
      const page = shown.findIndex((numbers) => numbers.includes(String(number)));
      const ids = index.findIndex(
        (text, i) => text.startsWith(alike[0]!.id) && index[i - 1] === String(number),
      );
      expect(index[ids + 1]).toBe(String(page + 1));
    }
  });

  it('show plan and spares beside what to order', () => {
    const { order } = worked.cutting;
    const planned = order.reduce((sum, { plan }) => sum + plan, 0);
    const spares = order.reduce((sum, entry) => sum + entry.spares, 0);
    const [number, words] = textsOf(list.pages[0]!).slice(
      textsOf(list.pages[0]!).findIndex((text) => text === String(planned + spares)),
    );
    expect(number).toBe(String(planned + spares));
    expect(words).toContain(`${planned} by the plan + ${spares} spare`);
  });
});

describe('cut sheets by hand', () => {
  const [, worked] = workedJobs[0]!;
  const document = cutSheets(worked, measure);

  it('dimension a notch from the lower left corner of its panel', () => {
    const page = document.pages.find((one) => textsOf(one).includes('Panel A-Z1-02'))!;
    expect(textsOf(page)).toEqual(expect.arrayContaining(['95', '251', '51', '500']));
  });

  it('list which marks come from which sheet where two are cut alike', () => {
    const words = wordsOf(document).replace(/\n/g, ' ');
    expect(words).toContain('N7: A-Z1-09, N12: B-Z1-03');
    expect(words).toContain('2 stock sheets N7, N12');
  });

  it('name the rack piece a panel is cut from', () => {
    expect(wordsOf(document).replace(/\n/g, ' ')).toContain('1 rack piece R7, 300 × 300');
  });

  it('draw a 500 mm sheet 50 mm long at 1:10', () => {
    const page = document.pages[0]!;
    expect(textsOf(page)).toContain('1:10, seen from the face');
    const lengths = page.items.flatMap((item) => {
      if (item.kind !== 'stroke' || !item.closed || item.points.length !== 4 || item.width !== 0.7) return [];
      const xs = item.points.map(({ x }) => x);
      return [Math.max(...xs) - Math.min(...xs)];
    });
    expect(lengths.some((length) => Math.abs(length - 50) < 0.001)).toBe(true);
  });
});

describe('an empty job', () => {
  it('has no cut sheets and no cut list', () => {
    const worked = workOutFully(emptyJob());
    expect(cutSheets(worked, measure).pages).toEqual([]);
    expect(cutList(worked, measure).pages).toEqual([]);
  });
});
