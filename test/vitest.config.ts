import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  // Only for runes in .svelte.ts files: no component is mounted here.
  plugins: [svelte({ configFile: new URL('../svelte.config.js', import.meta.url).pathname })],
  test: { include: ['test/**/*.test.ts'], testTimeout: 60_000 },
});
