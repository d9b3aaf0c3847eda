import { randomUUID } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { expectAccessible } from './support/axe.ts';
import { signedIn } from './support/signed-in.ts';

// The plan editor by keyboard alone: a first plan, a refusal, a second version, two coaches at once, a kept plan that is
// copied. On clients made for it in the demo team.
const root = join(import.meta.dirname, '../..');
const pictures = join(root, 'tests/output/screens');
const LOOKS = [
  { name: '360', viewport: { width: 360, height: 740 } },
  { name: '1280', viewport: { width: 1280, height: 900 } },
] as const;
const MOST_TABS = 150;

async function makeClient(page: Page, name: string): Promise<string> {
  await page.goto('/clients/new');
  await page.getByLabel('Name').fill(name);
  await page.getByLabel('Time zone').selectOption('Europe/Berlin');
  await page.getByLabel('Usual session, minutes').fill('60');
  await page.getByRole('button', { name: 'Make the client' }).click();
  const plan = await page.getByRole('link', { name: 'Write the plan' }).getAttribute('href');
  return plan?.split('/')[2] ?? '';
}

/** Goes to a control with the Tab key, and fails where the keyboard cannot reach it. */
async function tabTo(page: Page, control: Locator): Promise<void> {
  const wanted = await control.elementHandle(); // found by its name once: at every press that takes longer than the press
  const isThere = () => wanted?.evaluate((node) => node === document.activeElement);
  for (let pressed = 0; pressed < MOST_TABS; pressed += 1) {
    if (await isThere()) return;
    await page.keyboard.press('Tab');
  }
  for (let pressed = 0; pressed < MOST_TABS; pressed += 1) {
    if (await isThere()) return;
    await page.keyboard.press('Shift+Tab');
  }
  throw new Error('the Tab key does not reach this control');
}

async function press(page: Page, control: Locator, key = 'Enter'): Promise<void> {
  await tabTo(page, control);
  await page.keyboard.press(key);
}

async function type(page: Page, control: Locator, text: string): Promise<void> {
  await tabTo(page, control);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
}

/** Chooses in a list with the arrow down, so many places from where it stands. */
async function arrowDown(page: Page, control: Locator, times: number): Promise<void> {
  await tabTo(page, control);
  for (let time = 0; time < times; time += 1) await page.keyboard.press('ArrowDown');
}

async function chooseByLetters(page: Page, control: Locator, letters: string): Promise<void> {
  await tabTo(page, control);
  await page.keyboard.type(letters);
  await page.keyboard.press('Tab');
}

const drill = (page: Page, place: string) =>
  page.getByRole('group', { name: new RegExp(`^Drill ${place}\\b`) });
const save = (page: Page, version: number) =>
  page.getByRole('button', { name: `Save as version ${version}` });

async function look(page: Page, name: string): Promise<void> {
  mkdirSync(pictures, { recursive: true });
  for (const { name: width, viewport } of LOOKS) {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize(viewport);
      await expectAccessible(page, 'html', colorScheme === 'dark');
      const sideways = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect.soft(sideways, `${name} ${width} scrolls sideways`).toBeLessThanOrEqual(0);
      await page.screenshot({
        path: join(pictures, `${name}-${width}-${colorScheme}.jpg`),
        fullPage: true,
        type: 'jpeg',
      });
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
}

test('a plan is written, refused, changed, kept and copied by keyboard alone', async ({ browser }) => {
  const context = await browser.newContext({
    storageState: await signedIn(browser, 'coach'),
    viewport: { width: 1280, height: 900 },
  });
  const page = await context.newPage();
  const clientId = await makeClient(page, `Plan ${randomUUID().slice(0, 8)}`);
  await page.goto(`/clients/${clientId}/plan`);

  await test.step('two rungs of one ladder as a pyramid, moved by the keyboard', async () => {
    const first = drill(page, 'A1');
    await chooseByLetters(page, first.getByLabel('Ladder'), 'Front');
    await arrowDown(page, first.getByLabel('Rung', { exact: true }), 2);
    await expect(first.getByLabel('Sets')).not.toHaveValue('');
    await press(page, page.getByRole('button', { name: 'Add a drill to session A' }));
    const second = drill(page, 'A2');
    await chooseByLetters(page, second.getByLabel('Ladder'), 'Front');
    await arrowDown(page, second.getByLabel('Rung', { exact: true }), 5);
    await press(page, second.locator('summary'));
    await arrowDown(page, second.getByLabel('Pyramid with'), 1);
    await press(page, second.getByLabel('Not two days running'), 'Space');
    await expect(second.locator('summary')).toHaveText(/not two days running; pyramid with/);
    const harder = await second.getByLabel('Rung', { exact: true }).inputValue();
    const field = second.getByLabel('Sets');
    await tabTo(page, field);
    const id = await field.getAttribute('id');
    await page.keyboard.press('Alt+ArrowUp');
    await expect(drill(page, 'A1').getByLabel('Rung', { exact: true })).toHaveValue(harder);
    await expect(page.locator(`#${id}`)).toBeFocused();
  });

  await test.step('what it comes to follows while typing', async () => {
    const panel = page.getByRole('complementary', { name: 'What it comes to' });
    await expect(panel.getByText(/^Front lever, Front lever/)).toBeVisible();
    const shown = page.getByText(/^about \d+ min$/);
    const before = await shown.textContent();
    await type(page, drill(page, 'A1').getByLabel('Sets'), '9');
    await expect(shown).not.toHaveText(before ?? '');
    const bars = panel.getByRole('img').nth(1);
    await expect(bars).toHaveAccessibleName(/weeks 1 to 4 [1-9]/);
  });

  await test.step('a skill in focus with a date, an easy week and a week without kit', async () => {
    await chooseByLetters(page, page.getByLabel('Another skill'), 'Front');
    await press(page, page.getByRole('button', { name: 'Put it in focus' }));
    await expect(page.getByRole('button', { name: 'Take out of focus: Front lever' })).toBeVisible();
    await arrowDown(page, page.getByLabel(/^week 3, from/).first(), 1);
    await press(page, page.getByLabel(/^week 2, .*without kit/), 'Space');
    await expect(page.getByText(/^Left out in weeks without kit: /)).toBeVisible();
  });

  await test.step('a refusal names field and fix, and leads there', async () => {
    await type(page, drill(page, 'A2').getByLabel('Sets'), '0');
    await type(page, page.getByLabel('Why this change'), 'A first block');
    await press(page, save(page, 1));
    const alert = page.getByRole('alert').filter({ hasText: 'Not saved' });
    await expect(alert).toBeFocused();
    await expect(alert).toContainText('A2, sets: at least 1 set');
    await press(page, alert.getByRole('link', { name: 'A2, sets' }));
    await expect(drill(page, 'A2').getByLabel('Sets')).toBeFocused();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('4');
    await look(page, 'plan-editor');
    await page.setViewportSize({ width: 1280, height: 900 });
    await press(page, save(page, 1));
    await page.waitForURL(/saved=1/);
  });

  const other = await context.newPage();
  await test.step('of two who change one version the second is told, and keeps what was typed', async () => {
    await page.goto(`/clients/${clientId}/plan`);
    await other.goto(`/clients/${clientId}/plan`);
    await type(page, drill(page, 'A1').getByLabel('Sets'), '3');
    await press(page, save(page, 2));
    await page.waitForURL(/saved=2/);
    await type(other, drill(other, 'A1').getByLabel('Sets'), '5');
    await press(other, save(other, 2));
    await expect(other.getByRole('alert').filter({ hasText: 'Version 2 was saved' })).toBeFocused();
    await expect(drill(other, 'A1').getByLabel('Sets')).toHaveValue('5');
    await page.goto(`/clients/${clientId}/plan`);
    await expect(page.getByText('Changed against version 1')).toBeVisible();
    await expect(page.getByText(/3 × .*, was 9 × /)).toBeVisible();
  });

  await test.step('the plan is kept, and copied into the plan of another client', async () => {
    const name = `Lever-block-${randomUUID().slice(0, 8)}`;
    await press(page, page.getByText('Keep this plan for other clients'));
    await type(page, page.getByLabel('Name', { exact: true }), name);
    await press(page, page.getByRole('button', { name: 'Keep it' }));
    await expect(page.getByText(`Kept as “${name}”`)).toBeVisible();
    await press(page, page.getByRole('button', { name: 'Keep it' }));
    await expect(page.getByText(/is the name of a kept plan already: choose another/)).toBeVisible();
    const second = await makeClient(page, `Plan ${randomUUID().slice(0, 8)}`);
    await page.goto(`/clients/${second}/plan`);
    await press(page, page.getByText('Copy from another client or a kept plan'));
    await chooseByLetters(page, page.getByLabel('Kept plan', { exact: true }), name);
    await press(page, page.getByRole('button', { name: 'Copy', exact: true }).last());
    await expect(page.getByText(`The form holds a copy of the kept plan “${name}”.`)).toBeVisible();
    await expect(drill(page, 'A1').getByLabel('Sets')).toHaveValue('3');
    await expect(save(page, 1)).toBeVisible();

    await press(page, page.getByText('Copy from another client or a kept plan'));
    await press(page, page.getByRole('button', { name: `Delete: ${name}` }));
    await expect(page.getByRole('button', { name: `Leave it: ${name}` })).toBeFocused();
    await look(page, 'plan-delete-kept');
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.keyboard.press('Escape');
    await expect(page.getByRole('button', { name: `Delete: ${name}` })).toBeFocused();
    await page.keyboard.press('Enter');
    await press(page, page.getByRole('button', { name: `Delete it: ${name}` }));
    await expect(page.getByText(`“${name}” was deleted.`)).toBeFocused();
    await expect(page.getByRole('button', { name: `Delete: ${name}` })).toHaveCount(0);
    await expect(drill(page, 'A1').getByLabel('Sets')).toHaveValue('3');
  });
  await context.close();
});

test('a drill is dragged by its grip, or moved with the arrow keys on it', async ({ browser }) => {
  const context = await browser.newContext({
    storageState: await signedIn(browser, 'coach'),
    viewport: { width: 1280, height: 900 },
  });
  const page = await context.newPage();
  const clientId = await makeClient(page, `Plan ${randomUUID().slice(0, 8)}`);
  await page.goto(`/clients/${clientId}/plan`);
  const grip = (place: string) => page.getByRole('button', { name: new RegExp(`^Drag ${place},`) });
  const add = page.getByRole('button', { name: 'Add a drill to session A' });
  await add.click();
  await add.click();
  for (const place of [1, 2, 3]) await drill(page, `A${place}`).getByLabel('Sets').fill(String(place));
  const order = () =>
    Promise.all([1, 2, 3].map((place) => drill(page, `A${place}`).getByLabel('Sets').inputValue()));

  await grip('A3').scrollIntoViewIfNeeded();
  const [from, to] = [await grip('A3').boundingBox(), await drill(page, 'A2').boundingBox()];
  if (!from || !to) throw new Error('nothing to drag');
  await page.mouse.move(from.x + 10, from.y + 10);
  await page.mouse.down();
  await page.mouse.move(from.x + 10, to.y + 10, { steps: 12 });
  await page.mouse.up();
  await expect.poll(order).toEqual(['1', '3', '2']);
  await page.mouse.move(from.x + 10, to.y - 300);
  expect(await order()).toEqual(['1', '3', '2']);

  await press(page, grip('A2'), 'ArrowUp');
  await expect(grip('A1')).toBeFocused();
  await page.keyboard.press('End');
  await expect(grip('A3')).toBeFocused();
  expect(await order()).toEqual(['1', '2', '3']);
  await expect(page.getByText('The drill is now 3 of 3 in its session')).toBeAttached();
  await page.context().close();
});
