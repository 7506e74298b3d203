import { expect, test, type Page } from '@playwright/test';
import { clickWall, dragWall, elevation, goTo, onScreen, waitForPlan } from './wall-points';

async function startJob(page: Page) {
  await page.goto('/');
  await page.getByRole('button', { name: 'New', exact: true }).click();
  await page.getByLabel('Name of the new job').fill('Bindery');
  await page.getByRole('button', { name: 'Start the new job' }).click();
}

async function startWall(page: Page, width = '4200', height = '2600') {
  await startJob(page);
  await page.getByLabel('Width, mm').fill(width);
  await page.getByLabel('Height, mm').fill(height);
  await page.getByRole('button', { name: 'Draw this wall' }).click();
  await expect(elevation(page)).toHaveAttribute('aria-label', /Elevation of wall A/);
}

const takeUp = (page: Page, name: string) =>
  page.getByRole('group', { name: 'Put in' }).getByRole('button', { name, exact: true }).click();
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });
const rows = (page: Page) => page.locator('#schedule tbody tr');
const entry = (page: Page) => page.getByRole('textbox', { name: /mm from the datum/ });

async function hover(page: Page, x: number, y: number) {
  const at = await onScreen(page, x, y);
  await page.mouse.move(at.x, at.y);
}

test('a wall with a sloping ceiling is drawn by its corners; a length that can be read in two ways is asked back', async ({
  page,
}) => {
  await startJob(page);
  await page.getByRole('button', { name: 'Draw the outline by its corners' }).click();
  await clickWall(page, 0, 0);
  const edges = [
    [[2500, 0], '4600'],
    [[4600, 1500], '1900'],
  ] as const;
  for (const [[x, y], length] of edges) {
    await hover(page, x, y);
    await page.keyboard.type(length);
    await page.keyboard.press('Enter');
  }
  await clickWall(page, 2600, 2700);
  await hover(page, 500, 2700);
  await page.keyboard.type('2,600');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('status').filter({ hasText: '2,600 could be 2600 or 2.6' })).toBeVisible();
  for (let n = 0; n < 5; n++) await page.keyboard.press('Backspace');
  await page.keyboard.type('2600');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await page.getByRole('tab', { name: 'Corners' }).click();
  await expect(rows(page)).toHaveCount(5);
  await expect(page.getByRole('textbox', { name: /corner 3.*from floor/i })).toHaveValue('1900');
});

test('a corner that would make the outline cross itself says so while it is held, and goes back', async ({
  page,
}) => {
  await startWall(page);
  const [from, to] = [await onScreen(page, 4200, 0), await onScreen(page, 1500, 3000)];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await expect(page.getByText(/Wall A crosses itself .* it goes back as it was/)).toBeVisible();
  await page.mouse.up();
  await expect(page.getByRole('alert')).toContainText('Wall A crosses itself');
  await page.getByRole('tab', { name: 'Corners' }).click();
  await expect(page.getByRole('textbox', { name: /corner 2.*from left/i })).toHaveValue('4200');
  await expect(page.getByRole('textbox', { name: /corner 2.*from floor/i })).toHaveValue('0');
  await expect(undo(page)).toHaveAccessibleName('Undo “Add wall A”');
});

test('a copy is taken by key and by Alt, nudged, and deleted; each is one entry to undo', async ({
  page,
}) => {
  await startWall(page);
  await takeUp(page, 'Socket');
  await clickWall(page, 1000, 300);
  await page.keyboard.press('Control+d');
  await expect(rows(page)).toHaveCount(2);
  await page.keyboard.down('Alt');
  await dragWall(page, [1000, 300], [1000, 1200]);
  await page.keyboard.up('Alt');
  await expect(rows(page)).toHaveCount(3);
  await page.keyboard.press('Shift+ArrowRight');
  await expect(undo(page)).toHaveAccessibleName('Undo “Move socket K3”');
  await page.keyboard.press('Delete');
  await expect(rows(page)).toHaveCount(2);
  for (const count of [3, 3, 2, 1, 0]) {
    await page.keyboard.press('Control+z');
    await expect(rows(page)).toHaveCount(count);
  }
});

test('a figure of the tape that can be read in two ways is asked back; Escape leaves all as it was', async ({
  page,
}) => {
  await startWall(page);
  await takeUp(page, 'Window');
  await dragWall(page, [1800, 1000], [3000, 2200]);
  await page.locator('[data-axis="x"][data-at="180000"]').click();
  await entry(page).fill('1,200');
  await entry(page).press('Enter');
  await expect(page.getByText('1,200 could be 1200 or 1.2')).toBeVisible();
  await entry(page).press('Escape');
  await expect(undo(page)).toHaveAccessibleName('Undo “Put in window W1”');
});

test('at Panels the tapes carry the joints, and a typed joint starts the panels there', async ({ page }) => {
  await startWall(page);
  await goTo(page, 'Zones');
  await takeUp(page, 'Zone, rectangle');
  await dragWall(page, [1000, 500], [3000, 2000]);
  await goTo(page, 'Panels');
  await waitForPlan(page);
  const joint = page.locator('[data-axis="x"][data-at="150000"]');
  await joint.click();
  await entry(page).fill('1420');
  await entry(page).press('Enter');
  await expect(undo(page)).toHaveAccessibleName('Undo “Start panels of Z1 at 1420”');
  await waitForPlan(page);
  await expect(joint).toHaveCount(0);
  await expect(page.locator('[data-axis="x"][data-at="142000"]')).toBeVisible();
});

test('where nothing is put in the drawing has the room, and nothing lies on the fitted wall', async ({
  page,
}) => {
  await startWall(page, '8000', '2600');
  const heightOf = async () => (await elevation(page).boundingBox())!.height;
  const before = await heightOf();
  await goTo(page, 'Panels');
  await expect.poll(heightOf).toBeGreaterThan(before + 30);
  const view = (await page.getByRole('group', { name: 'View' }).boundingBox())!;
  const hint = (await page.getByText('No steel on this wall yet').boundingBox())!;
  const corner = await onScreen(page, 8000, 2600);
  for (const box of [view, hint]) expect(box.y + box.height).toBeLessThan(corner.y);
});

test('a narrow fitting that is chosen is dragged by finger, not resized', async ({ browser }) => {
  const context = await browser.newContext({ hasTouch: true, viewport: { width: 820, height: 1180 } });
  const page = await context.newPage();
  await startWall(page);
  await takeUp(page, 'Pipe');
  await dragWall(page, [2000, 500], [2060, 2100]);
  await page
    .locator('#schedule')
    .getByRole('button', { name: /Select pipe P1/ })
    .click();
  const cdp = await context.newCDPSession(page);
  const from = await onScreen(page, 2030, 1300);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x?: number) =>
    cdp.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: x === undefined ? [] : [{ x, y: from.y }],
    });
  await touch('touchStart', from.x);
  for (let by = 10; by <= 60; by += 10) await touch('touchMove', from.x + by);
  await touch('touchEnd');
  await expect(undo(page)).toHaveAccessibleName('Undo “Move pipe P1”');
  await context.close();
});
