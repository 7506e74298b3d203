import { readFileSync } from 'node:fs';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { groundLayers } from '../../core/build-up/ground-layers';
import { readyBuildUps } from '../../core/build-up/ready-build-ups';
import { readyProducts } from '../../core/build-up/ready-products';
import { buildUpOf, productsOf } from '../../core/build-up/resolve';
import { buildUpKind, buildUpKinds } from '../../core/job/build-up-kinds';
import { groundMaterials } from '../../core/job/ground-schema';
import { buildUp, product, type Product } from '../../core/job/product-schema';
import { readJob } from '../../core/job/read';
import type { Zone } from '../../core/job/schema';

const demo = readJob(readFileSync('core/job/demo-job.json', 'utf8')).job!;
const zoneOf = (kind: string, patch: Partial<Zone> = {}): Zone => ({
  ...demo.walls[0]!.zones[0]!,
  buildUp: kind,
  ...patch,
});

describe('ready products', () => {
  it.each(readyProducts)('$id reads as it stands, without a price', (ready) => {
    expect(v.parse(product, ready)).toEqual(ready);
    expect(ready.typical).toBe(true);
    expect(ready.packs.length).toBeGreaterThan(0);
    expect(ready.packs.every(({ price }) => price === 0)).toBe(true);
  });

  it('have ids of their own', () => {
    expect(new Set(readyProducts.map(({ id }) => id)).size).toBe(readyProducts.length);
  });

  // Theoretical spreading rate (m²/l) = 10 · volume solids (%) / dry film thickness (µm): ISO 23811:2009, 3 (from memory).
  const painted = readyProducts.filter(
    ({ unit, volumeSolids, dryFilm }) => unit === 'l' && volumeSolids && dryFilm,
  );
  it.each(painted)('ISO 23811 (from memory): $id spreads as far as its solids last', (ready) => {
    expect((10 * ready.volumeSolids!) / ready.dryFilm!).toBeCloseTo(ready.spreadingRate!, 9);
  });

  it('has coats to hold that to', () => expect(painted.length).toBeGreaterThan(5));

  it('says of every two-component product how to keep from harm', () => {
    const mixed = readyProducts.filter(({ mixing }) => mixing);
    expect(mixed.length).toBeGreaterThan(0);
    for (const { cautions } of mixed)
      expect(cautions?.join(' ')).toMatch(/[Vv]entilat.*gloves.*safety data sheet/);
  });

  it('fills a bed of adhesive by its notches: b · c / (a + b)', () => {
    for (const { tool, thickness } of readyProducts.filter(({ layer }) => layer === 'adhesive')) {
      const { bridge, width, depth } = tool!.notch!;
      expect((width * depth) / (bridge + width)).toBeCloseTo(thickness!, 9);
    }
  });
});

describe('ready build-ups', () => {
  it('are one for each build-up that a zone can name', () => {
    expect(readyBuildUps.map(({ kind }) => kind).sort()).toEqual(buildUpKinds.map(({ id }) => id).sort());
  });

  it.each(readyBuildUps)('$kind reads as it stands', (ready) => {
    expect(v.parse(buildUp, ready)).toEqual(ready);
  });

  // Common practice, no source.
  it.each(readyBuildUps.filter(({ kind }) => kind.startsWith('steel')))(
    '$kind is built in the order of the trade',
    ({ layers }) => {
      expect(
        layers.slice(0, 11).map(({ kind, over }) => (over === 'face' ? kind : `${kind} over ${over}`)),
      ).toEqual([
        'degreasing over backs',
        'keying over backs',
        'adhesive',
        'steel',
        'metal-primer',
        'metal-primer over edges',
        'reinforcement over joints',
        'bonding-coat',
        'filler',
        'sanding',
        'sealer',
      ]);
    },
  );

  it.each(readyBuildUps)('$kind names products that are made for the layer', ({ layers }) => {
    const products = new Map(readyProducts.map((ready) => [ready.id, ready]));
    for (const { kind, product: id } of layers) if (id) expect(products.get(id)?.layer).toBe(kind);
  });

  it.each(buildUpKinds)('$id holds magnets and ends as its kind says', ({ id, magnetic, surface }) => {
    const kinds = buildUpOf(demo, zoneOf(id), undefined).layers.map(({ layer }) => layer.kind);
    expect(kinds.includes('steel')).toBe(magnetic === 'steel');
    expect(kinds.some((kind) => kind.startsWith('magnetic-'))).toBe(magnetic === 'coating');
    const tops: Record<string, string[]> = {
      plain: ['decorative'],
      chalk: ['chalk'],
      writable: ['writable', 'clear-writable', 'writable-film', 'glass-film'],
    };
    expect(tops[surface]).toContain(kinds.at(-1));
  });

  it.each(groundMaterials)('on %s begins with what the ground asks for', (material) => {
    for (const ready of readyBuildUps) {
      const before = groundLayers({ material }, ready).map(({ kind }) => kind);
      const isGlassFilm = ready.kind === 'glass-film';
      const isSteel = buildUpKind(ready.kind).magnetic === 'steel';
      if (isGlassFilm) expect(before).toEqual([]);
      else if (/paint|coating/.test(material)) expect(before).toEqual(['degreasing', 'keying']);
      else if (/glass|metal/.test(material) && !isSteel)
        expect(before).toEqual(['degreasing', 'keying', 'primer']);
      else if (/glass|metal/.test(material)) expect(before).toEqual(['degreasing', 'keying']);
      else expect(before).toEqual(['primer']);
    }
  });
});

describe('layers of a zone', () => {
  it.each(groundMaterials)(
    'cleans and keys the wall, and the backs of panels, at most once each, on %s',
    (material) => {
      for (const { id } of buildUpKinds) {
        const done = buildUpOf(demo, zoneOf(id), { material }).layers.map(
          ({ layer }) => `${layer.kind} ${layer.over}`,
        );
        const cleaning = done.filter((work) => /^(degreasing|keying) /.test(work));
        expect(cleaning, id).toEqual([...new Set(cleaning)]);
        const isDense = /paint|coating|glass|metal/.test(material) && id !== 'glass-film';
        expect(cleaning.includes('keying face'), id).toBe(isDense);
      }
    },
  );

  const own: Product = { ...readyProducts.find(({ id }) => id === 'fine-filler')!, thickness: 0.7 };

  it('uses a product of the job in place of the ready one', () => {
    const job = { ...demo, products: [own] };
    expect(productsOf(job).get('fine-filler')).toBe(own);
    const filler = buildUpOf(job, zoneOf('steel-panel'), undefined).layers.find(
      ({ layer }) => layer.kind === 'filler',
    );
    expect(filler?.thickness).toBeCloseTo(1.4, 9);
  });

  it('uses layers of the job as they stand, whatever the ground', () => {
    const layers = [
      { kind: 'decorative' as const, product: 'decorative-paint', coats: 1, over: 'face' as const },
    ];
    const job = { ...demo, buildUps: [{ id: 'mine', name: 'Mine', kind: 'writable', layers }] };
    const found = buildUpOf(job, zoneOf('writable', { layers: 'mine' }), { material: 'brick' });
    expect(found.name).toBe('Mine');
    expect(found.layers.map(({ layer, coats, thickness }) => [layer.kind, coats, thickness])).toEqual([
      ['decorative', 1, 0.05],
    ]);
  });

  it('takes the thickness of steel from the stock sheet, and knows none without it', () => {
    const steelOf = (zone: Zone) =>
      buildUpOf(demo, zone, undefined).layers.find(({ layer }) => layer.kind === 'steel')!.thickness;
    expect(steelOf(zoneOf('steel-panel'))).toBe(0.5);
    expect(steelOf(zoneOf('steel-panel', { layout: undefined }))).toBeNull();
  });

  it('has none for a kind nobody knows', () => {
    expect(buildUpOf(demo, zoneOf('cork'), undefined)).toEqual({ id: 'cork', name: 'cork', layers: [] });
  });
});
