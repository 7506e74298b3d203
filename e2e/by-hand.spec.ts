import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, dragWall, elevation, goTo, onScreen, waitForPlan } from './wall-points';

/** A bare wall with a door near its middle and a zone of steel over most of it, at Panels. */
async function zoneWithDoor(page: Page): Promise<void> {
  await startWall(page, '4200', '2600');
  await page.getByRole('button', { name: 'Door', exact: true }).click();
  await dragWall(page, [1700, 0], [2600, 2000]);
  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'Zone, rectangle' }).click();
  await dragWall(page, [200, 300], [4000, 2400]);
  await goTo(page, 'Panels');
  await waitForPlan(page);
}

const leaf = (page: Page) => page.getByRole('tab', { name: 'By hand' }).click();
const strip = (page: Page) => page.getByRole('group', { name: 'By hand' });
const row = (page: Page, name: RegExp) => page.getByRole('row', { name });

test('the start is dragged with its figures beside the best ones, nudged, typed and let go', async ({
  page,
}) => {
  await zoneWithDoor(page);
  await strip(page).getByRole('button', { name: 'Start' }).click();
  const figures = page.getByTestId('start-figures');
  await expect(figures).toContainText(/\d+ stock sheets?, \d+ cut, .*best: \d+, \d+, \d+, \d+/, {
    timeout: 60_000,
  });
  const best = (await figures.innerText()).split('best:')[1];
  const left = page.getByLabel('Start of zone Z1, from left');
  const floor = page.getByLabel('Start of zone Z1, from floor');
  const at = [Number(await left.inputValue()), Number(await floor.inputValue())] as const;

  await dragWall(page, at, [at[0] + 233, at[1] + 127]);
  await expect(left).not.toHaveValue(String(at[0]));
  await expect(figures).toContainText(`best:${best}`);
  await page.screenshot({ path: process.env.BY_HAND_SHOT ?? 'test-results/by-hand-start.png' });
  const dragged = Number(await left.inputValue());
  await elevation(page).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  await expect(left).toHaveValue(String(Math.round((dragged + 11) * 100) / 100));
  await floor.fill('333');
  await floor.press('Enter');
  await expect(floor).toHaveValue('333');

  await leaf(page);
  await expect(row(page, /start of the panels/)).toContainText('333 from floor');
  await page.getByRole('button', { name: 'Let go: the best start' }).click();
  await expect(row(page, /start of the panels/)).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(row(page, /start of the panels/)).toHaveCount(1);
});

test('a joint stays with the edge of a door, and is lost with it', async ({ page }) => {
  await zoneWithDoor(page);
  await leaf(page);
  await strip(page).getByRole('button', { name: 'Upright joint' }).click();
  await clickWall(page, 1702, 2200);
  const joint = row(page, /joint on a line H1/);
  await expect(joint).toContainText('as chosen', { timeout: 30_000 });
  await expect(joint.getByLabel('H1, from left, measured from')).toHaveValue(/opening/);
  await expect(joint.getByLabel('H1, from left, length')).toHaveValue('0');

  // The door moves, and the joint with it.
  await goTo(page, 'Survey');
  await clickWall(page, 2100, 1000);
  await elevation(page).focus();
  for (let n = 0; n < 3; n++) await page.keyboard.press('Shift+ArrowRight');
  await goTo(page, 'Panels');
  await waitForPlan(page);
  await expect(joint).toContainText('as chosen', { timeout: 30_000 });

  await goTo(page, 'Survey');
  await clickWall(page, 2100, 1000);
  await elevation(page).focus();
  await page.keyboard.press('Delete');
  await goTo(page, 'Panels');
  await waitForPlan(page);
  await expect(joint).toContainText(/has lost its place: opening D1 is gone/);
  await expect(page.getByText(/Joint on a line H1 of zone Z1 has lost its place/).first()).toBeVisible();
});

test('panels are split and joined from the strip of the one that is chosen', async ({ page }) => {
  await zoneWithDoor(page);
  const rows = page.locator('tr.panel');
  const before = await rows.count();
  await clickWall(page, 3300, 1000);
  const panel = page.getByRole('group', { name: /^Panel A-Z1-\d+, by hand/ });
  await panel.getByRole('button', { name: 'Split upright' }).click();
  await expect(rows).toHaveCount(before + 1);
  await leaf(page);
  await expect(row(page, /split H1/)).toContainText('as chosen', { timeout: 30_000 });
  await page.screenshot({ path: 'test-results/by-hand-split.png' });

  // The halves together are one panel again; two whole sheets are more than a stock sheet gives.
  await page.getByRole('tab', { name: 'Panels', exact: true }).click();
  await elevation(page).focus();
  await page.keyboard.press('Escape');
  const middle = Number(await onSplit(page));
  await strip(page).getByRole('button', { name: 'Join two' }).click();
  await clickWall(page, middle - 60, 1060);
  await clickWall(page, middle + 60, 1060);
  await expect(rows).toHaveCount(before);
  await page.keyboard.press('Control+z');
  await expect(rows).toHaveCount(before + 1);
  await page.keyboard.press('Control+z');
  await expect(rows).toHaveCount(before);
});

/** Where the split lies, from its row. */
async function onSplit(page: Page): Promise<string> {
  await leaf(page);
  const at = await page.getByLabel('split H1, from left, length').inputValue();
  await page.getByRole('tab', { name: 'Panels', exact: true }).click();
  return at;
}

test('no joint lies where none may, a panel stays whole, and both can be let go by keyboard', async ({
  page,
}) => {
  await zoneWithDoor(page);
  await leaf(page);
  await strip(page).getByRole('button', { name: 'No joints' }).click();
  await dragWall(page, [3000, 700], [3300, 900]);
  await expect(row(page, /no joints here H1/)).toContainText('as chosen', { timeout: 30_000 });
  await page.keyboard.press('h');
  await page.keyboard.press('w');
  await clickWall(page, 700, 900);
  await expect(row(page, /whole panel H2/)).toContainText(/as chosen|is not met/, { timeout: 30_000 });
  await page.screenshot({ path: 'test-results/by-hand-band.png' });
  const point = await onScreen(page, 3150, 800);
  expect(point.x).toBeGreaterThan(0);

  await page.getByRole('button', { name: /Let go of whole panel H2/ }).focus();
  await page.keyboard.press('Enter');
  await expect(row(page, /whole panel H2/)).toHaveCount(0);
  await page.reload();
  await goTo(page, 'Panels');
  await leaf(page);
  await expect(row(page, /no joints here H1/)).toContainText('as chosen', { timeout: 30_000 });
});

/** Where the sign of a choice lies on the page, px. */
async function sign(page: Page, id: string): Promise<{ x: number; y: number }> {
  const box = (await elevation(page).boundingBox())!;
  const at = new RegExp(`${id} at ([-\\d.]+), ([-\\d.]+)`).exec(
    (await elevation(page).getAttribute('data-signs')) ?? '',
  );
  if (!at) throw new Error(`${id} has no sign on the drawing.`);
  return { x: box.x + Number(at[1]), y: box.y + Number(at[2]) };
}

test('a sign is chosen on the drawing and its row follows, and the other way round', async ({ page }) => {
  await zoneWithDoor(page);
  await strip(page).getByRole('button', { name: 'Upright joint' }).click();
  await clickWall(page, 1002, 2200);
  await strip(page).getByRole('button', { name: 'No joints' }).click();
  await dragWall(page, [3000, 700], [3300, 900]);
  await waitForPlan(page);

  const at = await sign(page, 'H2');
  await page.mouse.click(at.x, at.y);
  await expect(row(page, /no joints here H2/)).toHaveAttribute('aria-current', 'true');
  await expect(page.getByRole('group', { name: 'Chosen by hand: no joints here H2' })).toBeVisible();

  await page.getByRole('button', { name: 'Select joint on a line H1 of zone Z1' }).click();
  await expect(row(page, /joint on a line H1/)).toHaveAttribute('aria-current', 'true');
  await expect(page.getByRole('group', { name: 'Chosen by hand: joint on a line H1' })).toBeVisible();
  await expect(page.getByTestId('choice-figures')).toContainText(
    /\d+ stock sheets?, \d+ cut, .*;\s+best without it: \d+, \d+, \d+/,
    { timeout: 60_000 },
  );
});

test('a joint is dragged by its sign as one change, put back by Escape, nudged and let go', async ({
  page,
}) => {
  await zoneWithDoor(page);
  await strip(page).getByRole('button', { name: 'Upright joint' }).click();
  await clickWall(page, 1002, 2200);
  await leaf(page);
  const left = page.getByLabel('H1, from left, length');
  const before = Number(await left.inputValue());
  await waitForPlan(page);

  const drag = async (release: () => Promise<void>) => {
    const at = await sign(page, 'H1');
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x + 20, at.y + 10, { steps: 4 });
    await page.mouse.move(at.x + 40, at.y + 10, { steps: 4 });
    await expect(left).not.toHaveValue(String(before));
    await release();
  };
  await drag(() => page.keyboard.press('Escape'));
  await page.mouse.up();
  await expect(left).toHaveValue(String(before));

  await drag(async () => {
    await expect(page.getByTestId('choice-figures')).toContainText('best without it', { timeout: 60_000 });
    await page.mouse.up();
  });
  const dragged = Number(await left.inputValue());
  expect(dragged).toBeGreaterThan(before + 50);
  await expect(row(page, /joint on a line H1/)).toContainText('as chosen', { timeout: 30_000 });

  await elevation(page).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowLeft');
  await expect(left).toHaveValue(String(dragged - 9));
  for (let n = 0; n < 3; n++) await page.keyboard.press('Control+z');
  await expect(left).toHaveValue(String(before));

  await page.keyboard.press('Delete');
  await expect(row(page, /joint on a line H1/)).toHaveCount(0);
});

test('a panel is left out, and the setting-out sheet says so', async ({ page }) => {
  await zoneWithDoor(page);
  const rows = page.locator('tr.panel');
  const before = await rows.count();
  await clickWall(page, 3300, 1000);
  const panel = page.getByRole('group', { name: /^Panel A-Z1-\d+, by hand/ });
  await panel.getByRole('button', { name: 'Leave out' }).click();
  await expect(rows).toHaveCount(before - 1);
  await leaf(page);
  await expect(row(page, /no panel H1/)).toContainText('as chosen', { timeout: 30_000 });
  await page.screenshot({ path: 'test-results/by-hand-left-out.png' });

  await goTo(page, 'Drawings');
  await expect(page.getByText('no panel', { exact: true }).first()).toBeAttached({ timeout: 60_000 });
});
