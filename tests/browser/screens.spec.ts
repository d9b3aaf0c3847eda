import { join } from 'node:path';
import { type Browser, expect, type Page, test } from '@playwright/test';
import { look } from './support/look.ts';
import { signedIn } from './support/signed-in.ts';

// Every screen of the demo at both widths, light and dark: no violation that axe can find, nothing in the console,
// no sideways scroll; a picture of each in tests/output/screens for people to look at.
const root = join(import.meta.dirname, '../..');
const readme = join(root, 'tests/browser/readme');
test.describe.configure({ mode: 'parallel' }); // they look, and change nothing
const WIDTHS = [
  { name: '360', width: 360, height: 640 },
  { name: '1280', width: 1280, height: 900 },
] as const;
const SCHEMES = ['light', 'dark'] as const;

async function everyLook(
  browser: Browser,
  state: Awaited<ReturnType<typeof signedIn>> | undefined,
  screens: (page: Page) => Promise<[name: string, address: string][]>,
): Promise<void> {
  for (const { name, width, height } of WIDTHS) {
    const context = await browser.newContext({
      ...(state ? { storageState: state } : {}),
      viewport: { width, height },
    });
    const page = await context.newPage();
    const told: string[] = [];
    page.on(
      'console',
      (message) => message.type() === 'error' && told.push(`${page.url()} ${message.text()}`),
    );
    page.on('pageerror', (error) => told.push(`${page.url()} ${error.message}`));
    for (const [screen, address] of await screens(page)) {
      await page.goto(address, { waitUntil: 'load' });
      await page.waitForTimeout(300); // charts draw after hydration
      for (const colorScheme of SCHEMES) {
        // Style sheets alone know the theme: the page need not be loaded again.
        await page.emulateMedia({ colorScheme });
        await look(page, `${screen}-${name}-${colorScheme}`);
      }
    }
    expect(told).toEqual([]);
    await context.close();
  }
}

test('screens of nobody in particular', async ({ browser }) => {
  await everyLook(browser, undefined, async () => [
    ['sign-in', '/sign-in'],
    ['join', '/join/abcdefghijklmnopqrstuvwxyz0123456789abcdefg'],
    ['join-closed', '/join/closed'],
    ['guardian-link', '/guardian/abcdefghijklmnopqrstuvwxyz0123456789abcdefg'],
    ['join-team', '/join/team/abcdefghijklmnopqrstuvwxyz0123456789abcdefg'],
    ['handover-code', '/handover/abcdefghijklmnopqrstuvwxyz012345'],
  ]);
});

test('screens of the coach', async ({ browser }) => {
  const state = await signedIn(browser, 'coach');
  await everyLook(browser, state, async (page) => {
    await page.goto('/');
    const client = (await page.locator('[data-open]').first().getAttribute('href')) ?? '';
    await page.goto(client);
    const working = (await page.locator('a[href*="/reasons/"]').first().getAttribute('href')) ?? '';
    return [
      ['board', '/'],
      ['board-filter-hides', '/?q=nobody-of-this-name'],
      ['clients', '/clients'],
      ['client', client],
      ['working', working],
      ['plan', `${client}/plan`],
      ['gaps', `${client}/gaps`],
      ['start-nothing-asked', `${client}/start`],
      ['handover', `${client}/handover`],
      ['links', `${client}/links`],
      ['log', `${client}/log`],
      ['new-client', '/clients/new'],
      ['checks', '/checks'],
      ['checks-client', `/checks?client=${client.split('/')[2]}`],
      ['steps', '/steps'],
      ['steps-year', '/steps?period=year'],
      ['steps-empty', '/steps?kind=danger-sign&period=this-month'],
      ['nights', '/nights'],
      ['replies', '/replies'],
      ['replies-found', '/replies?find=hurting+wrists'],
      ['write-first', '/replies/write'],
      ['kept-replies', '/replies/kept'],
      ['morning-mail', '/morning-mail'],
      ['mailbox', '/mailbox'],
      ['team', '/team'],
      ['approvals', '/team/approvals'],
      ['move-clients', '/team/move'],
      ['import-clients', '/clients/import'],
      ['take-in', '/clients/take-in'],
      ['client-rights', `${client}/rights`],
      ['client-start', `${client}/intake`],
      ['records', '/team/records'],
      ['record-of-acts', '/team/audit'],
      ['record-of-acts-empty', '/team/audit?kind=out&who=00000000-0000-4000-8000-000000000000'],
    ];
  });
});

test('screens of the ladders', async ({ browser }) => {
  const state = await signedIn(browser, 'coach');
  await everyLook(browser, state, async (page) => {
    await page.goto('/ladders');
    const ladder = (await page.getByRole('link', { name: 'Planche holds' }).getAttribute('href')) ?? '';
    await page.goto(ladder);
    const rung = (await page.getByRole('link', { name: /^Change Tuck opened/ }).getAttribute('href')) ?? '';
    return [
      ['ladders', '/ladders'],
      ['ladder', ladder],
      ['rung', rung],
      ['rung-split', `${rung}/split`],
      ['openings', `${ladder}/openings`],
      ['new-rung', `${ladder}/rungs/new`],
      ['new-ladder', '/ladders/new'],
    ];
  });
});

test('screens of the client', async ({ browser }) => {
  const state = await signedIn(browser, 'client');
  await everyLook(browser, state, async () => [
    ['today', '/today'],
    ['check-in', '/check-in'],
    ['rest-day', '/rest-day'],
    ['progress', '/progress'],
    ['answers', '/answers'],
    ['away', '/away'],
    ['it-hurts', '/rest-day?about=pain'],
    ['earlier', '/earlier'],
    ['films', '/films'],
    ['plain-check-in', '/check-in/plain'],
    ['without-signal', '/without-signal'],
    ['consent', '/consent'],
    ['start-tests-none', '/start-tests'],
    ['intake-sent-before', '/intake'],
    ['your-data', '/your-data'],
    ['delete-everything', '/your-data/delete?sure=ask'],
  ]);
});

test('the steps of a check-in, and a planned one in at most eight taps', async ({ browser }) => {
  const state = await signedIn(browser, 'client');
  for (const colorScheme of SCHEMES) {
    const context = await browser.newContext({
      storageState: state,
      viewport: { width: 360, height: 640 },
      colorScheme,
      hasTouch: true,
    });
    const page = await context.newPage();
    await page.goto('/today');
    let taps = 0;
    const tap = async (name: RegExp, role: 'button' | 'link' = 'button') => {
      taps += 1;
      await page.getByRole(role, { name }).first().click();
    };
    await tap(/^Check in/, 'link');
    await page.getByRole('button', { name: 'The rest as planned' }).waitFor();
    await tap(/^The rest as planned/);
    await look(page, `check-in-1-sets-${colorScheme}`);
    if (colorScheme === 'light' && process.env.UPDATE_README) {
      await page.screenshot({ path: join(readme, 'check-in.png') });
    }
    await tap(/^Next: how hard/);
    await look(page, `check-in-2-effort-${colorScheme}`);
    taps += 1;
    await page
      .getByRole('group', { name: /How hard/ })
      .getByRole('button', { name: '6', exact: true })
      .click();
    await tap(/^Next/);
    await look(page, `check-in-3-pain-${colorScheme}`);
    await page.getByRole('button', { name: 'right elbow' }).click();
    await page.getByRole('button', { name: /Next: right elbow/ }).click();
    await page
      .getByRole('group', { name: /Worst while training/ })
      .getByRole('button', { name: '6', exact: true })
      .click();
    await expect(page.getByText(/licensed clinician/).first()).toBeVisible();
    await look(page, `check-in-4-score-${colorScheme}`);
    await page.locator('button.back').click();
    await tap(/^Nothing hurts/);
    taps += 1; // Send, which this test leaves to the morning
    expect(taps).toBeLessThanOrEqual(8);
    await context.close();
  }
});

test('the board by keyboard alone', async ({ browser }) => {
  const context = await browser.newContext({
    storageState: await signedIn(browser, 'coach'),
    viewport: { width: 1280, height: 900 },
  });
  const page = await context.newPage();
  await page.goto('/');
  if (process.env.UPDATE_README) await page.screenshot({ path: join(readme, 'board.png') });
  const names = await page.locator('[data-open]').allTextContents();
  expect(names.length).toBeGreaterThan(3);
  const focused = () =>
    page.evaluate(
      () => document.activeElement?.closest('[data-row]')?.querySelector('[data-open]')?.textContent ?? '',
    );
  await expect
    .poll(async () => {
      if ((await focused()) === '') await page.keyboard.press('j'); // keys are heard once the page is awake
      return focused();
    })
    .not.toBe('');
  const first = await focused();
  await page.keyboard.press('j');
  const second = await focused();
  expect(names).toContain(first);
  expect(second).toBe(names[names.indexOf(first) + 1]);
  await page.keyboard.press('k');
  expect(await focused()).toBe(first);
  await page.keyboard.press('d');
  await expect(page.getByText('Right to tell me')).toBeVisible();
  await page.keyboard.press('Escape');
  await page.keyboard.press('?');
  await expect(page.getByText(/put aside/i).first()).toBeVisible();
  await context.close();
});
