import { readFileSync } from 'node:fs';
import { expect, test, type Download } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { goTo, waitForPlan } from './wall-points';

async function textOf(download: Download): Promise<string[]> {
  const pdf = await getDocument({ data: new Uint8Array(readFileSync(await download.path())) }).promise;
  const pages: string[] = [];
  for (let n = 1; n <= pdf.numPages; n++) {
    const { items } = await (await pdf.getPage(n)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  return pages;
}

test('a fitter prints the sheets of the demo', async ({ page }) => {
  await page.goto('/');
  await goTo(page, 'Panels');
  await waitForPlan(page);
  const marks = await page.locator('#schedule tbody th').allInnerTexts();
  expect(marks.length).toBeGreaterThan(3);

  await goTo(page, 'Drawings');
  const documents = page.locator('#schedule tbody tr');
  await expect(documents).not.toHaveCount(0);
  const printed = new Map<string, string[]>();
  for (const row of await documents.all()) {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      row.getByRole('button', { name: /^Download/ }).click(),
    ]);
    printed.set(download.suggestedFilename(), await textOf(download));
  }

  const names = [...printed.keys()].join(' ');
  for (const name of [
    'setting-out-A',
    'setting-out-B',
    'setting-out-C',
    'cut-sheets',
    'cut-list',
    'client-view',
    'materials',
    'offer',
    'care-sheet',
  ]) {
    expect(names).toContain(name);
  }
  const of = (name: string) => [...printed].find(([file]) => file.includes(name))![1];
  for (const wall of ['A', 'B', 'C']) {
    expect(of(`setting-out-${wall}`)[0]).toMatch(/SCALE 1:(1|2|5|10|20|50|100)\b/);
  }
  expect(of('client-view').length).toBe(3);
  // Whatever the cut list names can be found on the cut sheets.
  const wanted = new Set(
    of('cut-list')
      .join(' ')
      .match(/\b[ABC]-Z\d-\d\d\b/g),
  );
  expect(wanted.size).toBeGreaterThan(20);
  const sheets = of('cut-sheets').join(' ');
  expect([...wanted].filter((mark) => !sheets.includes(mark))).toEqual([]);
});

test('the lists come as CSV', async ({ page }) => {
  await page.goto('/');
  await goTo(page, 'Drawings');
  await page.getByRole('tab', { name: 'Workshop' }).click();
  const button = page.getByRole('button', { name: 'Download lists as CSV' });
  await expect(button).toBeEnabled({ timeout: 60_000 });
  const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
  expect(readFileSync(await download.path(), 'utf8').split('\r\n').length).toBeGreaterThan(5);
});
