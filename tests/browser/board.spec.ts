import { type BrowserContext, expect, type Page, test } from '@playwright/test';
import { fillTeam } from '#tests/bench/board/fill-team.ts';
import { look } from './support/look.ts';
import { asOwner, makeOwnTeam, todayInBerlin } from './support/own-team.ts';

// The morning of a team with 1,000 invented clients, worked through by keyboard.
const TEAM = 'Thousand';
let state: Awaited<ReturnType<BrowserContext['storageState']>>;
let teamId: string;

test.beforeAll(async ({ browser }) => {
  state = await makeOwnTeam(browser, TEAM);
  teamId = await asOwner(async (db) => {
    const filled = await db.query<{ id: string }>(
      'select t.id from team t where t.name = $1 and exists (select from client c where c.team_id = t.id)',
      [TEAM],
    );
    const made = { name: TEAM, clients: 1_000, today: todayInBerlin() };
    return filled.rows[0]?.id ?? (await fillTeam(db, made)).teamId;
  });
});

test.use({ viewport: { width: 1280, height: 900 } });
test.beforeEach(async ({ context, page }) => {
  await context.addCookies(state.cookies);
  page.on('pageerror', (error) => expect.soft(error.message).toBe(''));
});

const focused = (page: Page) => page.evaluate(() => document.activeElement?.getAttribute('data-row') ?? '');
const rowOf = (page: Page, id: string) => page.locator(`[data-row="${id}"]`);
const ids = (page: Page) =>
  page.locator('[data-row]').evaluateAll((rows) => rows.map((row) => row.getAttribute('data-row') ?? ''));

/** Opens the board; the first press of j stands on its second row, k on the first. */
async function open(page: Page, query = ''): Promise<string> {
  await page.goto(`/${query}`);
  await expect(page.locator('[data-row][data-selected]')).toHaveCount(1);
  await page.keyboard.press('k');
  return focused(page);
}

test('twenty alerts cleared by keyboard alone, the same in the same order when read again', async ({
  page,
}) => {
  await open(page);
  const before = await ids(page);
  const cleared: string[] = [];
  for (let count = 0; count < 20; count += 1) {
    const id = await focused(page);
    cleared.push(id);
    await page.keyboard.press('d');
    await page.keyboard.press('Tab');
    await page.keyboard.type('spoken with, clinician on Friday');
    await page.keyboard.press('Enter');
    await expect(rowOf(page, id)).toHaveAttribute('data-folded', 'true');
    await expect.poll(() => focused(page)).not.toBe('');
  }
  expect(new Set(cleared).size).toBe(20);
  expect(cleared).toEqual(before.slice(0, 20));
  await page.reload();
  const after = await ids(page);
  expect(after.filter((id) => cleared.includes(id))).toEqual([]);
  const stayed = before.slice(20).filter((id) => after.includes(id));
  expect(after.filter((id) => stayed.includes(id))).toEqual(stayed);
});

const sent = (page: Page) => page.waitForResponse((answer) => answer.url().endsWith('/api/board/acts'));

/** Does an act on the first row of a filter, takes it back with u, and finds the row as it was. */
async function undoes(page: Page, query: string, keys: (page: Page) => Promise<void>): Promise<void> {
  const id = await open(page, query);
  const words = await rowOf(page, id).textContent();
  const acted = sent(page);
  await keys(page);
  expect((await acted).ok()).toBe(true);
  await expect(rowOf(page, id).getByRole('button', { name: 'Undo' })).toBeVisible();
  const undone = sent(page);
  await rowOf(page, id).focus();
  await page.keyboard.press('u');
  expect((await undone).ok()).toBe(true);
  await expect(rowOf(page, id).getByRole('button', { name: 'Undo' })).toHaveCount(0);
  await page.reload();
  await expect(page.locator('[data-row]').first()).toHaveAttribute('data-row', id);
  expect(await rowOf(page, id).textContent()).toBe(words);
}

const SINGLE: [name: string, query: string, keys: (page: Page) => Promise<void>][] = [
  ['take', '?reason=plan-ending&group=this-week', async (page) => page.keyboard.press('t')],
  [
    'put aside',
    '?reason=stalled',
    async (page) => {
      await page.keyboard.press('p');
      await page.keyboard.press('Enter');
    },
  ],
  [
    'done',
    '?reason=stalled',
    async (page) => {
      await page.keyboard.press('d');
      await page.keyboard.press('Enter');
    },
  ],
  [
    'answer',
    '?reason=question-waiting',
    async (page) => {
      await page.keyboard.press('a');
      await page.keyboard.type('Bars until Friday.');
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
    },
  ],
  ['seen', '?reason=stalled', async (page) => page.keyboard.press('s')],
];

for (const [name, query, keys] of SINGLE) {
  test(`undo of ${name}`, async ({ page }) => undoes(page, query, keys));
}

test('many rows are put aside at once, and one undo brings all back', async ({ page }) => {
  const chosen = await open(page, '?group=this-week');
  for (const key of ['x', 'j', 'x', 'j', 'x']) await page.keyboard.press(key);
  await expect(page.getByText('3 clients chosen.')).toBeVisible();
  await page.keyboard.press('p');
  const acted = sent(page);
  await page.keyboard.press('Enter');
  expect((await acted).ok()).toBe(true);
  await expect(page.getByText('3 clients put aside.')).toBeVisible();
  await expect(page.locator('[data-folded="true"]')).toHaveCount(3);
  await expect(rowOf(page, chosen)).toHaveAttribute('data-folded', 'true');
  const undone = sent(page);
  await page.keyboard.press('u');
  expect((await undone).ok()).toBe(true);
  await expect(page.locator('[data-folded="true"]')).toHaveCount(0);
});

test('urgent rows among the chosen stay and are said by name', async ({ page }) => {
  // The ones of the morning were cleared above.
  await asOwner(async (db) =>
    raise(db, (await quietClient(db)).id, 'pain-high', 'now', 'Left wrist **7 of 10** today.'),
  );
  const urgent = await open(page);
  const name = await rowOf(page, urgent).getAttribute('data-name');
  await page.keyboard.press('x');
  const other = page.locator('[data-row][data-tier="today"]').first();
  await other.focus();
  await page.keyboard.press('x');
  await page.keyboard.press('p');
  await page.keyboard.press('Enter');
  await expect(
    page.getByText(`1 client put aside. Left: ${name} (a danger sign or pain of 6 or more).`),
  ).toBeVisible();
  await expect(rowOf(page, urgent)).toHaveAttribute('data-folded', 'false');
  const undone = sent(page);
  await page.keyboard.press('u');
  expect((await undone).ok()).toBe(true);
});

test('a known row folds to its words, stays so, and unfolds by itself when something joins', async ({
  page,
}) => {
  await open(page, '?reason=stalled');
  const id =
    (await page.locator('[data-row]:has([data-act="known"])').first().getAttribute('data-row')) ?? '';
  await rowOf(page, id).focus();
  await page.keyboard.press('w');
  await page.keyboard.type('waits for the new bars');
  await page.keyboard.press('Enter');
  await expect(rowOf(page, id)).toContainText('Known: waits for the new bars');
  const undone = sent(page);
  await rowOf(page, id).focus();
  await page.keyboard.press('u');
  expect((await undone).ok()).toBe(true);
  await expect(rowOf(page, id).getByRole('button', { name: 'Undo' })).toHaveCount(0);
  await rowOf(page, id).focus();
  await page.keyboard.press('w');
  await page.keyboard.type('waits for the new bars');
  await page.keyboard.press('Enter');
  await expect(rowOf(page, id)).toContainText('Known: waits for the new bars');
  await page.reload();
  await expect(rowOf(page, id)).toContainText('known: waits for the new bars');
  await look(page, 'board-known-1280-light');
  await asOwner((db) => raise(db, id, 'side-gap', 'this-week', 'Left shoulder taps **22 %** under right.'));
  await page.reload();
  await expect(rowOf(page, id)).not.toContainText('known:');
  await expect(rowOf(page, id).getByRole('button', { name: 'Take' })).toBeVisible();
});

type Db = Parameters<Parameters<typeof asOwner>[0]>[0];

function raise(db: Db, clientId: string, kind: string, tier: string, sentence: string): Promise<unknown> {
  return db.query(
    `insert into reason (team_id, client_id, kind, subject_key, subject, level, points, tier, sentence, short, since,
       step, clears, evidence, working, rules_version, raised_at, updated_at)
     values ($1, $2, $3::text, 'later', '{"key":"later","label":""}', 'act', 2, $4, $5, $3, current_date,
       '{"kind":"look","text":"Look at it."}', 'two clear nights', '{}', '{}', '1', now(), now())`,
    [teamId, clientId, kind, tier, sentence],
  );
}

/** Somebody without a row. */
async function quietClient(db: Db): Promise<{ id: string; name: string }> {
  const { rows } = await db.query<{ id: string; name: string }>(
    `select id, name from client c where team_id = $1 and not exists (select from reason r where r.client_id = c.id)
     and not exists (select from question q where q.client_id = c.id) order by name limit 1`,
    [teamId],
  );
  return rows[0] ?? { id: '', name: '' };
}

test('what changes meanwhile is offered and said, and moves nothing until it is read', async ({ page }) => {
  await open(page);
  const before = await ids(page);
  const quiet = await asOwner(async (db) => {
    const found = await quietClient(db);
    await raise(db, found.id, 'danger-sign', 'now', 'Numb or tingling: **left hand**.');
    return found;
  });
  await page.evaluate(() => window.dispatchEvent(new Event('focus')));
  await expect(page.getByRole('button', { name: '1 new: read them' })).toBeVisible();
  await expect(page.getByRole('status').filter({ hasText: `To answer now: ${quiet.name}.` })).toBeAttached();
  expect(await ids(page)).toEqual(before);
  await look(page, 'board-news-1280-light');
  await page.keyboard.press('r');
  await expect(page.locator('[data-row]').first()).toBeAttached();
  await expect(rowOf(page, quiet.id)).toBeVisible();
  await expect(page.getByRole('button', { name: /read them/ })).toHaveCount(0);
});

test('without a connection the page stays and says from when it is; acts are refused with words', async ({
  page,
  context,
}) => {
  const id = await open(page, '?reason=stalled');
  await context.setOffline(true);
  await expect(page.getByText(/^As of \d\d:\d\d, no connection\./)).toBeVisible();
  await page.keyboard.press('d');
  await page.keyboard.press('Tab');
  await page.keyboard.type('a thought');
  await page.keyboard.press('Enter');
  await expect(rowOf(page, id)).toContainText('No connection: nothing was changed.');
  await expect(rowOf(page, id).getByPlaceholder('Why, for the record')).toHaveValue('a thought');
  await look(page, 'board-offline-1280-light');
  await context.setOffline(false);
  await expect(page.getByText(/no connection\./)).toHaveCount(0);
});

test('a filter is kept as a view, opened, renamed, deleted and brought back', async ({ page }) => {
  await open(page);
  await page.getByLabel('When to answer').selectOption('today');
  await page.waitForURL('/?group=today');
  await page.getByRole('button', { name: 'Keep this view' }).click();
  await page.keyboard.type('Before noon');
  await page.keyboard.press('Enter');
  const views = page.getByRole('navigation', { name: 'Kept views' });
  await expect(views.getByRole('link', { name: 'Before noon' })).toHaveAttribute('aria-current', 'page');
  await page.goto('/');
  await views.getByRole('link', { name: 'Before noon' }).click();
  await page.waitForURL('/?group=today');
  await look(page, 'board-views-1280-light');
  await page.getByRole('button', { name: 'Rename' }).click();
  await page.getByLabel('Name of this view').fill('First');
  await page.keyboard.press('Enter');
  await expect(views.getByRole('link', { name: 'First' })).toBeVisible();
  await page.getByRole('button', { name: 'Delete' }).click();
  await expect(views.getByRole('link', { name: 'First' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(views.getByRole('link', { name: 'First' })).toBeVisible();
  await page.getByRole('button', { name: 'Delete' }).click();
  await expect(views.getByRole('link', { name: 'First' })).toHaveCount(0);
});

test('a client is found by name with one key; keys can be turned off, and stay off', async ({ page }) => {
  const id = await open(page, '?reason=stalled');
  const name = (await rowOf(page, id).getAttribute('data-name')) ?? '';
  await open(page);
  await page.keyboard.press('/');
  await page.keyboard.type(name);
  await page.keyboard.press('Enter');
  await page.waitForURL(/\?q=/);
  await expect(page.locator('[data-row][data-selected]')).toHaveCount(1);
  await expect(page.locator('[data-row]')).toHaveCount(1);
  expect(page.url()).not.toContain('reason=');
  await page.keyboard.press('?');
  await look(page, 'board-keys-1280-light');
  await page.getByLabel(/Single keys act/).uncheck();
  await page.keyboard.press('Escape');
  await page.reload();
  await expect(page.locator('[data-row][data-selected]')).toHaveCount(1);
  await rowOf(page, id).focus();
  await page.keyboard.press('d');
  await expect(page.getByText('Right to tell me')).toHaveCount(0);
  await page.keyboard.press('?');
  await page.getByLabel(/Single keys act/).check();
  await page.keyboard.press('Escape');
  await rowOf(page, id).focus();
  await page.keyboard.press('d');
  await expect(page.getByText('Right to tell me')).toBeVisible();
});

test('past the last row of a group the rest of it follows; the next client is one key away', async ({
  page,
}) => {
  await open(page, '?group=this-week');
  const before = await ids(page);
  await rowOf(page, before.at(-1) ?? '').focus();
  await page.keyboard.press('j');
  await expect.poll(async () => (await ids(page)).length).toBeGreaterThan(before.length);
  const after = await ids(page);
  expect(after.slice(0, before.length)).toEqual(before);
  expect(new Set(after).size).toBe(after.length);
  await expect.poll(() => focused(page)).toBe(after[before.length]);
  await rowOf(page, after[0] ?? '').focus();
  await page.keyboard.press('n');
  await page.waitForURL(`/clients/${after[1]}`);
  await page.keyboard.press('n');
  await page.waitForURL(`/clients/${after[2]}`);
});

test('looks: both widths and themes, and without colour', async ({ page }) => {
  for (const { name, width, height } of [
    { name: '360', width: 360, height: 640 },
    { name: '1280', width: 1280, height: 900 },
  ]) {
    await page.setViewportSize({ width, height });
    await page.goto('/');
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await look(page, `board-thousand-${name}-${colorScheme}`);
    }
    await page.emulateMedia({ colorScheme: 'light' });
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('Emulation.setEmulatedVisionDeficiency', { type: 'achromatopsia' });
    await look(page, `board-thousand-${name}-grey`);
    await devtools.send('Emulation.setEmulatedVisionDeficiency', { type: 'none' });
  }
});
