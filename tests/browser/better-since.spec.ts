import { type Browser, expect, type Page, test } from '@playwright/test';
import { signedIn } from './support/signed-in.ts';

// Looks only: at the demo's Aroha Tamihana, for whom a rung was split in the eighth week before, and at the page of steps.
const CLIENT = 'Aroha Tamihana';

async function asCoach(browser: Browser, width = 1280): Promise<Page> {
  const storageState = await signedIn(browser, 'coach');
  const context = await browser.newContext({ storageState, viewport: { width, height: 900 } });
  return context.newPage();
}

async function openClient(page: Page): Promise<void> {
  await page.goto(`/clients?text=${encodeURIComponent(CLIENT)}`);
  await page.getByRole('link', { name: CLIENT }).click();
  await expect(page.getByRole('heading', { level: 1, name: CLIENT })).toBeVisible();
}

test('what became of steps stands beside what became of reasons left alone, by period, coach and reason', async ({
  browser,
}) => {
  const page = await asCoach(browser);
  await page.goto('/');
  await page.getByRole('link', { name: 'Steps', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Did the changes help?');
  await expect(page.getByText('this is no trial')).toBeVisible();

  await page.getByLabel('Taken in').selectOption({ label: 'The last 365 days' });
  await page.waitForURL(/period=year/);
  await page.getByLabel('Taken for').selectOption({ label: 'Stalled' });
  await page.waitForURL(/kind=stalled/);
  expect(page.url()).toContain('period=year');
  const table = page.getByRole('table', { name: 'By kind of reason' });
  const row = table.getByRole('row', { name: /Stalled, after 28 days/ });
  await expect(row).toContainText(CLIENT);
  await expect(table).not.toContainText('%'); // under ten there are only counts
  await expect(page.getByRole('columnheader', { name: 'Nothing was done' }).first()).toBeVisible();

  await row.getByRole('link', { name: CLIENT }).click();
  await expect(page.getByRole('heading', { name: 'Steps tried, and what was since' })).toBeVisible();

  await page.goto('/steps?period=this-month&kind=danger-sign');
  await expect(page.getByText('No step was taken in these days under this filter')).toBeVisible();
  await page.context().close();
});

test('a step tells on the client page and on its reason what was since, and what else changed', async ({
  browser,
}) => {
  const page = await asCoach(browser);
  await openClient(page);
  const tried = page.getByRole('region', { name: 'Steps tried, and what was since' });
  const step = tried.getByRole('listitem').filter({ hasText: 'for: stalled' }).first();
  await expect(step).toContainText('after 28 days');
  await expect(step).toContainText('in these weeks: beside this, plan version');
  await expect(page.getByRole('region', { name: 'Earlier reasons' })).toContainText('step taken');

  await step.getByRole('link').click();
  await expect(page.getByRole('heading', { name: 'Better since?' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'What would have cleared it' })).toBeVisible();
  await expect(
    page.getByRole('img', { name: /last scores .* of the pass mark; under this 95/ }),
  ).toBeVisible();
  await expect(page.locator('main')).not.toContainText(/helped/i);
  await page.context().close();
});

test('the reading line prints one day on all charts, by arrow keys and by pointer, and Esc lets it return', async ({
  browser,
}) => {
  const page = await asCoach(browser);
  await openClient(page);
  const slider = page.getByRole('slider', { name: 'Read one day off all charts' });
  await slider.focus();
  await page.keyboard.press('End');
  await page.keyboard.press('PageDown');
  await page.keyboard.press('ArrowLeft');
  const said = (await slider.getAttribute('aria-valuetext')) ?? '';
  expect(said).toMatch(/AU; 7 days|unknown/);
  const [day = ''] = said.split(',');
  await expect(slider).toContainText(day);
  const load = page.getByRole('region', { name: 'Load' });
  await expect(load.getByText(/; 7 days |unknown/).first()).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(slider).toHaveAttribute('aria-valuetext', 'no day chosen');

  await load.locator('[data-plot]').first().hover();
  await expect(slider).not.toHaveAttribute('aria-valuetext', 'no day chosen');
  await page.mouse.move(2, 2);
  await expect(slider).toHaveAttribute('aria-valuetext', 'no day chosen');
  await page.context().close();
});

test('the dates stay in sight while the charts pass beneath them', async ({ browser }) => {
  const page = await asCoach(browser);
  await openClient(page);
  const load = page.getByRole('region', { name: 'Load' });
  await load.evaluate((panel) => window.scrollBy(0, panel.getBoundingClientRect().top - 200));
  await expect(load).toBeInViewport();
  await expect(page.getByRole('slider', { name: 'Read one day off all charts' })).toBeInViewport();
  await page.context().close();
});
