import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { expect, test, type Browser, type Page } from '@playwright/test';
import { goTo } from './wall-points';

async function openView(page: Page) {
  await goTo(page, 'Drawings');
  const show = page.getByRole('button', { name: 'Client view on screen' });
  await expect(show).toBeEnabled({ timeout: 60_000 });
  await show.click();
  return page.getByRole('dialog', { name: /^Client view of/ });
}

/** Opens a file as a client does who has no network; tells every request that it makes beside itself. */
async function openAlone(browser: Browser, path: string, javaScriptEnabled: boolean) {
  const context = await browser.newContext({ javaScriptEnabled, offline: true });
  const page = await context.newPage();
  const address = pathToFileURL(path).href;
  const asked: string[] = [];
  const faults: string[] = [];
  page.on('request', (request) => {
    if (request.url() !== address && !request.url().startsWith('data:')) asked.push(request.url());
  });
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await page.goto(address);
  return { page, asked, faults, close: () => context.close() };
}

test('the client’s page opens from a file without a network, and asks no host for anything', async ({
  page,
  browser,
}) => {
  await page.goto('/');
  const view = await openView(page);
  await view.getByLabel('with prices').check();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    view.getByRole('button', { name: 'Page to send' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/client view\.html$/);
  const path = test.info().outputPath('page.html');
  await download.saveAs(path);
  expect(readFileSync(path).length).toBeLessThan(1_000_000);
  expect(readFileSync(path, 'utf8')).not.toMatch(/https?:\/\/(?!www\.w3\.org\/2000\/svg)/);

  const alone = await openAlone(browser, path, true);
  const figure = alone.page.getByRole('figure').first();
  await expect(figure.getByRole('img').first()).toBeVisible();
  await expect(alone.page.getByText('Price with tax')).toBeVisible();

  // The cutaway: the clip of the finished wall gives way, that of the steel comes in.
  const widthOf = (band: number) =>
    figure.locator(`[data-band="${band}"]`).evaluate((clip) => Number(clip.getAttribute('width')));
  const whole = await widthOf(0);
  expect(await widthOf(3)).toBe(0);
  await figure.getByLabel('What is behind the finish').fill('0.6');
  expect(await widthOf(0)).toBeLessThan(whole * 0.5);
  expect(await widthOf(3)).toBeGreaterThan(whole * 0.1);
  await expect(figure.getByText('1 steel panels')).toBeVisible();

  // Zoom, and back; names by their switch.
  const boxOf = () => figure.locator('svg[data-left]').getAttribute('viewBox');
  const before = await boxOf();
  await figure.getByRole('button', { name: 'Zoom in' }).click();
  expect(await boxOf()).not.toBe(before);
  await figure.getByRole('button', { name: 'Whole wall' }).click();
  expect(await boxOf()).toBe(before);
  const name = figure.locator('svg text', { hasText: 'Proofs' });
  await expect(name).toBeVisible();
  await figure.getByLabel('Names').uncheck();
  await expect(name).toBeHidden();

  expect(alone.asked).toEqual([]);
  expect(alone.faults).toEqual([]);
  await alone.close();

  const still = await openAlone(browser, path, false);
  await expect(still.page.getByRole('img').first()).toBeVisible();
  await expect(still.page.locator('svg text', { hasText: 'Proofs' })).toBeVisible();
  await expect(still.page.getByRole('slider')).toHaveCount(0);
  await expect(still.page.getByText('pacemakers').first()).toBeVisible();
  expect(still.asked).toEqual([]);
  await still.close();
});

test('prices stay out unless they are let in; markup in names stays text', async ({ page, browser }) => {
  await page.goto('/');
  await goTo(page, 'Zones');
  const name = page.getByLabel('Zone Z1, name');
  await name.fill('<img src=x onerror="document.title=1">');
  await name.press('Enter');
  const view = await openView(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    view.getByRole('button', { name: 'Page to send' }).click(),
  ]);
  const path = test.info().outputPath('page.html');
  await download.saveAs(path);
  const alone = await openAlone(browser, path, true);
  await expect(alone.page.getByText('<img src=x onerror="document.title=1">').first()).toBeVisible();
  await expect(alone.page).toHaveTitle('Print studio');
  await expect(alone.page.locator('body img')).toHaveCount(0);
  await expect(alone.page.getByText(/price|tax|EUR|€/i)).toHaveCount(0);
  await expect(alone.page.getByText('Handover')).toBeVisible();
  expect(alone.asked).toEqual([]);
  await alone.close();
});

test('a picture has exactly the pixels that were asked for, and is not white', async ({ page }) => {
  await page.goto('/');
  const view = await openView(page);
  const width = view.getByLabel('Picture, width in pixels');
  await width.fill('12');
  await width.press('Enter');
  await expect(view.getByText('Type whole pixels from 200 to 8000.')).toBeVisible();
  await width.fill('1600');
  await width.press('Enter');
  const said = await view
    .getByText(/^× \d+ px$/)
    .or(view.getByText(/× \d+ px/))
    .first()
    .innerText();
  const high = Number(/× (\d+) px/.exec(said)![1]);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    view.getByRole('button', { name: 'Picture, PNG' }).click(),
  ]);
  const path = test.info().outputPath('picture.png');
  await download.saveAs(path);
  const bytes = readFileSync(path);
  // PNG (ISO/IEC 15948), 11.2.2: width and height stand at bytes 16 and 20, the greater byte first.
  expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([1600, high]);
  const colours = await page.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.width, image.height];
    const context = canvas.getContext('2d')!;
    context.drawImage(image, 0, 0);
    const found = new Set<string>();
    for (let x = 0; x < image.width; x += 7)
      for (let y = 0; y < image.height; y += 7)
        found.add([...context.getImageData(x, y, 1, 1).data.slice(0, 3)].join());
    return [...found];
  }, bytes.toString('base64'));
  // The colours of wall and zone as the job has them: #e9e3d3 and #cfd6c4.
  expect(colours).toContain('233,227,211');
  expect(colours).toContain('207,214,196');
});
