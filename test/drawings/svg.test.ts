import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { measureWith } from '../../core/drawings/fonts';
import { holdingMapSheet } from '../../core/drawings/holding-map-sheet';
import { settingOutSheet } from '../../core/drawings/setting-out';
import { toSvg } from '../../core/drawings/svg';
import type { Item } from '../../core/drawings/page';
import { fontFiles } from './font-files';
import { smallWorkedOut } from './small-job';

const page = (items: Item[]) => toSvg({ format: 'A4', landscape: false, items });

describe('a page as SVG', () => {
  it('has the size of the paper in millimetres, y downwards', () => {
    const svg = page([
      {
        kind: 'stroke',
        points: [
          { x: 20, y: 10 },
          { x: 200, y: 287 },
        ],
        width: 0.35,
      },
    ]);
    expect(svg).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"');
    expect(svg).toContain('d="M20 287L200 10"');
    expect(svg).toContain('stroke-width="0.35"');
  });

  it('keeps markup in names as text', () => {
    const text = `"><script>alert('&')</script>\u0000`;
    const svg = page([{ kind: 'text', text, at: { x: 20, y: 20 }, height: 5 }]);
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&quot;&gt;&lt;script&gt;alert(&#39;&amp;&#39;)&lt;/script&gt;</text>');
  });

  it('draws broken lines with the runs of ISO 128-20', () => {
    const points = [
      { x: 0, y: 0 },
      { x: 50, y: 0 },
    ];
    expect(page([{ kind: 'stroke', points, width: 0.5, line: 'dashed' }])).toContain(
      'stroke-dasharray="6 1.5"',
    );
    expect(page([{ kind: 'stroke', points, width: 0.5, line: 'long-dashed-dotted' }])).toContain(
      'stroke-dasharray="12 1.5 0.25 1.5"',
    );
  });
});

/*
 * Drawings under review. A picture guards against change, it does not prove right. One that differs is written
 * beside the expected one as `…changed.svg`: look at both, and let it take the other's name if it is better.
 */
describe('sheets of the small job look as reviewed', () => {
  const worked = smallWorkedOut();
  const measure = measureWith(fontFiles);
  const documents = [
    ...worked.walls.map((_, wall) => settingOutSheet(worked, wall, measure)),
    holdingMapSheet(worked, 0, measure),
  ];
  const pages = documents.flatMap((document) =>
    document.pages.map((one, i) => [`${document.name}-${i + 1}`, toSvg(one)] as const),
  );

  it.each(pages)('%s', (name, svg) => {
    const expected = new URL(`../pages/${name}.svg`, import.meta.url);
    const changed = new URL(`../pages/${name}.changed.svg`, import.meta.url);
    rmSync(changed, { force: true });
    const same = existsSync(expected) && readFileSync(expected, 'utf8') === svg;
    if (!same) writeFileSync(changed, svg);
    expect(same, `${name} has changed: compare it with test/pages/${name}.changed.svg`).toBe(true);
  });
});
