import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, expect, type Page, test } from '@playwright/test';
import { expectAccessible } from './support/axe.ts';
import { asPhoneOf, PICTURES } from './support/phone.ts';
import { signedIn } from './support/signed-in.ts';

// Questions answered by keyboard alone, from kept replies and earlier answers, and words written first. It works on two
// clients of the demo that no other file writes to.
const NAME = 'Oyelaran Fasina';
const OTHER = 'Joaquim Sardinha';
const WIDTHS = [1280, 360] as const;

async function looked(page: Page, name: string): Promise<void> {
  mkdirSync(PICTURES, { recursive: true });
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await expectAccessible(page, 'html', colorScheme === 'dark');
      await page.screenshot({
        path: join(PICTURES, `${name}-${width}-${colorScheme}.jpg`),
        fullPage: true,
        type: 'jpeg',
      });
    }
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect.soft(over, `${name} scrolls sideways at ${width}`).toBeLessThanOrEqual(0);
  }
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.emulateMedia({ colorScheme: 'light' });
}

async function aPhone(browser: Browser, name: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 360, height: 640 }, hasTouch: true });
  const page = await context.newPage();
  await asPhoneOf(page, name);
  return page;
}

async function ask(phone: Page, text: string): Promise<void> {
  await phone.goto('/answers');
  await phone.getByLabel(/^Ask /).fill(text);
  await phone.getByRole('button', { name: 'Send the question' }).click();
  await expect(phone.getByText(/^Sent to /)).toBeVisible();
}

/** Moves down with j until the row of that question has the focus. */
async function goToQuestion(page: Page, text: string): Promise<void> {
  await page.goto('/replies');
  const row = page.locator('[data-row]', { hasText: text });
  await expect(row).toHaveCount(1);
  await page.locator('[data-row][data-selected]').waitFor();
  for (let presses = 0; presses < 60; presses += 1) {
    await page.keyboard.press('j');
    if (await row.evaluate((one) => one === document.activeElement)) return;
  }
  expect(await row.evaluate((one) => one === document.activeElement)).toBe(true);
}

test('questions by keyboard: seen, answered, undone, from earlier answers and from kept replies', async ({
  browser,
}) => {
  const phone = await aPhone(browser, NAME);
  const first = 'My wrist hurt after the floor yesterday. Shall I go on?';
  await ask(phone, first);
  const context = await browser.newContext({
    storageState: await signedIn(browser, 'coach'),
    viewport: { width: 1280, height: 900 },
  });
  const page = await context.newPage();
  await goToQuestion(page, first);
  const focused = page.locator('[data-row]:focus');
  await expect(focused).toContainText('in answering hours');
  await expect(focused).toContainText('Last check-in');

  await page.keyboard.press('s');
  await expect(focused.getByText('Seen. The client sees it on the phone.').first()).toBeVisible();
  await page.keyboard.press('u');
  await expect(page.getByText('Seen. The client sees it on the phone.')).toHaveCount(0);

  // Letters are letters while one types.
  await page.keyboard.press('a');
  await expect(page.getByLabel(`Answer to ${NAME}`)).toBeFocused();
  await page.keyboard.type('Use the parallel bars until Friday, just as asked.');
  await looked(page, 'replies-answer');
  await page.getByLabel(`Answer to ${NAME}`).focus();
  await page.keyboard.press('Control+Enter');
  const folded = page.locator('[data-row][data-folded=true]', { hasText: NAME });
  await expect(folded).toContainText('Answered: “Use the parallel bars until Friday, just as asked.”');
  await folded.focus();
  await page.keyboard.press('u');
  await expect(page.locator('[data-row][data-folded=false]', { hasText: first })).toBeFocused();
  await phone.goto('/answers');
  await expect(phone.getByText('Use the parallel bars')).toHaveCount(0);
  await page.keyboard.press('a');
  await page.keyboard.type('Use the parallel bars until Friday.');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(folded).toContainText('Answered:');
  await phone.goto('/answers');
  await expect(phone.getByText('“Use the parallel bars until Friday.”')).toBeVisible();

  // A kept reply with fields.
  await page.goto('/replies/kept');
  await page.getByLabel('Name, for you and the team').focus();
  await page.keyboard.type('Stay on a rung');
  await page.keyboard.press('Tab');
  await page.keyboard.type('[name], stay on [rung] until [date].');
  await expect(page.getByText('To fill in: [name], [rung], [date]')).toBeVisible();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Stay on a rung' })).toBeVisible();
  await looked(page, 'replies-kept');

  // The next question of the kind finds the first answer; the kept reply does not go with a field left open.
  const second = 'Both wrists hurting again after the floor. What now?';
  await ask(phone, second);
  await goToQuestion(page, second);
  await page.keyboard.press('a');
  const answer = page.getByLabel(`Answer to ${NAME}`);
  const earlier = page.getByRole('button', { name: new RegExp(`^Start from this: .* to ${NAME}`) });
  await earlier.first().focus();
  await page.keyboard.press('Enter');
  await expect(answer).toHaveValue('Use the parallel bars until Friday.');
  await expect(answer).toBeFocused();
  await page.keyboard.press('Control+A');
  await page.keyboard.press('Delete');
  await page.getByLabel('Start from a kept reply').selectOption({ label: 'Stay on a rung' });
  await expect(answer).toHaveValue(`${NAME}, stay on [rung] until [date].`);
  await expect(answer).toBeFocused();
  await page.keyboard.type('the bars');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByRole('alert').filter({ hasText: '[date] is not filled in yet' })).toBeVisible();
  await expect(answer).toHaveValue(`${NAME}, stay on the bars until [date].`);
  await looked(page, 'replies-unfilled');
  await answer.focus();
  await page.getByRole('button', { name: 'Next field' }).focus();
  await page.keyboard.press('Enter');
  await page.keyboard.type('Sunday');
  await page.keyboard.press('Control+Enter');
  await expect(folded).toContainText('stay on the bars until Sunday.');
  await phone.goto('/today');
  await expect(phone.getByText(`“${NAME}, stay on the bars until Sunday.”`)).toBeVisible();

  // Found by other forms of the words.
  await page.goto('/replies');
  await page.locator('[data-row][data-selected], #find').first().waitFor();
  await page.keyboard.press('/');
  const find = page.getByLabel('Words of the question or the answer, in any of their forms');
  if (!(await find.evaluate((field) => field === document.activeElement))) await find.focus(); // no row, no keys
  await page.keyboard.type('hurting wrist parallel bar');
  await page.keyboard.press('Enter');
  await page.waitForURL(/find=/);
  await expect(page.getByText('Use the parallel bars until Friday.', { exact: true })).toBeVisible();
  await context.close();
  await phone.context().close();
});

test('words first, to two ticked clients: named before, told, taken back with who had read', async ({
  browser,
}) => {
  const phone = await aPhone(browser, OTHER);
  const context = await browser.newContext({
    storageState: await signedIn(browser, 'coach'),
    viewport: { width: 1280, height: 900 },
  });
  const page = await context.newPage();
  await page.goto('/replies/write');
  await page.getByRole('button', { name: 'Look it over' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert').filter({ hasText: 'Tick at least one client.' })).toBeVisible();
  for (const name of [NAME, OTHER]) {
    await page.getByRole('checkbox', { name }).focus();
    await page.keyboard.press('Space');
  }
  await page.getByLabel('Your words').focus();
  await page.keyboard.type('[name], the hall stays shut on Friday.');
  await page.getByRole('button', { name: 'Look it over: 2 clients' }).focus();
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'To 2 clients, each as their own' });
  await expect(dialog).toContainText(`${OTHER}, ${NAME}`);
  await expect(dialog).toContainText(`${OTHER}, the hall stays shut on Friday.`);
  await looked(page, 'replies-write');
  await dialog.getByRole('button', { name: 'Send to 2 clients' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Sent to 2 clients, each as words of their own.')).toBeVisible();

  const read = phone.waitForResponse('**/api/words/read'); // the first page that shows them says so
  await phone.goto('/today');
  await expect(phone.getByText(`“${OTHER}, the hall stays shut on Friday.”`)).toBeVisible();
  await read;
  await phone.goto('/answers');
  await expect(phone.getByText(`“${OTHER}, the hall stays shut on Friday.”`)).toBeVisible();

  await page.getByRole('button', { name: 'Undo' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(`Taken back from 2 clients. Read already by ${OTHER}.`)).toBeVisible();
  await phone.goto('/answers');
  await expect(phone.getByText('the hall stays shut')).toHaveCount(0);
  await context.close();
  await phone.context().close();
});

test('one’s own morning mail: what it would say, and the choice is kept', async ({ browser }) => {
  const context = await browser.newContext({
    storageState: await signedIn(browser, 'coach'),
    viewport: { width: 1280, height: 900 },
  });
  const page = await context.newPage();
  await page.goto('/morning-mail');
  await expect(page.getByRole('heading', { name: 'What it would say now' })).toBeVisible();
  await page.getByLabel(/^Every morning/).check();
  await page.getByLabel('From').selectOption('7');
  await page.getByRole('button', { name: 'Set', exact: true }).click();
  await expect(page.getByText('Set.', { exact: true })).toBeVisible();
  await page.reload();
  await expect(page.getByLabel(/^Every morning/)).toBeChecked();
  await expect(page.getByLabel('From')).toHaveValue('7');
  await context.close();
});
