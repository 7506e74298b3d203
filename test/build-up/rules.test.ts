import { describe, expect, it } from 'vitest';
import { readyBuildUps } from '../../core/build-up/ready-build-ups';
import { mendBuildUp, remarksOn, rules } from '../../core/build-up/rules';
import { buildUpKinds } from '../../core/job/build-up-kinds';
import type { Ground } from '../../core/job/ground-schema';
import { readJobObject } from '../../core/job/read';
import { builtJob, contextIn, soundGround, workedOf, type Built } from './built-wall';

interface Case {
  readonly code: string;
  readonly kind: string;
  /** What breaks it. */
  readonly fires: Built;
  /** The same but for what the rule is about. */
  readonly keeps: Built;
}

const painted: Ground = {
  ...soundGround,
  material: 'sound-paint',
  adhesion: { test: 'ISO 16276-2', result: 1 },
};
const steelFrom = (...layers: string[]) => [
  'adhesive=adhesive-two-component',
  'steel',
  'metal-primer=metal-primer',
  'metal-primer=metal-primer@edges',
  ...layers,
];
const levelled = [
  'reinforcement=joint-tape@joints',
  'bonding-coat=bonding-coat',
  'filler=fine-filler',
  'sanding',
  'sealer=sealer',
];
const finished = ['degreasing', ...steelFrom(...levelled, 'decorative=decorative-paint')];
const less = (...out: string[]) => finished.filter((layer) => !out.includes(layer));
const solventPaint = {
  id: 'gloss',
  name: 'Gloss paint',
  layer: 'decorative',
  unit: 'l',
  drying: 'reaction',
} as const;
const beads = {
  id: 'beads',
  name: 'Cartridge adhesive',
  layer: 'adhesive',
  unit: 'piece',
  tool: { kind: 'knife' },
} as const;

const cases: readonly Case[] = [
  {
    code: 'unknown-product',
    kind: 'chalk',
    fires: { layers: ['sealer=sealer', 'chalk=slate-coat'] },
    keeps: { layers: ['sealer=sealer', 'chalk=chalk-coat'] },
  },
  {
    code: 'steel-without-adhesive',
    kind: 'steel-panel',
    fires: { layers: less('adhesive=adhesive-two-component') },
    keeps: { layers: finished },
  },
  {
    code: 'adhesive-shut-in',
    kind: 'steel-panel',
    fires: {
      layers: ['adhesive=adhesive-water-borne', ...less('adhesive=adhesive-two-component')],
      ground: painted,
    },
    keeps: { layers: ['adhesive=adhesive-water-borne', ...less('adhesive=adhesive-two-component')] },
  },
  {
    code: 'adhesive-not-full-bed',
    kind: 'steel-panel',
    fires: { layers: ['adhesive=beads', ...less('adhesive=adhesive-two-component')], products: [beads] },
    keeps: { layers: finished, products: [beads] },
  },
  {
    code: 'bare-cut-edges',
    kind: 'steel-panel',
    fires: { layers: less('metal-primer=metal-primer@edges') },
    keeps: { layers: finished },
  },
  {
    code: 'bare-steel-face',
    kind: 'steel-panel',
    fires: { layers: less('metal-primer=metal-primer') },
    keeps: { layers: finished },
  },
  {
    code: 'joints-not-reinforced',
    kind: 'steel-panel',
    fires: { layers: less('reinforcement=joint-tape@joints') },
    keeps: { layers: [...less('reinforcement=joint-tape@joints').toSpliced(5, 0, 'reinforcement=fleece')] },
  },
  {
    code: 'filler-without-bonding-coat',
    kind: 'steel-panel',
    fires: { layers: less('bonding-coat=bonding-coat') },
    keeps: { layers: finished },
  },
  {
    code: 'finish-without-filler',
    kind: 'steel-panel',
    fires: { layers: less('filler=fine-filler') },
    keeps: { layers: finished },
  },
  {
    code: 'steel-on-glass',
    kind: 'steel-panel',
    fires: { ground: { ...soundGround, material: 'glass' } },
    keeps: { ground: { ...soundGround, material: 'metal' } },
  },
  {
    code: 'coat-not-sealed',
    kind: 'writable',
    fires: { layers: ['smoothing=smoothing-filler', 'sanding', 'writable=writable-finish'] },
    keeps: { layers: ['smoothing=smoothing-filler', 'sanding', 'sealer=sealer', 'writable=writable-finish'] },
  },
  {
    code: 'coat-not-sealed',
    kind: 'chalk',
    fires: { layers: ['chalk=chalk-coat'] },
    keeps: { layers: ['chalk=chalk-coat'], ground: painted },
  },
  {
    code: 'coat-on-unlevel-ground',
    kind: 'writable',
    fires: { ground: { ...soundGround, hollow: 4 } },
    keeps: { ground: { ...soundGround, hollow: 3 } },
  },
  { code: 'finish-level', kind: 'writable', fires: {}, keeps: { zone: { finishLevel: 'Q3' } } },
  {
    code: 'clear-coat-test-patch',
    kind: 'clear-writable',
    fires: {},
    keeps: { layers: ['decorative=decorative-paint'] },
  },
  {
    code: 'clear-coat-ground',
    kind: 'clear-writable',
    fires: { layers: ['sealer=sealer', 'clear-writable=clear-writable-finish'] },
    keeps: { layers: ['clear-writable=clear-writable-finish'], ground: painted },
  },
  {
    code: 'too-few-coats',
    kind: 'magnetic-coating',
    fires: { layers: ['magnetic-coating=thin', 'decorative=decorative-paint'], products: [thinCoating(5)] },
    keeps: { layers: ['magnetic-coating=thin', 'decorative=decorative-paint'], products: [thinCoating(2)] },
  },
  {
    code: 'stir-and-try-magnet',
    kind: 'magnetic-coating',
    fires: {},
    keeps: { layers: ['magnetic-film=magnetic-film'] },
  },
  {
    code: 'light-loads-only',
    kind: 'magnetic-film',
    fires: {},
    keeps: { layers: finished },
  },
  {
    code: 'coating-not-smoothed',
    kind: 'magnetic-coating-writable',
    fires: { layers: ['magnetic-coating=magnetic-coating', 'sealer=sealer', 'writable=writable-finish'] },
    keeps: {},
  },
  {
    code: 'no-writing-before-cure',
    kind: 'writable',
    fires: {},
    keeps: { layers: ['chalk=chalk-coat'] },
  },
  {
    code: 'film-not-sealed',
    kind: 'writable-film',
    fires: { layers: ['smoothing=smoothing-filler', 'writable-film=writable-film'] },
    keeps: { layers: ['smoothing=smoothing-filler', 'sealer=sealer', 'writable-film=writable-film'] },
  },
  {
    code: 'film-outgassing',
    kind: 'writable-film',
    fires: {},
    keeps: { layers: ['writable=writable-finish'] },
  },
  {
    code: 'paint-on-film',
    kind: 'magnetic-film',
    fires: {
      layers: ['sealer=sealer', 'magnetic-film=magnetic-film', 'decorative=gloss'],
      products: [solventPaint],
    },
    keeps: {
      layers: ['sealer=sealer', 'decorative=gloss', 'magnetic-film=magnetic-film'],
      products: [solventPaint],
    },
  },
  {
    code: 'paint-on-film',
    kind: 'magnetic-film',
    fires: { layers: ['sealer=sealer', 'magnetic-film=magnetic-film', 'writable=writable-finish'] },
    keeps: { layers: ['sealer=sealer', 'magnetic-film=magnetic-film', 'writable-film=writable-film'] },
  },
  {
    code: 'glass-film-ground',
    kind: 'glass-film',
    fires: { ground: painted },
    keeps: { ground: { ...soundGround, material: 'glass' } },
  },
  {
    code: 'glass-film-primer',
    kind: 'glass-film',
    fires: { layers: ['primer=adhesion-primer', 'glass-film=glass-film'] },
    keeps: { layers: ['degreasing=degreaser', 'glass-film=glass-film'] },
  },
  {
    code: 'glass-film-pane',
    kind: 'glass-film',
    fires: {},
    keeps: { layers: ['writable-film=writable-film'] },
  },
  {
    code: 'old-paint-untested',
    kind: 'steel-panel',
    fires: { ground: { ...soundGround, material: 'old-coating' } },
    keeps: { ground: painted },
  },
  {
    code: 'coat-on-damp-wall',
    kind: 'writable',
    fires: { ground: { ...soundGround, exposure: 'outdoor' } },
    keeps: {},
  },
  {
    code: 'film-on-heated-wall',
    kind: 'writable-film',
    fires: { ground: { ...soundGround, exposure: 'heated-behind' } },
    keeps: {},
  },
  {
    code: 'fire-evidence',
    kind: 'steel-panel',
    fires: { ground: { ...soundGround, escapeRoute: true, fire: 'B-s1,d0' } },
    keeps: {},
  },
];

function thinCoating(coats: number) {
  return { id: 'thin', name: 'Iron coat', layer: 'magnetic-coating', unit: 'l', coats } as const;
}

/** The layer of the case "too few coats" is put on twice, whatever its product wants. */
function jobOf(kind: string, built: Built, code: string) {
  const job = builtJob(kind, built);
  if (code !== 'too-few-coats') return job;
  const twice = {
    ...job.buildUps![0]!,
    layers: job.buildUps![0]!.layers.map((l, i) => (i === 0 ? { ...l, coats: 2 } : l)),
  };
  return { ...job, buildUps: [twice] };
}

const codesIn = (job: ReturnType<typeof builtJob>) => remarksOn(contextIn(job)).map(({ code }) => code);

describe('rules of build-ups', () => {
  it('each have a case', () => {
    expect([...new Set(cases.map(({ code }) => code))].sort()).toEqual(rules.map(({ code }) => code).sort());
  });

  it.each(cases)(
    '$code fires on a $kind that breaks it and not on one that keeps it',
    ({ code, kind, fires, keeps }) => {
      expect(codesIn(jobOf(kind, fires, code))).toContain(code);
      expect(codesIn(jobOf(kind, keeps, code))).not.toContain(code);
    },
  );

  it.each(cases.filter(({ code }) => rules.find((rule) => rule.code === code)!.apply))(
    '$code on a $kind is mended in a job that can be read, and nothing else is broken by it',
    ({ code, kind, fires }) => {
      const broken = jobOf(kind, fires, code);
      const mended = mendBuildUp(broken, 'A', 'Z1', code);
      expect(codesIn(mended)).not.toContain(code);
      const graver = (job: typeof broken) =>
        remarksOn(contextIn(job))
          .filter(({ level }) => level !== 'note')
          .map((r) => r.code);
      const before = graver(broken);
      expect(graver(mended).filter((one) => !before.includes(one))).toEqual([]);
      expect(readJobObject(JSON.parse(JSON.stringify(mended)) as Record<string, unknown>).job).toEqual(
        mended,
      );
    },
  );

  it('are kept again, all of them, when each is mended in turn', () => {
    let job = builtJob('steel-panel-writable', {
      layers: ['steel', 'filler=fine-filler', 'writable=writable-finish'],
    });
    const all = codesIn(job);
    expect(all).toEqual(
      expect.arrayContaining([
        'steel-without-adhesive',
        'bare-cut-edges',
        'joints-not-reinforced',
        'coat-not-sealed',
      ]),
    );
    for (const code of all) job = mendBuildUp(job, 'A', 'Z1', code);
    expect(workedOf(job).remarks.filter(({ level }) => level !== 'note')).toEqual([]);
    expect(job.buildUps![0]!.layers.map(({ kind, over }) => `${kind}@${over}`)).toEqual([
      'adhesive@face',
      'steel@face',
      'metal-primer@face',
      'metal-primer@edges',
      'reinforcement@joints',
      'bonding-coat@face',
      'filler@face',
      'sealer@face',
      'writable@face',
    ]);
  });

  it('are mended for one zone and not for another that has the same layers', () => {
    const job = builtJob('writable', { layers: ['smoothing=smoothing-filler', 'writable=writable-finish'] });
    const wall = job.walls[0]!;
    const twice = { ...job, walls: [{ ...wall, zones: [wall.zones[0]!, { ...wall.zones[0]!, id: 'Z2' }] }] };
    const mended = mendBuildUp(twice, 'A', 'Z2', 'coat-not-sealed');
    expect(mended.walls[0]!.zones.map(({ layers }) => layers)).toEqual(['B1', 'B2']);
    expect(mended.buildUps!.map(({ layers }) => layers.length)).toEqual([2, 3]);
    expect(mended.buildUps![0]).toBe(twice.buildUps![0]);
  });

  it('leave a job as it is that keeps them, and one without the zone', () => {
    const job = builtJob('steel-panel');
    expect(mendBuildUp(job, 'A', 'Z1', 'bare-cut-edges')).toBe(job);
    expect(mendBuildUp(job, 'A', 'Z9', 'bare-cut-edges')).toBe(job);
    expect(mendBuildUp(job, 'A', 'Z1', 'no such rule')).toBe(job);
  });
});

describe('ready build-ups', () => {
  const grounds: readonly (readonly [string, Ground])[] = [
    ['bare plaster', soundGround],
    ['gypsum board', { ...soundGround, material: 'gypsum-board' }],
    ['sound paint that was tested', painted],
    ['concrete', { ...soundGround, material: 'concrete' }],
    ['brick', { ...soundGround, material: 'brick' }],
    ['timber', { ...soundGround, material: 'timber' }],
    ['metal', { ...soundGround, material: 'metal' }],
  ];
  const walls = buildUpKinds.filter(({ id }) => id !== 'glass-film');

  it.each(grounds)('on %s break no rule', (_, ground) => {
    for (const { id } of walls) {
      const wrong = workedOf(builtJob(id, { ground })).findings.filter(({ level }) => level !== 'note');
      expect(wrong.map(({ text }) => text)).toEqual([]);
    }
  });

  it('on glass break none if they are film for glass', () => {
    const ground = { ...soundGround, material: 'glass' };
    const { findings } = workedOf(builtJob('glass-film', { ground }));
    expect(findings.filter(({ level }) => level !== 'note')).toEqual([]);
  });

  it('are all there to be looked at', () => expect(walls).toHaveLength(readyBuildUps.length - 1));
});

describe('the words of rules', () => {
  it('make one sentence that says what, where and how to mend it', () => {
    const { findings } = workedOf(
      builtJob('steel-panel', { layers: less('metal-primer=metal-primer@edges') }),
    );
    expect(findings.find(({ code }) => code === 'bare-cut-edges')).toEqual({
      level: 'warning',
      code: 'bare-cut-edges',
      wall: 'A',
      object: 'Z1',
      text: 'Zone Z1 on wall A (Proofing wall): the cut edges of the steel stay bare under water-borne filler or paint; prime every cut edge against rust.',
    });
  });

  it.each(cases)(
    '$code on a $kind is said as a clause, with a reason and a source',
    ({ code, kind, fires }) => {
      const remark = remarksOn(contextIn(jobOf(kind, fires, code))).find((one) => one.code === code)!;
      expect(remark.says).toMatch(/^[a-z“][^.]*[^.;]; [a-z][^;]*[^.]$/);
      expect(remark.says).not.toMatch(/undefined|null|NaN/);
      expect(remark.reason).toMatch(/^[A-Z].*\.$/);
      expect(remark.source.length).toBeGreaterThan(10);
    },
  );
});
