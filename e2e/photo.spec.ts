import { expect, test, type Page } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { startWall } from './new-wall';
import {
  door,
  drawPhoto,
  expectSquareOnWall,
  knowTheDoor,
  load,
  markPoint,
  rectangle,
  redOnWall,
  seen,
} from './photo-of-wall';
import { clickWall, dragWall, elevation, goTo } from './wall-points';

const leaf = (page: Page) => page.locator('#leaf');

async function bareWall(page: Page) {
  await startWall(page, '4200', '2600');
  await goTo(page, 'Survey');
  await page.getByRole('tab', { name: 'Photos' }).click();
}

test('a photo is loaded, marked by its door, lies under the drawing to scale, is saved, opened and taken out', async ({
  page,
}) => {
  await bareWall(page);
  const buffer = await drawPhoto(page);
  await load(page, 'Load a photo', { name: 'proofing wall.jpg', mimeType: 'image/jpeg', buffer });
  await expect(page.getByRole('heading', { name: 'Mark the photo' })).toBeVisible();
  await knowTheDoor(page);
  await expect(page.getByRole('button', { name: 'Put it under the drawing' })).toBeDisabled();
  for (const corner of rectangle(door.x, door.y, door.width, door.height)) await markPoint(page, corner);
  await expect(page.getByRole('status').filter({ hasText: 'Four points always fit' })).toBeVisible();
  await page.getByRole('button', { name: 'Put it under the drawing' }).click();
  await expect(leaf(page)).toContainText('kept at 2400 × 1800 px');
  await page.getByRole('slider', { name: 'Faded' }).fill('0');
  await expectSquareOnWall(page);

  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save file' }).click();
  const path = await (await download).path();
  const saved = JSON.parse(await readFile(path, 'utf8')) as { photos: { data?: string; type: string }[] };
  expect(saved.photos).toHaveLength(1);
  expect(saved.photos[0]!.data!.length).toBeGreaterThan(10_000);

  // On a device that has never seen it.
  const other = await page
    .context()
    .browser()!
    .newContext({ baseURL: new URL(page.url()).origin });
  const fresh = await other.newPage();
  await fresh.goto('/');
  const opening = fresh.waitForEvent('filechooser');
  await fresh.getByRole('button', { name: 'Open', exact: true }).click();
  await (await opening).setFiles(path);
  await goTo(fresh, 'Survey');
  await expectSquareOnWall(fresh);
  await fresh.reload();
  await goTo(fresh, 'Survey');
  await expectSquareOnWall(fresh);
  await fresh.getByRole('tab', { name: 'Photos' }).click();
  await fresh.getByRole('button', { name: 'Take out', exact: true }).click();
  await expect(fresh.getByRole('button', { name: 'Load a photo' })).toBeVisible();
  await expect.poll(async () => (await redOnWall(elevation(fresh))).pixels).toBe(0);
  const bare = fresh.waitForEvent('download');
  await fresh.getByRole('button', { name: 'Save file' }).click();
  expect(await readFile(await (await bare).path(), 'utf8')).not.toContain('photo');
  await fresh.getByRole('button', { name: /^Undo/ }).click();
  await expectSquareOnWall(fresh);
  await other.close();
});

test('a photo on its side is turned upright and dated by its Exif data; pinned, looked at, moved, deleted', async ({
  page,
}) => {
  await bareWall(page);
  const buffer = await drawPhoto(page, { turned: true });
  await load(page, 'Put in a photo at a place', { name: 'crack.jpg', mimeType: 'image/jpeg', buffer });
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('kept at 2400 × 1800 px');
  await expect(dialog.getByLabel('Date')).toHaveValue('2026-11-20');
  await dialog.getByLabel('From left, mm').fill('3.2 m');
  await dialog.getByLabel('From floor, mm').fill('NaN');
  await dialog.getByRole('button', { name: 'Put it in' }).click();
  await expect(dialog.getByRole('alert')).toHaveText(/^From floor: .*\.$/);
  await dialog.getByLabel('From floor, mm').fill('1500');
  await dialog.getByLabel('Note').fill('hairline crack');
  await dialog.getByRole('button', { name: 'Put it in' }).click();
  await expect(page.getByRole('textbox', { name: 'Photo P1, note' })).toHaveValue('hairline crack');
  await expect(page.getByRole('textbox', { name: 'Photo P1, from left' })).toHaveValue('3200');

  // A tap opens it upright: sky above, the wall's red square right of the middle.
  await clickWall(page, 3200, 1500);
  await expect(dialog).toContainText('3200 mm from left, 1500 mm from floor; crack.jpg');
  const { x, y } = seen(3200, 1700);
  await expect
    .poll(() =>
      dialog.locator('canvas').evaluate(
        (canvas: HTMLCanvasElement, [x, y]) => {
          const [red, green] = canvas.getContext('2d')!.getImageData(x!, y!, 1, 1).data;
          return canvas.width === 2400 && canvas.height === 1800 && red! > 190 && green! < 50;
        },
        [Math.round(x), Math.round(y)],
      ),
    )
    .toBe(true);
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();

  await dragWall(page, [3200, 1500], [1200, 800]);
  const moved = Number(await page.getByRole('textbox', { name: 'Photo P1, from left' }).inputValue());
  expect(Math.abs(moved - 1200)).toBeLessThan(10);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page.getByRole('textbox', { name: 'Photo P1, from left' })).toHaveValue('3200');
  const date = page.getByRole('textbox', { name: 'Photo P1, date' });
  await date.fill('2026-13-01');
  await date.press('Enter');
  await expect(date).toHaveAttribute('aria-invalid', 'true');
  await date.press('Escape');
  await page.getByRole('button', { name: 'Delete photo P1' }).click();
  await expect(leaf(page)).not.toContainText('P1');
});

test('without a date in the file it is asked for; a dropped or pasted photo asks where it belongs', async ({
  page,
}) => {
  await bareWall(page);
  const buffer = [...(await drawPhoto(page, { type: 'image/webp' }))];
  const dialog = page.getByRole('dialog');
  for (const [kind, target] of [
    ['drop', '[data-testid="elevation"]'],
    ['paste', 'body'],
  ] as const) {
    await page.locator(target).evaluate(
      (element, { bytes, kind }) => {
        const data = new DataTransfer();
        data.items.add(new File([Uint8Array.from(bytes)], 'stair.webp', { type: 'image/webp' }));
        const box = element.getBoundingClientRect();
        const at = { clientX: box.x + box.width / 2, clientY: box.y + box.height / 2 };
        element.dispatchEvent(
          kind === 'drop'
            ? new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: data, ...at })
            : new ClipboardEvent('paste', { bubbles: true, cancelable: true, clipboardData: data }),
        );
      },
      { bytes: buffer, kind },
    );
    await expect(dialog).toContainText('stair.webp, kept at 2400 × 1800 px');
    if (kind === 'drop') await dialog.getByRole('button', { name: 'Cancel' }).click();
  }
  await dialog.getByRole('button', { name: 'At a place' }).click();
  await expect(dialog).toContainText('The file has no date');
  await dialog.getByRole('button', { name: 'Put it in' }).click();
  await expect(dialog.getByRole('alert')).toContainText('type the day');
  await dialog.getByLabel('Date').fill('2026-11-27');
  await dialog.getByLabel('Date').press('Enter');
  await expect(page.getByRole('textbox', { name: 'Photo P1, date' })).toHaveValue('2026-11-27');
});

test('what is no photo gets one sentence and leaves the wall as it is', async ({ page }) => {
  await bareWall(page);
  const broken = (await drawPhoto(page)).subarray(0, 90);
  for (const [name, buffer, words] of [
    ['list.jpg', Buffer.from('door 220 0 926 2040'), /“list\.jpg” is no JPEG, PNG or WebP; .*\.$/],
    ['half.jpg', broken, /“half\.jpg” cannot be read: .*\.$/],
    ['empty.png', Buffer.alloc(0), /“empty\.png” is no JPEG/],
  ] as const) {
    await load(page, 'Load a photo', { name, mimeType: 'image/jpeg', buffer });
    await expect(page.getByRole('alert').locator('span').filter({ hasText: name })).toHaveText(words);
    await page.getByRole('button', { name: 'Understood' }).click();
    await expect(page.getByRole('button', { name: 'Load a photo' })).toBeEnabled();
  }
});

test('marked by keyboard alone: points go by the pixel, wrong ones are said, the picture comes and goes', async ({
  page,
}) => {
  await bareWall(page);
  const buffer = await drawPhoto(page, { type: 'image/png' });
  await load(page, 'Load a photo', { name: 'wall.png', mimeType: 'image/png', buffer });
  const view = page.getByTestId('photo-view');
  const spoken = page.getByTestId('chosen-point');
  const status = page.getByRole('status').filter({ hasText: /./ }).last();
  await view.focus();
  const corners = rectangle(0, 0, 4200, 2600);
  for (const [i, corner] of corners.entries()) {
    await page.keyboard.press('Enter');
    await page.keyboard.press(String(i + 1));
    await expect(page.getByTestId('loupe')).toHaveCount(i === 0 ? 0 : 1);
    const [across, down] = [Math.round(corner.x - 1200), Math.round(corner.y - 900)];
    const go = async (by: number, back: string, on: string) => {
      const key = by < 0 ? back : on;
      for (let n = 0; n < Math.floor(Math.abs(by) / 10); n++) await page.keyboard.press(`Shift+${key}`);
      for (let n = 0; n < Math.abs(by) % 10; n++) await page.keyboard.press(key);
    };
    await go(across, 'ArrowLeft', 'ArrowRight');
    await go(down, 'ArrowUp', 'ArrowDown');
    await expect(spoken).toHaveText(
      new RegExp(`^Point ${i + 1}: ${1200 + across}(\\.\\d)? across, ${900 + down}(\\.\\d)? down$`),
    );
    if (i === 3) continue;
    await page.keyboard.press(String(i + 2));
  }
  await expect(status).toContainText('Four points always fit');
  // Two corners changed over: said, and not taken.
  const first = page.getByRole('textbox', { name: 'Point 1, from left' });
  await first.fill('9000');
  await first.press('Enter');
  await expect(status).toContainText('cross');
  await expect(page.getByRole('button', { name: 'Put it under the drawing' })).toBeDisabled();
  await first.fill('0');
  await first.press('Enter');
  await page.getByRole('button', { name: 'Put it under the drawing' }).press('Enter');
  await page.getByRole('slider', { name: 'Faded' }).fill('0');
  await expectSquareOnWall(page);
  await page.getByRole('checkbox', { name: 'Shown' }).press('Space');
  await expect.poll(async () => (await redOnWall(elevation(page))).pixels).toBe(0);
  await page.getByRole('button', { name: 'Photo', exact: true }).press('Enter');
  await expectSquareOnWall(page);
  // Drawn on as before.
  await page.getByRole('button', { name: 'Door', exact: true }).click();
  await clickWall(page, 2000, 900);
  await expectSquareOnWall(page);
  await expect(page.getByRole('button', { name: /^Undo “Put in door/ })).toBeVisible();
});
