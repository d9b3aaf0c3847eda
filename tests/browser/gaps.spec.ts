import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type BrowserContext, expect, type Page, test } from '@playwright/test';
import { expectAccessible } from './support/axe.ts';
import { signedIn } from './support/signed-in.ts';

// From what a film shows to lines in the plan, without a pointer: form, answer, draft. Invented people of the demo.
const root = join(import.meta.dirname, '../..');
const pictures = join(root, 'tests/output/screens');
const WIDTHS = [360, 1280] as const;

/** Tabs on, or back, until what has the focus is called so. */
async function tabTo(page: Page, name: RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  for (let at = 0; at < 400; at += 1) {
    await page.keyboard.press(key);
    const called = await page.evaluate(() => {
      const here = document.activeElement;
      const group = here?.closest('[role=group]')?.getAttribute('aria-label') ?? '';
      const label = here?.id ? (document.querySelector(`label[for="${here.id}"]`)?.textContent ?? '') : '';
      return `${group} ${label || here?.textContent || ''}`.trim();
    });
    if (name.test(called)) return;
  }
  throw new Error(`no stop of the Tab key is called ${name}`);
}

/** Chooses an option by typing its first letters, as a list with the focus takes them. */
async function choose(page: Page, letters: string): Promise<void> {
  await page.keyboard.type(letters, { delay: 20 });
}

async function look(context: BrowserContext, page: Page, name: string): Promise<void> {
  const state = await context.storageState();
  mkdirSync(pictures, { recursive: true });
  for (const width of WIDTHS) {
    const other = await page
      .context()
      .browser()
      ?.newContext({ storageState: state, viewport: { width, height: 900 } });
    if (!other) throw new Error('no browser');
    const shown = await other.newPage();
    await shown.goto(page.url().replace(/#.*$/, ''));
    await shown.waitForTimeout(300);
    for (const colorScheme of ['light', 'dark'] as const) {
      await shown.emulateMedia({ colorScheme });
      await expectAccessible(shown, 'html', colorScheme === 'dark');
      await shown.screenshot({
        path: join(pictures, `${name}-${width}-${colorScheme}.jpg`),
        fullPage: true,
        type: 'jpeg',
      });
      const sideways = await shown.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect.soft(sideways, `${name} at ${width} scrolls sideways`).toBeLessThanOrEqual(0);
    }
    await other.close();
  }
}

test('gaps by keyboard alone: what the film shows, the fewest drills, a draft of the plan', async ({
  browser,
}) => {
  const context = await browser.newContext({
    storageState: await signedIn(browser, 'coach'),
    viewport: { width: 1280, height: 900 },
  });
  const page = await context.newPage();
  await page.goto('/');
  const client = (await page.locator('[data-open]').first().getAttribute('href')) ?? '';
  await page.goto(client);
  await tabTo(page, /^Find the gaps$/);
  await page.keyboard.press('Enter');
  await page.waitForURL('**/gaps');

  await tabTo(page, /^Skill$/);
  await choose(page, 'Press');
  await tabTo(page, /^Show its parts$/);
  await page.keyboard.press('Enter');
  await page.waitForURL(/skill=/);
  await expect(page.getByRole('group', { name: 'Full range, down', exact: true }).first()).toBeVisible();
  await look(context, page, 'gaps-form');

  await tabTo(page, /^Top Film shows$/);
  await choose(page, 'steady');
  await tabTo(page, /^Bottom: hips over hands Film shows$/);
  await choose(page, 'drops');
  await tabTo(page, /^Full range, down Film shows$/);
  await choose(page, 'drops');
  await tabTo(page, /^Full range, down Pain, 0-10$/);
  await page.keyboard.type('12');
  await tabTo(page, /^Save and find the gaps$/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert').filter({ hasText: 'from 0 to 10' })).toBeVisible();

  await tabTo(page, /^Full range, down Pain, 0-10$/, 'Shift+Tab');
  await page.keyboard.type('1');
  await tabTo(page, /^Save and find the gaps$/);
  await page.keyboard.press('Enter');
  await page.waitForURL(/assessment=/);
  await expect(page.getByRole('heading', { name: 'Where it stands' })).toBeVisible();
  const standing = page.getByRole('table');
  await expect(standing.getByRole('row', { name: /^Full range, down open/ })).toContainText(
    'drops through on film',
  );
  await expect(standing.getByRole('row', { name: /^Top / })).toBeVisible();
  await look(context, page, 'gaps-found');

  await tabTo(page, /^Take into the plan as a draft$/);
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/plan\?draft=/);
  await context.close();
});
