import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';

/** The job as it is saved. */
async function saved(page: Page): Promise<Record<string, unknown>> {
  const wait = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save file' }).click();
  return JSON.parse(readFileSync(await (await wait).path(), 'utf8')) as Record<string, unknown>;
}

const units = (page: Page) => page.getByRole('combobox', { name: 'Lengths in' });

async function type(page: Page, label: string, text: string): Promise<void> {
  await page.getByLabel(label, { exact: true }).fill(text);
  await page.keyboard.press('Enter');
}

test('a job is shown and typed in feet and inches, and nothing of it moves by that', async ({ page }) => {
  await startWall(page);
  await page.getByLabel('Put in').and(page.locator('select')).selectOption({ label: 'door' });
  await page.getByRole('tabpanel').getByRole('button', { name: 'Put in', exact: true }).click();
  await type(page, 'door D1, from left', '301');
  const before = await saved(page);

  await units(page).selectOption({ label: 'ft and in' });
  const left = page.getByLabel('door D1, from left', { exact: true });
  await expect(left).toHaveValue(`11 7/8"`);

  // What is shown, typed back in other words and on the tape, moves nothing.
  await type(page, 'door D1, from left', `0' 11 7/8"`);
  await expect(left).toHaveValue(`11 7/8"`);
  await page.getByRole('button', { name: /^11 7\/8", left edge of door D1/ }).click();
  await page.keyboard.press('Enter');
  expect(await saved(page)).toEqual({ ...before, units: 'ft-in' });

  // Inches without a mark, feet with one, and millimetres that say so.
  await type(page, 'door D1, from left', '42');
  await expect(left).toHaveValue(`3'-6"`);
  await type(page, 'door D1, from left', `4' 3 1/2"`);
  await expect(left).toHaveValue(`4'-3 1/2"`);
  await type(page, 'door D1, from left', '1000 mm');
  await expect(left).toHaveValue(`3'-3 3/8"`);
  await type(page, 'door D1, clearance', '5 mm');
  await expect(page.getByLabel('door D1, clearance', { exact: true })).toHaveValue('5 mm');
  await type(page, 'door D1, from left', 'wide');
  await expect(page.getByText(`Type a length, such as 3' 11 1/4", 47 1/4 or 1200 mm.`)).toBeVisible();
  await page.keyboard.press('Escape');

  // An arrow key on the drawing goes by a sixteenth.
  await page.getByRole('button', { name: 'Select door D1' }).click();
  await page.getByLabel(/Elevation of wall A/).focus();
  await page.keyboard.press('ArrowRight');
  await expect(left).toHaveValue(`3'-3 7/16"`);

  // Findings and key figures follow; metres too, and back again.
  await page.getByRole('tab', { name: 'Check measures' }).click();
  await page.getByRole('button', { name: 'Put in a check measure' }).click();
  await type(page, 'Check measure 1, measured', `16'`);
  const findings = page.getByRole('complementary', { name: 'Findings' });
  await expect(findings).toContainText(`The tape says 16'-0" from corner`);
  await expect(findings).toContainText('ft² can be used');
  await units(page).selectOption({ label: 'm' });
  await expect(page.getByLabel('Check measure 1, measured')).toHaveValue('4.8768');
  await expect(findings).toContainText('The tape says 4.8768 m from corner');
  await type(page, 'Check measure 1, measured', '4,935');
  await expect(page.getByLabel('Check measure 1, measured')).toHaveValue('4.935');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(units(page)).toHaveValue('ft-in');
  await page.reload();
  await expect(page.getByLabel('Check measure 1, measured').or(left)).toBeVisible();
  await expect(units(page)).toHaveValue('ft-in');
});
