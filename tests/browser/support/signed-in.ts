import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from '@playwright/test';

const root = join(import.meta.dirname, '../../..');
const { coach } = JSON.parse(readFileSync(join(root, 'lib/library/demo-sign-in.json'), 'utf8'));

type State = Awaited<ReturnType<BrowserContext['storageState']>>;
const kept = new Map<string, Promise<State>>();

async function asCoach(page: Page): Promise<void> {
  await page.goto('/sign-in');
  await page.locator('#email').fill(coach.email);
  await page.locator('input[type=password]').fill(coach.password);
  await page.keyboard.press('Enter');
  await page.waitForURL('/');
}

async function asClient(page: Page): Promise<void> {
  await page.goto('/sign-in');
  await page
    .getByRole('button', { name: /Open the phone/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'Sign in on this phone' }).click();
  await page.waitForURL('**/today');
}

async function enter(browser: Browser, who: 'coach' | 'client'): Promise<State> {
  const context = await browser.newContext();
  const page = await context.newPage();
  await (who === 'coach' ? asCoach(page) : asClient(page));
  const state = await context.storageState();
  await context.close();
  return state;
}

/** The cookies of the demo's coach or first client: one sign-in for each process, as five a minute is the most an account may try. */
export function signedIn(browser: Browser, who: 'coach' | 'client'): Promise<State> {
  const state = kept.get(who) ?? enter(browser, who);
  kept.set(who, state);
  return state;
}
