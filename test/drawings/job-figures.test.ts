import { describe, expect, it } from 'vitest';
import { figuresOf, massOf } from '../../core/drawings/job-figures';
import { rectangle } from '../../core/geometry/polygon';
import { changeJob } from '../../core/job/changes';
import type { Panel } from '../../core/panels/panel';
import { smallWorkedOut } from './small-job';
import { workedJobs } from './worked-jobs';

describe.each(workedJobs)('figures of the job %s', (_, worked) => {
  const figures = figuresOf(worked);

  it('conserve steel: panels + kept offcuts + waste = stock sheets and rack pieces', () => {
    const sheets = worked.cutting.sheets.reduce((sum, { width, height }) => sum + width * height, 0);
    expect(figures.panelArea + figures.keptArea + figures.wasteArea).toBe(sheets);
    expect(figures.wasteArea).toBeGreaterThanOrEqual(0);
  });

  it('agree with the plan on what to order', () => {
    expect(figures.planned).toBe(worked.cutting.newSheets);
    expect(figures.toOrder).toBe(figures.planned + figures.spares);
    expect(figures.whole + figures.cut).toBe(figures.panels);
  });

  it('add up over deliveries', () => {
    const deliveries = [...new Set(worked.cutting.sheets.map(({ delivery }) => delivery))];
    const parts = deliveries.map((delivery) => figuresOf(worked, delivery));
    const sum = (pick: (part: typeof figures) => number) =>
      parts.reduce((total, part) => total + pick(part), 0);
    expect(sum(({ panels }) => panels)).toBe(figures.panels);
    expect(sum(({ panelArea }) => panelArea)).toBe(figures.panelArea);
    expect(sum(({ planned }) => planned)).toBe(figures.planned);
    expect(sum(({ cutLength }) => cutLength)).toBeCloseTo(figures.cutLength, 4);
  });
});

describe('figuresOf', () => {
  it('counts the hand-worked job as it is by eye', () => {
    expect(figuresOf(smallWorkedOut())).toMatchObject({
      panels: 16,
      whole: 6,
      cut: 10,
      slivers: 0,
      planned: 12,
      spares: 1,
      toOrder: 13,
      rackPieces: 1,
      offcutsKept: [{ sheet: 'N8', stock: 'S1', width: 50000, height: 25000 }],
    });
  });

  it('has no mass while a stock has no thickness', () => {
    const worked = smallWorkedOut();
    const job = changeJob(worked.job, {
      stock: worked.job.stock.map((stock) => ({ ...stock, thickness: undefined })),
    });
    expect(figuresOf({ ...worked, job }).steelMass).toBeNull();
  });
});

describe('steel at 7850 kg/m³, which EN 1991-1-1:2002 table A.4 gives as 77,0 to 78,5 kN/m³', () => {
  const panel = (width: number, height: number): Panel => ({
    mark: 'A-Z1-01',
    stock: 'S1',
    full: true,
    sliver: false,
    outline: rectangle(0, 0, width * 100, height * 100),
    causes: [],
    cell: { x: 0, y: 0 },
    course: 0,
  });

  it.each([
    [1000, 2000, 7.85],
    [1250, 2500, 12.266],
    [1500, 3000, 17.663],
  ])('a %d × %d sheet of 0.5 mm weighs %d kg', (width, height, mass) => {
    expect(massOf([panel(width, height)], smallWorkedOut())).toBeCloseTo(mass, 3);
  });

  it('weighs what the table says within its range, at 9.80665 m/s²', () => {
    const newtons = massOf([panel(1000, 1000)], smallWorkedOut())! * 9.80665;
    const perCubicMetre = newtons / 0.0005 / 1000;
    expect(perCubicMetre).toBeGreaterThan(76.9);
    expect(perCubicMetre).toBeLessThan(78.5);
  });
});
