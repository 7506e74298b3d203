import { expect, test } from '@playwright/test';
import { goTo } from './wall-points';

test('a diagonal says that a wall is out of square, and the outline is fitted to it, and back', async ({
  page,
}) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'New', exact: true }).click();
  await page.getByLabel('Name of the new job').fill('Bindery');
  await page.getByRole('button', { name: 'Start the new job' }).click();
  await page.getByLabel('Width, mm').fill('4000');
  await page.getByLabel('Height, mm').fill('3000');
  await page.getByRole('button', { name: 'Draw this wall' }).click();
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Check measures' }).click();
  await page.getByRole('button', { name: 'Put in a check measure' }).click();
  const measured = page.getByRole('textbox', { name: 'Check measure 1, measured' });
  await expect(measured).toHaveValue('5000');
  await measured.fill('5012');
  await measured.press('Enter');
  await expect(page.locator('#leaf')).toContainText('12 longer than drawn');
  await expect(page.locator('#leaf')).toContainText('Corner 2 is out of square by 15 mm');
  await expect(page.getByLabel('Findings')).toContainText('The tape says 5012 mm from corner 1 to corner 3');

  await page.getByRole('button', { name: 'Fit the outline to these measures' }).click();
  await expect(page.locator('#leaf')).toContainText('as drawn');
  await expect(page.getByLabel('Findings')).not.toContainText('The tape says');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page.locator('#leaf')).toContainText('12 longer than drawn');
  await page.getByRole('button', { name: 'Delete Check measure 1' }).click();
  await expect(page.getByLabel('Findings')).not.toContainText('The tape says');
});
