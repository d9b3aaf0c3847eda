import { type Browser, type BrowserContext, expect, type Page, test } from '@playwright/test';
import { look } from './support/look.ts';
import { makeOwnTeam } from './support/own-team.ts';

// A client under 18 starts, on a team of this file's own: the link, consent, the questions of the start through a bad
// line and a closed page, the parent's own link, and a hold that ends with a clinician's word.
const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true };
const DESK = { viewport: { width: 1280, height: 900 } };

async function pictured(page: Page, name: string): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await look(page, `${name}-${colorScheme}`);
  }
  await page.emulateMedia({ colorScheme: 'light' });
}

async function invited(desk: Page): Promise<{ link: string; clientId: string }> {
  await desk.goto('/clients/new');
  await desk.getByLabel('Name').fill('Aniela Duda');
  await desk.getByLabel(/Under 18/).check();
  await desk
    .getByRole('button', { name: /Make|Add|Save/ })
    .first()
    .click();
  const link = await desk.getByLabel('Invitation link').textContent();
  await desk.goto('/clients');
  const href = await desk.getByRole('link', { name: 'Aniela Duda' }).first().getAttribute('href');
  return { link: link ?? '', clientId: href?.split('/').at(-1) ?? '' };
}

async function opened(
  browser: Browser,
  link: string,
  press: string,
): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  await page.goto(link);
  await page.getByRole('button', { name: press }).click();
  return { context, page };
}

const next = (page: Page) => page.getByRole('button', { name: 'Next' }).click();
const head = (page: Page, name: string | RegExp) =>
  expect(page.getByRole('heading', { level: 1, name })).toBeVisible();

test('somebody under 18 starts: asked, held, agreed to by a parent, and lifted by a doctor’s word', async ({
  browser,
}) => {
  const state = await makeOwnTeam(browser, 'Intake Wall');
  const deskContext = await browser.newContext({ ...DESK, storageState: state });
  const desk = await deskContext.newPage();
  const { link, clientId } = await invited(desk);

  const { context, page } = await opened(browser, link, 'Sign in on this phone');
  await head(page, 'Before you start');
  await page.getByLabel(/Parent or guardian who read this/).fill('Halina Duda');
  await page.getByRole('button', { name: 'I agree' }).click();
  await page.waitForURL('**/intake');

  // Nothing said: the page says what is missing, and stays.
  await head(page, 'First, about you');
  await next(page);
  await expect(page.locator('.phone-foot').getByText(/things are missing/)).toBeVisible();
  await page.getByRole('button', { name: 'No, under 18' }).click();
  await page.getByLabel('The year you were born').fill(String(new Date().getFullYear() - 40));
  await next(page);
  await expect(page.getByText(/does not go with “under 18”/).first()).toBeVisible();
  await page.getByLabel('The year you were born').fill(String(new Date().getFullYear() - 15));
  await pictured(page, 'intake-1-you-360');
  await next(page);

  await head(page, 'Your health');
  const questions = page.locator('.intake-yes-no');
  for (const question of await questions.all())
    await question.getByRole('button', { name: 'No', exact: true }).click();
  await questions.first().getByRole('button', { name: 'Yes', exact: true }).click();
  await expect(page.getByText(/will wait for a doctor’s word/)).toBeVisible();
  await pictured(page, 'intake-2-health-360');
  await expect(page.getByRole('status')).toContainText(/^saved \d/);

  // The signal goes; what is told meanwhile stays on the phone and is there after the page was closed.
  await context.setOffline(true);
  await next(page);
  await head(page, /any of these right now/);
  await page.getByRole('button', { name: 'None of these' }).click();
  await expect(page.getByRole('status')).toContainText('on this phone');
  // The page closes before the server has it: with signal again, sending would race the page that is asked for anew.
  await context.route('**/api/intake**', (route) => route.abort());
  await context.setOffline(false);
  await page.reload();
  await head(page, 'What hurts now?');
  await context.unroute('**/api/intake**');
  await page.getByRole('button', { name: 'right elbow' }).click();
  await page.getByRole('button', { name: 'Elbow, inner' }).click();
  await page
    .getByRole('group', { name: /how much/ })
    .getByRole('button', { name: '3', exact: true })
    .click();
  await page.getByLabel('For how many weeks?').fill('9999');
  await next(page);
  await expect(page.getByText(/say for how many weeks, 0 to/).first()).toBeVisible();
  await page.getByLabel('For how many weeks?').fill('4');
  await pictured(page, 'intake-3-pain-360');
  await next(page);

  await head(page, 'Your usual week');
  await page.getByRole('button', { name: 'Yes', exact: true }).click();
  await page.getByLabel('Days a week').fill('3');
  await page.getByLabel('Minutes a session').fill('1:00');
  await page
    .getByRole('group', { name: /How hard/ })
    .getByRole('button', { name: '6', exact: true })
    .click();
  await pictured(page, 'intake-4-week-360');
  await next(page);
  await head(page, 'Where you train');
  await page.getByRole('button', { name: 'Rings', exact: true }).click();
  await page.getByRole('button', { name: 'Hard', exact: true }).click();
  await pictured(page, 'intake-5-kit-360');
  await next(page);
  await page.getByRole('button', { name: 'Handstand', exact: true }).click();
  await page.getByLabel('In your words').fill('A free handstand');
  await pictured(page, 'intake-6-goals-360');
  await next(page);
  await head(page, 'Is this right?');
  await expect(page.getByText('Right elbow, inner: 3 of 10, for 4 weeks')).toBeVisible();
  await page.getByRole('button', { name: 'Change: Health questions' }).click();
  await expect(questions.first().getByRole('button', { name: 'Yes', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  for (const _ of ['signs', 'pain', 'week', 'kit', 'goals', 'all']) await next(page);
  await pictured(page, 'intake-7-all-360');
  await page.getByRole('button', { name: /^Send to/ }).dblclick();
  await head(page, /^Sent/);
  await pictured(page, 'intake-8-sent-360');
  await page.goto('/intake');
  await head(page, 'Sent');
  await page.goto('/today');
  await expect(page.getByText(/Halina Duda has to agree first/)).toBeVisible();
  await expect(page.getByText('Nothing upside down', { exact: false }).first()).toBeVisible();
  await pictured(page, 'intake-today-360');

  // At the desk: holds first, the parent below.
  await desk.goto('/');
  await expect(desk.getByText(/Aniela Duda: upside-down work is held/)).toBeVisible();
  await desk.goto(`/clients/${clientId}/intake`);
  await expect(desk.getByText(/everything upside down is held since/)).toBeVisible();
  await desk.getByRole('button', { name: 'Make the link' }).click();
  const own = (await desk.getByLabel('Link of the parent or guardian').textContent()) ?? '';
  await pictured(desk, 'told-at-start-1280');
  await desk.setViewportSize({ width: 360, height: 740 });
  await pictured(desk, 'told-at-start-360');
  await desk.setViewportSize(DESK.viewport);

  const parent = await opened(browser, own, 'Read what it is about');
  await head(parent.page, 'Aniela Duda asks for your yes');
  await pictured(parent.page, 'guardian-360');
  await parent.page.getByRole('button', { name: /and I agree/ }).click();
  await head(parent.page, 'What you agreed to for Aniela Duda');
  await pictured(parent.page, 'guardian-agreed-360');
  const again = await opened(browser, own, 'Read what it is about');
  await head(again.page, 'This link does not open any more.');
  await again.context.close();
  await page.reload();
  await expect(page.getByText(/has to agree first/)).toHaveCount(0);

  // Only a clinician's word, with who and when, ends the hold.
  await desk.reload();
  await expect(desk.getByText(/a parent or guardian agrees/)).toBeVisible();
  await desk.getByText('Record a clinician’s word about this').click();
  const word = desk.getByRole('form', { name: /A clinician’s word/ });
  await word.getByRole('button', { name: 'Record the word' }).click();
  await expect(word.getByText('say who said it', { exact: false }).first()).toBeVisible();
  await word.getByLabel('Who said it').fill('Dr Iwu, eye doctor');
  await word.getByLabel('Does it allow the work?').selectOption('yes');
  await word.getByLabel('What was said').fill('Pressure is fine, short holds.');
  await word.getByRole('button', { name: 'Record the word' }).click();
  await expect(desk.getByText('Nothing is held.')).toBeVisible();
  await page.reload();
  await expect(page.getByText('Nothing upside down', { exact: false })).toHaveCount(0);

  await parent.page.getByRole('button', { name: 'I take my yes back' }).click();
  await head(parent.page, 'You took your yes back');
  await page.goto('/today');
  await page.waitForURL('**/consent');
  for (const one of [context, parent.context, deskContext]) await one.close();
});
