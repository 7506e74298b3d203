import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { clientView } from '../../core/drawings/client-view';
import { measureWith } from '../../core/drawings/fonts';
import { toSvg } from '../../core/drawings/svg';
import { demoJob } from '../../core/job/demo';
import { workOutFully } from '../../core/run/pipeline';
import { fontFiles } from './font-files';

/*
 * The client view under review by eye. One that differs is written beside the expected one as `…changed.svg`: look at
 * both, and let it take the other's name if it is better.
 */
describe('the client view of the demo looks as reviewed', () => {
  const document = clientView(workOutFully(demoJob(), { steps: 2 }), measureWith(fontFiles));

  it.each(document.pages.map((page, i) => [`client-view-${i + 1}`, toSvg(page)] as const))(
    '%s',
    (name, svg) => {
      const expected = new URL(`../pages/${name}.svg`, import.meta.url);
      const changed = new URL(`../pages/${name}.changed.svg`, import.meta.url);
      rmSync(changed, { force: true });
      const same = existsSync(expected) && readFileSync(expected, 'utf8') === svg;
      if (!same) writeFileSync(changed, svg);
      expect(same, `${name} has changed: compare it with test/pages/${name}.changed.svg`).toBe(true);
    },
  );
});
