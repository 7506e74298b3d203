import { describe, expect, it } from 'vitest';
import { demoJob } from '../../core/job/demo';
import { jobCautions } from '../../core/job/cautions';
import {
  cautionsInWords,
  dutiesInWords,
  exclusionsInWords,
  finishInWords,
  reservationsInWords,
  scopeOf,
} from '../../core/offer/scope-words';
import { electricianDuty, finishWords, usualDuties, usualExclusions } from '../../core/offer/usual-words';
import { offeredJob } from './offered-job';

describe('the scope in plain words', () => {
  it('names every zone with its size and its layers from the wall outward', () => {
    const scope = scopeOf(offeredJob());
    expect(scope.map(({ title, zones }) => [title, zones.map((zone) => zone.title)])).toEqual([
      [
        'Proofing wall',
        ['Proofs: steel panels, writable, 2000 × 1000 mm', 'Week plan: writable coat, 1000 × 1000 mm'],
      ],
      ['Type store', ['Formes: magnetic coating, 1500 × 1000 mm']],
    ]);
    const layers = scope[0]!.zones[0]!.layers;
    const order = ['adhesive', 'steel panels, 0.5 mm thick', 'filled level', 'sanded', 'writable finish'];
    const places = order.map((words) => layers.indexOf(words));
    expect(places.every((place) => place > 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  });

  it('names products that are not typical ones by their own names', () => {
    const job = offeredJob();
    const own = {
      ...job,
      products: [
        {
          id: 'own',
          name: 'Studio white',
          layer: 'writable',
          unit: 'l',
          packs: [],
          coats: 2,
          drying: 'none',
        },
      ],
      buildUps: [
        {
          id: 'U1',
          name: '',
          kind: 'writable',
          layers: [{ kind: 'writable', product: 'own', over: 'face' }],
        },
      ],
      walls: job.walls.map((wall) => ({
        ...wall,
        zones: wall.zones.map((zone) => ({ ...zone, layers: 'U1' })),
      })),
    } as typeof job;
    expect(scopeOf(own)[0]!.zones[1]!.layers).toBe(
      'From the wall outward: writable finish (Studio white), 2 coats.',
    );
  });

  it('tells of markings', () => {
    const job = offeredJob();
    job.walls[0]!.zones[1] = {
      ...job.walls[0]!.zones[1]!,
      markings: [
        { id: 'M1', kind: 'ruled-lines', name: 'Plan', x: 0, y: 0, width: 900, height: 900, spacingUp: 90 },
      ],
    };
    expect(scopeOf(job)[0]!.zones[1]!.markings).toEqual(['M1 Plan: ruled lines, every 90 mm up']);
  });
});

describe('what the offer reserves and asks for', () => {
  it('says once what is not recorded of several walls', () => {
    const said = reservationsInWords(offeredJob());
    expect(said.filter((text) => text.includes('escape route'))).toHaveLength(1);
    expect(said[0]).toMatch(/^Proofing wall, Type store: /);
    // The demo's grounds are recorded in full.
    expect(reservationsInWords(demoJob())).toEqual([]);
  });

  it('has the usual duties and exclusions until the job has its own; the electrician is never left out', () => {
    expect(dutiesInWords(offeredJob())).toEqual(usualDuties);
    expect(exclusionsInWords(offeredJob())).toEqual(usualExclusions);
    const own = offeredJob({ duties: ['Bring coffee.'], exclusions: [] });
    expect(dutiesInWords(own)).toEqual(['Bring coffee.']);
    expect(exclusionsInWords(own)).toEqual([]);
    expect(dutiesInWords({ ...demoJob(), offer: own.offer })).toContain(electricianDuty);
  });

  it('states the level of finish and the light it is judged in', () => {
    expect(finishInWords(offeredJob())[0]).toContain('No level of finish is agreed');
    expect(finishInWords(offeredJob({ finish: { level: 'Q3' } }))).toEqual([
      expect.stringContaining('Level of finish Q3'),
      expect.stringContaining('not in raking light'),
    ]);
    const light = 'a lamp at the left edge, seen from 2 m';
    expect(finishInWords(offeredJob({ finish: { level: 'Q4', rakingLight: true, light } }))[1]).toBe(
      `Raking light is agreed as part of acceptance: ${light}.`,
    );
  });

  it('states which zones are finished otherwise than the offer says', () => {
    const job = offeredJob({ finish: { level: 'Q3' } });
    const [wall, ...walls] = job.walls;
    const [zone, ...zones] = wall!.zones;
    const withLevel = (finishLevel: 'Q3' | 'Q4') => ({
      ...job,
      walls: [{ ...wall!, zones: [{ ...zone!, finishLevel }, ...zones] }, ...walls],
    });
    expect(finishInWords(withLevel('Q4'))[1]).toBe(
      `For ${wall!.name || `Wall ${wall!.id}`}, ${zone!.name || `zone ${zone!.id}`}: level of finish ${finishWords.Q4}`,
    );
    expect(finishInWords(withLevel('Q3'))).toHaveLength(2);
  });
});

describe('cautions', () => {
  it('are all there, boxes in steel one by one while they are few', () => {
    const job = demoJob();
    const codes = new Set(jobCautions(job).map(({ code }) => code));
    const live = jobCautions(job).filter(({ code }) => code === 'electrics-in-steel');
    const said = cautionsInWords(job);
    expect(said).toHaveLength(codes.size - 1 + (live.length <= 3 ? live.length : 1));
    for (const word of [
      'isolate',
      'licensed electrician',
      'pacemakers',
      'gloves',
      'lead',
      'fire',
      'Detectors',
    ])
      expect(said.join(' ')).toContain(word);
  });
});
