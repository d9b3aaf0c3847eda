import { join } from 'node:path';
import { type Browser, type BrowserContext, expect, type Page, test } from '@playwright/test';
import { expectAccessible } from './support/axe.ts';
import { asPhoneOf, PICTURES } from './support/phone.ts';
import { signedIn } from './support/signed-in.ts';

// A limit is set by the coach, obeyed by the phone with a swap taken by a tap, and ended again; by keyboard where a coach
// sits at one. On the demo team; what is set here is ended here.
const LOOKS = [
  { name: '360', viewport: { width: 360, height: 640 } },
  { name: '1280', viewport: { width: 1280, height: 900 } },
] as const;

/** One of the demo, with drills on the floor; another test holds the phone of the first client. */
const NAME = 'Zofia Krawiec';

async function phone(browser: Browser): Promise<{ context: BrowserContext; page: Page; clientId: string }> {
  const context = await browser.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true });
  const page = await context.newPage();
  const clientId = await asPhoneOf(page, NAME);
  return { context, page, clientId };
}

async function pictured(page: Page, name: string): Promise<void> {
  for (const { name: width, viewport } of LOOKS) {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize(viewport);
      await page.screenshot({
        path: join(PICTURES, `${name}-${width}-${colorScheme}.jpg`),
        fullPage: true,
        type: 'jpeg',
      });
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
}

test('a limit is set, obeyed on the phone with a swap, logged as what it was, and ended', async ({
  browser,
}) => {
  const coachContext = await browser.newContext({
    storageState: await signedIn(browser, 'coach'),
    viewport: { width: 1280, height: 900 },
  });
  const desk = await coachContext.newPage();
  const { context, page, clientId } = await phone(browser);
  await desk.goto(`/clients/${clientId}`);
  const limits = desk.getByRole('region', { name: 'Limits' });

  // By keyboard alone; what is wrong is said beside its field and nothing is lost.
  await limits.getByText('Set a limit').focus();
  await desk.keyboard.press('Enter');
  await limits.getByLabel('Place').selectOption({ label: 'everything' });
  await limits.getByLabel('Said by').fill('');
  await limits.getByRole('button', { name: 'Set the limit' }).focus();
  await desk.keyboard.press('Enter');
  await expect(limits.getByText('say who set it', { exact: false }).first()).toBeVisible();
  await limits.getByLabel('Said by').fill('the physiotherapist');
  await limits.getByLabel('What holds').selectOption({ label: 'No hands on the floor' });
  await limits.getByRole('button', { name: 'Set the limit' }).focus();
  await desk.keyboard.press('Enter');
  await expect(limits.getByText('No hands on the floor', { exact: false }).first()).toBeVisible();
  await expectAccessible(desk);
  await pictured(desk, 'limits-client');

  await page.goto('/today');
  const yours = page.getByRole('region', { name: 'Your limits' });
  await expect(yours).toContainText('No hands on the floor');
  await pictured(page, 'limits-today');
  await page.goto('/check-in');
  const out = page.locator('.ruled-out').first();
  await expect(out.locator('s')).toBeVisible();
  await expectAccessible(page);
  await pictured(page, 'limits-check-in');
  await page.setViewportSize({ width: 360, height: 740 });
  const swap = out.getByRole('button', { name: /^Instead:/ }).first();
  const dose = (await swap.locator('small').textContent()) ?? '';
  const instead = ((await swap.textContent()) ?? '').replace('Instead: ', '').replace(dose, '').trim();
  await swap.click();
  await expect(out.getByRole('button', { name: 'Not this one' })).toBeVisible();
  await page.getByRole('button', { name: 'The rest as planned' }).click();
  await pictured(page, 'limits-swap');
  await page.setViewportSize({ width: 360, height: 740 });
  await page.getByRole('button', { name: 'Next: how hard' }).click();
  await page.getByRole('button', { name: /^6/ }).first().click();
  await page.getByRole('button', { name: /Next/ }).click();
  await page.getByRole('button', { name: /Nothing hurts/ }).click();
  await page.getByRole('button', { name: /Send/ }).click();
  await expect(page.getByText('Sent to', { exact: false }).first()).toBeVisible();
  await expect(page.locator('.saved-rows')).toContainText(instead);

  await limits.getByRole('button', { name: 'End it from today: No hands on the floor' }).click();
  await expect(limits.getByText('Nothing is ruled out or reduced.')).toBeVisible();
  await page.goto('/today');
  await expect(yours).toHaveCount(0);
  await context.close();
  await coachContext.close();
});
