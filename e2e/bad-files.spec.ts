import { expect, test, type Page } from '@playwright/test';

async function openFile(page: Page, text: string) {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open', exact: true }).click(),
  ]);
  await chooser.setFiles({ name: 'wall.json', mimeType: 'application/json', buffer: Buffer.from(text) });
}

const head = { format: 'lodeplan-job', version: 1, name: 'Other' };
const outline = [
  [0, 0],
  [3000, 0],
  [3000, 2500],
  [0, 2500],
];

for (const [what, text, message] of [
  ['no JSON', '{ "format": ', /JSON|line 1/],
  ['another format', '{"format":"drawing","version":1}', /format/],
  ['a newer version', JSON.stringify({ ...head, version: 99 }), /version.*99|99.*version/],
  [
    'a crossing outline',
    JSON.stringify({
      ...head,
      walls: [{ id: 'A', outline: [outline[0], outline[2], outline[1], outline[3]] }],
    }),
    /walls\[0\]\.outline/,
  ],
  [
    'a negative width',
    JSON.stringify({
      ...head,
      walls: [{ id: 'A', outline, openings: [{ id: 'D1', kind: 'door', x: 0, y: 0, width: -9, height: 9 }] }],
    }),
    /walls\[0\]\.openings\[0\]\.width.*-9/s,
  ],
] as const) {
  test(`a file with ${what} is refused with a sentence, and the open job stays`, async ({ page }) => {
    await page.goto('/');
    await expect(page.getByRole('button', { name: /Job details: Print studio/ })).toBeVisible();
    await openFile(page, text);
    const dialog = page.getByRole('dialog');
    await expect(dialog).toContainText(message);
    await dialog.getByRole('button', { name: 'Back to the job' }).click();
    await expect(page.getByRole('button', { name: /Job details: Print studio/ })).toBeVisible();
    await expect(page.locator('#schedule tbody tr')).not.toHaveCount(0);
  });
}

test('a good file opens, and the job before it stays in the list', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByText('Kept on this device')).toBeVisible();
  await openFile(
    page,
    JSON.stringify({ ...head, walls: [{ id: 'A', name: 'North', outline, shade: 'grey' }] }),
  );
  await expect(page.getByRole('button', { name: /Job details: Other/ })).toBeVisible();

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save file' }).click(),
  ]);
  const saved = JSON.parse((await (await download.createReadStream()).toArray()).join(''));
  expect(saved.walls[0].shade).toBe('grey');

  await page.getByRole('button', { name: 'Jobs', exact: true }).click();
  await expect(page.getByRole('dialog')).toContainText('Print studio');
});
