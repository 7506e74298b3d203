import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, elevation, goTo, onScreen } from './wall-points';

const findings = (page: Page) => page.getByRole('complementary', { name: 'Findings' });

test('a wall in two minutes: figures, a zone, not surveyed; then its ground and fixing points', async ({
  page,
}) => {
  await startWall(page);
  await page.getByRole('button', { name: 'Add wall', exact: true }).click();
  const dialog = page.getByRole('dialog', { name: 'Add a wall' });
  await dialog.getByLabel('Width, mm').fill('5400');
  await dialog.getByLabel('Height, mm').fill('2700');
  await dialog.getByRole('button', { name: 'And a door' }).click();
  await dialog.getByLabel('Opening 1, from left').fill('300');
  await dialog.getByRole('button', { name: 'And a window' }).click();
  for (const [said, figure] of [
    ['from left', '2500'],
    ['width', '1.2 m'],
    ['height', '1100'],
    ['sill', 'low'],
  ]) {
    await dialog.getByLabel(`Opening 2, ${said}`).fill(figure!);
  }
  await dialog.getByLabel('steel panels over all of it').check();
  await dialog.getByLabel('for a budget, not surveyed yet').check();
  await dialog.getByRole('button', { name: 'Add the wall' }).click();
  await expect(dialog.getByRole('alert')).toContainText('window in line 2, sill');
  await dialog.getByLabel('Opening 2, sill').fill('900');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('window W1, from floor', { exact: true })).toHaveValue('900');
  await expect(findings(page)).toContainText('for a budget only, subject to survey');

  // The finding leads to where it is mended; one click mends it, one undo brings it back.
  await page.getByRole('button', { name: /^Show: .*subject to survey/ }).click();
  await page.getByLabel('Surveyed by').fill('M. Lind');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Surveyed', exact: true }).click();
  await expect(page.getByRole('tabpanel')).toContainText('Surveyed by M. Lind.');
  await expect(findings(page)).not.toContainText('subject to survey');

  // What is blank is one note; what is recorded leaves it, and what will not do is a warning.
  await expect(findings(page)).toContainText('how flat it is and how moist it is');
  await page.getByLabel('Ground made of').selectOption({ label: 'gypsum board' });
  await page.getByLabel('Deepest hollow under a straightedge of 2 m').fill('8');
  await page.keyboard.press('Enter');
  await expect(findings(page)).toContainText('hollows of 8 mm under 2 m');
  await page.getByLabel('Moisture', { exact: true }).fill('0,6');
  await page.keyboard.press('Enter');
  await page.getByLabel('On an escape route', { exact: true }).selectOption('yes');
  await expect(findings(page)).toContainText('not recorded the reaction to fire that is required');
  await page.getByLabel('Reaction to fire required, EN 13501-1').fill('fireproof');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Type a class of EN 13501-1')).toBeVisible();
  await page.getByLabel('Reaction to fire required, EN 13501-1').fill('b s1 d0');
  await page.keyboard.press('Enter');
  await expect(findings(page)).toContainText(
    'evidence of B-s1,d0 (EN 13501-1) must cover the whole build-up',
  );
  await expect(findings(page)).not.toContainText('not recorded');

  // A stud by the mouse, its row at once; typed to its place, and still there after a reload.
  await page.getByRole('group', { name: 'Put in' }).getByRole('button', { name: 'Stud' }).click();
  await clickWall(page, 4600, 1500);
  await page.getByLabel('stud U1, from left').fill('4575');
  await page.keyboard.press('Enter');
  await page.getByLabel('stud U1, what holds there').fill('CW 50');
  await page.keyboard.press('Enter');

  // Dragged on the drawing, free of what is near; nudged, and deleted by its key, each taken back by one undo.
  const left = page.getByLabel('stud U1, from left');
  const [from, to] = [await onScreen(page, 4600, 700), await onScreen(page, 4000, 700)];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.keyboard.down('Control');
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await expect(left).not.toHaveValue('4575');
  await page.mouse.up();
  await page.keyboard.up('Control');
  expect(Math.abs(Number(await left.inputValue()) - 3975)).toBeLessThan(12);
  await expect(page.locator('tr[aria-current="true"]')).toContainText('U1');
  const dragged = Number(await left.inputValue());
  await elevation(page).focus();
  await page.keyboard.press('ArrowRight');
  await expect(left).toHaveValue(String(dragged + 1));
  await page.keyboard.press('Delete');
  await expect(left).toBeHidden();
  for (let i = 0; i < 3; i++) await page.keyboard.press('Control+z');
  await expect(left).toHaveValue('4575');

  await expect(page.getByText('Kept on this device')).toBeVisible();
  await page.reload();
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Fixing points' }).click();
  await expect(page.getByLabel('stud U1, from left')).toHaveValue('4575');
});
