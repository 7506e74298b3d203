import { expect, test, type Page } from '@playwright/test';
import { goTo } from './wall-points';

/*
 * Saving to the same file, where the browser can. The dialog of the system is answered with a file of the browser's own
 * file system, whose handles are the real ones.
 */
test.beforeEach(async ({ page }) => {
  await page.addInitScript(() => {
    const handleOf = async (name: string) =>
      (await navigator.storage.getDirectory()).getFileHandle(name, { create: true });
    let asked = 0;
    Object.assign(window, {
      showSaveFilePicker: () => handleOf(`saved-${++asked}.json`),
      showOpenFilePicker: async () => [await handleOf('from-elsewhere.json')],
    });
  });
  await page.goto('/');
  await showWallTable(page);
});

async function showWallTable(page: Page): Promise<void> {
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Wall', exact: true }).click();
}

async function rename(page: Page, name: string): Promise<void> {
  await page.getByLabel('wall A, name').fill(name);
  await page.keyboard.press('Enter');
}

const textOf = (page: Page, name: string) =>
  page.evaluate(async (file) => {
    const root = await navigator.storage.getDirectory();
    return (await (await root.getFileHandle(file, { create: true })).getFile()).text();
  }, name);

const write = (page: Page, name: string, text: string) =>
  page.evaluate(
    async ([file, content]) => {
      const root = await navigator.storage.getDirectory();
      const stream = await (await root.getFileHandle(file!, { create: true })).createWritable();
      await stream.write(content!);
      await stream.close();
    },
    [name, text],
  );

const save = (page: Page) => page.getByRole('button', { name: 'Save file' }).click();

test('a job is saved to the file it was saved to before, after a reload too', async ({ page }) => {
  await rename(page, 'First');
  await save(page);
  await expect(page.getByText('Saved to “saved-1.json”.')).toBeVisible();
  expect(await textOf(page, 'saved-1.json')).toContain('"First"');
  await expect(page.getByRole('banner').getByText('Kept on this device')).toBeVisible();
  await page.reload();
  await showWallTable(page);
  await rename(page, 'Second');
  await save(page);
  await expect(page.getByText('Saved to “saved-1.json”.')).toBeVisible();
  expect(await textOf(page, 'saved-1.json')).toContain('"Second"');
});

test('a file that something else has changed is not written over unasked', async ({ page }) => {
  await save(page);
  await expect(page.getByText('Saved to “saved-1.json”.')).toBeVisible();
  await write(page, 'saved-1.json', 'of someone else');
  await rename(page, 'Mine');
  await save(page);
  const dialog = page.getByRole('dialog', { name: 'The file has changed on disk' });
  await dialog.getByRole('button', { name: 'Save nothing' }).click();
  expect(await textOf(page, 'saved-1.json')).toBe('of someone else');
  await save(page);
  await dialog.getByRole('button', { name: 'Save as another file' }).click();
  await expect(page.getByText('Saved to “saved-2.json”.')).toBeVisible();
  expect(await textOf(page, 'saved-1.json')).toBe('of someone else');
  expect(await textOf(page, 'saved-2.json')).toContain('"Mine"');

  await write(page, 'saved-2.json', 'of someone else');
  await save(page);
  await dialog.getByRole('button', { name: 'Save over it' }).click();
  await expect(page.getByText('Saved to “saved-2.json”.')).toBeVisible();
  expect(await textOf(page, 'saved-2.json')).toContain('"Mine"');
});

test('a file that was opened is the one that is saved to; one that is gone is downloaded', async ({
  page,
}) => {
  await save(page);
  await expect(page.getByText('Saved to “saved-1.json”.')).toBeVisible();
  await write(
    page,
    'from-elsewhere.json',
    (await textOf(page, 'saved-1.json')).replace('Print studio', 'Shop'),
  );
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await expect(page).toHaveTitle(/^Shop/);
  await showWallTable(page);
  await rename(page, 'In the shop');
  await save(page);
  await expect(page.getByText('Saved to “from-elsewhere.json”.')).toBeVisible();
  expect(await textOf(page, 'from-elsewhere.json')).toContain('"In the shop"');

  await page.evaluate(async () =>
    (await navigator.storage.getDirectory()).removeEntry('from-elsewhere.json'),
  );
  const [download] = await Promise.all([page.waitForEvent('download'), save(page)]);
  expect(download.suggestedFilename()).toBe('Shop.json');
  await expect(page.getByRole('alert')).toContainText('the job was downloaded instead');
});
