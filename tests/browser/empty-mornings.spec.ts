import { type BrowserContext, expect, type Page, test } from '@playwright/test';
import { look } from './support/look.ts';
import { asOwner, makeOwnTeam } from './support/own-team.ts';

// A team of its own, without clients first, then with three: each way in which the board can be empty, and what the page
// about nights says of a night that failed.
const TEAM = 'Quiet Corner';
let state: Awaited<ReturnType<BrowserContext['storageState']>>;

test.beforeAll(async ({ browser }) => {
  state = await makeOwnTeam(browser, TEAM);
});
test.beforeEach(async ({ context }) => context.addCookies(state.cookies));

async function lookAt(page: Page, name: string, address: string, seen: () => Promise<void>): Promise<void> {
  for (const { label, width, height } of [
    { label: '360', width: 360, height: 640 },
    { label: '1280', width: 1280, height: 900 },
  ]) {
    await page.setViewportSize({ width, height });
    await page.goto(address);
    await seen();
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await look(page, `${name}-${label}-${colorScheme}`);
    }
  }
}

const said = (page: Page, words: string | RegExp) => () =>
  expect(page.getByRole('main').getByText(words).first()).toBeVisible();
const sql = (text: string, values: unknown[] = []) =>
  asOwner(async (db) => {
    const { rows } = await db.query<{ id: string }>('select id from team where name = $1', [TEAM]);
    return db.query(text, [rows[0]?.id, ...values]);
  });
/** The day on which the newest night ended: in the small hours that is yesterday, for tonight's is not due yet. */
const morning = () =>
  asOwner(async (db) => {
    const { rows } = await db.query<{ day: string }>(
      `select max(current_date - back + 1)::text as day from generate_series(-1, 3) back
       where night_due_at('Europe/Berlin', current_date - back) <= now()`,
    );
    return rows[0]?.day ?? '';
  });
const night = async (over: string) =>
  sql(`update night_run set started_at = $2::date + time '03:00', ${over} where team_id = $1`, [
    await morning(),
  ]);

test('no clients yet', async ({ page }) => {
  await lookAt(page, 'empty-no-clients', '/', said(page, 'No clients yet.'));
});

test('all well, with the time and the count', async ({ page }) => {
  const day = await morning();
  await sql(
    `insert into client (team_id, coach_id, name, zone, standing, invited_at, joined_at)
     select $1, m.id, n.name, 'Europe/Berlin', 'in-training', $2::date - 300, $2::date - n.days
     from member m, (values ('Runa Moss', 290), ('Teo Lindqvist', 290), ('Vera Osei', 5)) n(name, days) where m.team_id = $1`,
    [day],
  );
  await sql(
    `insert into night_client (team_id, client_id, local_date, done_at, rules_version, attempts)
     select $1, c.id, $2::date - d, $2::date - d + interval '1 day 3 hours', '1', 1
     from client c, generate_series(1, 15) d where c.team_id = $1`,
    [day],
  );
  await sql(
    `insert into night_run (team_id, local_date, started_at, finished_at, clients_due, clients_done, clients_failed, rules_version)
     values ($1, $2::date - 1, $2::date + time '02:00', $2::date + time '02:09', 3, 3, 0, '1')`,
    [day],
  );
  await lookAt(
    page,
    'empty-nothing-new',
    '/',
    said(
      page,
      /^The checks found nothing new for 2 of 3 clients; 1 has too few known days to judge\. The night ended \d\d:\d\d, 3 of 3 checked\.$/,
    ),
  );
  await expect(page.getByText('Nothing to answer this morning.')).toBeVisible();
});

test('the night is not finished', async ({ page }) => {
  await night(`finished_at = null, clients_done = 1`);
  await lookAt(page, 'empty-night-running', '/', said(page, '1 of 3 clients are checked so far.'));
});

test('the night failed; Nights says why in words, and runs it again', async ({ page }) => {
  const day = await morning();
  await night(`finished_at = $2::date + time '03:09', clients_done = 0, clients_failed = 3`);
  await sql(
    `update night_client set done_at = null, failed_at = now(), attempts = 5,
       failure = 'TypeError at lib/checks/rules/too-hard.ts:33' where team_id = $1 and local_date = $2::date - 1`,
    [day],
  );
  await lookAt(page, 'empty-night-failed', '/', said(page, 'The night failed.'));
  await sql(
    `insert into outbox (team_id, kind, dedupe_key, body, created_at, attempts, last_error)
     values ($1, 'push', 'stuck', '{}', now() - interval '2 hours', 4, 'connection refused')`,
  );
  await lookAt(
    page,
    'nights-failed',
    '/nights',
    said(page, /Runa Moss was not checked: the check “rung too hard”/),
  );
  await expect(page.getByText(/1 notice to a phone has not left since .* tried 4 times/)).toBeVisible();
  await sql(`delete from outbox where team_id = $1 and dedupe_key = 'stuck'`);
  await page.getByRole('button', { name: 'Run Runa Moss again' }).click();
  await expect(page.getByText(/checked as of today/)).toBeVisible();
  await expect
    .poll(
      async () => {
        await page.reload();
        return page.getByText(/Runa Moss was not checked/).count();
      },
      { timeout: 60_000 },
    )
    .toBe(0);
  // The worker is done before its answer is here: the button is gone then, and what was said stands at the head of the page.
  const failed = async () =>
    (await sql('select from night_client where team_id = $1 and done_at is null')).rowCount;
  await page.route('**/api/nights/run', async (route) => {
    const response = await route.fetch();
    await expect.poll(failed, { timeout: 60_000 }).toBe(0);
    await route.fulfill({ response });
  });
  const button = page.getByRole('button', { name: 'Run all that is owed or failed now' });
  await button.click();
  const words = page.getByText('All that was owed or failed: the worker has 2 clients.');
  await expect(words).toBeVisible({ timeout: 60_000 });
  await expect(button).toHaveCount(0);
  await expect(page.getByText(/was not checked/)).toHaveCount(0);
});

test('the filter hides', async ({ page }) => {
  // The nights that were run above may have found something of their own.
  await sql(
    `insert into reason (team_id, client_id, kind, subject_key, subject, level, points, tier, sentence, short, since,
       step, clears, evidence, working, rules_version, raised_at, updated_at)
     select $1, id, 'stalled', 'made', '{"key":"made","label":""}', 'act', 2, 'this-week', 'Toe pull for **52 days**.',
       'toe pull 52 days', current_date - 9, '{"kind":"look","text":"Look at it."}', 'the rung changes', '{}', '{}', '1',
       now() - interval '9 days', now() from client where team_id = $1 and name = 'Runa Moss'`,
  );
  await lookAt(
    page,
    'empty-filter',
    '/?q=nobody-of-this-name',
    said(page, /it hides [1-3] of [1-3] clients/),
  );
});
