import { describe, expect, it } from 'vitest';
import { changesSince, type Since } from '../../core/drawings/changes-since';
import { composeDocuments } from '../../core/drawings/compose';
import { measureWith } from '../../core/drawings/fonts';
import { demoJob } from '../../core/job/demo';
import type { Job, Wall } from '../../core/job/schema';
import { lengthUnits } from '../../core/lengths';
import { issueRevision } from '../../core/run/issue-revision';
import { workOutFully } from '../../core/run/pipeline';
import { sinceRevision } from '../../core/run/since-revision';
import type { WorkedOut } from '../../core/worked-out';
import { fontFiles } from './font-files';
import { textFaults, textsOf, wordsOf } from './page-checks';

const measure = measureWith(fontFiles);
const steps = 2;

/** The door moved, a socket gone, one new, a wall renamed, and the kerf changed. */
function changed(job: Job): Job {
  const [first, second, ...rest] = job.walls;
  const wall = {
    ...first!,
    openings: first!.openings.map((opening) => ({ ...opening, x: 220 - 25.4 })),
    fittings: [
      ...first!.fittings.filter(({ id }) => id !== 'K3'),
      { id: 'K9', kind: 'socket', x: 4064, y: 1270, width: 146, height: 86, clearance: 5 },
    ],
  } as Wall;
  return {
    ...job,
    cutting: { ...job.cutting, kerf: 2 },
    walls: [wall, { ...second!, name: 'Type store, north' }, ...rest],
  };
}

describe('changes since a revision', () => {
  const demo = demoJob();
  const issued = issueRevision(demo, workOutFully(demo, { steps }), {
    id: 'A',
    date: '2026-05-04',
    note: '',
  });
  const worked = workOutFully(changed(issued), { steps });
  const since = sinceRevision(worked, issued.revisions.at(-1))!;

  it('tell each change once, a page a changed wall and one for the job', () => {
    const document = changesSince(worked, since, measure);
    const titles = document.pages.map((page) => textsOf(page).find((text) => /^(Wall|The job)/.test(text)));
    expect(titles[0]).toBe('Wall A Proofing wall');
    expect(titles).toContain('Wall B Type store, north');
    expect(titles.at(-1)).toBe('The job');
    const words = wordsOf(document).replace(/\n/g, ' ');
    expect(words).toContain('moved 25,4 mm left');
    expect(words).toContain('Socket K9 is new: 146 × 86 mm at (4064, 1270)');
    expect(words).toContain('Socket K3 is gone');
    for (const page of document.pages) {
      expect(textsOf(page)).toContain('Changes since A');
      expect(textsOf(page)).toContain('Against revision A of 2026-05-04, as it was issued.');
    }
  });

  it('put a cloud and its number on the wall for everything that has a place', () => {
    const [page] = changesSince(worked, since, measure).pages;
    const texts = page!.items.filter((item) => item.kind === 'text');
    for (const id of ['D1', 'K9', 'K3']) {
      const row = texts.findIndex(({ text }) => text.includes(` ${id} `));
      const number = texts[row - 1]!.text;
      expect(number).toMatch(/^\d+$/);
      // Once in the list, once in a tag on the picture.
      expect(texts.filter(({ text, colour }) => text === number && colour === 'red-lead')).toHaveLength(1);
    }
    const clouds = page!.items.filter(
      (item) =>
        item.kind === 'stroke' && item.closed && item.colour === 'red-lead' && item.points.length > 12,
    );
    expect(clouds.length).toBeGreaterThanOrEqual(3);
  });

  it('are in the units of the job, with no text on another, in each of them', () => {
    for (const units of lengthUnits) {
      const document = changesSince({ ...worked, job: { ...worked.job, units } }, since, measure);
      expect([units, textFaults(document, measure, true)]).toEqual([units, []]);
    }
    const inFeet = changesSince({ ...worked, job: { ...worked.job, units: 'ft-in' } }, since, measure);
    const words = wordsOf(inFeet).replace(/\n/g, ' ');
    expect(words).toContain('moved 1" left');
    expect(words).toContain(`at (13'-4", 4'-2")`);
  });

  it('go on on further pages where one wall has many', () => {
    const [one] = since.differences.filter(({ wall }) => wall === 'A');
    const many = Array.from({ length: 90 }, (_, i) => ({ ...one!, object: `K${i + 20}`, places: [] }));
    const document = changesSince(worked, { ...since, differences: many }, measure);
    expect(document.pages.length).toBeGreaterThan(1);
    expect(document.pages[0]!.format).toBe('A3');
    expect(textFaults(document, measure, true)).toEqual([]);
    const numbers = document.pages
      .flatMap(textsOf)
      .filter((text) => /^\d+$/.test(text))
      .map(Number);
    for (let number = 1; number <= 90; number++) expect(numbers).toContain(number);
  });

  it('are listed among the documents, but not where nothing differs', () => {
    const names = (from: WorkedOut, against: Since | null) =>
      composeDocuments(from, measure, { since: against }).map(({ name }) => name);
    expect(names(worked, since)).toContain('changes-since');
    expect(names(worked, { ...since, differences: [] })).not.toContain('changes-since');
    expect(names(worked, null)).not.toContain('changes-since');
    expect(sinceRevision(worked, undefined)).toBeNull();
  });
});
