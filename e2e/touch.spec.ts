import { expect, test } from '@playwright/test';
import { elevation, goTo, onScreen } from './wall-points';

test.use({ hasTouch: true, viewport: { width: 820, height: 1180 } });

test('two fingers zoom the elevation; one tap chooses a fitting', async ({ page }) => {
  await page.goto('/');
  await goTo(page, 'Survey');
  const drawing = elevation(page);
  await expect(drawing).toHaveAttribute('aria-label', /wall A/);
  const scale = async () => Number(await drawing.getAttribute('data-scale'));
  const before = await scale();

  const middle = await onScreen(page, 2700, 1300);
  const cdp = await page.context().newCDPSession(page);
  const fingers = (apart: number) => [
    { x: middle.x - apart, y: middle.y, id: 1 },
    { x: middle.x + apart, y: middle.y, id: 2 },
  ];
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: fingers(60) });
  for (const apart of [70, 90, 110, 120]) {
    await cdp.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: fingers(apart) });
  }
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await expect.poll(scale).toBeGreaterThan(before * 1.5);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();

  await page.getByRole('button', { name: 'Fit', exact: true }).click();
  const row = page.locator('#schedule tbody tr', {
    has: page.getByRole('button', { name: 'Select socket K1' }),
  });
  const at = await onScreen(page, 1633, 343);
  await page.touchscreen.tap(at.x, at.y);
  await expect(row).toHaveAttribute('aria-current', 'true');
});
