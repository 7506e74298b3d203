import { expect, test } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, dragWall, goTo, waitForPlan } from './wall-points';

test('a second alternative is drawn by hand, held against the first and chosen, by mouse and by keys', async ({
  page,
}) => {
  await startWall(page);
  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'Put in a zone' }).click();
  await waitForPlan(page);

  // Nothing is said of alternatives before there are any.
  const strip = page.getByRole('group', { name: 'Alternative' });
  await expect(strip).toHaveCount(0);
  await page.getByRole('tab', { name: 'Alternatives' }).click();
  await page.getByRole('button', { name: 'Copy into an alternative' }).click();
  await expect(strip.getByLabel('Alternative')).toHaveValue('V2');
  await expect(strip).toContainText('Alternative 2');
  await expect(page.getByRole('button', { name: /^Undo/ })).toHaveAccessibleName('Undo “Copy alternative 1”');

  // The copy is named, and its zone moved by hand; the first keeps its own.
  const name = page.getByLabel('Alternative 2, name');
  await name.fill('Lower');
  await name.press('Enter');
  await page.getByRole('tab', { name: 'Zones' }).click();
  const foot = page.getByLabel('Zone Z1, from floor');
  await expect(foot).toHaveValue('900');
  await clickWall(page, 2100, 1400);
  await dragWall(page, [2100, 1400], [2100, 1150]);
  await expect(foot).not.toHaveValue('900');
  await foot.fill('650');
  await foot.press('Enter');
  const width = page.getByLabel('Zone Z1, width');
  await width.fill('2600');
  await width.press('Enter');

  // Side by side, with figures that were worked out for both and the difference in words.
  await strip.getByRole('button', { name: 'Compare…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Alternatives side by side' });
  await expect(dialog.getByRole('img', { name: /Lower on Wall A/ })).toBeVisible();
  await expect(dialog.getByRole('img', { name: /Alternative 1 on Wall A/ })).toBeVisible({ timeout: 60_000 });
  const words = dialog.getByRole('region', { name: 'What differs in Alternative 1' });
  await expect(words).toContainText('Zone Z1 moved 250 mm up.', { timeout: 60_000 });
  await expect(words).toContainText('Zone Z1 is 600 mm narrower on the right.');
  const areas = dialog.getByRole('row', { name: /^Steel panels, m²/ }).getByRole('cell');
  await expect(areas).toHaveText(['2.60', '2.00']);

  // The other one is chosen here; by key the first comes back.
  await dialog.getByRole('button', { name: 'Choose Alternative 1' }).click();
  await page.keyboard.press('Escape');
  await expect(foot).toHaveValue('900');
  await expect(strip.getByLabel('Alternative')).toHaveValue('V1');
  await page.getByRole('button', { name: 'Compare…' }).focus();
  await page.keyboard.press('o');
  await page.keyboard.press('n');
  await expect(foot).toHaveValue('650');
  await page.keyboard.press('Control+z');
  await expect(foot).toHaveValue('900');

  // A reload keeps both, and an empty one begins with bare walls.
  await page.reload();
  await expect(strip.getByLabel('Alternative')).toHaveValue('V1');
  await page.getByRole('tab', { name: 'Alternatives' }).click();
  await page.getByRole('button', { name: 'Add an empty alternative' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('tab', { name: 'Zones' }).click();
  await expect(foot).toHaveCount(0);
  await expect(strip).toContainText('Alternative 3');

  // It cannot be deleted while it is on the walls; the others can.
  await page.getByRole('tab', { name: 'Alternatives' }).click();
  await expect(page.getByRole('button', { name: /Alternative 3 is on the walls/ })).toBeDisabled();
  await page.getByRole('button', { name: 'Choose Lower' }).click();
  await page.getByRole('button', { name: 'Delete Alternative 3' }).click();
  await page.getByRole('button', { name: 'Delete Alternative 1' }).click();
  await expect(strip).toHaveCount(0);
});
