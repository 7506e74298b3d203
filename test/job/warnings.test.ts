import { describe, expect, it } from 'vitest';
import { jobCautions } from '../../core/job/cautions';
import { changeObject, changeStock, moveObject } from '../../core/job/changes';
import { emptyJob } from '../../core/job/defaults';
import { demoJob } from '../../core/job/demo';
import type { Fitting, Job, Layout, Zone } from '../../core/job/schema';
import { jobWarnings } from '../../core/job/warnings';

const job = demoJob();
const proofs = { kind: 'zone', id: 'Z1' } as const;
const setZone = (patch: Partial<Zone>) => changeObject<Zone>(job, 'A', proofs, patch);
const setLayout = (patch: Partial<Layout>) =>
  setZone({ layout: { ...job.walls[0]!.zones[0]!.layout!, ...patch } });

describe('warnings of a job that works all the same', () => {
  it('the demo has none, nor an empty job', () => {
    expect(jobWarnings(job)).toEqual([]);
    expect(jobWarnings(emptyJob())).toEqual([]);
  });

  it.each<[string, Job, string | undefined, string]>([
    [
      'steel-without-layout',
      setZone({ layout: undefined }),
      'Z1',
      'Zone Z1 (Proofs) on wall A (Proofing wall) has steel panels but no layout',
    ],
    ['layout-without-steel', setZone({ buildUp: 'writable' }), 'Z1', 'its build-up has no steel'],
    ['unknown-build-up', setZone({ buildUp: 'moss' }), 'Z1', 'the build-up "moss", which is not known here'],
    [
      'least-width-too-large',
      setLayout({ leastWidth: 501 }),
      'Z1',
      'at least 501 mm wide, but stock sheet S1 is 500 mm',
    ],
    [
      'unlike-stock',
      changeStock(setLayout({ cutFrom: ['S2'] }), 'S2', { thickness: 0.7 }),
      'Z1',
      'may use stock sheet S2, but its thickness is not that of S1',
    ],
    [
      'hole-outside-zone',
      setZone({
        holes: [
          [
            [1300, 1000],
            [1600, 1000],
            [1600, 1200],
          ],
        ],
      }),
      'Z1',
      'Hole 1 of zone Z1 (Proofs) on wall A (Proofing wall) reaches beyond the zone',
    ],
    [
      'rack-piece-too-large',
      { ...job, rack: [{ id: 'R1', stock: 'S1', width: 240, height: 501 }] },
      'R1',
      'is 240 × 501 mm, larger than stock sheet S1',
    ],
    [
      'rack-id-like-bought',
      { ...job, rack: [{ id: 'N3', stock: 'S1', width: 240, height: 500 }] },
      'N3',
      'such as R3',
    ],
  ])('%s', (code, changed, object, phrase) => {
    const findings = jobWarnings(changed);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ code, object });
    expect(findings[0]!.text).toContain(phrase);
    expect(findings[0]!.text).toMatch(/\.$/);
  });

  it('none where there is nothing to warn of', () => {
    expect(jobWarnings(setLayout({ cutFrom: ['S2'], leastWidth: 500 }))).toEqual([]);
    expect(jobWarnings({ ...job, rack: [{ id: 'R1', stock: 'S2', width: 2000, height: 1000 }] })).toEqual([]);
    expect(
      jobWarnings(
        setZone({
          holes: [
            [
              [1420, 1000],
              [1600, 1000],
              [1600, 1200],
            ],
          ],
        }),
      ),
    ).toEqual([]);
  });
});

describe('cautions', () => {
  const live = (changed: Job) => jobCautions(changed).filter(({ code }) => code === 'electrics-in-steel');
  const codes = (changed: Job) => jobCautions(changed).map(({ code }) => code);
  const socket = { kind: 'fitting', id: 'K4' } as const;

  it('say of each live box in steel that it is to be isolated, and who decides on earthing', () => {
    expect(live(job)).toHaveLength(1);
    expect(live(job)[0]).toMatchObject({ level: 'note', wall: 'A', object: 'K4' });
    expect(live(job)[0]!.text).toMatch(/Socket K4 \(Light table\).*isolate.*licensed electrician/);
  });

  it('say nothing of one beside the steel, until its clearance reaches it', () => {
    const beside = moveObject(job, 'A', socket, 3420 - 2347 + 8, 0);
    expect(live(beside)).toEqual([]);
    expect(live(changeObject<Fitting>(beside, 'A', socket, { clearance: 9 }))).toHaveLength(1);
  });

  it('say nothing of a pipe in steel, or a socket in paint', () => {
    expect(live(changeObject<Fitting>(job, 'A', socket, { kind: 'pipe' }))).toEqual([]);
    expect(live(setZone({ buildUp: 'writable' }))).toEqual([]);
  });

  it('are given once for the job, each where it applies', () => {
    expect(codes(emptyJob())).toEqual([]);
    const wall = { ...job.walls[0]!, fittings: [], zones: [job.walls[0]!.zones[1]!] };
    expect(codes({ ...job, walls: [wall] })).toEqual([
      'concealed-services',
      'sanding-dust',
      'fire-behaviour',
    ]);
    expect(codes(job)).toEqual([
      ...['electrics-in-steel', 'concealed-services', 'sanding-dust', 'steel-edges', 'blind-detectors'],
      ...['strong-magnets', 'fire-behaviour'],
    ]);
    expect(jobCautions(job).every(({ level, text }) => level === 'note' && text.endsWith('.'))).toBe(true);
  });
});
