import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { dragWall, goTo, onScreen, waitForPlan } from './wall-points';

const stateOf = (page: Page, mark: string) => page.locator(`tr[data-ref="hung ${mark}"] td.state`);
const reload = async (page: Page) => {
  await page.waitForTimeout(700);
  await page.reload();
  await waitForPlan(page);
};

/** From its button in the strip to a place on the wall, mm. */
async function dragFromStrip(page: Page, label: string, x: number, y: number): Promise<void> {
  const button = page
    .getByRole('group', { name: 'Put in' })
    .getByRole('button', { name: label, exact: true });
  const from = (await button.boundingBox())!;
  const to = await onScreen(page, x, y);
  await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await page.mouse.up();
}

test('a print is dragged onto the wall; moved off the steel it no longer holds, and undo brings it back', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  await expect(page.getByText('of 6 items hold', { exact: true })).toBeVisible();
  await dragFromStrip(page, 'Print', 2150, 900);
  await expect(page.getByLabel('print H7, from left')).toBeVisible();
  await expect(page.getByLabel('print H7, width')).toHaveValue('420');
  const moved = page.getByLabel('print H7, from left');
  await moved.fill('2920');
  await page.getByLabel('print H7, from floor').fill('5');
  await moved.press('Enter');
  await page.getByLabel('print H7, from floor').press('Enter');
  await expect(stateOf(page, 'H7')).toContainText('does not hold');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(page.getByLabel('print H7, from left')).toHaveCount(0);

  // The poster dragged by hand from the steel to where there is none.
  await expect(stateOf(page, 'H3')).toContainText('holds: ');
  const before = await page.getByLabel('poster H3, from left').inputValue();
  await dragWall(page, [2900, 1800], [4600, 700]);
  await expect(stateOf(page, 'H3')).toContainText('does not hold');
  await expect(page.getByRole('button', { name: /^Undo “Move poster H3”/ })).toBeVisible();
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('Control+z');
  await expect(page.getByLabel('poster H3, from left')).toHaveValue(before);
  await expect(stateOf(page, 'H3')).toContainText('holds: ');

  // Arrows move it by 1 and 10, and Delete takes it off.
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  await expect(page.getByLabel('poster H3, from left')).toHaveValue(String(Number(before) + 11));
  await page.keyboard.press('Delete');
  await expect(stateOf(page, 'H3')).toHaveCount(0);
});

test('by keyboard alone: an item is put in, who is below is asked for above 1 kg, and a reload finds all', async ({
  page,
}) => {
  await startWall(page);
  await page.keyboard.press('Alt+4');
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('i');
  await page.keyboard.press('s');
  await expect(page.getByRole('button', { name: 'Shelf', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await page.keyboard.press('Enter');
  await expect(stateOf(page, 'H1')).toHaveText('cannot be judged');
  await expect(page.getByLabel('Details of shelf H1')).toContainText(
    'say first where people lie, sit, play or pass',
  );

  const weight = page.getByLabel('shelf H1, weight, kg');
  await weight.fill('heavy');
  await weight.press('Enter');
  await expect(page.getByRole('alert')).toHaveText('Type a weight in kg from 0 to 1000, such as 0.35.');
  await weight.press('Escape');
  await expect(weight).toHaveValue('0.8');
  const carries = page.getByLabel('shelf H1, carries, kg').first();
  await carries.fill('1.2');
  await carries.press('Enter');

  await page.getByRole('tab', { name: 'People below' }).click();
  await expect(page.locator('#leaf')).toContainText('Nobody has said yet');
  await page.getByRole('button', { name: 'Nobody is below this wall' }).press('Enter');
  await expect(page.locator('#leaf')).toContainText('Nobody is below this wall.');
  await page.getByRole('tab', { name: 'Hung items' }).click();
  // There is no steel on this wall.
  await expect(stateOf(page, 'H1')).toContainText('does not hold');

  await page.getByRole('tab', { name: 'People below' }).click();
  await page.getByRole('button', { name: 'Put in a bed' }).click();
  await page.getByLabel('bed B1, width').fill('900');
  await page.getByLabel('bed B1, width').press('Enter');
  await reload(page);
  await expect(page.getByRole('button', { name: 'Hanging' })).toHaveAttribute('aria-current', 'step');
  await expect(page.getByLabel('shelf H1, carries, kg').first()).toHaveValue('1.2');
  await page.getByRole('tab', { name: 'People below' }).click();
  await expect(page.getByLabel('bed B1, width')).toHaveValue('900');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(page.locator('#leaf')).toContainText('Nobody is below this wall.');
});

test('a magnet is moved within its item by hand and by figures', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Hanging');
  const middle = await onScreen(page, 3000, 2000);
  await page.mouse.click(middle.x, middle.y);
  const left = page.getByLabel('poster H3, magnet 3 from left of the item');
  await expect(left).toHaveValue('20');
  // The lower left one, at (2700, 1570), to the middle of the item, which it snaps to.
  await dragWall(page, [2700, 1570], [2980, 1650]);
  await expect(left).toHaveValue('297');
  await expect(page.getByLabel('poster H3, from left')).toHaveValue('2680');
  await left.fill('40');
  await left.press('Enter');
  await expect(left).toHaveValue('40');
  const count = page.getByLabel('poster H3, how many magnets');
  await count.fill('6');
  await count.press('Enter');
  await expect(page.getByLabel('poster H3, magnet 6 from left of the item')).toHaveValue('574');
});

test('a game piece lies on the board that is marked under it', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Zones');
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('m');
  await page.keyboard.press('b');
  await dragWall(page, [1500, 800], [1900, 1200]);
  await goTo(page, 'Hanging');
  await page.getByTestId('elevation').focus();
  await page.keyboard.press('i');
  await page.keyboard.press('g');
  const at = await onScreen(page, 1700, 1000);
  await page.mouse.click(at.x, at.y);
  await expect(page.getByLabel('game piece H7, kind')).toHaveValue('game-piece');
  await expect(page.getByLabel('game piece H7, moved about on')).toHaveValue(/^Z1\/M\d$/);
  await expect(stateOf(page, 'H7')).not.toHaveText('being worked out');
});

test.describe('on a tablet', () => {
  test.use({ viewport: { width: 820, height: 1180 }, hasTouch: true });

  test('a finger puts in a clipboard, chooses and drags it, and the findings lead to what does not hold', async ({
    page,
  }) => {
    await page.goto('/');
    await waitForPlan(page);
    await page.getByRole('navigation', { name: 'Stations' }).getByText('Hanging').tap();
    await page.getByRole('button', { name: 'Clipboard', exact: true }).tap();
    const put = await onScreen(page, 3100, 1350);
    await page.touchscreen.tap(put.x, put.y);
    // In line with the shelf below it.
    await expect(page.getByLabel('clipboard H7, from left')).toHaveValue('2975');
    const session = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
      session.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    const [from, to] = [await onScreen(page, 3100, 1350), await onScreen(page, 2200, 1050)];
    await touch('touchStart', [from]);
    for (let i = 1; i <= 6; i++)
      await touch('touchMove', [
        { x: from.x + ((to.x - from.x) * i) / 6, y: from.y + ((to.y - from.y) * i) / 6 },
      ]);
    await touch('touchEnd', []);
    await expect(page.getByLabel('clipboard H7, from left')).not.toHaveValue('2975');
    await expect(page.getByLabel('Findings').getByText('of 7 items hold').first()).toBeVisible();

    await page.getByRole('navigation', { name: 'Stations' }).getByText('Survey').tap();
    await page.getByRole('button', { name: /warnings.*Show/ }).tap();
    await page.getByRole('button', { name: /^Show: Shelf H6/ }).tap();
    await expect(page.getByRole('button', { name: 'Hanging' })).toHaveAttribute('aria-current', 'step');
    await expect(page.getByLabel('Details of shelf H6')).toContainText('does not hold');
  });
});
