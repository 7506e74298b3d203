import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, goTo, onScreen } from './wall-points';

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
}

/** From a button in the strip to a place on the wall, mm. */
async function dragToWall(page: Page, label: string, x: number, y: number): Promise<void> {
  const strip = page.getByRole('group', { name: 'Put in' });
  const from = (await strip.getByRole('button', { name: label, exact: true }).boundingBox())!;
  const to = await onScreen(page, x, y);
  await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await page.mouse.up();
}

test('an item is kept as a kind, put in by drag, click and keys, renamed, deleted, and offered to the next job', async ({
  page,
}) => {
  await startWall(page);
  await goTo(page, 'Hanging');
  await page.getByRole('button', { name: 'Shelf', exact: true }).click();
  await clickWall(page, 800, 1400);
  await type(page, 'shelf H1, width', '520');
  await type(page, 'shelf H1, weight, kg', '1.1');

  const dialog = page.getByRole('dialog', { name: 'Kinds of hung item' });
  await page.getByRole('button', { name: 'Keep as a kind…: shelf H1' }).click();
  await expect(dialog.getByLabel('Name of a new kind')).toBeFocused();
  await expect(dialog.getByLabel('Its figures as of')).toHaveValue('item H1');
  await page.keyboard.type('Shelf');
  await page.keyboard.press('Enter');
  await expect(dialog.getByRole('alert').first()).toHaveText(/“shelf” is a usual word here already/);
  await dialog.getByLabel('Name of a new kind').fill('<img src=x>');
  await page.keyboard.press('Enter');
  await expect(dialog.getByRole('alert').first()).toHaveText(/Begin the name with a letter/);
  await dialog.getByLabel('Name of a new kind').fill('Type shelf');
  await page.keyboard.press('Enter');
  await expect(dialog.getByRole('status')).toContainText('“Type shelf” is made.');
  await expect(field(page, 'Type shelf, width')).toHaveValue('520');
  await expect(field(page, 'Type shelf, weight, kg')).toHaveValue('1.1');
  await type(page, 'Type shelf, carries, kg', '0');
  await dialog.getByRole('button', { name: 'Done' }).click();

  // By drag and by click, from the strip; by keys alone; in the schedule.
  await dragToWall(page, 'Type shelf', 2000, 1400);
  await expect(field(page, 'Type shelf H2, width')).toHaveValue('520');
  await page.getByLabel('Own kind of hung item').selectOption('Type shelf');
  await clickWall(page, 3200, 1400);
  await expect(field(page, 'Type shelf H3, weight, kg')).toHaveValue('1.1');
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('I');
  await page.keyboard.press('1');
  await page.keyboard.press('Enter');
  await expect(field(page, 'Type shelf H4, width')).toHaveValue('520');
  await page.getByRole('combobox', { name: 'Put in', exact: true }).selectOption('Type shelf');
  await page.getByRole('button', { name: 'Put in', exact: true }).click();
  await expect(field(page, 'Type shelf H5, width')).toHaveValue('520');
  await page.getByTestId('elevation').focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press('Control+z');
  await expect(field(page, 'Type shelf H3, width')).toHaveCount(0);
  await expect(field(page, 'Type shelf H2, width')).toHaveValue('520');

  // Renamed, its items go along; it says where it is used before it could be deleted; its figures go to what hangs.
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('J');
  await page.keyboard.press('H');
  await type(page, 'Name of kind Type shelf', 'Case shelf');
  await type(page, 'Case shelf, width', '600');
  await dialog.getByRole('button', { name: 'Delete kind Case shelf' }).click();
  await expect(dialog.getByRole('status')).toHaveText(
    '“Case shelf” is the kind of H2 on wall A; give it another kind first.',
  );
  await dialog.getByRole('button', { name: 'Apply the figures of Case shelf to the 1 on the walls' }).click();
  await dialog.getByRole('button', { name: 'Done' }).click();
  await expect(field(page, 'Case shelf H2, width')).toHaveValue('600');
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('Control+z');
  await expect(field(page, 'Case shelf H2, width')).toHaveValue('520');

  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save file' }).click();
  const path = await (await saved).path();
  const file = JSON.parse(readFileSync(path, 'utf8')) as {
    hungKinds: { name: string; item: { width: number; weight: number } }[];
  };
  expect(file.hungKinds.map(({ name, item }) => [name, item.width, item.weight])).toEqual([
    ['Case shelf', 600, 1.1],
  ]);

  // The next job is offered it, and has it once one is put in.
  await page.getByRole('button', { name: 'New', exact: true }).click();
  await page.getByRole('button', { name: 'Start the new job' }).click();
  await page.getByLabel('Width, mm').fill('3000');
  await page.getByLabel('Height, mm').fill('2500');
  await page.getByRole('button', { name: 'Draw this wall' }).click();
  await goTo(page, 'Hanging');
  await page.getByRole('button', { name: 'Case shelf', exact: true }).click();
  await clickWall(page, 1500, 1400);
  await expect(field(page, 'Case shelf H1, width')).toHaveValue('600');
  await page.waitForTimeout(700);
  await page.reload();
  await expect(field(page, 'Case shelf H1, width')).toHaveValue('600');

  // Deleted once nothing is of it, and forgotten on this device.
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Delete');
  await page.getByRole('button', { name: 'Kinds of hung item…' }).click();
  await dialog.getByRole('button', { name: 'Delete kind Case shelf' }).click();
  await expect(dialog).toContainText('kept here from another job');
  await dialog.getByRole('button', { name: 'Forget Case shelf on this device' }).click();
  await expect(dialog.getByText('Case shelf', { exact: true })).toHaveCount(0);
});
