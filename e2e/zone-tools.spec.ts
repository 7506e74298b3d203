import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, dragWall, elevation, goTo, onScreen } from './wall-points';

/** A bare wall at Zones with a zone drawn from corner to corner for each pair. */
async function withZones(page: Page, zones: readonly (readonly [number, number, number, number])[]) {
  await startWall(page, '6000', '2700');
  await goTo(page, 'Zones');
  for (const [x, y, width, height] of zones) {
    await page.getByRole('button', { name: 'Put in a zone' }).click();
    const id = `Z${(await page.getByRole('button', { name: /^Select zone/ }).count()) || 1}`;
    for (const [label, value] of Object.entries({ width, height, 'from left': x, 'from floor': y })) {
      const field = page.getByLabel(`Zone ${id}, ${label}`);
      await field.fill(String(value));
      await field.press('Enter');
    }
  }
}

const figure = (page: Page, id: string, label: string) => page.getByLabel(`Zone ${id}, ${label}`);

test('a zone is pulled out sheet by sheet, and brought to a size without a cut', async ({ page }) => {
  await startWall(page, '6000', '2700');
  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'Zone, by whole sheets' }).click();
  await dragWall(page, [500, 400], [2130, 1380]);
  await expect(figure(page, 'Z1', 'width')).toHaveValue('1500');
  await expect(figure(page, 'Z1', 'height')).toHaveValue('1000');
  await expect(page.locator('#leaf')).toContainText('3 × 2 sheets');
  await expect(page.locator('#leaf')).toContainText('No panel is cut by its size.');

  await figure(page, 'Z1', 'width').fill('1640');
  await figure(page, 'Z1', 'width').press('Enter');
  await expect(page.locator('#leaf')).toContainText('3 × 2 sheets + 140 mm in width');
  // At the zone itself, with the mouse.
  await page
    .locator('.paper')
    .getByRole('button', { name: 'Make zone Z1 4 × 2 whole sheets, 2000 × 1000 mm' })
    .click();
  await expect(figure(page, 'Z1', 'width')).toHaveValue('2000');
  // In its row, with the keyboard alone; the focus stays there.
  await figure(page, 'Z1', 'height').fill('1080');
  await figure(page, 'Z1', 'height').press('Enter');
  const row = page.locator('#leaf').getByRole('button', { name: /^Make zone Z1 4 × 2 whole sheets/ });
  await row.focus();
  await page.keyboard.press('Enter');
  await expect(figure(page, 'Z1', 'height')).toHaveValue('1000');
  await expect(page.locator('#leaf').getByRole('group', { name: 'Whole sheets of zone Z1' })).toBeFocused();
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(figure(page, 'Z1', 'height')).toHaveValue('1080');
});

test('zones that touch share the edge that is pulled, unless Ctrl is held', async ({ page }) => {
  await withZones(page, [
    [500, 500, 1000, 800],
    [1500, 500, 1200, 800],
    [500, 1300, 2200, 600],
  ]);
  await clickWall(page, 1000, 900);
  const handle = await onScreen(page, 1500, 900);
  const to = await onScreen(page, 1730, 900);
  // The handle stands 8 px outside of the zone.
  await page.mouse.move(handle.x + 8, handle.y);
  await page.mouse.down();
  await page.mouse.move(to.x - 30, to.y, { steps: 3 });
  await expect(page.getByRole('status').filter({ hasText: 'moves along' })).toContainText('Z2');
  await page.mouse.move(to.x + 8, to.y, { steps: 3 });
  await page.mouse.up();
  const width = Number(await figure(page, 'Z1', 'width').inputValue());
  expect(width).toBeGreaterThan(1150);
  await expect(figure(page, 'Z2', 'from left')).toHaveValue(String(500 + width));
  await expect(figure(page, 'Z2', 'width')).toHaveValue(String(2200 - width));
  await expect(figure(page, 'Z3', 'width')).toHaveValue('2200');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(figure(page, 'Z1', 'width')).toHaveValue('1000');
  await expect(figure(page, 'Z2', 'width')).toHaveValue('1200');

  await page.keyboard.down('Control');
  await page.mouse.move(handle.x + 8, handle.y);
  await page.mouse.down();
  await page.mouse.move(to.x + 8, to.y, { steps: 4 });
  await page.mouse.up();
  await page.keyboard.up('Control');
  await expect(figure(page, 'Z1', 'width')).not.toHaveValue('1000');
  await expect(figure(page, 'Z2', 'width')).toHaveValue('1200');
  await page.getByRole('button', { name: /^Undo/ }).click();

  // By keyboard: the figure on the tape, for all that touch the edge.
  await clickWall(page, 1000, 900);
  await page.getByRole('button', { name: /^1300/ }).first().click();
  await expect(page.getByRole('button', { name: 'All that touch it' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await page.keyboard.type('1250');
  await page.keyboard.press('Enter');
  await expect(figure(page, 'Z1', 'height')).toHaveValue('750');
  await expect(figure(page, 'Z2', 'height')).toHaveValue('750');
  await expect(figure(page, 'Z3', 'from floor')).toHaveValue('1250');
  await expect(elevation(page)).toBeVisible();
});
