import { expect, test } from '@playwright/test';
import { addWallRoundCorner, startWall } from './new-wall';
import {
  door,
  drawPhoto,
  expectSquareOnWall,
  knowTheDoor,
  load,
  markPoint,
  rectangle,
} from './photo-of-wall';
import { dragWall, goTo, waitForPlan } from './wall-points';

/** Eleven rows as they come off a tape: headings, several units, "to" instead of a width, a comma, names. */
const readings = [
  'what\tfrom left\tto\tfrom floor\theight\tname',
  'door\t300\t1226\t0\t2040\t',
  'switch\t1,31 m\t1391\t1050\t81\t',
  'socket\t1450\t1596\t300\t86\t',
  'socket\t1620\t1766\t300\t86\t',
  'socket\t2900\t3046\t300\t86\t',
  'socket\t3060\t3206\t300\t86\t',
  'socket\t395 cm\t4096\t1.1 m\t86\tProofing lamp',
  'thermostat\t1325\t1405\t1500\t80\t',
  'hatch\t1700\t2100\t1900\t400\t',
  `radiator\t1900\t2700\t150\t60 cm\t`,
  'light\t3300\t3420\t2350\t120\t',
].join('\n');

test('a real survey: eleven readings, a photo, two walls round a corner, from nothing to setting-out sheets', async ({
  page,
}) => {
  await startWall(page, '4200', '2600');
  await goTo(page, 'Survey');

  await page.getByRole('button', { name: 'Tape readings…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Tape readings' });
  await dialog.getByLabel('Readings').fill(readings);
  await dialog.getByRole('button', { name: 'Put them in' }).click();
  await expect(dialog).toBeHidden();
  await expect(page.locator('#schedule tbody tr[data-ref]')).toHaveCount(11);
  await expect(page.getByRole('textbox', { name: 'switch S1, from left' })).toHaveValue('1310');

  await page.getByRole('tab', { name: 'Photos' }).click();
  const buffer = await drawPhoto(page);
  await load(page, 'Load a photo', { name: 'wall.jpg', mimeType: 'image/jpeg', buffer });
  await knowTheDoor(page);
  for (const corner of rectangle(door.x, door.y, door.width, door.height)) await markPoint(page, corner);
  await page.getByRole('button', { name: 'Put it under the drawing' }).click();
  await page.getByRole('slider', { name: 'Faded' }).fill('0');
  await expectSquareOnWall(page);
  await page.getByRole('slider', { name: 'Faded' }).fill('0.7');

  await addWallRoundCorner(page);

  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'Put in a zone' }).click();
  for (const [field, value] of [
    ['from left', '2200'],
    ['from floor', '800'],
    ['width', '1700'],
    ['height', '1500'],
  ] as const) {
    const entry = page.getByLabel(`Zone Z1, ${field}`, { exact: true });
    await entry.fill(value);
    await entry.press('Enter');
  }
  await dragWall(page, [3900, 1550], [4900, 1550]);
  await expect(page.getByText('At the right end it runs on as Z1 on wall B.')).toBeVisible();

  await goTo(page, 'Panels');
  await waitForPlan(page);
  await goTo(page, 'Drawings');
  const show = (wall: string) =>
    page.getByRole('button', { name: `Show Bindery: setting-out sheet, wall ${wall}`, exact: true }).click();
  await show('A');
  const sheet = page.locator('svg').filter({ hasText: 'continues on wall B' }).first();
  await expect(sheet).toContainText('internal corner with wall B');
  await expect(sheet).toContainText('K5');
  await expect(sheet).toContainText('2040');
  await show('B Type store');
  await expect(page.locator('svg').filter({ hasText: 'continues on wall A' }).first()).toBeVisible();
});
