import { describe, expect, it } from 'vitest';
import { clientView } from '../../core/drawings/client-view';
import { fillZone, zoneNotices, type ZoneNotice } from '../../core/drawings/client-view-zones';
import { measureWith } from '../../core/drawings/fonts';
import type { Fill, Stroke } from '../../core/drawings/page';
import { childHeight } from '../../core/drawings/picture/people';
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

  it('stands an adult of 1.75 m and a child of 1.16 m beside the wall, at the wall’s scale, on one floor', () => {
    const walls = worked.walls.filter(({ zones }) => zones.length > 0);
    document.pages.forEach((page, i) => {
      const wall = page.items.find(
        (item) => item.kind === 'stroke' && item.width === 0.5 && item.closed === true,
      ) as Stroke;
      const figure = page.items.filter(
        (item): item is Fill => item.kind === 'fill' && item.colour === 'hairline',
      );
      const ysOf = (fills: readonly Fill[]) => fills.flatMap(({ rings }) => rings.flat().map(({ y }) => y));
      const spanOf = (ys: readonly number[]) => Math.max(...ys) - Math.min(...ys);
      const { bottom, top } = boxOf(walls[i]!.survey.outline.ring);
      const perMm = spanOf(wall.points.map(({ y }) => y)) / ((top - bottom) / 100);
      // Body and head of each.
      expect(figure).toHaveLength(4);
      const [adult, child] = [ysOf(figure.slice(0, 2)), ysOf(figure.slice(2))];
      expect(Math.abs(spanOf(adult) / perMm - figureHeight)).toBeLessThan(figureHeight * 0.01);
      expect(Math.abs(spanOf(child) / perMm - childHeight)).toBeLessThan(childHeight * 0.01);
      expect(Math.min(...adult)).toBeCloseTo(Math.min(...child), 0);
    });
  });

  it('numbers every zone in the picture as the legend does', () => {
    document.pages.forEach((page) => {
      const texts = textsOf(page);
      const legend = texts.flatMap((text) => /^(\d+) {2}([^:]+)$/.exec(text) ?? []);
      expect(legend.length).toBeGreaterThan(0);
      const numbers = new Set(texts.flatMap((text) => /^(\d+) {2}/.exec(text)?.[1] ?? []));
      for (const number of numbers) {
        const said = texts.filter((text) => text === number || text.startsWith(`${number}  `));
        expect(said.length, `zone ${number} in picture and legend`).toBe(2);
      }
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
