import { expect, type Page, test } from '@playwright/test';
import { look } from './support/look.ts';
import { asPhoneOf } from './support/phone.ts';
import { signedIn } from './support/signed-in.ts';

// Start tests from the ask to the rungs: on the phone of one of the demo's newest clients with and without signal, and at
// the coach's desk. What is placed and asked here is taken back here.
test.describe.configure({ mode: 'serial' });
const WIDTHS = [
  { name: '360', width: 360, height: 740 },
  { name: '1280', width: 1280, height: 900 },
] as const;

async function pictured(
  page: Page,
  name: string,
  widths: readonly (typeof WIDTHS)[number][] = WIDTHS,
): Promise<void> {
  for (const { name: width, ...viewport } of widths) {
    await page.setViewportSize(viewport);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await look(page, `${name}-${width}-${colorScheme}`);
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
}

let clientId = '';

test('the phone asks one after the other, keeps an answer without signal and sends it with', async ({
  browser,
}) => {
  const context = await browser.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true });
  const page = await context.newPage();
  clientId = await asPhoneOf(page, 'Kwabena Sarpong');
  await page.getByRole('link', { name: /^Start tests/ }).click();
  await expect(page.getByRole('heading', { name: 'Start tests', exact: true })).toBeVisible();
  const next = page.getByRole('region', { name: /Wrist bent back, loaded, left side/ });
  await expect(next).toBeVisible();
  await pictured(page, 'start-tests', WIDTHS.slice(0, 1));

  // Nothing can be saved before it is said; then without signal it is kept here.
  await expect(next.getByRole('button', { name: 'Choose what came of it' })).toBeDisabled();
  await next.getByRole('button', { name: 'I did it' }).click();
  await next.getByRole('textbox').fill('85');
  await next.getByRole('textbox').blur();
  await context.setOffline(true);
  await next.getByRole('button', { name: 'Save and go on' }).click();
  await expect(page.getByText(/One answer is saved on this phone and not sent yet/)).toBeVisible();
  const other = page.getByRole('region', { name: /Wrist bent back, loaded, right side/ });
  await expect(other).toBeVisible();
  await context.setOffline(false);
  await page.evaluate(() => window.dispatchEvent(new Event('online')));
  await expect(page.getByText(/4 answered, 3 to go/)).toBeVisible();

  // Six and more shows the caution at once, before anything is sent.
  await other.getByRole('button', { name: 'It hurts' }).click();
  await other.getByRole('button', { name: /^7/ }).click();
  await other.getByLabel('Where').selectOption({ label: 'wrist, back' });
  await expect(other.getByRole('alert')).toContainText('see a licensed clinician');
  await pictured(page, 'start-tests-hurts', WIDTHS.slice(0, 1));
  await page.reload();
  await expect(other.getByRole('alert')).toContainText('see a licensed clinician'); // kept as it was filled in
  await other.getByRole('button', { name: 'Cannot yet' }).click();
  await other.getByRole('button', { name: 'Save and go on' }).click();
  for (const side of ['left', 'right']) {
    const step = page.getByRole('region', { name: new RegExp(`Quarter-turn step out.*, ${side} side`) });
    await step.getByRole('button', { name: 'Cannot yet' }).click();
    await step.getByRole('button', { name: 'Save and go on' }).click();
  }
  await expect(page.getByText(/7 answered, none to go/)).toBeVisible();
  await expect(page.getByText(/That is all/)).toBeVisible();
  await pictured(page, 'start-tests-done', WIDTHS.slice(0, 1));
  await context.close();
});

test('the coach sees what came, changes a rung, places all in one act and takes it back', async ({
  browser,
}) => {
  const context = await browser.newContext({ storageState: await signedIn(browser, 'coach') });
  const page = await context.newPage();
  await page.goto(`/clients/${clientId}`);
  await page.getByRole('link', { name: 'Start tests' }).click();
  await expect(page.getByRole('row', { name: /Wrist bent back, loaded, left side/ })).toContainText('85°');
  await pictured(page, 'start-page');
  const rung = page.getByRole('combobox', { name: /^Base holds/ });
  await rung.selectOption({ label: 'Pike hold on the floor, hips high: 3 x 30 s' });
  await page.getByRole('button', { name: /^Place on/ }).click();
  await expect(page.getByRole('heading', { name: 'Where the tests placed' })).toBeVisible();
  await page.getByRole('button', { name: 'Open as a draft' }).click();
  await page.getByRole('link', { name: 'First week in the plan editor' }).click();
  await expect(page.getByText(/Start plan/).first()).toBeVisible();
  await page.goBack();
  await page.getByRole('button', { name: 'Undo the placing' }).click();
  await expect(page.getByRole('heading', { name: 'Proposed rungs' })).toBeVisible();
  await context.close();
});

test('tests are proposed from the skills, dropped, added, sent and taken back', async ({ browser }) => {
  const context = await browser.newContext({ storageState: await signedIn(browser, 'coach') });
  const page = await context.newPage();
  await page.goto('/clients');
  await page.getByRole('link', { name: 'Takumi Hoshino' }).first().click();
  await page.getByRole('link', { name: 'Start tests' }).click();
  await page.getByRole('checkbox', { name: 'box', exact: true }).check();
  await page.getByRole('button', { name: 'Show the tests' }).click();
  const tests = page.getByRole('list', { name: 'Tests' });
  await expect(tests.getByRole('listitem').first()).toContainText('Overhead reach');
  const count = await tests.getByRole('checkbox', { checked: true }).count();
  expect(count).toBeGreaterThan(5);
  await pictured(page, 'start-ask');
  await tests.getByRole('checkbox', { name: /^Free hold/ }).uncheck();
  await page.getByLabel('One more').selectOption({ label: 'Crow: 3 x 10 s' });
  await page.getByRole('button', { name: 'Add' }).click();
  await page.getByRole('button', { name: /^Send \d+ tests/ }).click();
  await expect(page.getByRole('heading', { name: 'What came' })).toBeVisible();
  await expect(page.getByRole('row', { name: /^Crow/ })).toContainText('waits');
  await page.getByRole('button', { name: 'Take the tests back' }).click();
  await expect(page.getByRole('heading', { name: 'Ask start tests' })).toBeVisible();
  await context.close();
});
