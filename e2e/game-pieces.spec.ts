import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, dragWall, elevation, goTo } from './wall-points';

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
}

const placeOf = async (page: Page, piece: string) => [
  await field(page, `${piece}, from left`).inputValue(),
  await field(page, `${piece}, from floor`).inputValue(),
];

/** A zone with a board of 8 × 8 squares of 100 mm: its lower left corner is at (700, 500) on the wall. */
async function withBoard(page: Page): Promise<void> {
  await startWall(page, '6000', '2700');
  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'Put in a zone' }).click();
  await type(page, 'Zone Z1, width', '3000');
  await type(page, 'Zone Z1, height', '1600');
  await type(page, 'Zone Z1, from left', '500');
  await type(page, 'Zone Z1, from floor', '400');
  await page.getByRole('tab', { name: 'Markings' }).click();
  await page.locator('#leaf').getByRole('button', { name: 'Board of squares' }).click();
  await type(page, 'marking M1 of zone Z1, width', '800');
  await type(page, 'marking M1 of zone Z1, from zone’s left', '200');
  await type(page, 'marking M1 of zone Z1, from zone’s foot', '100');
}

test('a piece snaps to a square of its board and goes with the board; a finding says when it lies off it', async ({
  page,
}) => {
  await withBoard(page);
  await goTo(page, 'Hanging');
  await page.getByRole('button', { name: 'Game piece', exact: true }).click();
  await clickWall(page, 868, 633);
  // 30 × 30 mm in the middle of the square from (800, 600) to (900, 700).
  await expect.poll(() => placeOf(page, 'game piece H1')).toEqual(['835', '635']);
  await expect(field(page, 'game piece H1, moved about on')).toHaveValue('Z1/M1');
  await dragWall(page, [850, 650], [1270, 1035]);
  await expect.poll(() => placeOf(page, 'game piece H1')).toEqual(['1235', '1035']);

  // The board is moved and its squares made larger: the piece keeps its square, and one undo takes both back.
  await goTo(page, 'Zones');
  await page.getByRole('tab', { name: 'Markings' }).click();
  await type(page, 'marking M1 of zone Z1, from zone’s left', '260');
  await type(page, 'marking M1 of zone Z1, width', '960');
  await goTo(page, 'Hanging');
  // 5½ and 5½ squares of 120 mm from the corner at (760, 500), less half the piece.
  await expect.poll(() => placeOf(page, 'game piece H1')).toEqual(['1405', '1145']);
  await elevation(page).focus();
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(() => placeOf(page, 'game piece H1')).toEqual(['1235', '1035']);

  await type(page, 'game piece H1, from left', '2600');
  const findings = page.getByLabel('Findings');
  await expect(findings).toContainText('lies off marking M1 of zone Z1');
  await elevation(page).focus();
  await page.keyboard.press('Control+z');
  await expect(findings).not.toContainText('lies off marking');

  await goTo(page, 'Zones');
  await page.getByRole('tab', { name: 'Markings' }).click();
  await page.getByRole('button', { name: 'Take out marking M1 of zone Z1' }).click();
  await goTo(page, 'Hanging');
  await expect(findings).toContainText('moved about on marking M1 of zone Z1, which is gone');
});

test('a kind made of a piece is one, too', async ({ page }) => {
  await withBoard(page);
  await goTo(page, 'Hanging');
  await page.getByRole('button', { name: 'Game piece', exact: true }).click();
  await clickWall(page, 850, 650);
  await page.getByRole('button', { name: 'Keep as a kind…: game piece H1' }).click();
  await field(page, 'Name of a new kind').fill('Letter tile');
  await page.keyboard.press('Enter');
  await expect(field(page, 'Letter tile, moved about on a marking')).toHaveValue('piece');
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('button', { name: 'Letter tile', exact: true }).click();
  await clickWall(page, 1170, 1180);
  await expect.poll(() => placeOf(page, 'Letter tile H2')).toEqual(['1135', '1135']);
  await expect(field(page, 'Letter tile H2, moved about on')).toHaveValue('Z1/M1');
});
