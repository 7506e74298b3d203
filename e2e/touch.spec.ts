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

test('a finger that rests on a socket goes to its row, and the schedule is there for it', async ({
  page,
}) => {
  await page.goto('/');
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Wall', exact: true }).tap();
  // However many leaves there are beside it.
  await expect(page.getByRole('button', { name: 'Hide rows' })).toBeInViewport({ ratio: 1 });
  await page.getByRole('button', { name: 'Hide rows' }).tap();
  const cdp = await page.context().newCDPSession(page);
  const { x, y } = await onScreen(page, 1633, 343);
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y, id: 1 }] });
  const select = page.getByRole('button', { name: 'Select socket K1' });
  await expect(select).toBeFocused();
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await expect(select).toBeFocused();
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
});

test('a pen draws a zone, drags it and, resting on it, goes to its row', async ({ page }) => {
  await page.goto('/');
  await goTo(page, 'Zones');
  const cdp = await page.context().newCDPSession(page);
  const pen = async (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', x: number, y: number) =>
    cdp.send('Input.dispatchMouseEvent', {
      ...{ type, pointerType: 'pen', x, y, force: 0.5 },
      ...(type === 'mouseMoved' ? { button: 'left', buttons: 1 } : { button: 'left', clickCount: 1 }),
    });
  const stroke = async (from: { x: number; y: number }, to: { x: number; y: number }) => {
    await pen('mousePressed', from.x, from.y);
    for (const part of [0.3, 0.6, 1]) {
      await pen('mouseMoved', from.x + part * (to.x - from.x), from.y + part * (to.y - from.y));
    }
    await pen('mouseReleased', to.x, to.y);
  };
  await page.getByRole('button', { name: 'Zone, rectangle' }).click();
  await stroke(await onScreen(page, 1500, 200), await onScreen(page, 2300, 650));
  const zone = page.locator('#schedule tbody tr[aria-current="true"]');
  await expect(zone).toContainText('Z3');
  const middle = await onScreen(page, 1900, 420);
  const place = zone.getByRole('textbox', { name: /from left/ });
  const before = Number(await place.inputValue());
  await stroke(middle, { x: middle.x + 60, y: middle.y });
  await expect.poll(async () => Number(await place.inputValue())).toBeGreaterThan(before + 100);
  const at = { x: middle.x + 60, y: middle.y };
  await pen('mousePressed', at.x, at.y);
  await expect(page.getByRole('button', { name: /Select zone Z3/ })).toBeFocused();
  await pen('mouseReleased', at.x, at.y);
});
