import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, dragWall, elevation, goTo, onScreen, waitForPlan } from './wall-points';

async function putIn(page: Page, kind: string, ...points: [number, number][]) {
  await page.getByRole('group', { name: 'Put in' }).getByRole('button', { name: kind, exact: true }).click();
  if (points.length === 1) await clickWall(page, ...points[0]!);
  else await dragWall(page, points[0]!, points[1]!);
}

const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });
const redo = (page: Page) => page.getByRole('button', { name: /^Redo/ });
/** A figure of a tape; `data-at` counts hundredths. */
const figure = (page: Page, axis: 'x' | 'y', mm: number) =>
  page.locator(`[data-axis="${axis}"][data-at="${mm * 100}"]`);

test('a designer draws a wall from empty, moves the socket on the tape, and finds everything after a reload', async ({
  page,
}) => {
  await startWall(page);
  await putIn(page, 'Door', [700, 400]);
  await putIn(page, 'Window', [2400, 1000], [3600, 2100]);
  await putIn(page, 'Socket', [1900, 500]);
  await putIn(page, 'Socket', [3900, 500]);
  await goTo(page, 'Zones');
  await putIn(page, 'Zone, rectangle', [1300, 700], [2300, 2300]);
  await expect(page.locator('#schedule tr[data-ref]')).toHaveCount(1);

  await goTo(page, 'Survey');
  const rows = page.locator('#schedule tbody tr');
  await expect(rows).toHaveCount(4);
  const fromLeft = page.getByRole('textbox', { name: /socket.*from left/i }).first();
  const before = Number(await fromLeft.inputValue());

  // The socket is chosen on the wall, and its left edge typed on the tape along the foot.
  await clickWall(page, before + 20, 500);
  await figure(page, 'x', before).click();
  const entry = page.getByRole('textbox', { name: /mm from the datum/ });
  await entry.fill('1850');
  await entry.press('Enter');
  await expect(fromLeft).toHaveValue('1850');
  await expect(undo(page)).toHaveAccessibleName(/socket/i);

  await undo(page).click();
  await expect(fromLeft).toHaveValue(String(before));
  await redo(page).click();
  await expect(fromLeft).toHaveValue('1850');

  await goTo(page, 'Panels');
  await waitForPlan(page);
  await expect(page.getByRole('complementary', { name: 'Findings' })).toContainText('to order');
  const panels = await page.locator('#schedule tbody tr').count();
  expect(panels).toBeGreaterThan(3);

  await page.reload();
  await expect(page.getByRole('button', { name: /Job details: Bindery/ })).toBeVisible();
  await goTo(page, 'Survey');
  await expect(rows).toHaveCount(4);
  await expect(fromLeft).toHaveValue('1850');
  await goTo(page, 'Panels');
  await waitForPlan(page);
  await expect(page.locator('#schedule tbody tr')).toHaveCount(panels);
});

test('an outline is drawn by its corners, with a typed length', async ({ page }) => {
  await startWall(page);
  await page
    .getByRole('group', { name: 'Put in' })
    .getByRole('button', { name: 'Wall outline', exact: true })
    .click();
  const corners: [number, number][] = [
    [0, 0],
    [3600, 0],
    [3600, 2000],
    [1800, 2500],
    [0, 2500],
  ];
  for (const corner of corners) await clickWall(page, ...corner);
  await clickWall(page, 0, 0);
  await page.getByRole('tab', { name: 'Corners' }).click();
  await expect(page.locator('#schedule tbody tr')).toHaveCount(5);
});

test('a dragged fitting is one entry to undo, and Escape in the middle leaves it where it was', async ({
  page,
}) => {
  await startWall(page);
  await putIn(page, 'Socket', [1900, 500]);
  const fromLeft = page.getByRole('textbox', { name: /socket.*from left/i }).first();
  const before = await fromLeft.inputValue();

  await dragWall(page, [1900, 500], [2700, 900]);
  await expect(fromLeft).not.toHaveValue(before);
  await undo(page).click();
  await expect(fromLeft).toHaveValue(before);

  const [from, to] = [await onScreen(page, 1900, 500), await onScreen(page, 2500, 700)];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 5 });
  await expect(fromLeft).not.toHaveValue(before);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(fromLeft).toHaveValue(before);
});

test('everything of a fitting can be done by keyboard alone', async ({ page }) => {
  await startWall(page);
  await putIn(page, 'Socket', [1900, 500]);
  const fromLeft = page.getByRole('textbox', { name: /socket.*from left/i }).first();
  const before = Number(await fromLeft.inputValue());
  await elevation(page).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  await expect(fromLeft).toHaveValue(String(before + 11));

  await fromLeft.focus();
  await page.keyboard.type('2 m');
  await page.keyboard.press('Enter');
  await expect(fromLeft).toHaveValue('2000');
  await fromLeft.fill('two metres');
  await fromLeft.press('Enter');
  await expect(page.locator('#schedule').getByRole('alert')).toBeVisible();
  await fromLeft.press('Escape');
  await expect(fromLeft).toHaveValue('2000');

  await elevation(page).focus();
  await page.keyboard.press('Delete');
  await expect(page.locator('#schedule tbody tr')).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(page.locator('#schedule tbody tr')).toHaveCount(1);
});
