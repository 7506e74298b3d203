import { readFileSync } from 'node:fs';
import { expect, test, type Download, type Locator, type Page } from '@playwright/test';
import { unzipSync } from 'fflate';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { goTo } from './wall-points';

const downloadOf = async (page: Page, button: Locator): Promise<Download> => {
  const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
  return download;
};

test.beforeEach(async ({ page }) => {
  await page.goto('/');
  await goTo(page, 'Drawings');
});

test('a chosen set is one PDF with a register, names of pages and bookmarks', async ({ page }) => {
  const bind = page.getByRole('button', { name: 'Download the set' });
  await expect(bind).toBeEnabled({ timeout: 60_000 });
  const whose = page.getByRole('combobox', { name: 'Documents of the set' });
  await expect(whose).toHaveValue('all');
  await whose.selectOption('client');
  await expect(page.getByRole('checkbox', { name: 'In the set: Offer' })).toBeChecked();
  await expect(page.getByRole('checkbox', { name: 'In the set: Cut list' })).not.toBeChecked();
  await page.getByRole('checkbox', { name: 'In the set: Cut list' }).check();
  await expect(whose).toHaveValue('');

  const file = await downloadOf(page, bind);
  expect(file.suggestedFilename()).toMatch(/ set\.pdf$/);
  const pdf = await getDocument({ data: new Uint8Array(readFileSync(await file.path())) }).promise;
  const titles = (await pdf.getOutline()).map(({ title }) => title);
  expect(titles[0]).toBe('Drawing register');
  expect(titles.join('\n')).toMatch(/\d Cut list[\s\S]*\d Offer/);
  expect(titles.join()).not.toContain('Cut sheets');
  expect((await pdf.getPageLabels())?.slice(0, 2)).toEqual(['R1', '1.1']);

  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page.getByRole('checkbox', { name: 'In the set: Cut list' })).not.toBeChecked();
});

test('a set that is being made says how far it is, can be stopped, and made again', async ({ page }) => {
  const bind = page.getByRole('button', { name: 'Download the set' });
  await expect(bind).toBeEnabled({ timeout: 60_000 });
  let saved = 0;
  page.on('download', () => (saved += 1));
  // Stopped by the page itself: no hand is quick enough for a small set.
  await bind.evaluate((button: HTMLButtonElement) => {
    button.click();
    return new Promise<void>((done) => {
      const look = new MutationObserver(() => {
        const stop = [...document.querySelectorAll('button')].find(
          ({ textContent }) => textContent === 'Stop',
        );
        if (!stop) return;
        look.disconnect();
        stop.click();
        done();
      });
      look.observe(document.body, { childList: true, subtree: true });
    });
  });
  await expect(bind).toBeEnabled();
  await expect(page.getByRole('alert')).toHaveCount(0);
  expect(saved).toBe(0);
  expect((await downloadOf(page, bind)).suggestedFilename()).toMatch(/ set\.pdf$/);
});

test('the workshop gets its drawings as DXF and SVG, the lists as a workbook, and all in one ZIP', async ({
  page,
}) => {
  await page.getByRole('tab', { name: 'Workshop' }).click();
  const zip = page.getByRole('button', { name: 'Download all in one ZIP' });
  await expect(zip).toBeEnabled({ timeout: 60_000 });
  const packed = unzipSync(readFileSync(await (await downloadOf(page, zip)).path()));
  expect(Object.keys(packed)).toEqual(
    expect.arrayContaining(['elevation-A.dxf', 'elevation-A.svg', 'lists.xlsx']),
  );
  const dxf = await downloadOf(page, page.getByRole('button', { name: /^Download DXF: .*wall A/i }));
  expect(dxf.suggestedFilename()).toMatch(/elevation-A\.dxf$/);
  expect(readFileSync(await dxf.path(), 'latin1')).toBe(
    Buffer.from(packed['elevation-A.dxf']!).toString('latin1'),
  );
  const lists = await downloadOf(page, page.getByRole('button', { name: 'Download lists as XLSX' }));
  expect(
    readFileSync(await lists.path())
      .subarray(0, 2)
      .toString(),
  ).toBe('PK');
});
