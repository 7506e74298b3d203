import { expect, test, type Page } from '@playwright/test';
import { elevation, goTo, waitForPlan } from './wall-points';

const figure = async (page: Page, item: string, said: string) =>
  Number(await page.getByLabel(`${item}, ${said}`, { exact: true }).inputValue());

test('several hung items are aligned and spaced as other things are, at Hanging', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  for (const item of ['print H1', 'print H2', 'poster H3']) {
    await page.getByRole('checkbox', { name: `Choose ${item} too` }).check();
  }
  const strip = page.getByRole('group', { name: 'Arrange what is chosen' });
  await expect(strip).toBeVisible();
  await elevation(page).focus();
  await page.keyboard.press('a');
  await page.keyboard.press('f');
  const feet = await Promise.all(
    ['print H1', 'print H2', 'poster H3'].map((item) => figure(page, item, 'from floor')),
  );
  expect(new Set(feet).size).toBe(1);
  await page.keyboard.press('a');
  await page.keyboard.press('x');
  const [one, two, three] = await Promise.all(
    ['print H1', 'print H2', 'poster H3'].map(async (item) => {
      const x = await figure(page, item, 'from left');
      return { x, right: x + (await figure(page, item, 'width')) };
    }),
  );
  expect(two!.x - one!.right).toBeCloseTo(three!.x - two!.right, 1);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('button', { name: /^Redo “Align/ })).toBeEnabled();
});
