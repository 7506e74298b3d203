import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { measureWith } from '../../../core/drawings/fonts';
import { sentPage } from '../../../core/drawings/picture/sent-page';
import { pricedOf } from '../../../core/drawings/priced-documents';
import { demoJob } from '../../../core/job/demo';
import type { Job } from '../../../core/job/schema';
import { priceRows, timeRows } from '../../../core/offer/alternatives';
import { workOutFully } from '../../../core/run/pipeline';
import { fontFiles } from '../font-files';

const measure = measureWith(fontFiles);
const read = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url));
const font = (weight: 400 | 600) => ({
  weight,
  bytes: new Uint8Array(
    read(`node_modules/@fontsource/fira-sans/files/fira-sans-latin-${weight}-normal.woff2`),
  ),
});
const dress = {
  script: read('web/client-view/sent/sent.js').toString(),
  style: read('web/client-view/sent/sent.css').toString(),
  fonts: [font(400), font(600)],
};

function pageOf(job: Job, { priced = false, titles = ['As planned'] } = {}): string {
  const worked = workOutFully(job, { steps: 1 });
  const alternatives = titles.map((title) => ({ title, worked }));
  const compared = alternatives.map((one) => pricedOf(worked, one));
  const rows = [...(priced ? priceRows(compared) : []), ...timeRows(compared)];
  return sentPage({ job, alternatives, rows, pictures: new Map() }, dress, measure);
}

describe('the page to send', () => {
  const html = pageOf(demoJob());

  it('stays under 1 MB with fonts, without a photo', () => {
    expect(new TextEncoder().encode(html).length).toBeLessThan(1_000_000);
  });

  it('lets only its own script and style work, by hashes that node:crypto finds too', () => {
    const policy = /Content-Security-Policy" content="([^"]+)"/.exec(html)![1]!;
    const hashOf = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
    const script = /<script>([\s\S]*?)<\/script>/.exec(html)![1]!;
    const style = /<style>([\s\S]*?)<\/style>/.exec(html)![1]!;
    expect(policy).toContain(`script-src ${hashOf(script)};`);
    expect(policy).toContain(`style-src ${hashOf(style)};`);
    expect(policy).toContain("default-src 'none'");
    expect(html.match(/<script/g)).toHaveLength(1);
    expect(html).not.toMatch(/\son\w+=/);
    expect(html).not.toMatch(/\sstyle=/);
  });

  it('names no other host and no other file', () => {
    const addresses = html.match(/(?:src|href)=["']?[^"'\s>]+|url\([^)]{0,30}|https?:[^"\s]+/g) ?? [];
    expect(addresses.length).toBeGreaterThan(0);
    for (const address of addresses) {
      expect(address).toMatch(
        /^(?:https?:\/\/www\.w3\.org\/2000\/svg|href="#|url\(#|url\(data:font\/woff2;base64,)/,
      );
    }
  });

  it('calls no two things by one name', () => {
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const called = [...html.matchAll(/clip-path="url\(#([^)]+)\)"/g)].map(([, id]) => id!);
    expect(called.length).toBeGreaterThan(0);
    for (const id of called) expect(ids).toContain(id);
  });

  it('shows money only where it is let in', () => {
    // Fonts in base64 spell all kinds of things.
    expect(html.replace(/base64,[^)]*/g, '')).not.toMatch(/price|€|EUR/i);
    expect(pageOf(demoJob(), { priced: true })).toMatch(/Price with tax/);
  });

  it('shows the wall of an alternative that is the same only once', () => {
    const two = pageOf(demoJob(), { titles: ['One', 'Two'] });
    expect(two).toContain('As in One: Proofing wall.');
    expect(two.length).toBeLessThan(html.length * 1.05);
  });
});

describe('markup in any text of the job', () => {
  const hostile = `</title></script><script>alert(1)</script><img src=x onerror=alert(1)>"'&`;

  it('stays text', () => {
    const demo = demoJob();
    const walls = demo.walls.map((wall) => ({
      ...wall,
      name: hostile,
      colour: { srgb: '#e9e3d3', name: hostile },
      zones: wall.zones.map((zone) => ({
        ...zone,
        name: hostile,
        colour: { srgb: '#cfd6c4', name: hostile },
      })),
    }));
    const html = pageOf(
      {
        ...demo,
        walls,
        name: hostile,
        client: hostile,
        revision: hostile,
        date: hostile,
        offer: { ...demo.offer, offeredBy: hostile },
      },
      { priced: true, titles: [hostile, `${hostile}2`] },
    );
    expect(html.match(/<script/g)).toHaveLength(1);
    expect(html).not.toContain('<img');
    expect(html.match(/<\/title>/g)).toHaveLength(1);
    expect(html).toContain('&lt;img src=x onerror=alert(1)&gt;&quot;&#39;&amp;');
  });
});
