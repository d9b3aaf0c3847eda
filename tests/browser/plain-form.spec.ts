import { expect, test } from '@playwright/test';
import { asPhoneOf } from './support/phone.ts';

// A browser that runs no scripts: the check-in is one form, posted as it is. On the demo team.
const NAME = 'Ruth Abernethy';

test.use({ javaScriptEnabled: false, viewport: { width: 360, height: 640 } });

test('a check-in without scripts, refused first and then kept', async ({ page }) => {
  await asPhoneOf(page, NAME);
  await page.getByRole('link', { name: 'Check in' }).click();
  await page.getByRole('link', { name: 'Check in with the plain form' }).click();
  await page.getByLabel('Trained').check();
  await page.getByLabel('What is left empty went as planned').check();
  const first = page.getByLabel(/set 1, planned/).first();
  await first.fill('a lot');
  await page.getByLabel(/How hard was it/).fill('6');
  await page.getByLabel(/How long, minutes/).fill('45');
  await page.getByLabel('Nothing hurts').check();
  await page.getByRole('button', { name: 'Send' }).click();
  await expect(page.getByRole('heading', { name: 'Not kept yet' })).toBeVisible();
  const again = page.getByLabel(/set 1: must be a number/);
  await expect(again).toHaveValue('a lot');
  await again.fill('8');
  await page.getByRole('button', { name: 'Send again' }).click();
  await page.waitForURL('**/today');
  await expect(page.getByText(/: kept\.$/)).toHaveCount(1);
});
