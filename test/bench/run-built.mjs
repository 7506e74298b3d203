/*
 * Runs a benchmark as the planner runs in a browser: bundled first. Run from source, every function would be wrapped to
 * keep its name, which the innermost loops feel.
 *
 *     node test/bench/run-built.mjs FILE [ARGUMENTS…]      FILE in test/bench, without its ending
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../../', import.meta.url));
const [name, ...rest] = process.argv.slice(2);
const outDir = mkdtempSync(join(root, 'node_modules', '.bench-'));
process.on('exit', () => rmSync(outDir, { recursive: true, force: true }));
await build({
  root,
  configFile: false,
  logLevel: 'error',
  build: {
    ssr: join(root, 'test', 'bench', `${name}.ts`),
    outDir,
    emptyOutDir: false,
    minify: false,
    rollupOptions: { output: { entryFileNames: 'bench.mjs' } },
  },
});
process.argv.splice(1, process.argv.length - 1, join(root, 'test', 'bench', `${name}.ts`), ...rest);
await import(pathToFileURL(join(outDir, 'bench.mjs')).href);
