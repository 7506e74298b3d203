import { expect, test } from '@playwright/test';
import { startWall } from './new-wall';
import { goTo } from './wall-points';

const pasted = [
  'what\tfrom left\tto\tfrom floor\theight',
  'door\t220\t1146\t0\t2040',
  'window\t2.4 m\t3.6 m\t90 cm\t1200',
  'gate\t10\t20\t0\t5',
  'socket\t1560\t\t\t',
  'pipe\t3900\t\t0\t',
].join('\n');

test('a page of tape readings is pasted, a wrong row mended, and all of it undone at once', async ({
  page,
}) => {
  await startWall(page);
  await goTo(page, 'Survey');

  await page.getByRole('button', { name: 'Tape readings…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Tape readings' });
  await dialog.getByLabel('Readings').fill(pasted);
  await expect(dialog.getByRole('row').filter({ hasText: /^3\s*window/ })).toContainText('2400');
  await expect(dialog.getByRole('row').filter({ hasText: 'gate' })).toContainText('kind: Write what it is');
  await dialog.getByRole('button', { name: 'Put in 4 of 5' }).click();

  await expect(dialog.getByRole('status')).toContainText('4 readings are on the wall');
  await expect(dialog.getByLabel('Readings')).toHaveValue(
    'what\tfrom left\tto\tfrom floor\theight\ngate\t10\t20\t0\t5',
  );
  await dialog.getByLabel('Readings').fill('hatch 1600 high');
  await expect(dialog.getByRole('row').filter({ hasText: 'from floor: ' })).toBeVisible();
  await dialog.getByLabel('Readings').fill('hatch 1600 1500 to 2000 300');
  await dialog.getByRole('button', { name: 'Put them in' }).click();
  await expect(dialog).toBeHidden();

  const rows = page.locator('#schedule tbody tr').filter({ has: page.getByRole('textbox') });
  await expect(page.getByRole('textbox', { name: 'door D1, width' })).toHaveValue('926');
  await expect(page.getByRole('textbox', { name: 'window W1, from floor' })).toHaveValue('900');
  await expect(page.getByRole('textbox', { name: 'hatch H1, width' })).toHaveValue('400');
  await expect(rows).toHaveCount(5);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(rows).toHaveCount(4);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(rows).toHaveCount(0);
});
