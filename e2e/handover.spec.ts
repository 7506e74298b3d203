import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { goTo, waitForPlan } from './wall-points';

test('a cable found in the wall and what was recorded go into the handover pack', async ({ page }) => {
  await page.goto('/');
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Joints and cables' }).click();
  await page.getByRole('button', { name: 'Put in a concealed pipe' }).click();
  const begins = page.getByRole('textbox', { name: 'Concealed pipe P1 begins, from left' });
  await begins.fill('4473');
  await begins.press('Enter');
  const ends = page.getByRole('textbox', { name: 'Concealed pipe P1 ends, from left' });
  await ends.fill('4473');
  await ends.press('Enter');

  // A drilling beside it is told at once.
  await page.getByRole('tab', { name: 'Fixing points' }).click();
  await page.getByRole('button', { name: /Put in a drilling/ }).click();
  const left = page.getByRole('textbox', { name: /from left/ }).first();
  await left.fill('4490');
  await left.press('Enter');
  await waitForPlan(page);
  await expect(page.getByText(/only \d+ mm from concealed pipe P1/)).toBeVisible();

  await goTo(page, 'Drawings');
  await page.getByRole('tab', { name: 'Handover' }).click();
  const warranty = page.getByRole('textbox', { name: 'Handover, Warranty: your own terms' });
  await warranty.fill('Two years on workmanship.\nPens are not covered.');
  await warranty.blur();
  await page.getByRole('button', { name: 'Add a batch' }).click();
  const number = page.getByRole('textbox', { name: 'Batch numbers 1, batch number' });
  await number.fill('L-2207');
  await number.press('Enter');
  await page.getByRole('button', { name: 'Add a reading' }).click();
  const humidity = page.getByRole('textbox', { name: 'Air in the room 1, humidity, %' });
  await humidity.fill('520');
  await humidity.press('Enter');
  await expect(page.getByRole('alert')).toContainText('100');
  await humidity.fill('52');
  await humidity.press('Enter');

  await page.getByRole('tab', { name: 'Documents' }).click();
  const button = page.getByRole('button', { name: /^Download PDF: .*handover pack/i });
  await expect(button).toBeEnabled({ timeout: 60_000 });
  const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
  const pdf = await getDocument({ data: new Uint8Array(readFileSync(await download.path())) }).promise;
  const pages: string[] = [];
  for (let n = 1; n <= pdf.numPages; n++) {
    const { items } = await (await pdf.getPage(n)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join('\n'));
  }
  const words = pages.join('\n');
  for (const said of [
    'Two years on workmanship.',
    'Pens are not covered.',
    'L-2207',
    '52 %',
    'concealed pipe',
    '4473',
  ])
    expect(words).toContain(said);
});
