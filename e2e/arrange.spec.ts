import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, dragWall, elevation, onScreen } from './wall-points';

const row = (page: Page, name: string) =>
  page.locator('#schedule tbody tr', {
    has: page.getByRole('button', { name: `Select ${name}`, exact: true }),
  });
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

/** Three sockets on a bare wall, none in line: K1, K2 and K3, 146 × 86. */
async function threeSockets(page: Page): Promise<void> {
  await startWall(page);
  await page.getByRole('button', { name: 'Tape readings…' }).click();
  await page
    .getByRole('textbox', { name: 'Readings' })
    .fill('socket 300 300\nsocket 900 420\nsocket 2000 360');
  await page.getByRole('button', { name: 'Put them in' }).click();
  await expect(row(page, 'socket K3')).toBeVisible();
}

test('a frame chooses what lies in it; all go together, as one entry to undo', async ({ page }) => {
  await threeSockets(page);
  await page.keyboard.down('Shift');
  await dragWall(page, [200, 800], [1300, 150]);
  await page.keyboard.up('Shift');
  const strip = page.getByRole('group', { name: 'Arrange what is chosen' });
  await expect(strip).toContainText('2 sockets');

  await page.keyboard.down('Shift');
  await clickWall(page, 2073, 403);
  await page.keyboard.up('Shift');
  await expect(strip).toContainText('3 sockets');

  await page.keyboard.press('ArrowRight');
  await expect(field(page, 'socket K1, from left')).toHaveValue('301');
  await expect(field(page, 'socket K3, from left')).toHaveValue('2001');

  await dragWall(page, [374, 343], [374, 843]);
  await expect(field(page, 'socket K1, from floor')).not.toHaveValue('300');
  const raised = Number(await field(page, 'socket K1, from floor').inputValue()) - 300;
  await expect(field(page, 'socket K2, from floor')).toHaveValue(String(420 + raised));
  await page.keyboard.press('Control+z');
  await expect(field(page, 'socket K2, from floor')).toHaveValue('420');

  await strip.getByRole('button', { name: 'In a row' }).click();
  await expect(field(page, 'socket K2, from floor')).toHaveValue('300');
  await strip.getByRole('button', { name: 'Across' }).click();
  // From 301 to 2147 there are 1846; less three of 146 leaves two gaps of 704.
  await expect(field(page, 'socket K2, from left')).toHaveValue('1151');

  await elevation(page).focus();
  await page.keyboard.press('Delete');
  await expect(row(page, 'socket K1')).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(row(page, 'socket K3')).toBeVisible();
});

test('what is locked stays, and it is said; by rows and figures alone', async ({ page }) => {
  await threeSockets(page);
  await row(page, 'socket K1').getByRole('button', { name: 'Select socket K1' }).focus();
  await page.keyboard.press('a');
  await page.keyboard.press('o');
  await expect(row(page, 'socket K1')).toContainText('locked');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Shift+ArrowDown');
  for (const mark of ['K1', 'K2', 'K3']) {
    await expect(page.getByRole('checkbox', { name: `Choose socket ${mark} too` })).toBeChecked();
  }
  await page.getByRole('tab', { name: 'Arrange' }).click();
  await page.getByRole('textbox', { name: 'to the right' }).fill('10 cm');
  await page.getByRole('button', { name: 'Move', exact: true }).click();
  await expect(page.locator('#leaf .chosen').getByRole('status')).toHaveText(
    'Move 2 sockets. socket K1 is locked and stays.',
  );
  await page.getByRole('tab', { name: 'Openings and fittings' }).click();
  await expect(field(page, 'socket K1, from left')).toHaveValue('300');
  await expect(field(page, 'socket K2, from left')).toHaveValue('1000');

  await field(page, 'socket K1, from left').fill('500');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert')).toContainText(
    'Socket K1 is locked and stays as it is; unlock it first.',
  );
});

test('repeated until the wall is full', async ({ page }) => {
  await threeSockets(page);
  await clickWall(page, 2073, 403);
  await page.getByRole('tab', { name: 'Arrange' }).click();
  await page.getByRole('textbox', { name: 'to the right' }).fill('600');
  await page.getByRole('button', { name: 'Fill to the edge' }).click();
  // 2000 + 146 + 3 × 600 = 3946 fits on 4200, a fourth does not.
  await expect(page.locator('#leaf .chosen').getByRole('status')).toHaveText('Repeat socket K3 3 times.');
  await expect(page.locator('#leaf b')).toHaveText('4 sockets');
});

test('copied as text, pasted beside itself and on another wall; what is broken is named by its line', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await threeSockets(page);
  await clickWall(page, 373, 343);
  await page.keyboard.press('Control+a');
  await page.keyboard.press('Control+c');
  const text = await page.evaluate(() => navigator.clipboard.readText());
  expect(text).toContain('- socket K2: left 900; floor 420; width 146; height 86; clearance 5');
  await page.keyboard.press('Control+v');
  await expect(field(page, 'socket K4, from left')).toHaveValue('2246');
  await page.keyboard.press('Control+v');
  await expect(page.locator('.paper')).toContainText('3 sockets lie beyond this wall');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(row(page, 'socket K4')).toHaveCount(0);

  await page.evaluate((broken) => navigator.clipboard.writeText(broken), text.replace('left 900', 'left x'));
  await elevation(page).focus();
  await page.keyboard.press('Control+v');
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('Line 3:');
  await dialog.getByRole('button', { name: 'Put in nothing' }).click();
  await expect(row(page, 'socket K4')).toHaveCount(0);

  await page.evaluate(() => navigator.clipboard.writeText('window 2400\t900\t1200\t1200'));
  await elevation(page).focus();
  await page.keyboard.press('Control+v');
  await expect(page.getByRole('dialog', { name: 'Tape readings' })).toBeVisible();
});

test('a distance stands on the drawing until Escape, and is no part of the job', async ({ page }) => {
  await threeSockets(page);
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await clickWall(page, 446, 386);
  await clickWall(page, 900, 506);
  // From 446, 386 to 900, 506: 454 across, 120 up, √220 516 straight.
  await expect(page.locator('.elevation > [aria-live]')).toHaveText('straight 469.59, across 454, up 120');
  await expect(page.getByRole('button', { name: 'Undo “Put in 3 readings”' })).toBeEnabled();
  await page.getByRole('tab', { name: 'Arrange' }).click();
  await expect(page.getByRole('button', { name: 'Take measures away' })).toBeVisible();
  await elevation(page).focus();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Take measures away' })).toBeHidden();
});

test.describe('by touch', () => {
  test.use({ hasTouch: true, viewport: { width: 820, height: 1180 } });

  test('the switch lets each tap add', async ({ page }) => {
    await threeSockets(page);
    await page.getByRole('button', { name: 'Several' }).tap();
    for (const [x, y] of [
      [373, 343],
      [2073, 403],
    ] as const) {
      const at = await onScreen(page, x, y);
      await page.touchscreen.tap(at.x, at.y);
    }
    await expect(page.getByRole('group', { name: 'Arrange what is chosen' })).toContainText('2 sockets');
    await page.getByRole('button', { name: 'Foot' }).tap();
    await expect(field(page, 'socket K3, from floor')).toHaveValue('300');
  });
});
