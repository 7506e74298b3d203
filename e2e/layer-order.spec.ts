import { expect, test, type Page } from '@playwright/test';
import { goTo, waitForPlan } from './wall-points';

test.use({ hasTouch: true });

const kinds = (page: Page) =>
  page
    .getByRole('combobox', { name: /^Layer \d+, .*: kind$/ })
    .evaluateAll((fields) => fields.map((field) => (field as HTMLSelectElement).value));

async function middleOfGrip(page: Page, row: number) {
  const grip = page.locator('#schedule tbody .grip').nth(row);
  await grip.scrollIntoViewIfNeeded();
  const box = (await grip.boundingBox())!;
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(40);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

test('layers are put into another order by drag, with mouse and finger, and back by one undo', async ({
  page,
}) => {
  await page.goto('/');
  await goTo(page, 'Zones');
  await waitForPlan(page);
  if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/zones.png` });
  await page.getByRole('tab', { name: 'Layers', exact: true }).click();
  await expect(page.locator('#schedule tbody .grip').nth(3)).toBeVisible();
  const before = await kinds(page);
  const [first, second, third, ...rest] = before;

  const from = await middleOfGrip(page, 0);
  const height = (await page.locator('#schedule tbody tr').first().boundingBox())!.height;
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x, from.y + height * 2.3, { steps: 5 });
  await expect(page.locator('#schedule tbody tr.after')).toHaveCount(1);
  if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/layers.png` });
  expect(await kinds(page)).toEqual(before);
  await page.mouse.up();
  await expect.poll(() => kinds(page)).toEqual([second, third, first, ...rest]);
  const undo = page.getByRole('button', { name: /^Undo/ });
  await undo.click();
  await expect.poll(() => kinds(page)).toEqual(before);
  await expect(undo).toBeDisabled();

  // Given up: nothing has changed, and there is nothing to undo.
  const again = await middleOfGrip(page, 0);
  await page.mouse.move(again.x, again.y);
  await page.mouse.down();
  await page.mouse.move(again.x, again.y + height * 2.3, { steps: 5 });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(undo).toBeDisabled();
  expect(await kinds(page)).toEqual(before);

  const finger = await middleOfGrip(page, 1);
  const cdp = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', y?: number) =>
    cdp.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: y === undefined ? [] : [{ x: finger.x, y, id: 1 }],
    });
  await touch('touchStart', finger.y);
  for (const share of [0.4, 0.8, 1.3]) await touch('touchMove', finger.y - height * share);
  await touch('touchEnd');
  await expect.poll(() => kinds(page)).toEqual([second, first, third, ...rest]);
  await undo.click();
  await expect.poll(() => kinds(page)).toEqual(before);
  if (process.env.SHOTS) {
    await page.setViewportSize({ width: 820, height: 1180 });
    await page.waitForTimeout(500);
    await page.screenshot({ path: `${process.env.SHOTS}/layers-820.png` });
    await page.getByRole('tab', { name: 'Zones', exact: true }).click();
    await page.screenshot({ path: `${process.env.SHOTS}/zones-820.png` });
  }
});
