/* `npm start`: installs what is missing, builds the planner and serves it on localhost. PORT is obeyed. */
import { ensureInstalled, root } from './ensure-installed.mjs';

ensureInstalled();

const { build, preview } = await import('vite');
const configFile = `${root}/web/vite.config.ts`;
const port = Number(process.env.PORT ?? 4173);
if (!Number.isInteger(port) || port < 1 || port > 65535) {
  console.error(`PORT is ${process.env.PORT}: give a whole number from 1 to 65535.`);
  process.exit(1);
}

await build({ configFile, logLevel: 'warn' });
// A port that is taken steps on to the next free one.
const server = await preview({ configFile, preview: { port, strictPort: false, host: 'localhost' } });
console.log(
  `Lodeplan is served at ${server.resolvedUrls?.local[0] ?? `http://localhost:${port}/`} (Ctrl+C stops it).`,
);
