import { type Browser, expect, type Page, test } from '@playwright/test';
import { look } from './support/look.ts';
import { makeOwnTeam } from './support/own-team.ts';
import { signedIn } from './support/signed-in.ts';

// A record leaves by a link and by a pack: a reader without scripts and without an account, and a team that takes in.
test.describe.configure({ mode: 'serial' });
const NAME = 'Dagny Hellström';
const SIZES = [
  { name: '360', width: 360, height: 640 },
  { name: '1280', width: 1280, height: 900 },
];

async function lookAtAll(page: Page, screen: string): Promise<void> {
  for (const { name, width, height } of SIZES) {
    await page.setViewportSize({ width, height });
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await look(page, `${screen}-${name}-${colorScheme}`);
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
}

async function coachOn(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ storageState: await signedIn(browser, 'coach') });
  return context.newPage();
}

async function clientOf(page: Page): Promise<string> {
  await page.goto('/clients');
  return (await page.getByRole('link', { name: NAME }).getAttribute('href')) ?? '';
}

test('a link shows the record to who has the code, until it is ended', async ({ browser }) => {
  const page = await coachOn(browser);
  const client = await clientOf(page);
  await page.goto(`${client}/links`);
  await page.getByLabel('For whom').fill('Dr Amara Lindqvist, physiotherapist');
  await page.getByLabel('Why').fill('Asked to see the load of the last months.');
  await page.getByLabel('The pack can be downloaded there as well').check();
  await look(page, 'links-form');
  await page.getByRole('button', { name: 'Make the link' }).click();
  const url = (await page.getByLabel('Link', { exact: true }).textContent()) ?? '';
  const code = (await page.getByText(/^\d{3} \d{3}$/).textContent()) ?? '';
  await lookAtAll(page, 'link-made');

  const stranger = await browser.newContext({ javaScriptEnabled: false });
  const reader = await stranger.newPage();
  await reader.goto(new URL(url).pathname);
  await reader.getByLabel('Code, six digits').fill(code === '000 000' ? '000 001' : '000 000');
  await reader.getByRole('button', { name: 'Open it' }).click();
  await expect(reader.getByRole('alert')).toContainText('4 tries are left');
  await reader.getByLabel('Code, six digits').fill(code);
  await reader.getByRole('button', { name: 'Open it' }).click();
  await expect(reader.getByRole('heading', { level: 1 })).toContainText(NAME);
  await expect(reader.getByLabel('About this page')).toContainText('For Dr Amara Lindqvist');
  expect(await stranger.cookies()).toEqual([]);
  const started = reader.waitForEvent('download');
  await reader.getByRole('button', { name: 'Download the pack' }).click();
  expect((await started).suggestedFilename()).toMatch(/^handover-[0-9a-f]{8}-.*\.zip$/);

  const other = await (await browser.newContext()).newPage(); // axe needs scripts
  await other.goto(new URL(url).pathname);
  await other.getByLabel('Code, six digits').fill(code);
  await other.getByRole('button', { name: 'Open it' }).click();
  await expect(other.getByLabel('About this page')).toBeVisible();
  await lookAtAll(other, 'link-opened');
  await other.context().close();

  await page.getByRole('link', { name: 'Done' }).click();
  await expect(page.getByText(/opened 3 times/).first()).toBeVisible();
  await lookAtAll(page, 'links-listed');
  await page
    .getByRole('button', { name: 'End it now: the link of Dr Amara Lindqvist, physiotherapist' })
    .first()
    .click();
  await expect(page.getByText(/^ended \w{3} \d\d:\d\d;/).first()).toBeVisible();
  await reader.goto(new URL(url).pathname);
  await reader.getByLabel('Code, six digits').fill(code);
  await reader.getByRole('button', { name: 'Open it' }).click();
  await expect(reader.getByRole('alert')).toContainText('This link opens nothing');
  await page.context().close();
  await stranger.close();
});

test('another team takes the client in from the pack, after a look', async ({ browser }) => {
  const page = await coachOn(browser);
  const client = await clientOf(page);
  const pack = await page.request.get(`/api${client}/export`);
  const context = await browser.newContext({ storageState: await makeOwnTeam(browser, 'High Bar') });
  const there = await context.newPage();
  await there.goto('/clients/take-in');
  const file = { name: 'pack.zip', mimeType: 'application/zip', buffer: await pack.body() };
  await there.getByLabel('The pack').setInputFiles({ ...file, buffer: file.buffer.subarray(0, 5000) });
  await expect(there.getByText(/^This pack is no zip/)).toBeVisible();
  await there.getByLabel('The pack').setInputFiles(file);
  await expect(there.getByRole('heading', { name: NAME })).toBeVisible();
  await lookAtAll(there, 'take-in-seen');
  await there.getByRole('button', { name: `Take ${NAME} in` }).click();
  await expect(there.getByRole('heading', { name: `${NAME} is in your team now` })).toBeVisible();
  await lookAtAll(there, 'taken-in');
  await there.getByRole('link', { name: `Open the page of ${NAME}` }).click();
  await expect(there.getByRole('heading', { level: 1, name: NAME })).toBeVisible();
  await look(there, 'taken-in-client');
  await there.goto('/clients/take-in');
  await there.getByLabel('The pack').setInputFiles(file);
  await expect(there.getByText(/is in your team already/)).toBeVisible();
  await context.close();
  await page.context().close();
});
