import { expect, test, type Page } from '@playwright/test';
import { elevation, goTo, waitForPlan } from './wall-points';

const openLeaf = (page: Page) => page.getByRole('tab', { name: 'Holding map' }).click();
const row = (page: Page, place: string) => page.locator('#leaf tbody tr', { hasText: place }).first();

test('the holding map says what a hook carries where, on the drawing and in words, and is remembered', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  await openLeaf(page);
  // The demo's pull test found 17.9 N: of a hook that reaches 30 mm, 0.2 × 17.9 N / (3 + 0.2 × 30 / 10) = 0.994 N is 101 g.
  await expect(row(page, 'clear of edges')).toContainText('100 g');
  await expect(row(page, 'clear of edges')).toContainText('17.9');
  await expect(row(page, 'near an edge')).toContainText('50 g');

  const without = await elevation(page).screenshot();
  await page.getByLabel('On the drawing').check();
  await expect.poll(async () => (await elevation(page).screenshot()).equals(without)).toBe(false);

  const reach = page.getByLabel('Reach of the hook, holding map');
  await reach.fill('60');
  await reach.press('Enter');
  // As designed 0.2 × 17.9 N / (3 + 0.2 × 60 / 10) = 0.852 N or 86 g; with the least pull, 0.2 × 13.4 N / (2 + 1.2) = 0.838 N.
  await expect(row(page, 'clear of edges')).toContainText('85 g');
  await page.reload();
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  await openLeaf(page);
  await expect(page.getByLabel('On the drawing')).toBeChecked();
  await expect(reach).toHaveValue('60');

  await reach.fill('far');
  await reach.press('Enter');
  await expect(page.getByRole('alert')).toContainText('Type how far from the wall the weight hangs');
});

test('magnet and reach of the map belong to the job: undo takes them back one by one', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  await openLeaf(page);
  const magnet = page.getByLabel('Magnet of the holding map', { exact: true });
  const reach = page.getByLabel('Reach of the hook, holding map');
  await expect(magnet).toHaveValue('N42-20x5');
  await expect(row(page, 'clear of edges')).toContainText('100 g');
  await magnet.selectOption('N42-10x3');
  await expect(row(page, 'clear of edges')).not.toContainText('100 g');
  await reach.fill('10');
  await reach.press('Enter');
  await expect(page.getByRole('button', { name: 'Undo “Set reach of the holding map”' })).toBeVisible();
  await page.getByRole('button', { name: /^Undo “/ }).click();
  await expect(reach).toHaveValue('30');
  await page.getByRole('button', { name: 'Undo “Set magnet of the holding map”' }).click();
  await expect(magnet).toHaveValue('N42-20x5');
  await expect(row(page, 'clear of edges')).toContainText('100 g');
});

test('the map is among the drawings, and in the client view only where the job wants it', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  const dialog = page.getByRole('dialog');
  const asked = dialog.getByRole('checkbox', { name: 'Where a magnet holds' });
  const openView = async () => {
    await goTo(page, 'Drawings');
    const show = page.getByRole('button', { name: 'Client view on screen' });
    await expect(show).toBeEnabled({ timeout: 60_000 });
    await expect(page.getByRole('button', { name: /^Show .*Holding map, wall A/i })).toBeVisible();
    await show.click();
    await expect(dialog.getByRole('button', { name: 'Leave' })).toBeVisible();
  };
  await openView();
  await expect(asked).toHaveCount(0);
  await dialog.getByRole('button', { name: 'Leave' }).click();

  await goTo(page, 'Hanging');
  await openLeaf(page);
  const wanted = page.getByLabel('In the client view');
  await expect(wanted).not.toBeChecked();
  await wanted.check();
  await expect(page.getByRole('button', { name: 'Undo “Show the holding map to the client”' })).toBeVisible();

  await openView();
  await expect(dialog).not.toContainText('Up to 100 g on one hook');
  await asked.check();
  await expect(dialog).toContainText('Up to 100 g on one hook');
  await expect(dialog).toContainText('two that are swallowed');
});
