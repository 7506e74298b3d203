import { expect, type Page } from '@playwright/test';
import { elevation } from './wall-points';

/** A new job, “Bindery”, with one bare wall, from the demo on the screen. */
export async function startWall(page: Page, width = '4.2 m', height = '2600'): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: 'New', exact: true }).click();
  await page.getByLabel('Name of the new job').fill('Bindery');
  await page.getByRole('button', { name: 'Start the new job' }).click();
  await page.getByLabel('Width, mm').fill(width);
  await page.getByLabel('Height, mm').fill(height);
  await page.getByRole('button', { name: 'Draw this wall' }).click();
  await expect(elevation(page)).toHaveAttribute('aria-label', /Elevation of wall A/);
}

/** A second wall, 2400 × 2600, meets the right end of the first in an internal corner; both are shown as one strip, A in front. */
export async function addWallRoundCorner(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Add wall', exact: true }).click();
  await page.getByLabel('Name', { exact: true }).fill('Type store');
  await page.getByLabel('Width, mm').fill('2400');
  await page.getByLabel('Height, mm').fill('2600');
  await page.getByRole('button', { name: 'Add the wall' }).click();
  await page.getByRole('tab', { name: 'Room', exact: true }).click();
  await page.getByLabel('wall A, its right end meets').selectOption('B');
  await page.getByRole('button', { name: 'Show wall A' }).click();
  await page.getByRole('button', { name: 'Room', exact: true }).click();
  await expect(elevation(page)).toHaveAttribute('aria-label', /Elevation of wall A/);
}
