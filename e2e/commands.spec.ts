import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';

const stations = ['Survey', 'Zones', 'Panels', 'Hanging', 'Price', 'Drawings'];

/** The commands of the list that is open, as [name, keys]. */
async function listed(page: Page): Promise<[string, string][]> {
  return page
    .getByRole('dialog', { name: 'All commands' })
    .evaluate((dialog) =>
      [...dialog.querySelectorAll('[role=option]')].map((option): [string, string] => [
        option.querySelector('.name')!.textContent!,
        option.querySelector('kbd')!.textContent!,
      ]),
    );
}

test('every command of every station has a name and keys of its own', async ({ page }) => {
  await startWall(page);
  for (const [i, station] of stations.entries()) {
    await page.keyboard.press(`Alt+${i + 1}`);
    await expect(page.getByRole('button', { name: station })).toHaveAttribute('aria-current', 'step');
    await page.keyboard.press('F1');
    const commands = await listed(page);
    expect(commands.length).toBeGreaterThan(15);
    for (const [name, keys] of commands) expect(`${name}: ${keys}`).toMatch(/\S.*: \S/);
    const keys = commands.map(([, key]) => key);
    expect(keys.filter((key, at) => keys.indexOf(key) !== at)).toEqual([]);
    const names = commands.map(([name]) => name);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
    await page.keyboard.press('Escape');
  }
});

test('a command is found by a word and done by Enter, and what cannot be done says why', async ({ page }) => {
  await startWall(page);
  await page.keyboard.press('Alt+3');
  await page.getByRole('button', { name: 'Commands', exact: true }).click();
  const dialog = page.getByRole('dialog', { name: 'All commands' });
  await page.keyboard.type('delete');
  await expect(dialog.getByRole('option')).toContainText(['nothing is chosen']);
  await page.keyboard.press('Enter');
  await expect(dialog).toBeVisible();
  await page.getByRole('combobox', { name: 'Look for' }).fill('socket');
  await expect(dialog.getByRole('option')).toHaveText(/Put in: Socket/);
  await page.keyboard.press('Enter');
  await expect(dialog).toBeHidden();
  await expect(page.getByRole('button', { name: 'Socket' })).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-row="fitting K1"], tr:has-text("K1")').first()).toBeVisible();
  await page.getByRole('button', { name: 'Commands', exact: true }).click();
  await page.keyboard.type('zzz');
  await expect(dialog).toContainText('No command has these words');
});

test('two keys one after the other take up a tool; typing in a field takes up none', async ({ page }) => {
  await startWall(page);
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('p');
  await page.keyboard.press('d');
  await expect(page.getByRole('button', { name: 'Door', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await page.keyboard.press('l');
  await page.keyboard.press('2');
  await expect(page.getByRole('tab', { name: 'Wall', exact: true })).toHaveAttribute('aria-selected', 'true');
  const name = page.getByRole('textbox', { name: /name/i }).first();
  await name.click();
  await name.pressSequentially('ps');
  await expect(page.getByRole('button', { name: 'Socket', exact: true })).toHaveAttribute(
    'aria-pressed',
    'false',
  );
});
