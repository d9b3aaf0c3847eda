import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, expect, type Page, test } from '@playwright/test';
import sharp from 'sharp';
import { aPhoto } from '../fixtures/pictures.ts';
import { expectAccessible } from './support/axe.ts';
import { asPhoneOf, PICTURES } from './support/phone.ts';
import { signedIn } from './support/signed-in.ts';

// The coach writes on a day and on a set by keyboard; the client finds both where they belong, and asks with a still.
// It works on one client of the demo that no other file touches.
const NAME = 'Farrukh Olimov';
const WIDE = { width: 1280, height: 900 };
const NARROW = { width: 360, height: 640 };

async function pictured(page: Page, name: string, sizes = [WIDE, NARROW], about = 'main'): Promise<void> {
  mkdirSync(PICTURES, { recursive: true });
  for (const size of sizes) {
    // The tabs stay in view and cover what lies below them until one scrolls: axe looks at the whole page at once.
    await page.setViewportSize(size); // a narrow page is the longer one
    const tall = await page.evaluate(() => document.documentElement.scrollHeight + 600);
    // Where one thing is looked at, wide, the page stays where it is.
    const stays = about !== 'main' && size.width !== 360;
    await page.setViewportSize({ ...size, height: stays ? size.height : Math.max(size.height, tall) });
    await page.locator(about).first().scrollIntoViewIfNeeded();
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      // What stays in view covers parts of the page that lies where it was.
      await expectAccessible(page, stays ? about : undefined, colorScheme === 'dark');
      await page.screenshot({
        path: join(PICTURES, `${name}-${size.width}-${colorScheme}.jpg`),
        type: 'jpeg',
      });
    }
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect.soft(wide, `${name} scrolls sideways at ${size.width}`).toBeLessThanOrEqual(0);
  }
  if (sizes[0]) await page.setViewportSize(sizes[0]);
  await page.locator(about).first().scrollIntoViewIfNeeded(); // where it was before all the sizes
  await page.emulateMedia({ colorScheme: 'light' });
}

async function phoneOf(browser: Browser): Promise<{ page: Page; clientId: string }> {
  const context = await browser.newContext({ viewport: NARROW, hasTouch: true });
  const page = await context.newPage();
  const clientId = await asPhoneOf(page, NAME);
  return { page, clientId };
}

test('words on a set by keyboard, seen, and both on the phone', async ({ browser }) => {
  const phone = await phoneOf(browser);
  const context = await browser.newContext({
    storageState: await signedIn(browser, 'coach'),
    viewport: WIDE,
  });
  const page = await context.newPage();
  await page.goto(`/clients/${phone.clientId}`);
  const entry = page
    .getByRole('article', { name: /^Check-in of/ })
    .filter({ hasText: 'min' })
    .first();
  const write = entry.getByRole('button', { name: /^Write words:/ });
  await write.focus();
  await page.keyboard.press('Enter');
  await expect(entry.getByLabel('Words to the client')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(write).toBeFocused();

  await page.keyboard.press('Enter');
  await page.keyboard.type('Shoulders over the hands before you push.');
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('ArrowDown');
  await pictured(page, 'coach-writes', [WIDE, NARROW], 'main article form');
  const top = await page.evaluate(() => scrollY);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Control+Enter');
  await expect(entry.getByText('Shoulders over the hands')).toBeVisible();
  await expect(entry.getByText('not read yet')).toBeVisible();
  await expect(write).toBeFocused();
  expect(Math.abs((await page.evaluate(() => scrollY)) - top)).toBeLessThan(300);

  const seen = entry.getByRole('button', { name: /^Mark as seen/ });
  if (await seen.isVisible()) {
    await seen.focus();
    await page.keyboard.press('Enter');
    await expect(seen).toBeHidden();
  }
  await expect(entry.getByText(/seen by Ines/)).toBeVisible();
  await pictured(page, 'coach-wrote', [WIDE, NARROW], 'main article');

  await phone.page.goto('/earlier');
  const word = phone.page.locator('.coach-word', { hasText: 'Shoulders over the hands' });
  await expect(word).toContainText(/, set 1/);
  await expect(phone.page.getByText(/seen by Ines/).first()).toBeVisible();
  await word.scrollIntoViewIfNeeded();
  await pictured(phone.page, 'phone-earlier', [NARROW, WIDE]);
  for (const place of ['answers', 'today', 'progress']) {
    await phone.page.goto(`/${place}`);
    await pictured(phone.page, `phone-${place}`, [NARROW]);
  }
  await page.reload();
  await expect(entry.getByText(/; read /).first()).toBeVisible();
  await context.close();
  await phone.page.context().close();
});

test('a question with stills: refused ones are named, kept ones stand beside it on both sides', async ({
  browser,
}) => {
  const { page } = await phoneOf(browser);
  await page.goto('/answers');
  const body = page.getByLabel(/^Ask /);
  await body.fill('Is the left shoulder open enough here?');
  const handstand = await sharp({ create: { width: 900, height: 1200, channels: 3, background: '#b8a58c' } })
    .composite([{ input: { create: { width: 60, height: 900, channels: 3, background: '#3a2f28' } } }])
    .jpeg()
    .toBuffer();
  await page.getByLabel(/^Add a still/).setInputFiles([
    { name: 'line.jpg', mimeType: 'image/jpeg', buffer: handstand },
    { name: 'side.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(await aPhoto(1200, 800)) },
    { name: 'notes.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('only text') },
  ]);
  await pictured(page, 'phone-asks', [NARROW]);
  await page.getByRole('button', { name: 'Send the question' }).click();
  await expect(page.getByText(/notes\.jpg: This picture is not a JPEG/)).toBeVisible();
  await pictured(page, 'phone-refused', [NARROW]);
  await page.getByRole('button', { name: 'Take away notes.jpg' }).click();
  await page.getByRole('button', { name: 'Send the question' }).click();
  await expect(page.getByText(/^Sent to /)).toBeVisible();
  const asked = page.locator('section', { hasText: 'Is the left shoulder open' });
  await expect(asked).toHaveCount(1);
  await expect(asked.getByRole('img')).toHaveCount(2);
  const shown = (at: number) =>
    asked
      .getByRole('img')
      .nth(at)
      .evaluate((image: HTMLImageElement) => image.naturalWidth);
  await asked.scrollIntoViewIfNeeded();
  await expect.poll(() => shown(0)).toBe(900);
  await expect.poll(() => shown(1)).toBe(800);
  await pictured(page, 'phone-asked', [NARROW, WIDE]);
  await page.context().close();

  const context = await browser.newContext({
    storageState: await signedIn(browser, 'coach'),
    viewport: WIDE,
  });
  const board = await context.newPage();
  await board.goto('/');
  await expect(board.locator('[data-row][data-selected]')).toHaveCount(1); // keys and acts are awake
  await expect(async () => {
    await board.locator('[data-row]', { hasText: NAME }).locator('[data-act=answer]').click(); // until the row listens
    await expect(board.getByRole('textbox', { name: `Answer to ${NAME}` })).toBeFocused({ timeout: 1000 });
  }).toPass();
  const which = board.getByRole('radio', { name: /^Is the left shoulder open/ });
  if (await which.count()) await which.check();
  await expect(board.getByRole('img', { name: 'Still 1 of 2 with the question, opens whole' })).toBeVisible();
  await pictured(board, 'coach-still');

  // Joints are placed on it by pointer and by keyboard, and kept.
  await board.getByRole('link', { name: 'Place the joints of 1' }).click();
  await expect(board.getByRole('heading', { name: `Still of ${NAME}` })).toBeVisible();
  const hip = board.getByRole('button', { name: /^hip/ });
  const before = (await hip.textContent()) ?? '';
  await expect(async () => {
    await hip.press('Shift+ArrowRight'); // until the page listens
    await expect(hip).not.toHaveText(before, { timeout: 500 });
  }).toPass();
  const picture = board.getByRole('img', { name: /^The still with the points/ });
  await picture.click({ position: { x: 60, y: 90 } });
  // So far away no hip can be: it is said, and not kept.
  await board.getByRole('button', { name: 'Keep this placing' }).click();
  await expect(
    board
      .getByRole('alert')
      .filter({ hasText: /trunk|thigh/ })
      .first(),
  ).toBeVisible();
  const [x = 0, y = 0] = before.match(/\d+/g)?.map(Number) ?? [];
  await hip.click(); // placing it chose the next one
  const across = (await picture.boundingBox())?.width ?? 0;
  await picture.click({ position: { x: ((x + 12) * across) / 900, y: (y * across) / 900 } });
  await expect(board.getByRole('rowheader', { name: 'centre of mass over the hand' })).toBeVisible();
  await board.getByRole('button', { name: 'Keep this placing' }).click();
  await expect(board.getByText('Kept.', { exact: true })).toBeVisible();
  await expect(board.getByRole('table', { name: 'Kept before' }).getByRole('row')).toHaveCount(2);
  await pictured(board, 'coach-joints', [WIDE, NARROW]);
  await context.close();
});
