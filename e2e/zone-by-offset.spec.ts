import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, goTo } from './wall-points';

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

test('zones at a distance from an edge are seen before they are put in, by keys and by hand', async ({
  page,
}) => {
  await startWall(page, '4000', '2600');
  await goTo(page, 'Survey');
  await page.getByRole('button', { name: 'Tape readings…' }).click();
  await page.getByRole('textbox', { name: 'Readings' }).fill('window 2000 900 1200 1000');
  await page.getByRole('button', { name: 'Put them in' }).click();
  await goTo(page, 'Zones');

  // By keys: from the outline, a distance that leaves nothing, then one that does; Escape takes it away again.
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('Z');
  await page.keyboard.press('O');
  const form = page.getByRole('form', { name: 'Zone by offset' });
  await expect(page.getByRole('combobox', { name: 'Edge it is taken from' })).toBeFocused();
  await expect(form.getByRole('status')).toContainText('3800 × 2400 · 9.12 m²');
  await field(page, 'Distance, mm').fill('1.4 m');
  await expect(form.getByRole('alert')).toHaveText(
    'Nothing is left 1400 mm inside the outline of wall A; give less.',
  );
  await expect(page.getByRole('button', { name: 'Put in the zone' })).toBeDisabled();
  await field(page, 'Distance, mm').fill('200');
  await expect(field(page, 'Zone Z1, width')).toHaveValue('3600');
  await page.keyboard.press('Escape');
  await expect(form).toBeHidden();
  await expect(field(page, 'Zone Z1, width')).toHaveCount(0);

  // By hand: a frame round the window that is pressed, its foot left out.
  await page.getByRole('button', { name: 'Zone, offset' }).click();
  await clickWall(page, 2600, 1400);
  await expect(page.getByRole('combobox', { name: 'Edge it is taken from' })).toHaveValue('opening W1');
  await form.getByRole('button', { name: 'Side by side' }).click();
  await field(page, 'Distance, foot, mm').fill('0');
  await expect(form.getByRole('status')).toContainText('1400 × 1100');
  await form.getByRole('button', { name: 'Put in the zone' }).click();
  await expect(form).toBeHidden();
  await expect(field(page, 'Zone Z1, width')).toHaveValue('1400');
  await expect(field(page, 'Zone Z1, from floor')).toHaveValue('900');

  // From that zone, which is chosen: a copy beside it.
  await page.getByRole('button', { name: 'Zone, offset' }).click();
  await page.getByRole('combobox', { name: 'Where it goes' }).selectOption('a copy to its left');
  await field(page, 'Distance, mm').fill('50');
  await page.keyboard.press('Enter');
  await expect(field(page, 'Zone Z2, from left')).toHaveValue('450');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(field(page, 'Zone Z2, from left')).toHaveCount(0);
  await expect(field(page, 'Zone Z1, width')).toHaveValue('1400');
});
