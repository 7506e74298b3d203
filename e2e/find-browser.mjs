import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { run } from '../web/serve/ensure-installed.mjs';

const names = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'chrome.exe',
];
const places = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:/Program Files/Google/Chrome/Application/chrome.exe',
  'C:/Program Files (x86)/Google/Chrome/Application/chrome.exe',
];

/**
 * The path of a Chromium or Chrome: CHROMIUM_PATH, else an installed one, else Playwright's own (installed now
 * if need be), else Debian's package where we are root. Says which it took, or exits saying what was tried.
 */
export async function findBrowser() {
  const tried = [];
  const take = (path, how) => {
    console.log(`Browser: ${path} (${how}).`);
    return path;
  };

  const given = process.env.CHROMIUM_PATH;
  if (given && existsSync(given)) return take(given, 'CHROMIUM_PATH');
  tried.push(given ? `CHROMIUM_PATH=${given}: no such file` : 'CHROMIUM_PATH: not set');

  const installed = findInstalled();
  if (installed) return take(installed, 'installed');
  tried.push(`installed ${names.join(', ')}: none found`);

  const own = (await import('@playwright/test')).chromium.executablePath();
  if (existsSync(own)) return take(own, "Playwright's own");
  const download = run('npx', ['playwright', 'install', 'chromium']);
  if (download.status === 0 && existsSync(own)) return take(own, "Playwright's own, installed now");
  tried.push("npx playwright install chromium: failed (no way to Playwright's downloads?)");

  if (process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0) {
    run('apt-get', ['update', '-q']);
    run('apt-get', ['install', '-y', '-q', 'chromium']);
    const debian = findInstalled();
    if (debian) return take(debian, "Debian's package, installed now");
    tried.push('apt-get install chromium: failed');
  } else {
    tried.push('apt-get install chromium: not root, or not Debian');
  }
  console.error(
    `No browser for the browser tests. Tried:\n- ${tried.join('\n- ')}\nSet CHROMIUM_PATH to a Chromium or Chrome.`,
  );
  process.exit(1);
}

function findInstalled() {
  const folders = (process.env.PATH ?? '').split(delimiter);
  const candidates = [...names.flatMap((name) => folders.map((folder) => join(folder, name))), ...places];
  return candidates.find((path) => existsSync(path));
}
