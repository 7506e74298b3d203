import { describe, expect, it } from 'vitest';
import { cutPatterns } from '../../../core/drawings/cut-patterns';
import { patternDrawings } from '../../../core/drawings/workshop/pattern-drawing';
import { toTrueSizeSvg } from '../../../core/drawings/workshop/true-size-svg';
import { wallDrawings } from '../../../core/drawings/workshop/wall-drawing';
import { changeJob } from '../../../core/job/changes';
import { smallWorkedOut } from '../small-job';
import { workedJobs } from '../worked-jobs';
import { readXml } from './read-drawing';
import { roundWalls } from './round-walls';

describe.each([...workedJobs, ['round', roundWalls()] as const])(
  'SVG of the job %s, read by xmldom (W3C SVG 1.1, 7.2)',
  (_, worked) => {
    it.each([...patternDrawings(worked), ...wallDrawings(worked)])(
      '$name is in real millimetres',
      (drawing) => {
        const svg = readXml(toTrueSizeSvg(drawing));
        const [, , width, height] = svg.getAttribute('viewBox')!.split(' ');
        expect(svg.getAttribute('width')).toBe(`${width}mm`);
        expect(svg.getAttribute('height')).toBe(`${height}mm`);
        const groups = Array.from(svg.getElementsByTagName('g'));
        expect(groups.map((group) => group.getAttribute('id'))).toEqual([...drawing.layers]);
        for (const text of Array.from(svg.getElementsByTagName('text')))
          expect((text.parentNode as unknown as Element).getAttribute('id')).toBe('text');
      },
    );

    it('draws as many contours to cut as there are rings of panels', () => {
      const { patterns } = cutPatterns(worked);
      patternDrawings(worked).forEach((drawing, i) => {
        const groups = Array.from(readXml(toTrueSizeSvg(drawing)).getElementsByTagName('g'));
        const cut = groups.find((group) => group.getAttribute('id') === 'cut')!;
        const shapes = [
          ...Array.from(cut.getElementsByTagName('path')),
          ...Array.from(cut.getElementsByTagName('circle')),
        ];
        const rings = patterns[i]!.drawn.placements.flatMap(({ outline }) => [
          outline.outer,
          ...outline.holes,
        ]);
        expect(shapes).toHaveLength(rings.length);
      });
    });
  },
);

describe('true-size SVG', () => {
  it('has the arch as an arc of 450 mm that turns to the right side', () => {
    const text = toTrueSizeSvg(wallDrawings(roundWalls())[0]!);
    expect(text).toMatch(/A450 450 0 0 0 1000 -1200|A450(\.\d+)? 450(\.\d+)? 0 [01] 0 1000 -1200/);
  });

  it('keeps markup in a name a name', () => {
    const worked = smallWorkedOut();
    const job = changeJob(worked.job, { name: '</svg><script>&' });
    const svg = readXml(toTrueSizeSvg(patternDrawings({ ...worked, job })[0]!));
    expect(svg.getElementsByTagName('script')).toHaveLength(0);
    expect(svg.textContent).toContain('</svg><script>&');
  });
});
