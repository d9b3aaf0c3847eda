import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expectAccessible } from './axe.ts';

export const PICTURES = join(import.meta.dirname, '../../output/screens');

/** Signs a page in as the phone of one client of the demo; answers the client's id. Works without scripts too. */
export async function asPhoneOf(page: Page, name: string): Promise<string> {
  await page.goto('/sign-in');
  const client = page.getByLabel('Client', { exact: true });
  await client.selectOption({ label: name });
  const clientId = await client.inputValue();
  await page.getByRole('button', { name: /Open the phone/ }).click();
  await page.getByRole('button', { name: 'Sign in on this phone' }).click();
  await page.waitForURL('**/today');
  return clientId;
}

/** Light and dark: no violation that axe can find, and a picture of each. */
export async function picturedOnPhone(page: Page, name: string): Promise<void> {
  mkdirSync(PICTURES, { recursive: true });
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await expectAccessible(page);
    await page.screenshot({ path: join(PICTURES, `${name}-360-${colorScheme}.png`), fullPage: true });
  }
  await page.emulateMedia({ colorScheme: 'light' });
}
