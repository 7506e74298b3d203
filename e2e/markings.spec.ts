import { expect, test, type Page } from '@playwright/test';
import { startWall } from './new-wall';
import { clickWall, dragWall, elevation, goTo, waitForPlan } from './wall-points';

const rows = (page: Page) => page.locator('#leaf table').first().locator('tbody tr');
const field = (page: Page, zone: string, id: string, label: string) =>
  page.getByLabel(`marking ${id} of zone ${zone}, ${label}`, { exact: true });

async function type(page: Page, zone: string, id: string, label: string, text: string): Promise<void> {
  const entry = field(page, zone, id, label);
  await entry.fill(text);
  await entry.press('Enter');
}

/** A bare wall at Zones with a zone of 3000 × 1600 at (500, 400) and the leaf of markings. */
async function withZone(page: Page): Promise<void> {
  await startWall(page, '6000', '2700');
  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'Put in a zone' }).click();
  for (const [label, value] of Object.entries({
    width: 3000,
    height: 1600,
    'from left': 500,
    'from floor': 400,
  })) {
    const entry = page.getByLabel(`Zone Z1, ${label}`);
    await entry.fill(String(value));
    await entry.press('Enter');
  }
  await page.getByRole('tab', { name: 'Markings' }).click();
}

test('a week plan on the chalk of the type store, by keyboard alone', async ({ page }) => {
  await page.goto('/');
  await waitForPlan(page);
  await goTo(page, 'Zones');
  await page.getByRole('button', { name: 'B Type store' }).click();
  await page.getByRole('button', { name: 'Select zone Z1' }).click();
  await elevation(page).focus();
  await page.keyboard.press('m');
  await page.keyboard.press('t');
  await expect(page.getByRole('group', { name: 'Put a marking on a zone' })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('tab', { name: 'Markings' })).toHaveAttribute('aria-selected', 'true');
  await expect(rows(page)).toHaveCount(1);
  await expect(field(page, 'Z1', 'M1', 'width')).toHaveValue('2500');
  await expect(field(page, 'Z1', 'M1', 'Columns')).toHaveValue(
    'Monday, Tuesday, Wednesday, Thursday, Friday',
  );
  await type(page, 'Z1', 'M1', 'name', 'Week plan');
  await type(page, 'Z1', 'M1', 'Rows, from the top', 'Setting, Proofing, Binding');
  await type(page, 'Z1', 'M1', 'Width of the column of headings, 0 for none', '300');
  // Columns of sizes of their own make the table as wide as they are.
  await type(page, 'Z1', 'M1', 'widths of columns', '400; 400; 400; 400');
  await expect(
    page.getByText('Type 5 sizes with semicolons between them, or “equal”; these are 4.'),
  ).toBeVisible();
  await type(page, 'Z1', 'M1', 'widths of columns', '400; 400; 400; 400; 300');
  await expect(field(page, 'Z1', 'M1', 'width')).toHaveValue('2200');
  await type(page, 'Z1', 'M1', 'widths of columns', 'equal');
  await type(page, 'Z1', 'M1', 'width', '2500');
  // A word too large for its cell is said, and the plan is drawn all the same.
  await expect(page.getByLabel('Findings')).not.toContainText('too large for its cell');
  await type(page, 'Z1', 'M1', 'Height of a capital', '90');
  await expect(page.getByLabel('Findings')).toContainText('too large for its cell');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(field(page, 'Z1', 'M1', 'Height of a capital')).toHaveValue('30');
  await expect(page.getByLabel('Findings')).not.toContainText('too large for its cell');
  // It moves by arrows and goes with its zone.
  await elevation(page).focus();
  await page.keyboard.press('Shift+ArrowRight');
  await expect(field(page, 'Z1', 'M1', 'from zone’s left')).toHaveValue('10');
  await expect(page.getByLabel('Findings')).toContainText('reaches beyond its zone');
  await page.keyboard.press('Control+z');
  await page.reload();
  await goTo(page, 'Zones');
  await page.getByRole('tab', { name: 'Markings' }).click();
  await expect(field(page, 'Z1', 'M1', 'name')).toHaveValue('Week plan');

  await goTo(page, 'Drawings');
  await page.getByRole('button', { name: /^Show .*markings, wall B/ }).click({ timeout: 60_000 });
  const sheet = page.getByRole('img', { name: /markings/i });
  await expect(sheet).toContainText('Wednesday');
  await expect(sheet).toContainText('Proofing');
});

test('a board of 8 × 8 squares is drawn, dragged, sized and taken out', async ({ page }) => {
  await withZone(page);
  await page.getByRole('button', { name: 'Marking', exact: true }).click();
  await page
    .getByRole('group', { name: 'Put a marking on a zone' })
    .getByRole('button', { name: 'Board of squares' })
    .click();
  await dragWall(page, [1000, 600], [2000, 1600]);
  await expect(rows(page)).toHaveCount(1);
  const width = Number(await field(page, 'Z1', 'M1', 'width').inputValue());
  expect(width).toBeGreaterThan(850);
  expect(width % 80).toBe(0);
  await expect(field(page, 'Z1', 'M1', 'height')).toHaveValue(String(width));
  await type(page, 'Z1', 'M1', 'Side of a square', '100');
  await expect(field(page, 'Z1', 'M1', 'width')).toHaveValue('800');
  await type(page, 'Z1', 'M1', 'width', '960');
  await expect(field(page, 'Z1', 'M1', 'Side of a square')).toHaveValue('120');
  await type(page, 'Z1', 'M1', 'from zone’s left', '200');
  await type(page, 'Z1', 'M1', 'from zone’s foot', '100');

  // Chosen, it follows the hand; the zone stays where it is.
  await dragWall(page, [1100, 900], [1500, 900]);
  const left = Number(await field(page, 'Z1', 'M1', 'from zone’s left').inputValue());
  expect(left).toBeGreaterThan(500);
  await page.getByRole('tab', { name: 'Zones' }).click();
  await expect(page.getByLabel('Zone Z1, from left')).toHaveValue('500');
  // With its zone it keeps its place there.
  await page.getByLabel('Zone Z1, from left').fill('700');
  await page.getByLabel('Zone Z1, from left').press('Enter');
  await page.getByRole('tab', { name: 'Markings' }).click();
  await expect(field(page, 'Z1', 'M1', 'from zone’s left')).toHaveValue(String(left));

  // Nonsense is answered in a sentence and changes nothing.
  await type(page, 'Z1', 'M1', 'Squares across', '0');
  await expect(page.getByText('Type a whole number from 1 to 60.')).toBeVisible();
  await field(page, 'Z1', 'M1', 'Squares across').press('Escape');
  await type(page, 'Z1', 'M1', 'width of its lines', '100');
  await type(page, 'Z1', 'M1', 'Side of a square', '90');
  await expect(page.getByText(/leave nothing between them/)).toBeVisible();
  await field(page, 'Z1', 'M1', 'Side of a square').press('Escape');

  await page.getByRole('button', { name: 'Select marking M1 of zone Z1' }).click();
  await elevation(page).focus();
  await page.keyboard.press('Delete');
  await expect(rows(page)).toHaveCount(0);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(rows(page)).toHaveCount(1);
  // By the hand alone: the zone first, then what is marked on it.
  await clickWall(page, 5500, 2500);
  await clickWall(page, 1600, 1000);
  await clickWall(page, 1600, 1000);
  await expect(rows(page).first()).toHaveAttribute('aria-current', 'true');
});

const map = (more = '') => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1000 500">
  <script>document.title = 'run'; parent.document.title = 'run';</script>${more}
  <rect x="5" y="5" width="990" height="490" fill="none" stroke="#204060" stroke-width="10" onload="alert(1)"/>
  <circle cx="300" cy="250" r="100" fill="#c08040"/></svg>`;

async function load(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.locator('#leaf').getByRole('button', { name: 'Picture…' }).click();
  await (await chooser).setFiles({ name, mimeType: 'image/svg+xml', buffer: Buffer.from(text) });
}

test('an SVG map stands to scale on the wall and on its sheet, and nothing in it runs', async ({ page }) => {
  const fetched: string[] = [];
  page.on('request', (request) => fetched.push(request.url()));
  await withZone(page);
  await load(page, 'rooms.svg', map());
  await expect(field(page, 'Z1', 'M1', 'width')).toHaveValue('3000');
  await expect(field(page, 'Z1', 'M1', 'height')).toHaveValue('1500');
  await expect(page.locator('#leaf')).toContainText('rooms.svg, of lines');
  // Either side follows the other, until its proportions are let go.
  await type(page, 'Z1', 'M1', 'width', '2000');
  await expect(field(page, 'Z1', 'M1', 'height')).toHaveValue('1000');
  await field(page, 'Z1', 'M1', 'keep its proportions').uncheck();
  await type(page, 'Z1', 'M1', 'height', '900');
  await expect(field(page, 'Z1', 'M1', 'width')).toHaveValue('2000');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(field(page, 'Z1', 'M1', 'keep its proportions')).toBeChecked();

  // What is more than lines is kept as a picture of pixels; what lies elsewhere is not fetched.
  await load(
    page,
    'hall.svg',
    map('<image href="https://example.org/a.png" width="9" height="9"/><text y="90">Hall</text>'),
  );
  await expect(page.locator('#leaf')).toContainText('hall.svg, 3000 × 1500 px');
  await expect(page.getByText(/kept as a picture of pixels/)).toBeVisible();
  await load(page, 'broken.svg', '<svg viewBox="0 0 9 9"><path d="M0 0 L nine"/></svg>');
  await expect(page.getByText(/“broken.svg” cannot be read/)).toBeVisible();
  await expect(rows(page)).toHaveCount(2);
  await page.getByRole('button', { name: 'Take out marking M2 of zone Z1' }).click();
  expect(await page.title()).not.toBe('run');
  expect(fetched.filter((url) => url.includes('example.org'))).toEqual([]);

  // A saved file holds it.
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save file' }).click();
  const saved = await (await download).createReadStream();
  const parts: Buffer[] = [];
  for await (const part of saved) parts.push(part as Buffer);
  const job = JSON.parse(Buffer.concat(parts).toString()) as { photos: { name: string; data: string }[] };
  expect(job.photos).toHaveLength(1);
  expect(Buffer.from(job.photos[0]!.data, 'base64').toString()).toBe(map());

  await goTo(page, 'Drawings');
  await page.getByRole('button', { name: /^Show .*markings/ }).click({ timeout: 60_000 });
  const sheet = page.getByRole('img', { name: /markings/i });
  await expect(sheet).toContainText('SCALE 1:20');
  // Units of the page are mm on paper: 100 of the map's 1000 units, on 2000 mm, at 1:20, is a circle of 20 mm.
  const widths = await sheet.evaluate((element) =>
    [...element.querySelectorAll('path')].map((path) => path.getBBox().width),
  );
  expect(widths.some((width) => Math.abs(width - 20) < 0.05)).toBe(true);
  expect(widths.some((width) => Math.abs(width - 99) < 0.05)).toBe(true);
  expect(widths.some((width) => Math.abs(width - 100) < 0.05)).toBe(true);
});

test('on a tablet a finger puts a grid on a zone', async ({ browser }) => {
  const context = await browser.newContext({ viewport: { width: 820, height: 1180 }, hasTouch: true });
  const page = await context.newPage();
  await withZone(page);
  const leaf = page.locator('#leaf');
  await leaf.getByRole('button', { name: 'Ruled grid' }).tap();
  await expect(rows(page)).toHaveCount(1);
  await type(page, 'Z1', 'M1', 'Spacing across', '130');
  await expect(page.getByLabel('Findings').first()).toBeAttached();
  for (const button of await leaf.getByRole('button').all()) {
    const box = await button.boundingBox();
    if (box && (await button.innerText()).trim() !== '') expect(box.height).toBeGreaterThanOrEqual(39.5);
  }
  await context.close();
});
