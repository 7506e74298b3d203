import { describe, expect, it } from 'vitest';
import { difference } from '../../core/geometry/clip';
import { boxOf, polygonArea, rectangle, type Point } from '../../core/geometry/polygon';
import { collapseArcs } from '../../core/drawings/panel-arcs';
import { panelMeasures } from '../../core/drawings/panel-measures';
import { formatHundredth } from '../../core/drawings/figures';
import { panelWords } from '../../core/drawings/panel-words';
import { placedPanels, type PlacedPanel } from '../../core/drawings/placed-panels';
import { smallWorkedOut } from './small-job';
import { workedJobs } from './worked-jobs';

const small = placedPanels(smallWorkedOut());
const named = (mark: string): PlacedPanel => small.find(({ panel }) => panel.mark === mark)!;

describe.each(workedJobs)('panel measures of the job %s', (_, worked) => {
  it('agree with the outline in size and area, and cutouts make up what is missing', () => {
    for (const placed of placedPanels(worked)) {
      const { left, bottom, right, top } = boxOf(placed.panel.outline.outer);
      const measures = panelMeasures(placed.panel, placed);
      expect([measures.width, measures.height]).toEqual([right - left, top - bottom]);
      expect(measures.area).toBe(polygonArea(placed.panel.outline));
      const missing = difference([rectangle(0, 0, measures.width, measures.height)], [measures.shape]);
      expect(measures.cutouts).toHaveLength(missing.length);
    }
  });

  it('give words to every cut panel and none to a whole one', () => {
    for (const placed of placedPanels(worked)) {
      const { cutFor } = panelWords(placed.panel, placed, formatHundredth);
      expect(cutFor === '–').toBe(placed.panel.full);
    }
  });
});

describe('panelMeasures', () => {
  it('places a notch by its distance from the lower left corner', () => {
    // Socket K4 at 2000, 760 of 146 × 86 with 5 clearance; panel from 1900, 800: 95 to 251 across, 0 to 51 up.
    const placed = named('A-Z1-02');
    const [notch, ...others] = panelMeasures(placed.panel, placed).cutouts;
    expect(others).toEqual([]);
    expect(notch).toMatchObject({
      kind: 'notch',
      form: 'rectangle',
      box: { left: 9500, bottom: 0, right: 25100, top: 5100 },
      sides: ['foot'],
      causes: [{ kind: 'fitting', id: 'K4' }],
    });
    expect(panelWords(placed.panel, placed, formatHundredth).cutFor).toBe('socket K4, notch at the foot');
  });

  it('gives a round hole as centre and diameter, clearance included', () => {
    // Pipe P1 of 40 at 2650, 1550 with 10 clearance; panel from 2400, 1300.
    const placed = named('A-Z1-07');
    const [hole] = panelMeasures(placed.panel, placed).cutouts;
    expect(hole).toMatchObject({ kind: 'hole', circle: { x: 25000, y: 25000, diameter: 6000 }, sides: [] });
    expect(panelWords(placed.panel, placed, formatHundredth)).toEqual({
      cutFor: 'pipe P1, round hole inside',
      cutouts: ['pipe P1: round hole Ø 60, centre 250 from the left, 250 from the foot'],
    });
  });

  it('calls a corner cut off along one line a slant', () => {
    const placed = named('A-Z1-01');
    const { x, y } = placed.panel.cell;
    const outer: Point[] = [
      { x, y },
      { x: x + 50000, y },
      { x: x + 50000, y: y + 30000 },
      { x: x + 25000, y: y + 50000 },
      { x, y: y + 50000 },
    ];
    const stock = { kind: 'stock-edge' } as const;
    const causes = [[stock, stock, { kind: 'rim', side: 'ceiling' } as const, stock, stock]];
    const panel = { ...placed.panel, full: false, outline: { outer, holes: [] }, causes };
    const [slant] = panelMeasures(panel, placed).cutouts;
    expect(slant).toMatchObject({ kind: 'slant', sides: ['head', 'right'] });
    expect(panelWords(panel, placed, formatHundredth)).toEqual({
      cutFor: 'ceiling, slant at the upper right corner',
      cutouts: ['ceiling: slanted corner, 250 along the head, 200 along the right'],
    });
  });

  it('says which sides give way to what', () => {
    const words = (mark: string) => panelWords(named(mark).panel, named(mark), formatHundredth).cutFor;
    expect(words('A-Z1-04')).toBe('zone edge at the right');
    expect(words('A-Z1-09')).toBe('zone edge at the head');
    expect(words('A-Z1-12')).toBe('zone edge at the head and right');
  });
});

describe('collapseArcs', () => {
  it('draws a half circle together into one arc between its ends', () => {
    const radius = 40000;
    const half = Array.from({ length: 181 }, (_, i) => ({
      x: Math.round(radius * Math.cos((i * Math.PI) / 180)),
      y: Math.round(radius * Math.sin((i * Math.PI) / 180)),
    }));
    const ring = [{ x: -radius, y: -10000 }, { x: radius, y: -10000 }, ...half];
    const arc = { x: 0, y: 0, radius };
    const corners = collapseArcs(ring, [arc]);
    expect(corners.map(({ x, y }) => [x, y])).toEqual([
      [-radius, -10000],
      [radius, -10000],
      [radius, 0],
      [-radius, 0],
    ]);
    expect(corners.map((corner) => corner.arc)).toEqual([undefined, undefined, arc, undefined]);
  });

  it('keeps one corner of a full circle', () => {
    const ring = Array.from({ length: 180 }, (_, i) => ({
      x: Math.round(30000 * Math.cos((i * Math.PI) / 90)),
      y: Math.round(30000 * Math.sin((i * Math.PI) / 90)),
    }));
    expect(collapseArcs(ring, [{ x: 0, y: 0, radius: 30000 }])).toHaveLength(1);
  });
});
