import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, goTo } from './wall-points';

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
}

async function giveKind(page: Page, fitting: string, kind: string): Promise<void> {
  const choice = page.getByRole('combobox', { name: `${fitting}, kind` });
  await choice.focus();
  await choice.selectOption(kind);
}

test('a kind of fitting is made, put in by hand, by keys and by readings, kept in the file and for the next job', async ({
  page,
}) => {
  await startWall(page);
  await goTo(page, 'Survey');
  await page.getByRole('button', { name: 'Kinds of fitting…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Kinds of fitting' });
  await expect(dialog).toContainText('common practice, no source');

  await dialog.getByLabel('Name of a new kind').fill('Socket');
  await dialog.getByRole('button', { name: 'Make the kind' }).click();
  await expect(dialog.getByRole('alert')).toHaveText(/“socket” is a usual word here already/);
  await dialog.getByLabel('Name of a new kind').fill('Pin rail');
  await page.keyboard.press('Enter');
  await type(page, 'Pin rail, width', '90 cm');
  await type(page, 'Pin rail, height', '0');
  await expect(dialog.getByRole('alert').filter({ hasText: 'above 0' })).toBeVisible();
  await type(page, 'Pin rail, height', '60');
  await type(page, 'Pin rail, from floor', '1500');
  await dialog.getByRole('button', { name: 'Done' }).click();

  // By mouse, from the strip; by keys alone; by a row of readings; in the schedule.
  await page.getByLabel('Own kind of fitting').selectOption('Pin rail');
  await clickWall(page, 1000, 2000);
  await expect(field(page, 'Pin rail F1, width')).toHaveValue('900');
  await page.keyboard.press('P');
  await page.keyboard.press('1');
  await page.getByTestId('elevation').press('Enter');
  await expect(field(page, 'Pin rail F2, height')).toHaveValue('60');
  await page.getByRole('button', { name: 'Tape readings…' }).click();
  const readings = page.getByRole('dialog', { name: 'Tape readings' });
  await readings.getByLabel('Readings').fill('socket 300\npin rail 3000 800');
  await readings.getByRole('button', { name: 'Put them in' }).click();
  await expect(field(page, 'Pin rail F3, from floor')).toHaveValue('800');

  // A fitting is given another kind; one that was not measured takes its figures.
  await giveKind(page, 'Pin rail F2', 'thermostat');
  await expect(field(page, 'thermostat F2, width')).toHaveValue('86');
  await giveKind(page, 'thermostat F2', 'Pin rail');
  await expect(field(page, 'Pin rail F2, width')).toHaveValue('900');

  // Renamed, its fittings go along; it says where it is used before it could be deleted.
  await page.keyboard.press('Escape');
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('J');
  await page.keyboard.press('K');
  await type(page, 'Name of kind Pin rail', 'Cork rail');
  await type(page, 'Cork rail, width', '1000');
  await dialog.getByRole('button', { name: 'Delete kind Cork rail' }).click();
  await expect(dialog.getByRole('status')).toHaveText(
    '“Cork rail” is the kind of F1 on wall A, F2 on wall A and F3 on wall A; give them another kind first.',
  );
  await dialog.getByRole('button', { name: 'Apply the figures of Cork rail to the 3 on the walls' }).click();
  await dialog.getByRole('button', { name: 'Done' }).click();
  await expect(field(page, 'Cork rail F3, from left')).toHaveValue('2950');

  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save file' }).click();
  const path = await (await saved).path();
  const file = JSON.parse(readFileSync(path, 'utf8')) as { fittingKinds: { name: string; width: number }[] };
  expect(file.fittingKinds).toEqual([
    { name: 'Cork rail', width: 1000, height: 60, floor: 1500, clearance: 10 },
  ]);

  // The next job is offered it, and has it once one is put in.
  await page.getByRole('button', { name: 'New', exact: true }).click();
  await page.getByRole('button', { name: 'Start the new job' }).click();
  await page.getByLabel('Width, mm').fill('3000');
  await page.getByLabel('Height, mm').fill('2500');
  await page.getByRole('button', { name: 'Draw this wall' }).click();
  await page.getByRole('combobox', { name: 'Put in', exact: true }).selectOption('Cork rail');
  await page.getByRole('button', { name: 'Put in', exact: true }).click();
  await expect(field(page, 'Cork rail F1, width')).toHaveValue('1000');
  await page.reload();
  await expect(field(page, 'Cork rail F1, width')).toHaveValue('1000');

  // Whoever opens the file elsewhere has its kinds, and none of this device's.
  const elsewhere = await page.context().browser()!.newContext();
  const other = await elsewhere.newPage();
  await other.goto(page.url());
  const picker = other.waitForEvent('filechooser');
  await other.getByRole('button', { name: 'Open', exact: true }).click();
  await (await picker).setFiles(path);
  await goTo(other, 'Survey');
  await expect(field(other, 'Cork rail F2, width')).toHaveValue('1000');
  await other.getByRole('button', { name: 'Kinds of fitting…' }).click();
  await other.getByRole('button', { name: 'Keep Cork rail for the next job' }).click();
  await expect(other.getByRole('button', { name: 'Forget Cork rail on this device' })).toBeVisible();
  await elsewhere.close();
});
