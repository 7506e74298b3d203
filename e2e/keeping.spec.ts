import { expect, test, type Page } from '@playwright/test';
import { readFileSync } from 'node:fs';
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
    page.getByRole('button', { name: 'Download each PDF' }).click(),
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

test('changes of the very moment in which the page is loaded again are there, with their undo', async ({
  page,
}) => {
  await startWall(page);
  await showWallTable(page);
  for (const name of ['Press wall', 'Ink wall', 'Type wall']) await rename(page, 'A', name);
  await kept(page);
  for (const expected of ['Press wall', 'Type wall']) {
    // Two changes and the reload in one task: no database has them by then.
    await page.evaluate(() => {
      const clickTwice = (name: string) => {
        const button = [...document.querySelectorAll('button')].find(({ title, textContent, ariaLabel }) =>
          [title, textContent, ariaLabel].some((text) => text?.trim().startsWith(name)),
        )!;
        button.click();
        button.click();
      };
      clickTwice(sessionStorage.getItem('went-back') ? 'Redo' : 'Undo');
      sessionStorage.setItem('went-back', 'yes');
      location.reload();
    });
    await showWallTable(page);
    await expect(nameOf(page, 'A')).toHaveValue(expected);
  }
  await undo(page).click();
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

test('a tab that is loaded again goes on changing the job, although another one waits for it', async ({
  page,
  context,
}) => {
  await page.goto('/');
  await showWallTable(page);
  const other = await context.newPage();
  await other.goto('/');
  await showWallTable(other);
  await expect(other.getByText('Another tab is changing this job.')).toBeVisible();
  await page.reload();
  await showWallTable(page);
  await rename(page, 'A', 'After the reload');
  await expect(nameOf(other, 'A')).toHaveValue('After the reload');
  await expect(other.getByText('Another tab is changing this job.')).toBeVisible();
});

test('a full device is said at once, nothing is lost, and keeping goes on once there is room', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...values: Parameters<typeof put>) {
      if ('isFull' in window && this.name === 'history') {
        throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
      }
      return put.apply(this, values);
    };
  });
  await page.goto('/');
  await showWallTable(page);
  await rename(page, 'A', 'With room');
  await kept(page);
  await page.evaluate(() => Object.assign(window, { isFull: true }));
  await rename(page, 'A', 'Without room');
  const alert = page.getByRole('alert');
  await expect(alert).toContainText('no room left on this device');
  await expect(page.getByRole('banner').getByText('Not kept')).toBeVisible();
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    alert.getByRole('button', { name: 'Save file' }).click(),
  ]);
  expect(readFileSync(await file.path(), 'utf8')).toContain('Without room');

  // What lies on the device is the state before, whole, and not half of this one.
  const other = await page.context().newPage();
  await other.goto('/');
  await showWallTable(other);
  await expect(nameOf(other, 'A')).toHaveValue('With room');
  await other.getByRole('button', { name: 'Change it here' }).click();
  await expect(other.getByRole('alert')).toContainText('The other tab has changes that could not be kept');
  await other.close();

  await page.evaluate(() => Reflect.deleteProperty(window, 'isFull'));
  await rename(page, 'B', 'Room again');
  await kept(page);
  await expect(alert).toHaveCount(0);
  await page.reload();
  await showWallTable(page);
  await expect(nameOf(page, 'A')).toHaveValue('Without room');
  await undo(page).click();
  await undo(page).click();
  await expect(nameOf(page, 'A')).toHaveValue('With room');
});

test('storage that is refused at first is tried again at later changes', async ({ page }) => {
  await page.addInitScript(() => {
    const open = IDBFactory.prototype.open;
    IDBFactory.prototype.open = function (this: IDBFactory, ...values: Parameters<typeof open>) {
      if (!('isAllowed' in window)) throw new DOMException('The operation is insecure.', 'SecurityError');
      return open.apply(this, values);
    };
  });
  await page.goto('/');
  await showWallTable(page);
  await rename(page, 'A', 'Not kept yet');
  await expect(page.getByRole('alert')).toContainText('keeps nothing here (The operation is insecure)');
  await page.evaluate(() => Object.assign(window, { isAllowed: true }));
  await rename(page, 'B', 'Kept');
  await kept(page);
  const other = await page.context().newPage();
  await other.addInitScript(() => Object.assign(window, { isAllowed: true }));
  await other.goto('/');
  await showWallTable(other);
  await expect(nameOf(other, 'A')).toHaveValue('Not kept yet');
  await expect(nameOf(other, 'B')).toHaveValue('Kept');
});

test('a clock that is set back puts no job in the wrong place', async ({ page }) => {
  await startWall(page);
  await kept(page);
  await page.clock.setFixedTime(new Date('2020-01-01T12:00:00Z'));
  await showWallTable(page);
  await rename(page, 'A', 'After the clock was set back');
  await kept(page);
  await page.getByRole('button', { name: 'Jobs', exact: true }).click();
  const list = page.getByRole('dialog', { name: 'Jobs on this device' });
  await expect(list.getByRole('rowheader')).toHaveText(['Bindery', 'Print studio']);
  await expect(list.getByRole('row').nth(1)).toContainText('1 Jan 2020');
  await page.reload();
  await showWallTable(page);
  await expect(nameOf(page, 'A')).toHaveValue('After the clock was set back');
});

test('the list of jobs shows a picture, asks before it deletes, and puts back even after a reload', async ({
  page,
}) => {
  await startWall(page);
  await kept(page);
  const showJobs = () => page.getByRole('button', { name: 'Jobs', exact: true }).click();
  const list = page.getByRole('dialog', { name: 'Jobs on this device' });
  await showJobs();
  const row = list.getByRole('row').filter({ hasText: 'Print studio' });
  // Three walls and what is on them.
  expect(await row.locator('svg path').count()).toBeGreaterThan(10);
  await expect(row).toContainText(/\d+ kB/);
  await row.getByRole('button', { name: 'Delete Print studio' }).click();
  await row.getByRole('button', { name: 'Keep Print studio' }).click();
  await row.getByRole('button', { name: 'Delete Print studio' }).click();
  await page.keyboard.press('Enter');
  await expect(row).toContainText('deleted');
  await page.reload();
  await showJobs();
  await row.getByRole('button', { name: 'Put Print studio back' }).click();
  await expect(row.getByRole('button', { name: 'Open Print studio' })).toBeVisible();

  await row.getByRole('button', { name: 'Delete Print studio' }).click();
  await page.keyboard.press('Enter');
  await list.getByRole('button', { name: 'Done' }).click();
  await showJobs();
  await expect(list.getByRole('rowheader')).toHaveText(['Bindery']);

  for (let n = 0; n < 10; n++) {
    await list.getByRole('button', { name: 'Copy Bindery', exact: true }).click();
    await expect(list.getByRole('rowheader')).toHaveCount(n + 2);
  }
  await list.getByRole('searchbox').fill('COPY bind');
  await expect(list.getByText('10 of 11 jobs')).toBeVisible();
  await expect(list.getByRole('rowheader')).toHaveCount(10);
});
