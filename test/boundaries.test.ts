import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';

/** In the order of the work; a stage reads only stages to its left. */
const stages = [
  'job',
  'survey',
  'zones',
  'markings',
  'panels',
  'cutting',
  'build-up',
  'holding',
  'quantities',
  'programme',
  'offer',
  'drawings',
  'run',
];
/** Beside the stages: every stage may read them. */
const neighbours = ['core/units', 'core/lengths', 'core/finding', 'core/geometry', 'core/svg'];

interface Import {
  readonly file: string;
  readonly target: string;
}

const imports = [
  ...sourcesIn('core'),
  ...sourcesIn('web'),
  ...sourcesIn('e2e'),
  ...sourcesIn('test'),
].flatMap(importsOf);
const coreImports = imports.filter(({ file }) => file.startsWith('core/'));

describe('who may import whom', () => {
  it('finds the imports it is to check', () => {
    expect(coreImports.length).toBeGreaterThan(100);
  });

  it('a stage of core reads only stages to its left', () => {
    const wrong = coreImports.filter(({ file, target }) => {
      const own = stages.indexOf(stageOf(file));
      const other = stages.indexOf(stageOf(target));
      return target.startsWith('core/') && own >= 0 && other > own;
    });
    expect(wrong).toEqual([]);
  });

  it('geometry, units and findings read no stage', () => {
    const wrong = coreImports.filter(
      ({ file, target }) =>
        neighbours.some((neighbour) => file.startsWith(neighbour)) && stages.includes(stageOf(target)),
    );
    expect(wrong).toEqual([]);
  });

  it('core knows neither the view nor its libraries', () => {
    const wrong = coreImports.filter(({ target }) => /^(web\/|e2e\/|test\/|svelte|konva|vite)/.test(target));
    expect(wrong).toEqual([]);
  });

  it.each([
    ['clipper-lib', /^core\/geometry\/clip\.ts$/],
    ['pdf-lib', /^core\/drawings\/pdf(-navigation)?\.ts$|^test\//],
    ['konva', /^web\/elevation\//],
    [
      'node:',
      /^core\/(run\/(command-line|check-holding)|job\/print-schema)\.ts$|^web\/(serve\/|vite\.config)|^test\/|^e2e\//,
    ],
  ])('only one place imports %s', (name, allowed) => {
    const users = imports.filter(
      ({ target }) => target === name || target.startsWith(name.endsWith(':') ? name : `${name}/`),
    );
    expect(users.length).toBeGreaterThan(0);
    expect(users.filter(({ file }) => !allowed.test(file))).toEqual([]);
  });

  it('browser tests import neither core nor web, except to start the server', () => {
    const wrong = imports.filter(
      ({ file, target }) =>
        file.startsWith('e2e/') && /^(core|web)\//.test(target) && !target.startsWith('web/serve/'),
    );
    expect(wrong).toEqual([]);
  });
});

describe('core is a function of its arguments', () => {
  it.each(sourcesIn('core').filter((file) => !/command-line|check-holding|print-schema/.test(file)))(
    '%s',
    (file) => {
      const code = readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
      expect(code).not.toMatch(
        /Date\.now|new Date\(\)|Math\.random|performance\.|\bdocument\.(create|query|body)|\bglobalThis\b|\bwindow\./,
      );
    },
  );
});

function stageOf(path: string): string {
  return path.split('/')[1] ?? '';
}

function sourcesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|mjs|svelte)$/.test(name))
    .map((name) => join(folder, name));
}

function importsOf(file: string): Import[] {
  const code = readFileSync(file, 'utf8');
  const found = code.matchAll(/(?:\bfrom\s*|\bimport\s*\(?\s*)['"]([^'"]+)['"]/g);
  return [...found].map(([, target]) => ({
    file,
    target: target!.startsWith('.') ? normalize(join(dirname(file), target!)) : target!,
  }));
}
