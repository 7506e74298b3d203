import { expect, test } from '@playwright/test';
import { goTo, waitForPlan } from './wall-points';

test('sales makes three alternatives, changes a price, sees all totals follow, and prints the offer', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Price');
  const total = page.getByLabel('Findings').locator('.key b');
  await expect(total).toHaveText(/^\d[\d\u00A0 ]*,\d\d$/);
  const before = await total.textContent();

  await page.getByRole('tab', { name: 'Side by side' }).click();
  await page.getByRole('button', { name: 'as magnetic coating' }).click();
  await page.getByRole('button', { name: 'as magnetic film' }).click();
  const leaf = page.locator('#leaf');
  const prices = leaf.getByRole('row', { name: /^Price with tax/ }).getByRole('cell');
  await expect(prices).toHaveCount(3);
  const apart = await prices.allTextContents();
  expect(new Set(apart).size).toBe(3);
  await expect(leaf).toContainText('Holds strong magnets through its finish');
  await expect(leaf).toContainText('Holds no tools, frames or thick stacks');

  await page.getByRole('tab', { name: 'Products', exact: true }).click();
  const packs = page.getByRole('textbox', { name: 'Fine filler, packs' });
  await packs.fill('20 at 1000');
  await packs.press('Enter');
  await expect(total).not.toHaveText(before!);
  await page.getByRole('tab', { name: 'Side by side' }).click();
  await expect(prices.first()).not.toHaveText(apart[0]!);

  // What is typed wrong is said, and nothing changes.
  await page.getByRole('tab', { name: 'Products', exact: true }).click();
  await packs.fill('a bucket');
  await packs.press('Enter');
  await expect(leaf.getByRole('alert')).toContainText('is no pack');
  await packs.press('Escape');
  await expect(packs).toHaveValue('20 at 1000.00');

  await page.getByRole('tab', { name: 'Offer', exact: true }).click();
  await expect(leaf.getByRole('row', { name: /^Total/ })).toContainText((await total.textContent())!);
  await expect(leaf).not.toContainText('Markup');
  await page.getByRole('button', { name: 'With costs, for the firm' }).click();
  await expect(leaf.getByRole('row', { name: /^Markup/ })).toBeVisible();

  await goTo(page, 'Drawings');
  await waitForPlan(page);
  const row = page.getByRole('row').filter({ hasText: /^\s*Offer/ });
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    row.getByRole('button', { name: /^Download/ }).click(),
  ]);
  expect(download.suggestedFilename()).toContain('offer.pdf');
});

test('a layer is changed for one zone, kept under a name, and the ready layers come back', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Zones');
  await page.getByRole('tab', { name: 'Layers', exact: true }).click();
  const leaf = page.locator('#leaf');
  await expect(leaf).toContainText('Layers of zone Z1, Proofs');
  const thickness = page.getByRole('textbox', { name: /filler: thickness/ });
  await thickness.fill('3');
  await thickness.press('Enter');
  await expect(thickness).toHaveValue('3');
  const name = page.getByRole('textbox', { name: /^Own layers B1, name/ });
  await name.fill('Deep filler');
  await name.press('Enter');
  const choice = page.getByRole('combobox', { name: 'Zone Z1, layers' });
  await expect(choice).toHaveValue('B1');
  await page.getByRole('button', { name: 'Ready layers again' }).click();
  await expect(choice).toHaveValue('');
  await expect(choice.getByRole('option', { name: 'Deep filler' })).toHaveCount(1);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(choice).toHaveValue('B1');
});

test('an optional line by the square metre stands under the total and leaves it as it is', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Price');
  const total = page.getByLabel('Findings').locator('.key b');
  await expect(total).toHaveText(/^\d[\d\u00A0 ]*,\d\d$/);
  const before = (await total.textContent())!;

  await page.getByRole('tab', { name: 'Rates' }).click();
  await page.getByRole('button', { name: 'Add an item' }).click();
  const list = (column: string) => page.getByRole('textbox', { name: `Price list 1, ${column}` });
  for (const [column, typed] of [
    ['item', 'Protective film'],
    ['unit', 'm²'],
    ['price, EUR', '12.50'],
  ] as const) {
    await list(column).fill(typed);
    await list(column).press('Enter');
  }
  await page.getByRole('button', { name: 'Add a line' }).click();
  const optional = page.getByRole('combobox', { name: 'Lines from the price list 1, optional' });
  await optional.selectOption('yes');
  const quantity = page.getByRole('textbox', { name: 'Lines from the price list 1, quantity' });
  await quantity.fill('');
  await quantity.press('Enter');

  await page.getByRole('tab', { name: 'Offer', exact: true }).click();
  const leaf = page.locator('#leaf');
  await expect(leaf.getByRole('row', { name: /^Optional, not in the total/ })).toBeVisible();
  const row = leaf.getByRole('row', { name: /^Protective film/ });
  await expect(row).toContainText('for all zones as they are measured');
  const [area, , amount] = (await row.getByRole('cell').allTextContents()).slice(1);
  const figure = (text = '') => Number(text.replace(/[^\d,]/g, '').replace(',', '.'));
  expect(figure(area)).toBeGreaterThan(1);
  expect(figure(amount)).toBeCloseTo(figure(area) * 12.5, 1);
  await expect(total).toHaveText(before);
});

test('a list of products is taken in whole, or not at all with every row that is wrong', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Price');
  await page.getByRole('tab', { name: 'Products', exact: true }).click();
  const leaf = page.locator('#leaf');
  const names = leaf.getByRole('textbox', { name: /, name$/ });
  const before = await names.count();
  const load = (text: string) =>
    leaf
      .locator('input[type="file"]')
      .setInputFiles({ name: 'own.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });

  const heading = 'id,name,layer,unit,packs (size @ price)\n';
  await load(`${heading}X1,Good paint,decorative,l,5 @ 20\nX2,Bad paint,putty,l,5 @ 20\n`);
  await expect(leaf.getByRole('alert').first()).toContainText('Nothing was taken in from own.csv');
  await expect(leaf).toContainText('putty');
  await expect(names).toHaveCount(before);

  await load('\u0000\u0001\u0002');
  await expect(leaf.getByRole('alert').first()).toContainText('own.csv');
  await expect(names).toHaveCount(before);

  await load(`${heading}X1,Good paint,decorative,l,5 @ 20\n`);
  await expect(names).toHaveCount(before + 1);
  await expect(leaf.getByRole('alert')).toHaveCount(0);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(names).toHaveCount(before);
});

test('a rule that the layers break is mended by its button, in the findings and beside the layers', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Zones');
  await page.getByRole('tab', { name: 'Layers', exact: true }).click();
  const findings = page.getByLabel('Findings');
  const leaf = page.locator('#leaf');
  const rows = leaf.getByRole('rowheader');
  const mend = { name: 'Prime every cut edge against rust, zone Z1' };
  await expect(page.getByRole('combobox', { name: /metal primer: over/ }).last()).toHaveValue('edges');
  await page
    .getByRole('button', { name: /metal primer: take out/ })
    .last()
    .click();
  const beside = leaf.getByRole('button', mend);
  const found = findings.getByRole('button', mend);
  await expect(beside).toBeVisible();
  await expect(found).toBeVisible();
  const item = findings.getByRole('listitem').filter({ has: page.getByRole('button', mend) });
  await item.getByText('Why').click();
  await expect(item).toContainText('Common practice, no source.');
  const before = await rows.count();
  await found.click();
  await expect(found).toHaveCount(0);
  await expect(beside).toHaveCount(0);
  await expect(rows).toHaveCount(before + 1);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await beside.click();
  await expect(found).toHaveCount(0);
});
