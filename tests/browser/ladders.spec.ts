import { type Browser, expect, type Page, test } from '@playwright/test';
import { signedIn as cookiesOf } from './support/signed-in.ts';

const TABS = 250;

async function signedIn(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    storageState: await cookiesOf(browser, 'coach'),
    viewport: { width: 1280, height: 900 },
  });
  return context.newPage();
}

/** What a screen reader would call the control in focus. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const element = document.activeElement as HTMLInputElement | null;
    const label = element?.labels?.[0]?.textContent ?? '';
    return (element?.getAttribute('aria-label') ?? (label || element?.textContent) ?? '').trim();
  });

/** Goes to a control with the Tab key alone. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  const fits = (text: string) => (typeof name === 'string' ? text === name : name.test(text));
  const seen: string[] = [];
  for (let count = 0; count < TABS; count += 1) {
    await page.keyboard.press('Tab');
    const text = await focused(page);
    if (fits(text)) return;
    seen.push(text);
  }
  throw new Error(`Tab never reaches ${name}. It reaches: ${[...new Set(seen)].join(' | ')}`);
}

async function press(page: Page, name: string | RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}

async function typeInto(page: Page, name: string | RegExp, text: string): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
}

/** Opens a page and begins at its top, as a fresh visitor does. */
async function open(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.waitForLoadState('networkidle');
}

/** Names of the rungs as the page lists them, hardest first. */
const rungs = (page: Page) =>
  page.getByRole('list', { name: 'Rungs, hardest on top' }).getByRole('heading').allTextContents();

async function addRung(page: Page, name: string, target: string): Promise<void> {
  await press(page, 'Add a rung');
  await page.waitForURL('**/rungs/new');
  await typeInto(page, 'Name of the rung', name);
  await typeInto(page, /^Target/, target);
  await typeInto(page, 'Shoulder overhead', '0,6');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name, level: 3 })).toBeVisible();
}

test('a ladder by keyboard alone, from a new skill to a split and a retired rung', async ({ browser }) => {
  const page = await signedIn(browser);
  await open(page, '/ladders');
  await press(page, 'Change skills, parts and order');
  await press(page, 'Add a skill');
  await page.keyboard.type('Human flag');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Human flag' })).toBeVisible();
  await press(page, 'Add a part to Human flag');
  await page.keyboard.type('Side hold');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Side hold' })).toBeVisible();

  await open(page, '/ladders/new');
  await press(page, 'Make the ladder');
  await expect(page.getByText('write a name', { exact: true })).toBeVisible();
  await open(page, '/ladders/new');
  await typeInto(page, 'Name of the ladder', 'Flag holds');
  await tabTo(page, 'Part it serves');
  await page.keyboard.type('Human flag: Side');
  await press(page, 'Make the ladder');
  await expect(page.getByRole('heading', { name: 'Flag holds' })).toBeVisible();
  await expect(page.getByText('This ladder has no rung in use')).toBeVisible();

  for (const [name, target] of [
    ['Tucked', '5'],
    ['Straddle', '8'],
    ['Full', '12'],
  ] as const)
    await addRung(page, name, target);
  expect(await rungs(page)).toEqual(['Full', 'Straddle', 'Tucked']);

  // The arrow keys on a grip, and the Up and Down buttons, move a rung; it is said out loud.
  await press(page, 'Put rungs in order');
  await tabTo(page, /^Move Full/);
  await page.keyboard.press('ArrowDown');
  await expect(page.getByText('Full, 3 × 12 s on 2 days is now 2 of 3 from the top')).toBeAttached();
  await press(page, /^Up: Tucked/);
  await press(page, 'Save the order');
  await expect.poll(() => rungs(page)).toEqual(['Straddle', 'Tucked', 'Full']);

  await open(page, page.url());
  await press(page, 'Split Straddle, rung 3');
  await page.waitForURL('**/split');
  await tabTo(page, 'How many, this rung included');
  await page.keyboard.press('ArrowDown');
  await typeInto(page, 'Name of step 1', 'Straddle, first third');
  await press(page, 'Split the rung');
  await expect
    .poll(() => rungs(page))
    .toEqual(['Straddle', 'Straddle', 'Straddle, first third', 'Tucked', 'Full']);
  await expect(
    page.getByText('3 × 5.3 s on 2 days').or(page.getByText('3 × 6 s on 2 days')).first(),
  ).toBeVisible();

  await open(page, page.url());
  await press(page, 'Change Full, rung 1');
  await page.waitForURL(/rungs\/[^/]+$/);
  await press(page, 'Retire this rung');
  await expect.poll(() => rungs(page)).toEqual(['Straddle', 'Straddle', 'Straddle, first third', 'Tucked']);
  await press(page, '1 retired rung');
  await press(page, 'Put Full back');
  await expect.poll(() => rungs(page)).toHaveLength(5);
  await page.context().close();
});

test('a change that touches clients names them and asks; Esc leaves all as it was', async ({ browser }) => {
  const page = await signedIn(browser);
  await open(page, '/ladders');
  await press(page, 'Planche holds');
  await expect(page.getByRole('heading', { name: 'Planche holds' })).toBeVisible();
  const ladder = page.url();
  const row = page.getByRole('listitem').filter({ hasText: /^\d+Advanced tuck/ });
  const names = await row.getByRole('link', { name: /^(?!Change|Split)/ }).allTextContents();
  expect(names.length).toBeGreaterThan(0);
  await expect(row).toContainText('4 × 10 s on 2 days');

  await press(page, /^Change Advanced tuck/);
  await page.waitForURL(/rungs\/[^/]+$/);
  await typeInto(page, 'Sets', '5');
  await page.keyboard.press('Enter');
  const asked = page.getByRole('dialog');
  await expect(asked).toContainText('pass mark 4 × 10 s on 2 days → 5 × 10 s on 2 days');
  for (const name of names) await expect(asked).toContainText(name);
  await page.keyboard.press('Escape');
  await expect(asked).toBeHidden();
  await expect(page.locator('#rung-sets')).toHaveValue('5');

  await press(page, 'Save the rung');
  await press(page, /^Change it for/);
  await page.waitForURL(ladder);
  await expect(row).toContainText('5 × 10 s on 2 days');
  await open(page, ladder);
  await press(page, /^Change Advanced tuck/);
  await page.waitForURL(/rungs\/[^/]+$/);
  await typeInto(page, 'Sets', '4');
  await page.keyboard.press('Enter');
  await press(page, /^Change it for/);
  await page.waitForURL(ladder);
  await expect(row).toContainText('4 × 10 s on 2 days');
  await page.context().close();
});

test('a planche is split by the angle of the hip, even in load', async ({ browser }) => {
  const page = await signedIn(browser);
  await open(page, '/ladders');
  await press(page, 'Planche holds');
  await expect(page.getByRole('heading', { name: 'Planche holds' })).toBeVisible();
  await press(page, /^Split Tuck opened to 120°/);
  await page.waitForURL('**/split');
  // Tuck at 130° is 0.1400 of body weight × height, 120° is 0.1473; half of the way, 0.1436, is 124.8°.
  await expect(page.getByRole('row', { name: /^from/ })).toContainText('0.1400');
  await expect(page.getByRole('row', { name: /^1 / })).toContainText('0.1437');
  await expect(page.getByLabel('Name of step 1')).toHaveValue('Opened to 124.8°');
  await expect(page.getByRole('row', { name: /^2 / })).toContainText('0.1473');
  await typeInto(page, 'Hip, degrees', '100');
  await expect(page.getByText('turns the shoulder no harder than the first')).toBeVisible();
  await page.context().close();
});

test('the second of two coaches is told who changed what, and loses nothing', async ({ browser }) => {
  const [page, other] = [await signedIn(browser), await signedIn(browser)];
  for (const one of [page, other]) {
    await open(one, '/ladders');
    await press(one, 'Back lever');
    await one.waitForURL(/ladders\/[^/]+$/);
    await press(one, /^Change Tuck/);
    await one.waitForURL(/rungs\/[^/]+$/);
  }
  await typeInto(other, 'Usual weeks', '7');
  await other.keyboard.press('Enter');
  await other.waitForURL(/ladders\/[^/]+$/);
  await typeInto(page, /^Note/, 'Knees to the chest.');
  await press(page, 'Save the rung');
  await expect(page.getByText(/changed usual weeks of Tuck on .* after you opened it/)).toBeVisible();
  await expect(page.locator('#rung-note')).toHaveValue('Knees to the chest.');
  await press(page, 'Save mine over it');
  await page.waitForURL(/ladders\/[^/]+$/);
  await expect(page.getByText('Knees to the chest.')).toBeVisible();
  for (const one of [page, other]) await one.context().close();
});

test('a rung is dragged by its grip', async ({ browser }) => {
  const page = await signedIn(browser);
  await open(page, '/ladders');
  await page.getByRole('link', { name: 'Hang', exact: true }).click();
  await page.getByRole('button', { name: 'Put rungs in order' }).click();
  const list = page.getByRole('list', { name: 'Rungs, hardest on top' }).first();
  const grips = list.getByRole('button', { name: /^Move/ });
  const name = (await grips.first().getAttribute('aria-label'))?.replace(/, \d+ of.*$/, '') ?? '';
  const [from, to] = [await grips.first().boundingBox(), await grips.nth(2).boundingBox()];
  if (!from || !to) throw new Error('no grips to drag');
  await page.mouse.move(from.x + 10, from.y + 10);
  await page.mouse.down();
  await page.mouse.move(to.x + 10, to.y + to.height - 2, { steps: 12 });
  await page.mouse.up();
  await expect(grips.nth(2)).toHaveAttribute(
    'aria-label',
    `${name}, 3 of ${await grips.count()} from the top`,
  );
  await page.getByRole('button', { name: 'Leave it as it was' }).click();
  await page.context().close();
});

test('openings by keyboard alone: refused by field, asked whom they touch, kept', async ({ browser }) => {
  const page = await signedIn(browser);
  await open(page, '/ladders');
  await press(page, 'Planche holds');
  await expect(page.getByRole('heading', { name: 'Planche holds' })).toBeVisible();
  const ladder = page.url();
  const lines = page.getByRole('region', { name: 'Openings' }).getByRole('listitem');
  const before = await lines.count();
  await press(page, 'Openings');
  await page.waitForURL('**/openings');
  const at = before + 1;
  await press(page, 'Add an opening');
  // The one there already has an "In words" too: the new one is the last.
  await page.locator(`#opening-${at - 1}-opens`).focus();
  await page.keyboard.type('15 Full');
  await press(page, 'Save the openings');
  const refusal = page.getByRole('alert').filter({ hasText: 'Not saved' });
  await expect(refusal).toContainText(`Opening ${at}, a rung it asks for: choose a rung`);
  await expect(refusal).toContainText(`Opening ${at}, in words: say it in words`);
  await expect(refusal).toBeFocused();
  await press(page, `Opening ${at}, a rung it asks for`);
  await expect(page.locator(`#opening-${at - 1}-need-0-0`)).toBeFocused();
  await page.keyboard.type('Lean 25');
  await tabTo(page, 'In words');
  await page.keyboard.type('The full planche opens with the 25 cm lean.');
  await press(page, 'Save the openings');
  const asked = page.getByRole('dialog');
  await expect(asked).toContainText(/Full: opens with nothing asked → Lean 25 cm, Lean/);
  await page.keyboard.press('Escape');
  await expect(asked).toBeHidden();
  await expect(page.locator(`#opening-${at - 1}-words`)).toHaveValue(/25 cm lean/);
  await press(page, 'Save the openings');
  await press(page, /^Change it for/);
  await page.waitForURL(ladder);
  await expect(lines).toHaveCount(at);
  await expect(lines.last()).toContainText('The full planche opens with the 25 cm lean.');
  await open(page, `${ladder}/openings`);
  await press(page, `Remove opening ${at}`);
  await press(page, 'Save the openings');
  await press(page, /^Change it for/);
  await page.waitForURL(ladder);
  await expect(lines).toHaveCount(before);
  await page.context().close();
});

test('what is refused on a rung is called as the form calls it, and leads there', async ({ browser }) => {
  const page = await signedIn(browser);
  await open(page, '/ladders');
  await press(page, 'Front lever holds');
  await page.waitForURL(/ladders\/[^/]+$/);
  await press(page, /^Change Tuck/);
  await page.waitForURL(/rungs\/[^/]+$/);
  await typeInto(page, 'Sets', '0');
  await typeInto(page, 'Neck', '3');
  await press(page, 'Save the rung');
  const refusal = page.getByRole('alert').filter({ hasText: 'Not saved' });
  await expect(refusal).toBeFocused();
  await expect(refusal.getByRole('listitem')).toHaveText(['Sets: at least 1 set', 'Stress, neck: at most 1']);
  await press(page, 'Stress, neck');
  await expect(page.locator('#weight-neck')).toBeFocused();
  await expect(page.locator('#rung-sets')).toHaveValue('0');
  await page.context().close();
});
