import { describe, expect, it } from 'vitest';
import { bundleLabels } from '../../core/drawings/bundle-labels';
import { bundlesOf, mostLifted } from '../../core/drawings/bundles';
import { cutList } from '../../core/drawings/cut-list';
import { measureWith } from '../../core/drawings/fonts';
import { demoJob } from '../../core/job/demo';
import { emptyJob } from '../../core/job/defaults';
import type { Job } from '../../core/job/schema';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';
import { textFaults, textsOf, wordsOf } from './page-checks';
import { workedJobs } from './worked-jobs';

const measure = measureWith(fontFiles);

describe.each(workedJobs)('bundle labels of the job %s', (_, worked) => {
  const labels = bundleLabels(worked, measure);
  const bundles = bundlesOf(worked);
  const marks = worked.walls.flatMap(({ zones }) =>
    zones.flatMap(({ layout }) => (layout?.panels ?? []).map(({ mark }) => mark)),
  );

  it('lay no text on another, none out of the frame, none under 2.5 mm', () => {
    expect(textFaults(labels, measure, false)).toEqual([]);
  });

  it('give every panel one label with its mark in capitals 10 mm high', () => {
    const large = labels.pages.flatMap(({ items }) =>
      items.flatMap((item) => (item.kind === 'text' && item.height === 10 ? [item.text] : [])),
    );
    expect([...large].sort()).toEqual([...marks].sort());
  });

  it('put every panel into one bundle, none heavier than one person may lift unless it is one panel', () => {
    expect(bundles.flatMap(({ panels }) => panels.map(({ panel }) => panel.mark)).sort()).toEqual(
      [...marks].sort(),
    );
    for (const { mass, panels } of bundles) {
      if (panels.length > 1) expect(mass).toBeLessThanOrEqual(mostLifted);
    }
  });

  it('begin every delivery on a page of its own', () => {
    for (const page of labels.pages) {
      const deliveries = new Set(
        textsOf(page).flatMap((text) => /(Delivery \S+?|Last delivery)(?=[:;])/.exec(text)?.[1] ?? []),
      );
      expect(deliveries.size).toBe(1);
    }
  });
});

describe('bundlesOf', () => {
  const steel = 'steel-panel';
  const square = (id: string, room?: string): Job['walls'][number] => ({
    id,
    name: '',
    ...(room !== undefined && { room }),
    outline: [
      [0, 0],
      [2000, 0],
      [2000, 2000],
      [0, 2000],
    ],
    rim: { floor: 0, ceiling: 0, left: 0, right: 0 },
    openings: [],
    fittings: [],
    zones: [
      {
        id: 'Z1',
        name: '',
        shape: [
          [0, 0],
          [2000, 0],
          [2000, 1000],
          [0, 1000],
        ],
        holes: [],
        buildUp: steel,
        layout: { stock: 'S1', start: 'lower-left', turned: false, jointGap: 0, stagger: 0, leastWidth: 50 },
      },
    ],
  });
  const sheet = (thickness?: number): Job['stock'][number] => ({
    id: 'S1',
    name: '',
    width: 1000,
    height: 1000,
    price: 10,
    hasFace: false,
    spares: 0,
    ...(thickness !== undefined && { thickness }),
  });
  const jobOf = (walls: Job['walls'], thickness?: number): Job => ({
    ...emptyJob('Studio'),
    stock: [sheet(thickness)],
    walls,
  });
  const bundles = (job: Job) => bundlesOf(workOutFully(job, { steps: 2 }));

  it('weighs steel with 7850 kg/m³ (EN 1991-1-1, table A.4: 77,0 to 78,5 kN/m³)', () => {
    // 2 m² of 0.5 mm: 0.001 m³.
    const [bundle] = bundles(jobOf([square('A')], 0.5));
    expect(bundle!.mass).toBeCloseTo(7.85, 6);
    const weightPerCubicMetre = (bundle!.mass! / 0.001) * 9.80665;
    expect(weightPerCubicMetre).toBeGreaterThan(76_900);
    expect(weightPerCubicMetre).toBeLessThan(78_500);
  });

  it('ties the walls of a room together and keeps walls without a room apart', () => {
    const job = jobOf([square('A', 'Shop'), square('B'), square('C', 'Shop'), square('D')], 0.5);
    expect(bundles(job).map(({ place, panels }) => [place, panels.length])).toEqual([
      ['Shop', 4],
      ['wall B', 2],
      ['wall D', 2],
    ]);
  });

  it('parts what is too heavy, and says so of a single panel that is', () => {
    // 4 panels of 15.7 kg: each has to go alone; of 31.4 kg: each is too heavy for one.
    expect(
      bundles(jobOf([square('A', 'Shop'), square('B', 'Shop')], 2)).map(({ isHeavy }) => isHeavy),
    ).toEqual([false, false, false, false]);
    const heavy = workOutFully(jobOf([square('A')], 4), { steps: 2 });
    expect(bundlesOf(heavy).map(({ isHeavy }) => isHeavy)).toEqual([true, true]);
    expect(wordsOf(bundleLabels(heavy, measure))).toContain(
      'Heavier than 25 kg: two people or a lifting aid',
    );
    expect(wordsOf(cutList(heavy, measure))).toContain('too heavy for one');
  });

  it('says that a weight is not known where a thickness is missing', () => {
    const worked = workOutFully(jobOf([square('A')]), { steps: 2 });
    expect(bundlesOf(worked).map(({ mass }) => mass)).toEqual([null]);
    expect(wordsOf(bundleLabels(worked, measure))).toContain('weight not known');
  });

  it('names the demo’s rooms as its walls until they have one', () => {
    expect(bundles(demoJob())[0]!.place).toBe('wall A Proofing wall');
  });
});
