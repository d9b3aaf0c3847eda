import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { expectAccessible } from './axe.ts';

const pictures = join(import.meta.dirname, '../../output/screens');

/** What each page was looked at as the last time. */
const looked = new WeakMap<Page, string>();

/**
 * Axe, a picture for people to look at, and no sideways scroll. Right after the same in light, only colours are other:
 * of what is dark, axe asks for contrast alone.
 */
export async function look(page: Page, name: string): Promise<void> {
  const onlyColours = name.endsWith('-dark') && looked.get(page) === name.replace(/dark$/, 'light');
  looked.set(page, name);
  // A foot that stays in view covers what lies below it until one scrolls: axe looks at the whole page at once.
  const size = page.viewportSize();
  const tall = await page.evaluate(() => document.documentElement.scrollHeight + 200);
  if (size) await page.setViewportSize({ width: size.width, height: Math.max(size.height, tall) });
  // When a page is read again its title follows a moment after its body.
  await expect(page).toHaveTitle(/\S/);
  await expectAccessible(page, 'html', onlyColours);
  mkdirSync(pictures, { recursive: true });
  await page.screenshot({ path: join(pictures, `${name}.jpg`), type: 'jpeg', quality: 85 });
  if (size) await page.setViewportSize(size);
  const sideways = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect.soft(sideways, `${name} scrolls sideways`).toBeLessThanOrEqual(0);
}
