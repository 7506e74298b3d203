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
