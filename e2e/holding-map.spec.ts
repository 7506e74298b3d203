import { expect, test } from '@playwright/test';
import { elevation, goTo, waitForPlan } from './wall-points';

test('the holding map says what a hook carries where, on the drawing and in words, and is remembered', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  const openLeaf = () => page.getByRole('tab', { name: 'Holding map' }).click();
  await openLeaf();
  // The demo's pull test found 17.9 N: of a hook that reaches 30 mm, 0.2 × 17.9 N / (3 + 0.2 × 30 / 10) = 0.994 N is 101 g.
  const row = (place: string) => page.locator('#leaf tbody tr', { hasText: place }).first();
  await expect(row('clear of edges')).toContainText('100 g');
  await expect(row('clear of edges')).toContainText('17.9');
  await expect(row('near an edge')).toContainText('50 g');

  const without = await elevation(page).screenshot();
  await page.getByLabel('On the drawing').check();
  await expect.poll(async () => (await elevation(page).screenshot()).equals(without)).toBe(false);

  const reach = page.getByLabel('Reach of the hook, holding map');
  await reach.fill('60');
  await reach.press('Enter');
  // As designed 0.2 × 17.9 N / (3 + 0.2 × 60 / 10) = 0.852 N or 86 g; with the least pull, 0.2 × 13.4 N / (2 + 1.2) = 0.838 N.
  await expect(row('clear of edges')).toContainText('85 g');
  await page.reload();
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  await openLeaf();
  await expect(page.getByLabel('On the drawing')).toBeChecked();
  await expect(reach).toHaveValue('60');

  await reach.fill('far');
  await reach.press('Enter');
  await expect(page.getByRole('alert')).toContainText('Type how far from the wall the weight hangs');
});
