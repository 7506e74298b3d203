import type { Locator, Page } from '@playwright/test';

export interface Px {
  readonly x: number;
  readonly y: number;
}

export function elevation(page: Page): Locator {
  return page.getByTestId('elevation');
}

/** Where a point of the wall (mm from the datum) lies on the page, in px. */
export async function onScreen(page: Page, x: number, y: number): Promise<Px> {
  const drawing = elevation(page);
  const box = await drawing.boundingBox();
  if (!box) throw new Error('The elevation is not on the screen.');
  const read = async (name: string) => Number(await drawing.getAttribute(`data-${name}`));
  const [scale, originX, originY] = [await read('scale'), await read('origin-x'), await read('origin-y')];
  return { x: box.x + originX + x * scale, y: box.y + originY - y * scale };
}

export async function clickWall(page: Page, x: number, y: number): Promise<void> {
  const at = await onScreen(page, x, y);
  await page.mouse.click(at.x, at.y);
}

export async function dragWall(page: Page, from: readonly [number, number], to: readonly [number, number]) {
  const [start, end] = [await onScreen(page, ...from), await onScreen(page, ...to)];
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move((start.x + end.x) / 2, (start.y + end.y) / 2, { steps: 4 });
  await page.mouse.move(end.x, end.y, { steps: 4 });
  await page.mouse.up();
}

export async function goTo(
  page: Page,
  station: 'Survey' | 'Zones' | 'Panels' | 'Hanging' | 'Price' | 'Drawings',
): Promise<void> {
  await page.getByRole('navigation', { name: 'Stations' }).getByText(station).click();
}

/** Until the newest plan has come to rest. */
export async function waitForPlan(page: Page): Promise<void> {
  await page.locator('[data-plan="final"]').waitFor({ timeout: 60_000 });
}
