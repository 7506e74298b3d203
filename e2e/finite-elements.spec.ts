import { expect, test, type Page } from '@playwright/test';
import { goTo, waitForPlan } from './wall-points';

const leaf = (page: Page) => page.getByRole('tabpanel');
const show = (page: Page, name: string) => page.getByRole('tab', { name, exact: true }).click();
const solve = (page: Page) => leaf(page).getByRole('button', { name: 'Solve the field of its magnets' });
const answer = (page: Page) => leaf(page).getByText(/^By the pulls counted here/);

const poster = 'poster H3 (Type specimen)';

test('the pull of a poster’s magnets is confirmed beside the closed form, and a change of the job takes the answer back', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  await show(page, 'Calculation');
  await leaf(page).getByLabel('calculation of').selectOption({ label: poster });
  await solve(page).click();
  await expect(answer(page)).toContainText(/poster H3 [^,]* holds, [\d.]+ times over/, { timeout: 60_000 });
  await expect(
    leaf(page).getByRole('row', { name: /^4 × N42 20 × 5 mm [\d.]+ [\d.]+ [+−]?\d % pull test on site/ }),
  ).toBeVisible();
  await expect(leaf(page)).toContainText('softer steel pulls up to 5 % more');

  await show(page, 'Hung items');
  const left = page.getByLabel('poster H3, from left');
  await left.fill(String(Number(await left.inputValue()) + 1));
  await left.press('Enter');
  await show(page, 'Calculation');
  await expect(solve(page)).toBeEnabled({ timeout: 60_000 });
  await expect(answer(page)).toHaveCount(0);
});

test('a ring cannot be judged; by finite elements it holds only if tested, and solving can be stopped', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  await show(page, 'Magnets');
  await leaf(page).getByRole('button', { name: 'Add a magnet' }).click();
  await leaf(page).getByLabel('New magnet, Shape').selectOption('ring');
  await leaf(page).getByLabel('New magnet, Bore').fill('6');
  await page.keyboard.press('Enter');
  await show(page, 'Calculation');
  await leaf(page).getByLabel('calculation of').selectOption({ label: poster });
  await show(page, 'Hung items');
  await page.getByLabel('poster H3, magnet', { exact: true }).selectOption({ label: 'New magnet' });
  await show(page, 'Calculation');
  await expect(leaf(page).getByRole('heading', { name: /poster H3/ })).toContainText('cannot be judged');
  await solve(page).click();
  await leaf(page).getByRole('button', { name: 'Stop solving' }).click();
  await expect(answer(page)).toHaveCount(0);
  await solve(page).click();
  await expect(answer(page)).toContainText('holds only if tested', { timeout: 60_000 });
  await expect(leaf(page)).toContainText('pull it off this wall in three places');
  await expect(
    leaf(page).getByRole('row', { name: /New magnet – [\d.]+ – finite elements alone/ }),
  ).toBeVisible();
});
