import { describe, expect, it } from 'vitest';
import { buildUpFindings } from '../../core/build-up/worked-build-up';
import type { Fitting, Opening, Vertex } from '../../core/job/schema';
import { surveyWall } from '../../core/survey/survey';
import { zoneAreas } from '../../core/zones/zone-areas';
import { workOutBuildUp } from '../../core/build-up/worked-build-up';
import { builtJob, workedOf, type Built } from './built-wall';

const fitting = (id: string, kind: string, x: number, y = 1400) =>
  ({ id, kind, x, y, width: 80, height: 80, clearance: 5 }) as Fitting;
const opening = (kind: string, x: number, y: number, width: number, height: number) =>
  ({ id: 'W1', kind, x, y, width, height, clearance: 10 }) as Opening;
const of = (built: Built, kind = 'steel-panel') => workedOf(builtJob(kind, built));
const kindsOf = (built: Built, kind?: string) =>
  of(built, kind).consequences.map((one) => [one.kind, one.object, Math.round(one.amount), one.unit]);

/* Common practice, no source; layers 2.785 mm thick. */
describe('what the thickness changes', () => {
  it.each(['socket', 'switch', 'thermostat', 'light'])(
    'is an extension ring and two screws for a %s in the zone',
    (kind) => {
      const { consequences } = of({ wall: { fittings: [fitting('K1', kind, 2500)] } });
      expect(consequences).toEqual([
        { kind: 'extension-ring', object: 'K1', amount: 1, unit: 'piece', by: 2.785 },
        { kind: 'longer-screws', object: 'K1', amount: 2, unit: 'piece', by: 2.785 },
      ]);
    },
  );

  it('is the same for one that only touches the zone, and nothing for one beside it', () => {
    expect(kindsOf({ wall: { fittings: [fitting('K1', 'socket', 3995)] } })).toHaveLength(2);
    expect(kindsOf({ wall: { fittings: [fitting('K1', 'socket', 4100)] } })).toEqual([]);
  });

  it('is the architrave of a door and of a hatch, the reveal of a niche and an arch, both of a window', () => {
    const along = (kind: string) => kindsOf({ wall: { openings: [opening(kind, 2500, 1200, 400, 500)] } });
    const round = 2 * (420 + 520);
    expect(along('door')).toEqual([['architrave', 'W1', round, 'mm']]);
    expect(along('hatch')).toEqual([['architrave', 'W1', round, 'mm']]);
    expect(along('niche')).toEqual([['reveal-return', 'W1', round, 'mm']]);
    expect(along('arch')).toEqual([['reveal-return', 'W1', round, 'mm']]);
    expect(along('window')).toEqual([
      ['architrave', 'W1', round, 'mm'],
      ['reveal-return', 'W1', round, 'mm'],
    ]);
  });

  it('is the skirting where the zone comes down to the floor', () => {
    const shape: Vertex[] = [
      [2000, 0],
      [4000, 0],
      [4000, 1000],
      [2000, 1000],
    ];
    expect(kindsOf({ zone: { shape } })).toEqual([['skirting', null, 2000, 'mm']]);
    expect(kindsOf({})).toEqual([]);
  });

  it('is the brackets of a radiator', () => {
    expect(kindsOf({ wall: { fittings: [fitting('R1', 'radiator', 2500)] } })).toEqual([
      ['radiator-bracket', 'R1', 1, 'piece'],
    ]);
  });

  it('is nothing under coats and films thinner than a millimetre', () => {
    const wall = {
      fittings: [fitting('K1', 'socket', 2500)],
      openings: [opening('door', 3000, 0, 900, 2100)],
    };
    for (const kind of ['writable', 'writable-film', 'chalk', 'glass-film'])
      expect(kindsOf({ wall }, kind)).toEqual([]);
  });

  it('is said without a figure where the thickness is not known', () => {
    const built = { wall: { fittings: [fitting('K1', 'socket', 2500)] }, thickness: null };
    expect(of(built).consequences[0]!.by).toBeNull();
    expect(of(built).findings.find(({ code }) => code === 'boxes-come-forward')!.text).toContain(
      'brings the face forward at socket K1: order an extension ring and longer screws',
    );
  });

  it('is said once for all boxes of a zone, with the electrician', () => {
    const wall = { fittings: [2200, 2500, 2800, 3100].map((x, i) => fitting(`K${i + 1}`, 'socket', x)) };
    const said = of({ wall }).findings.filter(({ code }) => code === 'boxes-come-forward');
    expect(said).toHaveLength(1);
    expect(said[0]!.text).toBe(
      'Zone Z1 on wall A (Proofing wall) brings the face 2.8 mm forward at socket K1, socket K2, socket K3 and 1 more: order 4 extension rings and longer screws, so that every plate seats flat on the finished face and clear of the steel; a licensed electrician fits them.',
    );
    expect(said[0]!.object).toBe('Z1');
  });
});

describe('findings of all build-ups of a job', () => {
  const zonesOf = (count: number) => {
    const job = builtJob('writable');
    const zone = job.walls[0]!.zones[0]!;
    const many = Array.from({ length: count }, (_, i) => ({
      ...zone,
      id: `Z${i + 1}`,
      shape: zone.shape.map((v) =>
        (v as number[]).map((n, axis) => (axis === 0 ? n / 10 + 500 * i : n)),
      ) as Vertex[],
    }));
    const walled = { ...job, walls: [{ ...job.walls[0]!, zones: many }] };
    const survey = surveyWall(walled.walls[0]!);
    return zoneAreas(survey).map((area) => ({ survey, area, buildUp: workOutBuildUp(walled, survey, area) }));
  };

  it('say a reminder that many zones share once', () => {
    const cure = (count: number) =>
      buildUpFindings(zonesOf(count)).filter(({ code }) => code === 'no-writing-before-cure');
    expect(cure(1).map(({ text }) => text.split(':')[0])).toEqual(['Zone Z1 on wall A (Proofing wall)']);
    expect(cure(2)).toHaveLength(1);
    expect(cure(5).map(({ text }) => text)).toEqual([
      'Zone Z1 on wall A (Proofing wall), zone Z2 on wall A (Proofing wall), zone Z3 on wall A (Proofing wall) and 2 more: the writable finish cures for 6 days; let nobody write on it before full cure.',
    ]);
  });

  it('say a warning of every zone', () => {
    const job = builtJob('writable', { ground: { material: 'brick', hollow: 9, exposure: 'dry' } });
    const wall = job.walls[0]!;
    const twice = {
      ...wall.zones[0]!,
      id: 'Z2',
      shape: wall.zones[0]!.shape.map((v) => [(v as number[])[0]!, (v as number[])[1]! - 1000]) as Vertex[],
    };
    const walled = { ...job, walls: [{ ...wall, zones: [wall.zones[0]!, twice] }] };
    const survey = surveyWall(walled.walls[0]!);
    const zones = zoneAreas(survey).map((area) => ({
      survey,
      area,
      buildUp: workOutBuildUp(walled, survey, area),
    }));
    const said = buildUpFindings(zones).filter(({ code }) => code === 'coat-on-unlevel-ground');
    expect(said.map(({ object }) => object)).toEqual(['Z1', 'Z2']);
  });
});
