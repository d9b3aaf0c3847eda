import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, expect, type Page, test } from '@playwright/test';
import { asPhoneOf, picturedOnPhone } from './support/phone.ts';

// The phone without signal: the form opens, fills, saves and sends, after a restart of the browser too, and what it says
// is true at every moment. On the demo team.
/** One of the demo; other tests hold other phones. */
const NAME = 'Caetano Brum';

let folder: string;
test.beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'plumb-phone-'));
});
// A browser that closes still writes.
test.afterEach(() => rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 }));

/** A browser whose storage outlives it, as a phone's does. */
async function openPhone(offline: boolean): Promise<{ context: BrowserContext; page: Page }> {
  const {
    launchOptions = {},
    baseURL = '',
    locale = 'en-GB',
    timezoneId = 'Europe/Berlin',
  } = test.info().project.use;
  const context = await chromium.launchPersistentContext(folder, {
    ...launchOptions,
    baseURL,
    locale,
    timezoneId,
    viewport: { width: 360, height: 640 },
    hasTouch: true,
  });
  await context.setOffline(offline);
  const page = context.pages()[0] ?? (await context.newPage());
  return { context, page };
}

/** The worker holds the page that stands in. */
async function isReady(page: Page): Promise<void> {
  await expect
    .poll(() => page.evaluate(async () => (await caches.match('/without-signal')) !== undefined))
    .toBe(true);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
}

const stored = (page: Page, part: string) =>
  page.evaluate((text) => Object.keys(localStorage).filter((key) => key.includes(text)), part);

test('a check-in without signal, over a restart of the browser, is sent once when signal is back', async () => {
  const first = await openPhone(false);
  await asPhoneOf(first.page, NAME);
  await isReady(first.page);
  await first.context.setOffline(true);
  await first.page.goto('/today');
  await expect(first.page.getByText('This page could not be reached.')).toBeVisible();
  await picturedOnPhone(first.page, 'without-signal-today');
  await first.page.getByRole('link', { name: 'Check in' }).click();
  await first.page.getByRole('button', { name: /^The rest as planned/ }).click();
  await expect(first.page.getByText(/^saved on this phone/)).toBeVisible();
  await picturedOnPhone(first.page, 'without-signal-check-in');
  await first.context.close();

  const { context, page } = await openPhone(true);
  const sent = new Set<string>();
  page.on('request', (request) => {
    if (request.method() === 'POST') sent.add(request.postDataJSON().id);
  });
  await page.goto('/check-in');
  // Taken up where it was left: nothing is open any more.
  await page.getByRole('button', { name: /^Next: how hard/ }).click();
  await page
    .getByRole('group', { name: /How hard/ })
    .getByRole('button', { name: '6', exact: true })
    .click();
  await page.getByRole('button', { name: /^Next/ }).click();
  await page.getByRole('button', { name: /^Nothing hurts/ }).click();
  await page.getByRole('button', { name: /^Send/ }).click();
  await expect(page.getByRole('heading', { name: 'Saved on this phone.' })).toBeVisible();
  await picturedOnPhone(page, 'without-signal-saved');
  await page.goto('/today');
  await expect(page.getByText(/^saved on this phone .* not sent yet/)).toBeVisible();
  expect(await stored(page, ':unsent:')).toHaveLength(1);
  const [key = ''] = await stored(page, ':unsent:');
  const kept = await page.evaluate((name) => JSON.parse(localStorage.getItem(name) ?? '[]'), key);

  await context.setOffline(false);
  await page.goto('/today');
  await expect(page.getByText(/sent \d\d:\d\d/)).toBeVisible();
  // Nothing of what was told stays here.
  await expect.poll(() => stored(page, ':unsent:')).toHaveLength(0);
  expect(await stored(page, ':draft:')).toHaveLength(0);
  await page.reload();
  await expect(page.getByText(/sent \d\d:\d\d/)).toBeVisible();
  // The page that was open and the one that took its place may both have tried; it is the same one check-in.
  expect([...sent]).toEqual([kept[0].body.id]);
  await expect(page.getByText(/: kept\.$/)).toHaveCount(1);

  // A phone that keeps no plan says so.
  await page.evaluate(() => localStorage.removeItem('plumbline:form'));
  await context.setOffline(true);
  await page.goto('/check-in');
  await expect(page.getByText('this phone keeps no plan')).toBeVisible();
  await picturedOnPhone(page, 'without-signal-nothing-kept');
  await context.setOffline(false);

  // Signing out leaves nothing, not even the plan.
  await page.goto('/today');
  await expect.poll(() => stored(page, ':form')).toHaveLength(1);
  await page.goto('/answers');
  await page.getByRole('button', { name: 'Sign out on this phone' }).click();
  await page.waitForURL('**/sign-in');
  expect(await stored(page, 'plumbline:')).toHaveLength(0);
  await context.close();
});

test('a phone that was signed out meanwhile keeps the check-in and says why', async () => {
  const { context, page } = await openPhone(false);
  await asPhoneOf(page, NAME);
  await isReady(page);
  await context.setOffline(true);
  await page.goto('/rest-day');
  await page.getByRole('button', { name: /^Nothing hurts/ }).click();
  await expect(page.getByRole('heading', { name: 'Saved on this phone.' })).toBeVisible();
  await context.clearCookies();
  await context.setOffline(false);
  await expect(page.getByText('this phone is no longer signed in')).toBeVisible();
  expect(await stored(page, ':unsent:')).toHaveLength(1);
  // The link of the coach again, and it goes by itself.
  await asPhoneOf(page, NAME);
  await expect.poll(() => stored(page, ':unsent:')).toHaveLength(0);
  await expect(page.getByText(/sent \d\d:\d\d/)).toBeVisible();
  await context.close();
});

test('the phone is offered to install it', async ({ page, request }) => {
  const manifest = await (await request.get('/manifest.webmanifest')).json();
  expect(manifest).toMatchObject({ start_url: '/today', display: 'standalone' });
  for (const { src, sizes, type } of manifest.icons) {
    const answer = await request.get(src);
    expect(answer.headers()['content-type']).toContain(type);
    if (type !== 'image/png') continue;
    const data = (await answer.body()).toString('base64');
    const size = await page.evaluate(async (text) => {
      const picture = new Image();
      picture.src = `data:image/png;base64,${text}`;
      await picture.decode();
      return `${picture.naturalWidth}x${picture.naturalHeight}`;
    }, data);
    expect(size).toBe(sizes);
  }
  await page.goto('/today');
  await expect(page.locator('link[rel=manifest]')).toHaveCount(1);
});
