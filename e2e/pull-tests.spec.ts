import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { startWall } from './new-wall';
import { goTo } from './wall-points';

test('magnets of the job: own figures, a list as CSV with a bad row; a pull test says what it says of the wall', async ({
  page,
}) => {
  await startWall(page);
  await page.getByRole('button', { name: 'Add wall', exact: true }).click();
  const dialog = page.getByRole('dialog', { name: 'Add a wall' });
  await dialog.getByLabel('Width, mm').fill('3000');
  await dialog.getByLabel('Height, mm').fill('2500');
  await dialog.getByLabel('steel panels over all of it').check();
  await dialog.getByRole('button', { name: 'Add the wall' }).click();
  await goTo(page, 'Hanging');

  await page.getByRole('tab', { name: 'Magnets' }).click();
  const leaf = page.getByRole('tabpanel');
  await leaf.getByRole('button', { name: 'Add a magnet' }).click();
  await leaf.getByLabel('MG1, name').fill('Cup 25');
  await page.keyboard.press('Enter');
  await leaf.getByLabel('Cup 25, Shape').selectOption('pot');
  await leaf.getByLabel("Cup 25, maker's pull").fill('20 kg');
  await page.keyboard.press('Enter');
  await expect(leaf).toContainText('Type the pull, the steel it was measured on and the gap');
  await leaf.getByLabel("Cup 25, maker's pull").fill('20 kg on 10 mm across 0 mm');
  await page.keyboard.press('Enter');
  await expect(leaf.getByLabel("Cup 25, maker's pull")).toHaveValue('196.13 N on 10 mm across 0 mm');

  const saved = page.waitForEvent('download');
  await leaf.getByRole('button', { name: 'Save the list as CSV' }).click();
  const text = readFileSync(await (await saved).path(), 'utf8');
  expect(text).toContain('MG1,Cup 25,pot,20');
  const [headings] = text.split('\r\n');
  const rows = ['MG2,Block,block,15,20,,5,neodymium,1.28', 'MG3,Nothing,disc,0,,,5'];
  await leaf.getByLabel('List of magnets as CSV').setInputFiles({
    name: 'magnets.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from([headings, ...rows].join('\r\n')),
  });
  await expect(leaf.getByLabel('MG2, name')).toHaveValue('Block');
  await expect(leaf.getByRole('alert')).toContainText('Row 3, diameter or shorter side (mm): “0” is not');
  await expect(leaf.getByLabel('MG3, name')).toHaveCount(0);

  await page.getByRole('tab', { name: 'Pull tests' }).click();
  await leaf.getByLabel('pulled off at').fill('11,2; many');
  await page.keyboard.press('Enter');
  await expect(leaf.getByRole('alert')).toContainText('“many”');
  await leaf.getByLabel('pulled off at').fill('11.2; 1.2 kg');
  await page.keyboard.press('Enter');
  await expect(leaf).toContainText('The lowest reading is 11.2 N.');
  await expect(leaf).toContainText(/The wall pulls as if [\d.]+ mm lay over the steel/);
  await expect(leaf).toContainText('Only 2 of at least 3 readings');
  await leaf.getByLabel('Pull test T1, readings').fill('11.2; 11.8; 12');
  await page.keyboard.press('Enter');
  await expect(leaf).not.toContainText('of at least 3 readings');
  await leaf.getByLabel('Pull test T1, magnet').selectOption({ label: 'Block' });
  await expect(leaf).toContainText('The model knows bare discs only');
  await page.getByRole('button', { name: 'Delete pull test T1' }).click();
  await expect(leaf).not.toContainText('The lowest reading');
});
