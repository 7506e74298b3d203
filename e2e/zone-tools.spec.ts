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
  await page.getByRole('button', { name: 'Zone, whole sheets' }).click();
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
    .getByRole('button', { name: '4 × 2: 2000 × 1000, whole sheets for zone Z1' })
    .click();
  await expect(figure(page, 'Z1', 'width')).toHaveValue('2000');
  // In its row, with the keyboard alone; the focus stays there.
  await figure(page, 'Z1', 'height').fill('1080');
  await figure(page, 'Z1', 'height').press('Enter');
  const row = page.locator('#leaf').getByRole('button', { name: /^4 × 2: .* whole sheets for zone Z1/ });
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

test('holes are drawn, dragged, typed and taken out', async ({ page }) => {
  await withZones(page, [[500, 400, 3000, 1600]]);
  await page.getByRole('tab', { name: 'Holes' }).click();
  const holes = page.locator('#leaf tbody tr');
  await page.getByRole('button', { name: 'Hole, rectangle' }).click();
  await dragWall(page, [1000, 800], [1500, 1300]);
  await expect(holes).toHaveCount(1);
  const field = (label: string) => page.getByLabel(`hole 1 of zone Z1, ${label}`);
  await field('width').fill('450');
  await field('width').press('Enter');
  await field('from left').fill('1000');
  await field('from left').press('Enter');
  // With the hand, from inside the hole; then by arrow keys.
  await dragWall(page, [1200, 1000], [2000, 1000]);
  await expect(field('from left')).not.toHaveValue('1000');
  const before = Number(await field('from left').inputValue());
  await elevation(page).focus();
  await page.keyboard.press('Shift+ArrowRight');
  await expect(field('from left')).toHaveValue(String(before + 10));
  await expect(page.getByLabel('Findings')).not.toContainText('reaches beyond the zone');

  await page.getByRole('button', { name: 'Hole, round' }).click();
  await clickWall(page, 800, 700);
  await expect(holes).toHaveCount(2);
  await page.getByLabel('hole 2 of zone Z1, diameter').fill('300');
  await page.getByLabel('hole 2 of zone Z1, diameter').press('Enter');
  await expect(page.getByLabel('hole 2 of zone Z1, diameter')).toHaveValue('300');
  await elevation(page).focus();
  await page.keyboard.press('Delete');
  await expect(holes).toHaveCount(1);
  await page.reload();
  await goTo(page, 'Zones');
  await page.getByRole('tab', { name: 'Holes' }).click();
  await expect(holes).toHaveCount(1);
  await page.getByRole('button', { name: 'Take out hole 1 of zone Z1' }).click();
  await expect(holes).toHaveCount(0);
});

test('an edge is pulled into an arc, typed by rise and radius, and straightened', async ({ page }) => {
  await withZones(page, [[500, 400, 2000, 1000]]);
  await page.getByRole('tab', { name: 'Corners' }).click();
  await page.getByRole('button', { name: 'Curved edge' }).click();
  await dragWall(page, [1500, 1400], [1500, 1700]);
  const rise = page.getByLabel('Edge to corner 4, rise of its arc outwards, 0 for straight');
  const radius = page.getByLabel('Edge to corner 4, radius of its arc');
  expect(Number(await rise.inputValue())).toBeGreaterThan(250);
  await rise.fill('250');
  await rise.press('Enter');
  // r = s / 2 + c² / (8 s) = 125 + 4 000 000 / 2000
  await expect(radius).toHaveValue('2125');
  await radius.fill('900');
  await radius.press('Enter');
  await expect(page.getByText('The ends of this edge ask for a radius of at least 1000.')).toBeVisible();
  await radius.press('Escape');
  await rise.fill('0');
  await rise.press('Enter');
  await expect(radius).toHaveValue('');

  // The outline of the wall, at Survey.
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Corners' }).click();
  await page.getByRole('button', { name: 'Curved wall edge', exact: true }).click();
  await dragWall(page, [3000, 2700], [3000, 2450]);
  await expect(page.locator('#leaf')).toContainText('arc through');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page.locator('#leaf')).not.toContainText('arc through');
});
