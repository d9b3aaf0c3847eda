import { expect, type Page, test } from '@playwright/test';
import { signedIn } from './support/signed-in.ts';

// Numbers of one client only, whom no other file uses: the team's stay as they are.
const CLIENT = 'Sina Faleolo';

async function open(page: Page, title: string): Promise<void> {
  const summary = page.locator('summary', { has: page.getByText(title, { exact: true }) });
  await summary.focus();
  await page.keyboard.press('Enter');
}

async function type(page: Page, label: RegExp, value: string): Promise<void> {
  await page.getByLabel(label).focus();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(value);
}

test('numbers by keyboard alone: refused by name, tried on past nights, saved for one client, taken back', async ({
  browser,
}) => {
  const context = await browser.newContext({ storageState: await signedIn(browser, 'coach') });
  const page = await context.newPage();
  await page.goto('/checks');
  await page.getByLabel('Numbers for').selectOption({ label: CLIENT });
  await page.getByRole('button', { name: 'Show' }).focus();
  await page.keyboard.press('Enter');
  await page.waitForURL(/client=/);
  await expect(page.getByText(`the numbers it goes by for ${CLIENT}`)).toBeVisible();

  await open(page, 'Pain of 6 or more');
  await type(page, /^Pain of 6 or more, high from here/, '7');
  await expect(page.getByText('1 number differs')).toBeVisible();
  await page.getByLabel('Why').focus();
  await page.keyboard.type('more ease');
  await page.keyboard.press('Enter');
  const refused = page.getByRole('alert').filter({ hasText: 'Not saved' });
  await expect(refused).toContainText('must be between 0 and 6: pain of 6 or more is high for everybody');
  await refused.getByRole('link', { name: 'Pain of 6 or more, high from here' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByLabel(/^Pain of 6 or more, high from here/)).toBeFocused();
  await type(page, /^Pain of 6 or more, high from here/, '6');

  await open(page, 'Gone quiet');
  await type(page, /^Gone quiet, silent at least, watch/, '1');
  await type(page, /^Gone quiet, and for this, watch/, '0,1');
  await page.getByRole('button', { name: 'Try these numbers' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^The last 90 nights of one client: /)).toBeVisible({ timeout: 60_000 });
  await expect(page.getByRole('row', { name: /gone quiet/ }).first()).toContainText(CLIENT);
  await page.getByRole('button', { name: 'Save', exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Saved as version \d+\. The next night goes by it\./)).toBeVisible();
  const versions = page.getByRole('region', { name: 'Versions' });
  await expect(versions.getByText('Gone quiet, silent at least, watch: 7 to 1 days').first()).toBeVisible();

  await page.getByRole('button', { name: 'Undo' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(/version \d+ taken back/).first()).toBeVisible();
  await open(page, 'Gone quiet');
  await expect(page.getByLabel(/^Gone quiet, silent at least, watch/)).toHaveValue('7');
  await context.close();
});
