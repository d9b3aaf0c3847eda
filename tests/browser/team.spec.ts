import { randomUUID } from 'node:crypto';
import { type Browser, type BrowserContext, expect, type Page, test } from '@playwright/test';
import { look } from './support/look.ts';
import { asOwner, makeOwnTeam } from './support/own-team.ts';

// A team of this file's own, by keyboard alone: asked in, joined, prepared, approved, undone, moved, covered, imported.
const TEAM = 'Plumb Bob';
const NAMES = ['Ada Lund', 'Bo Berg', 'Cem Aydin'];
const COACH = { email: 'ruth@plumb-bob.example', name: 'Ruth Vance', password: 'a-rope-and-a-plumb-line' };
const ASSISTANT = {
  email: 'sol@plumb-bob.example',
  name: 'Sol Ahlgren',
  password: 'another-rope-and-a-line',
};

test.describe.configure({ mode: 'serial' });
let lead: BrowserContext;
let page: Page;
let assistant: Page;
const problems: string[] = [];

function watched(one: Page): Page {
  one.on('pageerror', (error) => problems.push(error.message));
  return one;
}

/** Both widths, light and dark. */
async function pictured(of: Page, name: string): Promise<void> {
  for (const width of [360, 1280]) {
    await of.setViewportSize({ width, height: 900 });
    for (const colorScheme of ['light', 'dark'] as const) {
      await of.emulateMedia({ colorScheme });
      await look(of, `${name}-${width}-${colorScheme}`);
    }
  }
  await of.emulateMedia({ colorScheme: 'light' });
}

/** Clients with a question and a reason each, as a night and a phone would have left them. */
async function fill(): Promise<void> {
  await asOwner(async (db) => {
    const found = await db.query<{ team_id: string; id: string }>(
      'select m.team_id, m.id from member m join team t on t.id = m.team_id where t.name = $1',
      [TEAM],
    );
    const { team_id: team, id: coach } = found.rows[0] ?? {};
    for (const name of NAMES) {
      const client = randomUUID();
      await db.query(
        `insert into client (team_id, id, coach_id, name, zone, standing, joined_at, invited_at)
         values ($1, $2, $3, $4, 'Europe/Berlin', 'in-training', now() - interval '90 days', now() - interval '91 days')`,
        [team, client, coach, name],
      );
      await db.query(
        `insert into question (team_id, client_id, text, asked_at) values ($1, $2, 'Bars or floor?', now() - interval '2 hours')`,
        [team, client],
      );
      await db.query(
        `insert into reason (team_id, client_id, kind, subject_key, subject, level, points, tier, sentence, short, since,
           step, clears, evidence, working, rules_version, raised_at, updated_at)
         values ($1, $2, 'stalled', 'toe-pull', '{"key":"toe-pull","label":"Toe pull"}', 'act', 2, 'this-week',
           'Toe pull for **52 days**.', 'toe pull 52 days', current_date - 5,
           '{"kind":"one-rung-back","text":"One rung back for three weeks."}', 'the rung changes', '{}',
           '{"daysKnown":{"known":27,"of":28}}', '1', now() - interval '4 days', now() - interval '1 day')`,
        [team, client],
      );
    }
  });
}

/** Goes on with Tab until the focus is on what is meant: a thing that Tab does not reach cannot be used. */
async function tabTo(on: Page, target: ReturnType<Page['getByRole']>): Promise<void> {
  await target.waitFor();
  for (let presses = 0; presses < 150; presses += 1) {
    if (await target.evaluate((one) => one === document.activeElement)) return;
    await on.keyboard.press('Tab');
  }
  throw new Error(`Tab does not reach ${target}`);
}

async function pressOn(on: Page, role: 'button' | 'link', name: string | RegExp): Promise<void> {
  await tabTo(on, on.getByRole(role, { name }).first());
  await on.keyboard.press('Enter');
}

async function typeInto(on: Page, label: string | RegExp, text: string): Promise<void> {
  await tabTo(on, on.getByLabel(label, { exact: true }).first());
  await on.keyboard.type(text);
}

/** A list is chosen from by its first letters. */
async function choose(on: Page, label: string | RegExp, text: string): Promise<void> {
  const list = on.getByLabel(label, { exact: true }).first();
  await tabTo(on, list);
  await on.keyboard.type(text);
  await expect(list.locator('option:checked')).toHaveText(new RegExp(`^${text}`, 'i'));
}

async function askIn(who: { email: string }, role: string): Promise<string> {
  await page.goto('/team');
  await typeInto(page, 'E-mail', who.email);
  await choose(page, 'As', role);
  await pressOn(page, 'button', 'Ask into the team');
  await expect(page.getByText(`A link is mailed to ${who.email}`)).toBeVisible();
  return (await page.getByLabel('Link into the team').textContent()) ?? '';
}

async function join(browser: Browser, link: string, who: typeof COACH): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  const own = watched(await context.newPage());
  await own.goto(new URL(link).pathname);
  await pictured(own, 'join-team');
  await typeInto(own, 'Name', who.name);
  await typeInto(own, /^Password/, 'short');
  await own.keyboard.press('Enter');
  await expect(own.getByText('is shorter than 12 characters')).toBeVisible();
  await own.getByLabel(/^Password/).fill('');
  await typeInto(own, /^Password/, who.password);
  await own.keyboard.press('Enter');
  await own.waitForURL('/');
  return own;
}

/** The row of a client on the board, reached with j. */
async function onRow(on: Page, name: string): Promise<ReturnType<Page['getByRole']>> {
  await on.goto('/');
  const row = on.getByRole('listitem', { name, exact: true });
  await row.waitFor();
  // The page listens to keys once it has selected its first row.
  await on.locator('[data-row][data-selected]').waitFor();
  for (const key of ['k', ...Array.from({ length: 20 }, () => 'j')]) {
    await on.keyboard.press(key);
    if (await row.evaluate((one) => one === document.activeElement)) return row;
  }
  throw new Error(`j does not reach ${name}`);
}

test.beforeAll(async ({ browser }) => {
  const state = await makeOwnTeam(browser, TEAM);
  await fill();
  lead = await browser.newContext({ storageState: state, viewport: { width: 1280, height: 900 } });
  page = watched(await lead.newPage());
});

test('a coach and an assistant are asked in, and join with a name and a password', async ({ browser }) => {
  await join(browser, await askIn(COACH, 'coach'), COACH);
  const link = await askIn(ASSISTANT, 'assistant');
  assistant = await join(browser, link, ASSISTANT);
  await page.goto('/team');
  for (const name of [COACH.name, ASSISTANT.name])
    await expect(page.getByRole('cell', { name: new RegExp(name) }).first()).toBeVisible();
  await expect(page.getByText('Nobody is asked in and still to come.')).toBeVisible();
  // The link worked once.
  await assistant.context().clearCookies();
  await assistant.goto(new URL(link).pathname);
  await typeInto(assistant, 'Name', 'Somebody Else');
  await typeInto(assistant, /^Password/, ASSISTANT.password);
  await assistant.keyboard.press('Enter');
  await expect(assistant.getByText('This link does not open any more.')).toBeVisible();
  await assistant.goto('/sign-in');
  await typeInto(assistant, 'E-mail', ASSISTANT.email);
  await typeInto(assistant, 'Password', ASSISTANT.password);
  await assistant.keyboard.press('Enter');
  await assistant.waitForURL('/');
});

test('an assistant prepares an answer and a step, a coach approves each with one key', async () => {
  await onRow(assistant, 'Ada Lund');
  await assistant.keyboard.press('a');
  await assistant.keyboard.type('Bars for two weeks, then floor.');
  await pressOn(assistant, 'button', /^Send/);
  await expect(assistant.getByText(/Kept for approval by Lead of Plumb Bob/).first()).toBeVisible();
  const second = await onRow(assistant, 'Bo Berg');
  await assistant.keyboard.press('t');
  const taking = second.getByRole('button', { name: 'Take it' });
  const kept = second.getByText(/Kept for approval/).first();
  await expect(taking.or(kept).first()).toBeVisible();
  if (await taking.isVisible()) await pressOn(assistant, 'button', 'Take it');
  await expect(kept).toBeVisible();
  await expect(second.getByRole('button', { name: /Put aside/ })).toHaveCount(0);

  await page.goto('/');
  await pressOn(page, 'link', '2 acts wait for your approval');
  await page.waitForURL('/team/approvals');
  await expect(page.getByText('Bars for two weeks, then floor.')).toBeVisible();
  await pictured(page, 'approvals');
  await page.keyboard.press('j');
  await page.keyboard.press('a');
  await expect(page.getByText('Answered: “Bars for two weeks, then floor.”')).toBeVisible();
  await page.keyboard.press('u');
  await expect(page.getByRole('heading', { name: 'An answer for Ada Lund' })).toBeVisible();
  await page.keyboard.press('a');
  await expect(page.getByText('Answered: “Bars for two weeks, then floor.”')).toBeVisible();
  await page.keyboard.press('j');
  await page.keyboard.press('b');
  await page.keyboard.type('Two weeks, not three.');
  await pressOn(page, 'button', 'Send it back');
  await expect(page.getByText('Sent back to Sol Ahlgren: “Two weeks, not three.”')).toBeVisible();
  await assistant.goto('/');
  await pressOn(assistant, 'link', '1 act came back to you');
  await expect(assistant.getByText('Two weeks, not three.')).toBeVisible();
});

test('clients move with a note, and come back by undo', async () => {
  await page.goto('/team/move');
  for (const name of ['Ada Lund', 'Bo Berg']) {
    await tabTo(page, page.getByRole('checkbox', { name: new RegExp(name) }));
    await page.keyboard.press('Space');
  }
  await choose(page, 'To', 'Ruth');
  await typeInto(page, 'Note to the new coach', 'Both work on the press.');
  await pictured(page, 'move-clients');
  await pressOn(page, 'button', 'Move them');
  await expect(page.getByText('2 clients are with Ruth Vance now.')).toBeVisible();
  await pressOn(page, 'button', 'Undo');
  await expect(page.getByText('Taken back.')).toBeVisible();
  await tabTo(page, page.getByRole('checkbox', { name: /Cem Aydin/ }));
  await page.keyboard.press('Space');
  await choose(page, 'To', 'Ruth');
  await pressOn(page, 'button', 'Move them');
  await expect(page.getByText('1 client is with Ruth Vance now.')).toBeVisible();
});

test('a cover is refused where it cannot be, set, and said at the head of the board', async () => {
  await page.goto('/team');
  await choose(page, 'Away', 'Ruth');
  await choose(page, 'Covered by', 'Ruth');
  await tabTo(page, page.getByLabel('Last day'));
  await page.getByLabel('Last day').fill(await page.getByLabel('First day').inputValue());
  await pressOn(page, 'button', 'Set the cover');
  await expect(page.getByText('nobody covers for themselves').first()).toBeVisible();
  await choose(page, 'Covered by', 'Lead');
  await pressOn(page, 'button', 'Set the cover');
  await expect(page.getByRole('list', { name: 'Covers' })).toContainText('Ruth Vance is away on');
  await pictured(page, 'team');
  await page.goto('/?coach=mine');
  await expect(page.getByRole('link', { name: /You have Ruth Vance’s 1 client too/ })).toBeVisible();
  await expect(page.getByRole('listitem', { name: 'Cem Aydin', exact: true })).toBeVisible();
  await pictured(page, 'board-with-cover');
});

test('a list is looked through, its faults named, and the rest taken', async () => {
  await page.goto('/clients/import');
  const list = [
    'Name;E-mail;Time zone;Under 18',
    'Dagny Moe;dagny@list.example;Europe/Oslo;no',
    '=2+3;;;yes',
    'Ada Lund;;;',
    'Eskil Ru;not-an-address;Mars/Base;',
  ].join('\n');
  await tabTo(page, page.getByLabel('Or the list itself'));
  await page.getByLabel('Or the list itself').fill(list);
  await pressOn(page, 'button', 'Look through it');
  await expect(
    page.getByRole('heading', { name: '4 rows: 2 can be taken, 1 with a fault, 1 there already' }),
  ).toBeVisible();
  await expect(page.getByText('E-mail “not-an-address” is not an e-mail address')).toBeVisible();
  await expect(page.getByRole('checkbox', { name: /Take line 5/ })).toBeDisabled();
  await expect(page.getByRole('checkbox', { name: /Take line 4/ })).not.toBeChecked();
  await pictured(page, 'import-preview');
  await pressOn(page, 'button', 'Take 2 clients');
  await expect(page.getByRole('heading', { name: '2 clients are added' })).toBeVisible();
  await expect(page.getByText('link mailed to dagny@list.example')).toBeVisible();
  await pictured(page, 'imported');
  await page.goto('/clients');
  await expect(page.getByRole('link', { name: '=2+3' })).toBeVisible();
});

test('an old log comes in by example, is looked through first, and goes again', async () => {
  await page.goto('/clients?text=Cem');
  await pressOn(page, 'link', 'Cem Aydin');
  await page.waitForURL(/\/clients\/[0-9a-f-]+$/);
  await pressOn(page, 'link', 'Bring in an old log');
  await expect(page.getByRole('heading', { name: 'Old log of Cem Aydin' })).toBeVisible();
  const log = [
    'Date;Exercise;Reps;RPE;Minutes;Mood',
    '03/04/2024;heel pulls;3x20;6;55;fine',
    '05/04/2024;bench press;3x5;7;60;',
    '07/04/2024;heel pulls;many;6;55;',
  ].join('\n');
  await tabTo(page, page.getByLabel('Or the log itself'));
  await page.getByLabel('Or the log itself').fill(log);
  await pressOn(page, 'button', 'Look at its columns');
  await expect(page.getByRole('heading', { name: 'What its columns are' })).toBeVisible();
  await expect(page.getByLabel('Mood', { exact: true })).toHaveValue('leave');
  await tabTo(page, page.getByRole('radio', { name: /^day, month, year/ }));
  await page.keyboard.press('Space');
  await tabTo(page, page.getByLabel('heel pulls', { exact: true }));
  await page.getByLabel('heel pulls', { exact: true }).fill('Off the wall: Heel pull from the wall');
  await pictured(page, 'old-log-columns');
  const rung = page.locator('#log-rungs option').first();
  await page.getByLabel('heel pulls', { exact: true }).fill((await rung.getAttribute('value')) ?? '');
  await pressOn(page, 'button', 'Look through the days');
  await expect(
    page.getByRole('heading', { name: /cell.* cannot be read: nothing would be taken/ }),
  ).toBeVisible();
  await expect(page.getByText(/Line 4/)).toBeVisible();
  await pictured(page, 'old-log-faults');
  await page.getByLabel('heel pulls', { exact: true }).fill('');
  await pressOn(page, 'button', 'Look through the days');
  await expect(page.getByRole('heading', { name: '3 days with 0 sets would come in' })).toBeVisible();
  await pictured(page, 'old-log-days');
  await pressOn(page, 'button', /^Take these 3 days/);
  await expect(page.getByText('3 days have come in.')).toBeVisible();
  await pressOn(page, 'button', 'Take it back');
  await expect(page.getByText('3 days are taken back.')).toBeVisible();
});

test('a client pauses from a day, with a trace and a way back', async () => {
  await page.goto('/clients?text=Bo');
  await pressOn(page, 'link', 'Bo Berg');
  await page.waitForURL(/\/clients\/[0-9a-f-]+$/);
  const summary = page.locator('summary', { hasText: /^Standing/ });
  await tabTo(page, summary);
  await page.keyboard.press('Enter');
  await expect(page.getByText('Days off from that day')).toBeVisible();
  await typeInto(page, /^Why/, 'Moving house');
  await pressOn(page, 'button', 'Save the standing');
  await expect(page.getByText(/^Now paused, from/)).toBeVisible();
  await expect(summary).toHaveText(/paused/);
  const coach = page.locator('summary', { hasText: /^Coach/ });
  await tabTo(page, coach);
  await page.keyboard.press('Enter');
  await expect(page.getByText(/in training to paused from .*Moving house/)).toBeVisible();
  await pictured(page, 'client-standing');
  await tabTo(page, summary);
  await pressOn(page, 'button', 'Undo');
  await expect(summary).toHaveText(/in training/);
});

test('a member who leaves is signed out at once', async () => {
  await page.goto('/team');
  const change = page.locator('summary', { hasText: 'Change' });
  await tabTo(page, change.last());
  await page.keyboard.press('Enter');
  await pictured(page, 'team-change');
  await pressOn(page, 'button', 'Sol Ahlgren leaves the team');
  await expect(page.getByRole('cell', { name: /Sol Ahlgren/ })).toHaveCount(0);
  await assistant.goto('/team');
  await expect(assistant).toHaveURL(/sign-in/);
  expect(problems).toEqual([]);
});
