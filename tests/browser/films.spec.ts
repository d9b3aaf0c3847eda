import { join } from 'node:path';
import { type Browser, expect, type Page, test } from '@playwright/test';
import { asPhoneOf, picturedOnPhone } from './support/phone.ts';
import { signedIn } from './support/signed-in.ts';

// A coach asks for a film; the phone refuses what is no film, sends one over a line that is cut, goes on where it was after
// the page was closed, and the film waits at the coach's. It works on one client of the demo that no other file touches.
const NAME = 'Haruto Kinoshita';
const CLIP = join(import.meta.dirname, '../../prisma/demo/clips/handstand-side.mp4');

async function phoneOf(browser: Browser): Promise<{ page: Page; clientId: string }> {
  const context = await browser.newContext({ viewport: { width: 360, height: 640 }, hasTouch: true });
  const page = await context.newPage();
  return { page, clientId: await asPhoneOf(page, NAME) };
}

/** As if a minute of film lay on the phone: bytes behind the film, so that sending takes several pieces. */
async function aLongFile(): Promise<{ name: string; mimeType: string; buffer: Buffer }> {
  const { readFile } = await import('node:fs/promises');
  const buffer = Buffer.concat([await readFile(CLIP), Buffer.alloc(2_500_000)]);
  return { name: 'IMG_0001.mp4', mimeType: 'video/mp4', buffer };
}

test('asked for, sent over a cut line, gone on after the page was closed, and waiting to be looked at', async ({
  browser,
}) => {
  const { page: phone, clientId } = await phoneOf(browser);
  const coach = await (
    await browser.newContext({ storageState: await signedIn(browser, 'coach') })
  ).newPage();
  await coach.goto(`/clients/${clientId}#films`);
  const films = coach.getByRole('region', { name: 'Films' });
  await films.getByText('Ask for a film').click();
  await films.getByLabel('From where').fill('from behind, hands and hips in the picture');
  await expect(films.getByRole('img', { name: /^Put the phone behind you/ })).toBeVisible();
  await films.getByLabel('What you want to see').fill('One hold, so that I see both shoulders.');
  await films.getByRole('button', { name: 'Ask for it' }).click();
  await expect(films.getByRole('button', { name: 'Take back' })).toBeVisible();

  await phone.goto('/films');
  await expect(phone.getByText('“One hold, so that I see both shoulders.”')).toBeVisible();
  await picturedOnPhone(phone, 'films-asked');
  const choose = phone.getByLabel('Choose a film').first();
  await choose.setInputFiles({ name: 'a.mp4', mimeType: 'text/plain', buffer: Buffer.from('no film') });
  await expect(phone.getByText('This is no film.')).toBeVisible();

  let pieces = 0;
  await phone.route('**/api/clips/*', async (route) => {
    if (route.request().method() !== 'PATCH') return route.continue();
    pieces += 1;
    return pieces === 3 ? route.abort('internetdisconnected') : pieces > 3 ? undefined : route.continue();
  });
  await choose.setInputFiles(await aLongFile());
  const way = phone.getByRole('region', { name: /^On its way/ });
  await expect(way.getByText(/of 2.4 MB sent/)).toBeVisible();
  await expect.poll(() => pieces).toBeGreaterThan(2);
  await picturedOnPhone(phone, 'films-on-its-way');
  await phone.close();

  const again = await phone.context().newPage();
  const offsets: string[] = [];
  again.on('request', (request) => {
    if (request.method() === 'PATCH') offsets.push(request.headers()['upload-offset'] ?? '');
  });
  await again.goto('/films');
  await expect(again.getByText('Waits to be looked at.')).toBeVisible({ timeout: 30_000 });
  expect(Number(offsets[0])).toBeGreaterThan(0);
  await picturedOnPhone(again, 'films-sent');

  await coach.goto('/replies');
  const waiting = coach.getByRole('listitem').filter({ hasText: 'One hold, so that I see both shoulders.' });
  await expect(waiting.getByRole('link', { name: NAME })).toBeVisible();
  await waiting.getByRole('link').first().click();
  await coach.waitForURL('**/clips/*');
  await expect
    .poll(() =>
      coach
        .locator('video')
        .first()
        .evaluate((video: HTMLVideoElement) => video.readyState),
    )
    .toBeGreaterThan(1);
});
