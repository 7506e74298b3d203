import { describe, expect, it } from 'vitest';
import { clientView } from '../../core/drawings/client-view';
import { fillZone, zoneNotices, type ZoneNotice } from '../../core/drawings/client-view-zones';
import { measureWith } from '../../core/drawings/fonts';
import { figureHeight } from '../../core/drawings/standing-figure';
import { boxOf } from '../../core/geometry/polygon';
import { dayInWords } from '../../core/job/day-in-words';
import type { ZoneArea } from '../../core/zones/zone-area';
import { fontFiles } from './font-files';
import { textFaults, textsOf } from './page-checks';
import { workedJobs } from './worked-jobs';

const measure = measureWith(fontFiles);

describe.each(workedJobs)('client view of the job %s', (_, worked) => {
  const document = clientView(worked, measure);

  it('has a page for each wall with a zone', () => {
    expect(document.pages).toHaveLength(worked.walls.filter(({ zones }) => zones.length > 0).length);
  });

  it('shows no shop dimension: no figure of three or more digits but the date', () => {
    const date = dayInWords(worked.job.date);
    for (const text of document.pages.flatMap(textsOf)) {
      if (text !== date) expect(text).not.toMatch(/\d{3,}/);
    }
  });

  it('shows no panel mark and no panel line', () => {
    const texts = document.pages.flatMap(textsOf).join(' ');
    const panels = worked.walls.flatMap(({ zones }) => zones.flatMap(({ layout }) => layout?.panels ?? []));
    for (const { mark } of panels) expect(texts).not.toContain(mark);
  });

  it('lays no text on another and none near the edge of the paper', () => {
    expect(textFaults(document, measure, false)).toEqual([]);
  });

  it('names zones, revision and that it is a visual; warns of magnets where there are any', () => {
    const walls = worked.walls.filter(({ zones }) => zones.length > 0);
    document.pages.forEach((page, i) => {
      const texts = textsOf(page).join(' ');
      for (const { area } of walls[i]!.zones) expect(texts).toContain(area.zone.name);
      expect(texts).toContain(`Revision ${worked.job.revision}`);
      expect(texts).toContain('Visual only');
      if (walls[i]!.zones.some(({ layout }) => layout)) {
        expect(texts).toContain('Magnetic, heavy duty');
        expect(texts).toContain('pacemakers');
        expect(texts).toContain('small children');
      }
    });
  });

  it('stands a person of 1.75 m beside the wall, at the wall’s scale', () => {
    const walls = worked.walls.filter(({ zones }) => zones.length > 0);
    document.pages.forEach((page, i) => {
      const wall = page.items.find((item) => item.kind === 'fill' && item.colour === 'paper');
      const figure = page.items.filter((item) => item.kind === 'fill' && item.colour === 'hairline');
      const heightOf = (items: typeof page.items) => {
        const ys = items.flatMap((item) => (item.kind === 'fill' ? item.rings.flat().map(({ y }) => y) : []));
        return Math.max(...ys) - Math.min(...ys);
      };
      const { bottom, top } = boxOf(walls[i]!.survey.outline.ring);
      const perMm = heightOf([wall!]) / ((top - bottom) / 100);
      expect(heightOf(figure) / perMm).toBeGreaterThan(figureHeight * 0.99);
      expect(heightOf(figure) / perMm).toBeLessThan(figureHeight * 1.01);
    });
  });
});

describe('the rules of a zone to write on', () => {
  const toPaper = ({ x, y }: { x: number; y: number }) => ({ x: x / 2000, y: y / 2000 });
  const notices = workedJobs
    .flatMap(([, { walls }]) => walls.flatMap(({ zones }) => zoneNotices(zones.map(({ area }) => area))))
    .filter(({ kind }) => kind.surface === 'writable');
  const rulesOf = (notice: ZoneNotice, markings: readonly unknown[]) => {
    const zone = { ...notice.zone, zone: { ...notice.zone.zone, markings } } as ZoneArea;
    return fillZone({ ...notice, zone }, toPaper).filter(
      (item) => 'colour' in item && item.colour === 'white',
    );
  };

  it('are drawn, but not where lines that are marked could be taken for them', () => {
    expect(notices.length).toBeGreaterThan(0);
    for (const notice of notices) {
      expect(rulesOf(notice, []).length).toBeGreaterThan(0);
      expect(rulesOf(notice, [{}])).toEqual([]);
    }
  });
});

describe('dayInWords', () => {
  it.each([
    ['2026-03-02', '2 March 2026'],
    ['2026-12-31', '31 December 2026'],
    ['spring', 'spring'],
    ['', ''],
  ])('%s reads %s', (date, text) => expect(dayInWords(date)).toBe(text));
});
