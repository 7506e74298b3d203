import { describe, expect, it } from 'vitest';
import { regionArea } from '../../core/geometry/polygon';
import { demoJob } from '../../core/job/demo';
import { isoDay } from '../../core/job/day';
import type { Job } from '../../core/job/schema';
import { dayOf, lastDayOf, workBefore } from '../../core/programme/calendar';
import { dayText, endText, startText } from '../../core/programme/day-text';
import { planProgramme, type Programme } from '../../core/programme/programme';
import { settingsOf } from '../../core/programme/settings';
import { workOutFully } from '../../core/run/pipeline';
import { at, moment } from './moments';
import { jobOf, productOf, wallsOf, type Layers } from './small-zone';

const finish = productOf({
  id: 'finish',
  name: 'Writable finish',
  layer: 'writable',
  drying: 'reaction',
  coats: 3,
  touchDry: 4,
  recoatLeast: 6,
  cure: 120,
  pace: 10,
});
const coated: Layers = { products: [finish], layers: [{ kind: 'writable', product: 'finish' }] };
/** Twenty minutes round a coat, 10 m² by two people at 10 m²/h each: fifty minutes. */
const start = { start: '2026-03-02', acclimatise: 0 };

function plan(programme: Record<string, unknown> | undefined, layers: Layers = coated): Programme {
  const job = jobOf(programme, layers);
  return planProgramme(job, wallsOf(job));
}

function datesOf({ tasks }: Programme): string[] {
  return tasks.map(({ name, start: from, finish: to }) => `${name}: ${moment(from)} to ${moment(to)}`);
}

describe('a zone with three coats (worked by hand)', () => {
  it('is coated in three days at six hours between coats, and cured five days later', () => {
    expect(datesOf(plan(start))).toEqual([
      'Protect and mask: 2026-03-02 08:00 to 2026-03-02 08:35',
      'Coat 1 of 3: Writable finish: 2026-03-02 08:35 to 2026-03-02 09:25',
      'Coat 2 of 3: Writable finish: 2026-03-02 15:25 to 2026-03-02 16:15',
      'Coat 3 of 3: Writable finish: 2026-03-03 08:00 to 2026-03-03 08:50',
      'Demask: 2026-03-03 13:00 to 2026-03-03 13:25',
      'Ready for writing: 2026-03-08 08:50 to 2026-03-08 08:50',
      'Inspection: 2026-03-09 08:00 to 2026-03-09 09:00',
      'Snags put right: 2026-03-09 09:00 to 2026-03-09 11:00',
      'Handover: 2026-03-09 11:00 to 2026-03-09 11:00',
    ]);
  });

  it('has its drying and its cure as waits, and a visit before and one after', () => {
    const { waits, visits } = plan(start);
    expect(waits.map(({ kind, start: from, finish: to }) => `${kind} ${moment(from)} ${moment(to)}`)).toEqual(
      [
        'dry 2026-03-02 09:25 2026-03-02 15:25',
        'dry 2026-03-02 16:15 2026-03-02 22:15',
        'dry 2026-03-03 08:50 2026-03-03 12:50',
        'cure 2026-03-03 08:50 2026-03-08 08:50',
      ],
    );
    expect(visits.map(({ first, last }) => [isoDay(first), isoDay(last)])).toEqual([
      ['2026-03-02', '2026-03-03'],
      ['2026-03-09', '2026-03-09'],
    ]);
  });

  it('is critical along coats, cure and inspection, and in nothing else', () => {
    const { tasks } = plan(start);
    expect(tasks.filter(({ critical }) => !critical).map(({ name }) => name)).toEqual(['Demask']);
  });

  it('ends its visit during a wait that is longer than the crew stays', () => {
    const { visits } = plan({ ...start, visitGap: 4 });
    expect(visits.map(({ first, last }) => [isoDay(first), isoDay(last)])).toEqual([
      ['2026-03-02', '2026-03-02'],
      ['2026-03-02', '2026-03-03'],
      ['2026-03-09', '2026-03-09'],
    ]);
  });

  it('dries half as fast again where the room is cool, by the factor that the job gives', () => {
    const second = (programme: Record<string, unknown>) =>
      moment(plan({ ...start, ...programme }).tasks[2]!.start);
    expect(second({ climate: { temperature: 12 } })).toBe('2026-03-03 08:00');
    expect(second({ climate: { temperature: 12 }, slowing: { factor: 1.2 } })).toBe('2026-03-03 08:00');
    expect(second({ climate: { temperature: 12 }, slowing: { factor: 1.05 } })).toBe('2026-03-02 15:43');
    // What hardens by reaction does not mind damp air.
    expect(second({ climate: { temperature: 20, humidity: 75 } })).toBe('2026-03-02 15:25');
    expect(plan({ ...start, climate: { temperature: 12 } }).findings.map(({ code }) => code)).toContain(
      'drying-slowed',
    );
  });

  it('takes the rate of the job before the pace of the product, and a larger crew', () => {
    const work = (programme: Record<string, unknown>) => plan({ ...start, ...programme }).tasks[1]!.work;
    expect(work({})).toBe(50);
    expect(work({ rates: { coat: 20 } })).toBe(35);
    expect(work({ crew: 1 })).toBe(80);
    expect(work({ crew: 3 })).toBe(40);
  });
});

describe('a filler that tapers out beyond its zone (worked by hand)', () => {
  it('is worked on as far as it is drawn out, and so is what lies over it, but nothing below', () => {
    const filler = productOf({ id: 'F1', name: 'Deep filler', layer: 'filler', unit: 'kg', thickness: 2 });
    const job = jobOf(
      { start: '2026-03-02' },
      {
        products: [filler],
        layers: [{ kind: 'keying' }, { kind: 'filler', product: 'F1' }, { kind: 'sanding' }],
      },
    );
    const walls = wallsOf(job);
    // 300 mm at the one edge of the zone that is not the wall's own, 2.5 m high: 0.75 m² beyond its 10 m².
    expect(regionArea(walls[0]!.zones[0]!.buildUp.edges.feather) / 1e10).toBeCloseTo(0.75, 6);
    const minutes = (kind: string) =>
      planProgramme(job, walls).tasks.find((task) => task.kind === kind)?.work;
    // Two people: 10 ÷ 20 h + 10 min; 10.75 ÷ 16 h + 20 min, + 15 min; 10.75 ÷ 60 h + 15 min; up to whole five minutes.
    expect(['key', 'fill', 'sand', 'lamp-check'].map(minutes)).toEqual([40, 65, 60, 30]);
  });
});

describe('steel whose filler tapers out beyond it (worked by hand)', () => {
  it('is primed as far as its panels, and has its bonding coat as far as the filler', () => {
    const filler = productOf({ id: 'F1', name: 'Deep filler', layer: 'filler', unit: 'kg', thickness: 2 });
    const kinds = ['steel', 'metal-primer', 'bonding-coat', 'filler'];
    const job = jobOf(
      { start: '2026-03-02' },
      {
        products: [filler],
        layers: kinds.map((kind) => (kind === 'filler' ? { kind, product: 'F1' } : { kind })),
      },
    );
    const walls = wallsOf(job);
    const feather = regionArea(walls[0]!.zones[0]!.buildUp.edges.feather) / 1e10;
    expect(feather).toBeGreaterThan(0.5);
    const { tasks } = planProgramme(job, walls);
    const minutes = (kind: string) => tasks.find((task) => task.kind === kind)?.work;
    // Two people at 12 m²/h each and 20 minutes: 45 for 10 m², 50 from the first bit more on.
    expect([minutes('metal-primer'), minutes('bonding-coat')]).toEqual([45, 50]);
  });
});

describe('when the work begins', () => {
  it('from an order: after delivery on a working day, and after the materials have lain in the room', () => {
    // Ordered on Friday 20th, ten days: Monday 2nd; lies there until Tuesday 08:00.
    const { supply, tasks } = plan({ ordered: '2026-02-20' });
    expect(moment(supply.delivery)).toBe('2026-03-02 08:00');
    expect(moment(tasks[0]!.start)).toBe('2026-03-03 08:00');
    expect(supply.decides).toBe(true);
  });

  it('on a given day: says by when to order', () => {
    const { supply, tasks } = plan({ start: '2026-03-02', leadTime: 5 });
    expect(moment(tasks[0]!.start)).toBe('2026-03-02 08:00');
    expect(moment(supply.delivery)).toBe('2026-02-27 17:00');
    expect(isoDay(supply.order)).toBe('2026-02-22');
  });

  it('later than on the given day, and says so, if the order is late', () => {
    const { findings, tasks } = plan({ start: '2026-03-02', ordered: '2026-02-27' });
    expect(moment(tasks[0]!.start)).toBe('2026-03-10 08:00');
    expect(findings.map(({ code, text }) => [code, text])).toEqual([
      [
        'materials-late',
        'Materials ordered on 2026-02-27 are not there and acclimatised when the work is to begin: it begins on 2026-03-10 instead; order sooner, or move the first day.',
      ],
    ]);
  });

  it('on day 1 where no day is named, a Monday', () => {
    const programme = plan(undefined);
    expect(startText(programme.tasks[0]!.start, programme.settings)).toBe('day 1 08:00');
    expect(endText(programme.handover!, programme.settings)).toBe('day 8 11:00');
    expect(dayText(programme.supply.order, programme.settings)).toBe('13 days before');
    const dated = plan({ start: '2026-03-02' });
    const shift = dated.tasks[0]!.start - programme.tasks[0]!.start;
    expect(dated.tasks.map((task) => task.start - shift)).toEqual(programme.tasks.map((task) => task.start));
  });

  it('not on a holiday; work stops for it and drying does not', () => {
    const { tasks } = plan({ ...start, holidays: ['2026-03-02', '2026-03-04'] });
    expect(moment(tasks[0]!.start)).toBe('2026-03-03 08:00');
    expect(moment(tasks[3]!.start)).toBe('2026-03-05 08:00');
    expect(moment(tasks[5]!.start)).toBe('2026-03-10 08:50');
  });

  it('at weekends and at night where they are worked', () => {
    const saturday = plan({ start: '2026-03-07', acclimatise: 0, weekends: true });
    expect(moment(saturday.tasks[0]!.start)).toBe('2026-03-07 08:00');
    const night = plan({ ...start, nights: true });
    expect(moment(night.tasks[0]!.start)).toBe('2026-03-02 00:00');
    expect(moment(night.tasks[3]!.start)).toBe('2026-03-02 14:15');
  });
});

describe('drying times that nobody has given', () => {
  it('are usual ones, and are said to be', () => {
    const silent = productOf({ id: 'finish', name: 'Paint of the client', layer: 'chalk', coats: 2 });
    const layers: Layers = {
      products: [silent],
      layers: [{ kind: 'primer' }, { kind: 'chalk', product: 'finish' }],
    };
    const { findings, waits } = plan(start, layers);
    expect(findings.map(({ text }) => text)).toEqual([
      'The layer “primer” without a product gives no time for it: the programme takes 12 h to dry and 24 h to cure, as is usual; enter what the data sheet says.',
      'Paint of the client gives no time for it: the programme takes 6 h to dry and 72 h to cure, as is usual; enter what the data sheet says.',
    ]);
    expect(waits.map(({ start: from, finish: to }) => (to - from) / 60)).toEqual([12, 6, 6, 72]);
    expect(plan(start).findings).toEqual([]);
  });
});

describe('greatest waits between coats', () => {
  const short = productOf({ ...finish, coats: 2, recoatLeast: 6, recoatMost: 24 });
  const layers: Layers = { products: [short], layers: [{ kind: 'writable', product: 'finish' }] };

  it('put a first coat off that could not be followed before the weekend is over', () => {
    // On Friday from 08:35 it would dry until 15:25: the second coat can follow on the same day.
    const onFriday = plan({ start: '2026-03-06', acclimatise: 0 }, layers);
    expect(moment(onFriday.tasks[1]!.start)).toBe('2026-03-06 08:35');
    // With a shorter day it cannot, and on Monday a day has passed.
    const shortDay = plan(
      { start: '2026-03-06', acclimatise: 0, hours: { from: '08:00', to: '14:00' } },
      layers,
    );
    expect(moment(shortDay.tasks[1]!.start)).toBe('2026-03-09 08:00');
    expect(moment(shortDay.tasks[2]!.start)).toBe('2026-03-10 08:00');
    expect(shortDay.findings).toEqual([]);
  });

  it('are reported where no day keeps them', () => {
    const never = productOf({ ...finish, coats: 2, recoatLeast: 6, recoatMost: 10 });
    const { findings } = plan(
      { ...start, hours: { from: '08:00', to: '14:00' } },
      { ...layers, products: [never] },
    );
    expect(findings).toEqual([
      {
        level: 'warning',
        code: 'recoat-too-late',
        wall: 'A',
        object: 'Z1',
        text:
          '“Coat 2 of 2: Writable finish” in zone Z1 (Proofs) on wall A (Proofing wall) comes 22.6 h after ' +
          '“Coat 1 of 2: Writable finish”, which takes it for 10 h at most: work longer hours there, or key the coat below first.',
      },
    ]);
  });
});

describe('several zones', () => {
  it('share the crew: it is in one place at a time, and works in one zone while another dries', () => {
    const { tasks, settings } = plan(start, { ...coated, zones: 3 });
    const work = tasks.filter((task) => task.work > 0).sort((a, b) => a.start - b.start);
    work.slice(1).forEach((task, i) => expect(task.start).toBeGreaterThanOrEqual(work[i]!.finish));
    const one = plan(start).tasks.find(({ kind }) => kind === 'demask')!;
    const lastDemask = Math.max(...tasks.filter(({ kind }) => kind === 'demask').map((task) => task.finish));
    const took = (finishes: number) =>
      workBefore(settings.calendar, finishes) - workBefore(settings.calendar, at('2026-03-02 08:00'));
    expect(took(lastDemask)).toBeLessThan(3 * took(one.finish));
  });

  it('too large to coat in a day are said to be', () => {
    const { findings } = plan({ ...start, crew: 1, rates: { coat: 1 } });
    expect(findings.filter(({ code }) => code === 'coat-longer-than-day')).toHaveLength(3);
    expect(findings[0]!.text).toContain('takes 10.3 h, more than a working day');
  });

  it('without layers or without a zone leave nothing to do', () => {
    const { tasks, handover, visits } = plan(start, { layers: [] });
    expect([tasks, handover, visits]).toEqual([[], null, []]);
  });
});

describe('ready build-ups (common practice, no source)', () => {
  const dayCount = (programme: Programme, first: number, last: number) => {
    const { calendar } = programme.settings;
    return (
      workBefore(calendar, (lastDayOf(last) + 1) * 1440) / calendar.dayWork -
      workBefore(calendar, dayOf(first) * 1440) / calendar.dayWork
    );
  };
  const readyZone = (buildUp: string): Programme => {
    const job = jobOf(start) as Job;
    const [wall] = job.walls;
    const zones = wall!.zones.map(({ layers: _, ...zone }) => ({ ...zone, buildUp }));
    const ready = { ...job, walls: [{ ...wall!, zones }] } as Job;
    return planProgramme(ready, wallsOf(ready));
  };

  it.each(['writable', 'clear-writable', 'chalk', 'magnetic-coating'])(
    'the coats of %s with the sealer below them take two to four working days before cure',
    (buildUp) => {
      const programme = readyZone(buildUp);
      const coats = programme.tasks.filter(({ kind }) => kind === 'coat' || kind === 'seal');
      expect(coats.length).toBeGreaterThan(1);
      const finishOnly =
        buildUp === 'magnetic-coating' ? coats.filter(({ name }) => !name.includes('agnetic')) : coats;
      const days = dayCount(programme, finishOnly[0]!.start, finishOnly.at(-1)!.finish);
      expect(days).toBeGreaterThanOrEqual(2);
      expect(days).toBeLessThanOrEqual(4);
    },
  );

  it('a three-coat two-component writable finish has 6 to 8 h between coats and 5 to 6 days of cure', () => {
    const { waits, tasks } = readyZone('writable');
    const coats = tasks.flatMap(({ kind }, i) => (kind === 'coat' ? [i] : []));
    expect(coats).toHaveLength(3);
    const between = waits.filter(
      ({ kind, after, before }) => kind === 'dry' && coats.includes(after) && coats.includes(before),
    );
    expect(between).toHaveLength(2);
    for (const { start: from, finish: to } of between) {
      expect((to - from) / 60).toBeGreaterThanOrEqual(6);
      expect((to - from) / 60).toBeLessThanOrEqual(8);
    }
    const cure = waits.find(({ kind }) => kind === 'cure')!;
    expect((cure.finish - cure.start) / 1440).toBeGreaterThanOrEqual(5);
    expect((cure.finish - cure.start) / 1440).toBeLessThanOrEqual(6);
  });

  it('steel panels are propped, cure, and are primed, reinforced, filled, sanded, looked at, sealed and coated in this order', () => {
    const { programme: _, ...undated } = demoJob();
    const worked = workOutFully(undated as Job, { steps: 1 });
    const { tasks, waits, ready, settings } = planProgramme(worked.job, worked.walls);
    const steel = tasks.filter(({ wall, zone }) => wall === 'C' && zone === 'Z1');
    const order = [
      'protect',
      'set-out',
      'bond',
      'prop',
      'metal-primer',
      'reinforce',
      'bonding-coat',
      'fill',
      'sand',
      'lamp-check',
      'seal',
      'coat',
      'demask',
      'magnets',
    ];
    const firsts = order.map((kind) => steel.findIndex((task) => task.kind === kind));
    expect(firsts).not.toContain(-1);
    expect(firsts).toEqual([...firsts].sort((a, b) => a - b));
    const bond = tasks.indexOf(steel.find(({ kind }) => kind === 'bond')!);
    const hardening = waits.find(({ kind, after }) => kind === 'harden' && after === bond)!;
    expect(tasks[hardening.before]!.start).toBeGreaterThanOrEqual(hardening.finish);
    // Nothing hangs before adhesive, filler and paint have cured.
    for (const { wall, zone, finish: done, kind } of tasks.filter((task) => task.kind === 'magnets')) {
      const last = tasks
        .filter((task) => task.wall === wall && task.zone === zone && task.kind === 'coat')
        .at(-1)!;
      expect(done - last.finish).toBeGreaterThanOrEqual(72 * 60);
      expect(kind).toBe('magnets');
    }
    expect(ready.magnets).toBe(
      Math.max(...tasks.filter(({ kind }) => kind === 'magnets').map((task) => task.finish)),
    );
    expect(settings.dayOne).not.toBeNull();
  });
});

describe('settings', () => {
  it('take usual values for what the job does not say: eight hours from eight to five', () => {
    const { calendar, crew } = settingsOf(jobOf(undefined));
    expect([calendar.dayWork, crew]).toEqual([480, 2]);
  });

  it('give a short day no break', () => {
    expect(settingsOf(jobOf({ hours: { from: '08:00', to: '12:00' } })).calendar.dayWork).toBe(240);
  });
});
