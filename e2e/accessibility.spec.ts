import { createRequire } from 'node:module';
import { expect, test, type Page } from '@playwright/test';
import { goTo, waitForPlan } from './wall-points';

// The policy of the page allows no foreign script; the checker is let in for this test only.
test.use({ bypassCSP: true });

const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

interface Violation {
  readonly id: string;
  readonly impact: string | null;
  readonly nodes: readonly { readonly html: string }[];
}

async function seriousViolations(page: Page): Promise<string[]> {
  await page.addScriptTag({ path: axe });
  const violations = await page.evaluate(async () => {
    const checker = (window as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } }).axe;
    return (await checker.run()).violations;
  });
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
}

for (const viewport of [
  { width: 1440, height: 900 },
  { width: 820, height: 1180 },
]) {
  for (const station of ['Survey', 'Zones', 'Panels', 'Hanging', 'Drawings'] as const) {
    test(`axe-core finds nothing serious at ${station}, ${viewport.width} px wide`, async ({ page }) => {
      await page.setViewportSize(viewport);
      await page.goto('/');
      await waitForPlan(page);
      await goTo(page, station);
      await expect(page.locator('#schedule tbody tr').first()).toBeVisible();
      expect(await seriousViolations(page)).toEqual([]);
      // Nothing hangs over the side of a tablet.
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(overflow).toBeLessThanOrEqual(0);
    });
  }
}
