import { expect, test, type Page } from '@playwright/test';
import { goTo, waitForPlan } from './wall-points';

const focused = (page: Page) => page.locator(':focus');

/** Every station and every part of its schedule. */
const parts = {
  Survey: [
    'Openings and fittings',
    'Wall',
    'Room',
    'Corners',
    'Check measures',
    'Joints and cables',
    'Ground',
    'Fixing points',
    'Photos',
    'Arrange',
  ],
  Zones: ['Zones', 'Layers', 'Corners', 'Holes', 'Markings', 'Arrange', 'Alternatives', 'Colours'],
  Panels: ['Panels', 'Layout', 'By hand', 'Stock sheets', 'Rack', 'Cutting', 'Arrange'],
  Hanging: ['Hung items', 'Calculation', 'Magnets', 'Pull tests', 'People below', 'Holding map', 'Arrange'],
  Price: ['Materials', 'Products', 'Rates', 'Programme', 'Offer', 'Side by side'],
  Drawings: ['Documents', 'Workshop', 'Printing', 'Handover', 'Revisions'],
} as const;

test('the whole schedule is worked by keyboard alone', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await page.keyboard.press('Alt+1');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  await expect(focused(page)).toHaveText('Openings and fittings');

  // Put in a socket: the focus goes on in its first field.
  const kind = page.getByLabel('Put in').and(page.locator('select'));
  await kind.focus();
  await kind.selectOption({ label: 'socket' });
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(focused(page)).toHaveAttribute('aria-label', 'socket K5, from left');
  await page.keyboard.type('3,5 m');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('socket K5, from left')).toHaveValue('3500');

  // Arrows go between the cells, End to the row's last command; what is deleted gives the focus to its neighbour.
  await page.keyboard.press('ArrowUp');
  await expect(focused(page)).toHaveAttribute('aria-label', 'socket K4, from left');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('End');
  await expect(focused(page)).toHaveAttribute('aria-label', 'Delete socket K5');
  await page.keyboard.press('Enter');
  await expect(focused(page)).toHaveAttribute('aria-label', 'Delete socket K4');
  await page.keyboard.press('Control+z');
  await expect(page.getByLabel('socket K5, from left')).toHaveValue('3500');

  // The parts of the schedule by arrows; a new stock sheet is named, priced and used.
  await page.keyboard.press('Alt+3');
  await page.getByRole('tab', { name: 'Panels' }).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(focused(page)).toHaveText('Stock sheets');
  await page.getByRole('button', { name: 'Add a stock sheet' }).focus();
  await page.keyboard.press('Enter');
  await expect(focused(page)).toHaveAttribute('aria-label', 'Stock sheet S3, name');
  await page.keyboard.type('Offcut size');
  await page.keyboard.press('Enter');
  await page.getByLabel('Stock sheet S3, price of one').focus();
  await page.keyboard.type('7,5');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Stock sheet S3, price of one')).toHaveValue('7.50');
});

for (const size of [
  { width: 1440, height: 900 },
  { width: 820, height: 1180 },
]) {
  test(`every part of the schedule ends within ${size.width} px`, async ({ page }) => {
    await page.setViewportSize(size);
    await page.goto('/');
    await waitForPlan(page);
    for (const [station, names] of Object.entries(parts)) {
      await goTo(page, station as keyof typeof parts);
      for (const name of names) {
        await page.getByRole('tab', { name, exact: true }).click();
        const over = await page.evaluate(() => {
          const leaf = document.getElementById('leaf')!;
          return [
            document.documentElement.scrollWidth - window.innerWidth,
            leaf.scrollWidth - leaf.clientWidth,
          ];
        });
        expect(over, `${name} at ${station}`).toEqual([0, 0]);
      }
    }
  });
}

test('figures have a decimal point on the screen, and either mark may be typed', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Panels');
  await expect(page.getByLabel('Findings')).not.toContainText(/\d,\d/);
  await expect(page.locator('#leaf')).not.toContainText(/\d,\d/);
  await page.getByRole('tab', { name: 'Cutting' }).click();
  const kerf = page.getByLabel('Kerf, mm');
  for (const typed of ['2,5', '2.5']) {
    await kerf.fill(typed);
    await kerf.press('Enter');
    await expect(kerf).toHaveValue('2.5');
  }
});

test('undo keeps its place while the name of the change comes and goes', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  const undo = page.getByRole('button', { name: /^Undo/ });
  const before = await undo.boundingBox();
  await goTo(page, 'Panels');
  await page.getByRole('tab', { name: 'Layout' }).click();
  await page.getByLabel('Zone Z1, joint gap').fill('3');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Last change:')).toBeVisible();
  expect(await undo.boundingBox()).toEqual(before);
});

test('cautions stand in one entry after what asks for something, and open with one click', async ({
  page,
}) => {
  await page.goto('/');
  await waitForPlan(page);
  const findings = page.getByLabel('Findings');
  const caution = findings.getByText('Find concealed cables and pipes');
  await expect(caution).toBeHidden();
  await findings.getByText('Cautions', { exact: true }).click();
  await expect(caution).toBeVisible();
});
