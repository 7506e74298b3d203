import { expect, test, type Page } from '@playwright/test';
import { addWallRoundCorner, startWall } from './new-wall';
import { clickWall, dragWall, elevation, goTo, waitForPlan } from './wall-points';

async function startRoom(page: Page): Promise<void> {
  await startWall(page, '3200', '2600');
  await addWallRoundCorner(page);
}

const zoneFigure = (page: Page, label: string) => page.getByLabel(`Zone Z1, ${label}`, { exact: true });

test('a zone is pulled round the corner by hand, its lines continue, and the fold is on the setting-out sheets', async ({
  page,
}) => {
  await startRoom(page);
  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'Put in a zone' }).click();
  await expect(zoneFigure(page, 'width')).toHaveValue('2000');

  // Its right side past the corner, 700 along the next wall: one change that one undo takes back.
  await dragWall(page, [2600, 1400], [3900, 1400]);
  await expect(zoneFigure(page, 'width')).toHaveValue('2600');
  await expect(page.getByText('At the right end it runs on as Z1 on wall B.')).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(zoneFigure(page, 'width')).toHaveValue('2000');
  await page.keyboard.press('Control+Shift+z');
  await expect(zoneFigure(page, 'width')).toHaveValue('2600');

  // What is typed here is followed there.
  await zoneFigure(page, 'from floor').fill('800');
  await zoneFigure(page, 'from floor').press('Enter');
  await clickWall(page, 3200 + 1800, 400);
  await expect(elevation(page)).toHaveAttribute('aria-label', /Elevation of wall B/);
  await expect(zoneFigure(page, 'from floor')).toHaveValue('800');
  expect(Math.abs(Number(await zoneFigure(page, 'width').inputValue()) - 700)).toBeLessThanOrEqual(10);
  await zoneFigure(page, 'width').fill('800');
  await zoneFigure(page, 'width').press('Enter');
  await page.getByRole('button', { name: 'Go to it' }).click();
  await expect(elevation(page)).toHaveAttribute('aria-label', /Elevation of wall A/);

  // From 600: 500 × 5 and 100 before the corner, 400 of that sheet after it, then 400.
  await goTo(page, 'Panels');
  await page.getByRole('tab', { name: 'Layout' }).click();
  await page.getByLabel('Zone Z1, start', { exact: true }).selectOption('lower-left');
  await waitForPlan(page);
  await goTo(page, 'Drawings');
  await page.getByRole('button', { name: 'Show Bindery: setting-out sheet, wall A', exact: true }).click();
  const sheet = page.locator('svg').filter({ hasText: 'continues on wall B' });
  await expect(sheet.first()).toBeVisible();
  await expect(sheet.first()).toContainText('first joint 400 from the corner');
  await page.getByRole('button', { name: 'Show Bindery: setting-out sheet, wall B Type store' }).click();
  await expect(
    page.locator('svg').filter({ hasText: 'continues on wall A, first joint 100 from the corner' }).first(),
  ).toBeVisible();
});

test('the same by keyboard and typed figures; parts that do not meet are found, and a part can be let go', async ({
  page,
}) => {
  await startRoom(page);
  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'Put in a zone' }).click();
  await page.getByLabel('Length on wall B; empty: all of it').fill('900');
  await page.getByLabel('Length on wall B; empty: all of it').press('Enter');
  const run = page.getByRole('button', { name: 'Run round the right corner' });
  await run.focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Go to it' }).press('Enter');
  await expect(zoneFigure(page, 'width')).toHaveValue('900');
  await zoneFigure(page, 'from left').fill('50');
  await zoneFigure(page, 'from left').press('Enter');
  await expect(page.getByText(/does not reach the left end of its wall at 0/)).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByText(/does not reach the left end/)).toHaveCount(0);
  await page.getByRole('button', { name: 'Part at the corner' }).press('Enter');
  await expect(run).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Run round the left corner' })).toBeVisible();

  // A wall taken down takes its corner along, and its neighbour stays as it is.
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Wall', exact: true }).click();
  await page.getByRole('button', { name: 'Delete wall B' }).click();
  await expect(elevation(page)).toHaveAttribute('aria-label', /Elevation of wall A/);
  await page.getByRole('tab', { name: 'Room', exact: true }).click();
  await expect(page.getByText('Corners are between two walls')).toBeVisible();
});
