/*
 * Runs a benchmark as the planner runs in a browser: bundled first. Run from source, every function would be wrapped to
 * keep its name, which the innermost loops feel. In a process of its own, so that bundling counts in nobody's memory.
 *
 *     node test/bench/run-built.mjs FILE [ARGUMENTS…]      FILE in test/bench, without its ending
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../../', import.meta.url));
const [name, ...rest] = process.argv.slice(2);
// As deep as the sources: what they find beside themselves is found from here too.
const outDir = mkdtempSync(join(root, 'node_modules', '.bench-'));
process.on('exit', () => rmSync(outDir, { recursive: true, force: true }));
await build({
  root,
  configFile: false,
  logLevel: 'error',
  // Its exports cannot be named from outside a bundle.
  ssr: { noExternal: ['maxrects-packer'] },
  build: {
    ssr: join(root, 'test', 'bench', `${name}.ts`),
    outDir,
    emptyOutDir: false,
    minify: false,
    rollupOptions: { output: { entryFileNames: 'bench.mjs' } },
  },
});
const bench = spawn(process.execPath, ['--expose-gc', join(outDir, 'bench.mjs'), ...rest], {
  stdio: 'inherit',
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => bench.kill(signal));
bench.on('exit', (code) => process.exit(code ?? 1));
