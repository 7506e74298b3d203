import { expect, test } from '@playwright/test';
import { waitForPlan } from './wall-points';

test('a zone takes a size that saves stock sheets, by keyboard alone, and gives it back', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await page.keyboard.press('Alt+3');
  await page.getByRole('tab', { name: 'Layout' }).click();
  const sizes = page.getByRole('region', { name: /Sizes of Z1 .* that save/ });

  // Only the right side may move, by no more than 240 mm.
  await sizes.getByLabel('By how much each edge may move').fill('240');
  await page.keyboard.press('Enter');
  for (const edge of ['left', 'foot', 'top']) {
    await sizes.getByRole('checkbox', { name: edge }).focus();
    await page.keyboard.press('Space');
  }
  await sizes.getByRole('button', { name: 'Look for sizes that save' }).focus();
  await page.keyboard.press('Enter');
  await expect(sizes.getByText(/panels now take \d+ stock sheets when cut by themselves/)).toBeVisible({
    timeout: 60_000,
  });
  const first = sizes.getByRole('listitem').first();
  await expect(first).toContainText(/mm (narrower|wider) on the right saves \d+ (stock sheet|cut panel)/);
  const words = (await first.innerText()).match(/([\d.]+) mm (narrower|wider)/)!;
  const change = (words[2] === 'wider' ? 1 : -1) * Number(words[1]);

  const width = async () => {
    await page.keyboard.press('Alt+2');
    const field = page.getByLabel('Zone Z1, width');
    await expect(field).toBeVisible();
    return Number(await field.inputValue());
  };
  await first.getByRole('button', { name: 'Use this size' }).focus();
  await page.keyboard.press('Enter');
  await expect(sizes.getByText('The job has changed since these sizes were looked for.')).toBeVisible();
  await expect(page.locator(':focus')).toHaveText(/Sizes of Z1/i);
  const after = await width();
  await page.keyboard.press('Control+z');
  await expect(page.getByLabel('Zone Z1, width')).toHaveValue(String(after - change));
});

test('the formats, starts and slivers of a layout are set in its fields', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await page.keyboard.press('Alt+3');
  await page.getByRole('tab', { name: 'Layout' }).click();
  const options = page.getByRole('region', { name: /More about the layout of Z1/ });
  const mixed = options.getByRole('group', { name: 'lay these formats too, where it costs less' });
  await mixed.getByRole('checkbox').first().check();
  await options.getByRole('checkbox', { name: /a best start of its own/ }).check();
  await options.getByLabel('slivers are shared out').selectOption({ label: 'never' });
  await options.getByLabel('least area of a panel in square millimetres').fill('20 000');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/Zone Z1 is laid with \d+ panels? of/).first()).toBeVisible({
    timeout: 60_000,
  });

  // Each is a change of its own, named for what it did.
  const undo = page.getByRole('button', { name: /^Undo/ });
  for (const what of ['least area', 'slivers', 'starts of parts', 'mixed formats']) {
    await expect(undo).toHaveAccessibleName(new RegExp(`Set ${what} of zone Z1`));
    await undo.click();
  }
  await expect(mixed.getByRole('checkbox').first()).not.toBeChecked();
});
