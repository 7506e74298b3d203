import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { dragWall, goTo, onScreen } from './wall-points';

const kept = (page: Page) => expect(page.getByRole('banner').getByText('Kept on this device')).toBeVisible();
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });
const nameOf = (page: Page, wall: string) => page.getByLabel(`wall ${wall}, name`);

async function rename(page: Page, wall: string, name: string): Promise<void> {
  await nameOf(page, wall).fill(name);
  await page.keyboard.press('Enter');
}

async function showWallTable(page: Page): Promise<void> {
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Wall', exact: true }).click();
}

test('a reload in the middle of a drag finds the job as it was before the drag', async ({ page }) => {
  await page.goto('/');
  await goTo(page, 'Survey');
  const k1 = page.getByRole('textbox', { name: /socket K1.*from left/i });
  await k1.fill('1600');
  await k1.press('Enter');
  await expect(page.getByText('Kept on this device')).toBeVisible();
  const at = await onScreen(page, 1673, 343);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x + 150, at.y - 60, { steps: 5 });
  await page.reload();
  await goTo(page, 'Survey');
  await expect(k1).toHaveValue('1600');
});

test('the planner works without a network once it is loaded', async ({ page, context }) => {
  await page.goto('/');
  await goTo(page, 'Drawings');
  await expect(page.getByRole('button', { name: 'Client view on screen' })).toBeEnabled({ timeout: 60_000 });
  await context.setOffline(true);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Download all PDFs' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.pdf$/);
});

test('undo goes on after a reload, through every step and forth again', async ({ page }) => {
  await startWall(page);
  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'Zone, rectangle' }).click();
  await dragWall(page, [600, 600], [2600, 1800]);
  await showWallTable(page);
  await rename(page, 'A', 'Press wall');
  await rename(page, 'A', 'Ink wall');
  await undo(page).click();
  await kept(page);
  await page.reload();
  await showWallTable(page);
  await expect(nameOf(page, 'A')).toHaveValue('Press wall');
  await page.getByRole('button', { name: /^Redo/ }).click();
  await expect(nameOf(page, 'A')).toHaveValue('Ink wall');
  for (let n = 0; n < 3; n++) await undo(page).click();
  await goTo(page, 'Zones');
  await expect(page.getByRole('button', { name: 'Select zone Z1' })).toHaveCount(0);
  await undo(page).click();
  await expect(undo(page)).toBeDisabled();
  await kept(page);
  await page.reload();
  for (let n = 0; n < 4; n++) await page.getByRole('button', { name: /^Redo/ }).click();
  await showWallTable(page);
  await expect(nameOf(page, 'A')).toHaveValue('Ink wall');
});

test('one tab changes a job, the other follows, is refused, and takes it over with its undo', async ({
  page,
  context,
}) => {
  await page.goto('/');
  await showWallTable(page);
  await rename(page, 'A', 'First wall');
  await kept(page);
  const other = await context.newPage();
  await other.goto('/');
  await showWallTable(other);
  await expect(other.getByText('Another tab is changing this job.')).toBeVisible();
  await expect(undo(other)).toBeDisabled();

  await rename(page, 'A', 'From the first tab');
  await expect(nameOf(other, 'A')).toHaveValue('From the first tab');

  // By typing, by hand on the drawing, by keys.
  await rename(other, 'B', 'Refused');
  await expect(other.getByText(/nothing can be changed here/).first()).toBeVisible();
  await other.keyboard.press('Escape');
  const k1 = other.getByRole('textbox', { name: /socket K1.*from left/i });
  await other.getByRole('tab', { name: 'Openings and fittings', exact: true }).click();
  const before = await k1.inputValue();
  await dragWall(other, [1573, 343], [1800, 500]);
  await expect(other.getByRole('alert')).toContainText('being changed in another tab');
  await expect(k1).toHaveValue(before);
  await kept(page);

  await other.getByRole('button', { name: 'Change it here' }).click();
  await expect(page.getByText('Another tab is changing this job.')).toBeVisible();
  await expect(other.getByText('Another tab is changing this job.')).toHaveCount(0);
  await other.getByRole('tab', { name: 'Wall', exact: true }).click();
  await undo(other).click();
  await expect(nameOf(page, 'A')).toHaveValue('First wall');
  await rename(page, 'A', 'Too late');
  await expect(nameOf(other, 'A')).toHaveValue('First wall');

  // The tab that changes the job is closed: the other goes on.
  await kept(other);
  await other.close();
  await expect(page.getByText('Another tab is changing this job.')).toHaveCount(0);
  await page.keyboard.press('Escape');
  await undo(page).click();
  await expect(nameOf(page, 'A')).not.toHaveValue('First wall');
});

test('taking over in the middle of a drag loses no finished change', async ({ page, context }) => {
  await startWall(page);
  await showWallTable(page);
  await rename(page, 'A', 'Finished');
  const other = await context.newPage();
  await other.goto('/');
  await showWallTable(other);
  const corner = await onScreen(page, 4200, 2600);
  await page.mouse.move(corner.x, corner.y);
  await page.mouse.down();
  await page.mouse.move(corner.x - 40, corner.y + 40, { steps: 3 });
  await other.getByRole('button', { name: 'Change it here' }).click();
  await expect(page.getByText('Another tab is changing this job.')).toBeVisible();
  await page.mouse.up();
  await expect(nameOf(other, 'A')).toHaveValue('Finished');
  await rename(other, 'A', 'Of the other');
  await expect(nameOf(page, 'A')).toHaveValue('Of the other');
});

test('without Web Locks two tabs follow each other, and neither overwrites the other', async ({
  page,
  context,
}) => {
  await context.addInitScript(() => {
    Object.defineProperty(Navigator.prototype, 'locks', { get: () => undefined });
  });
  await page.goto('/');
  await showWallTable(page);
  await kept(page);
  const other = await context.newPage();
  await other.goto('/');
  await showWallTable(other);
  await nameOf(other, 'B').fill('Half typed');
  await rename(page, 'A', 'From the first tab');
  await expect(nameOf(other, 'A')).toHaveValue('From the first tab');
  await expect(nameOf(other, 'B')).toHaveValue('Half typed');
  await nameOf(other, 'B').press('Enter');
  await expect(nameOf(page, 'B')).toHaveValue('Half typed');
});
