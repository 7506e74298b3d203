import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';

/*
 * The whole station Hanging without a mouse: nothing is clicked or focused by the test, only keys are pressed.
 */

/** Presses Tab until that stands under the keys; its label or, without one, its words. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  for (let i = 0; i < 200; i++) {
    await page.keyboard.press('Tab');
    const said = await page.evaluate(() => {
      const at = document.activeElement as HTMLInputElement | null;
      return at?.getAttribute('aria-label') ?? at?.labels?.[0]?.textContent ?? at?.textContent ?? '';
    });
    if (typeof name === 'string' ? said.trim() === name : name.test(said.trim())) return;
  }
  throw new Error(`Tab never comes to ${name}.`);
}

async function type(page: Page, label: string, text: string): Promise<void> {
  await tabTo(page, label);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** A leaf of the station by its keys, which are not heard within a field. */
async function leafBy(page: Page, digit: number, name: string): Promise<void> {
  await page.keyboard.press('Escape');
  await tabTo(page, /^(Hung items|Calculation|Magnets|Pull tests|People below|Holding map|Arrange)$/);
  await page.keyboard.press('l');
  await page.keyboard.press(String(digit));
  await expect(page.getByRole('tab', { name, exact: true })).toHaveAttribute('aria-selected', 'true');
}

const leaf = (page: Page) => page.locator('#leaf');

test('every leaf of Hanging is reached and worked in by keys alone', async ({ page }) => {
  test.slow();
  await startWall(page);
  // A zone of steel, put in from the schedule.
  await page.keyboard.press('Alt+2');
  await tabTo(page, 'Put in a zone');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Zone Z1, build-up')).toHaveValue('steel-panel');

  await page.keyboard.press('Alt+4');
  await tabTo(page, /^Hung items$/);
  await tabTo(page, /^Put in\s+print/);
  for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowDown');
  await tabTo(page, 'Put in');
  await page.keyboard.press('Enter');
  const state = page.locator('tr[data-ref="hung H1"] td.state');
  await expect(state).toContainText('cannot be judged');
  await type(page, 'shelf H1, carries, kg', '0.4');
  // Within a field it is the text there that is chosen, not the wall.
  await expect(page.getByText('objects chosen')).toHaveCount(0);
  await type(page, 'shelf H1, name', 'Ink tins');

  // It weighs more than a kilogram: the way to who is below stands beside why.
  await tabTo(page, 'Say who is below');
  await page.keyboard.press('Enter');
  await tabTo(page, 'Nobody is below this wall');
  await page.keyboard.press('Enter');
  await expect(leaf(page)).toContainText('Nobody is below this wall.');

  await leafBy(page, 2, 'Calculation');
  const heading = leaf(page).getByRole('heading', { name: /shelf H1/ });
  await expect(heading).toContainText('does not hold');
  await tabTo(page, /^Change it so: /);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Undo “.*shelf H1/ })).toBeVisible();

  await leafBy(page, 3, 'Magnets');
  await tabTo(page, 'Add a magnet');
  await page.keyboard.press('Enter');
  await expect(leaf(page).getByLabel('MG1, name')).toBeFocused();
  await page.keyboard.press('Control+a');
  await page.keyboard.type('Cup 25');
  await page.keyboard.press('Enter');
  await expect(leaf(page).getByLabel('MG1, name')).toHaveValue('Cup 25');

  await leafBy(page, 4, 'Pull tests');
  await tabTo(page, 'pulled off at');
  await page.keyboard.type('14.2; 14.8; 15');
  await page.keyboard.press('Enter');
  await expect(leaf(page)).toContainText('The lowest reading is 14.2 N.');

  await leafBy(page, 5, 'People below');
  await tabTo(page, 'Put in a walkway');
  await page.keyboard.press('Enter');
  await type(page, 'walkway B1, width', '900');
  await expect(leaf(page).getByLabel('walkway B1, width')).toHaveValue('900');

  await leafBy(page, 6, 'Holding map');
  await tabTo(page, /^On the drawing$/);
  await page.keyboard.press('Space');
  await expect(leaf(page).getByRole('checkbox', { name: 'On the drawing' })).toBeChecked();
  await type(page, 'Reach of the hook, holding map', '15');

  await leafBy(page, 7, 'Arrange');
  await tabTo(page, 'All');
  await page.keyboard.press('Enter');
  await expect(leaf(page)).toContainText(/Shelf H1|\d objects/);

  await leafBy(page, 1, 'Hung items');
  await tabTo(page, 'Select shelf H1');
  await page.keyboard.press('Enter');
  await tabTo(page, 'Copy shelf H1');
  await page.keyboard.press('Enter');
  await expect(page.locator('tr[data-ref="hung H2"]')).toBeVisible();
  await tabTo(page, /^Delete shelf H2/);
  await page.keyboard.press('Enter');
  await expect(page.locator('tr[data-ref="hung H2"]')).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(page.locator('tr[data-ref="hung H2"]')).toBeVisible();
  await page.keyboard.press('Control+Shift+z');
  await expect(page.locator('tr[data-ref="hung H2"]')).toHaveCount(0);
});
