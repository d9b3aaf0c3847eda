import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { copyLibrary } from '#lib/db/library.ts';
import { checkClientNow } from '#lib/usecases/check-client-now.ts';
import { readBoard } from '#lib/usecases/read-board.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { anotherPhone, aTraining, NOW, type Phone, TODAY } from '../check-in/arrange.ts';
import { makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';

// Tables that grow with clients and days. What is asked of them for some clients, or for one team of many, must be
// answered by an index.
const LARGE =
  'check_in|check_in_set|pain_score|day_rollup|week_rollup|night_client|reason|reason_event|plan|plan_session|plan_item|placement|seen_mark|outbox';
const SEQUENTIAL = new RegExp(`Seq Scan on (${LARGE})\\b`);
const TEAMS = 15;
const CLIENTS = 40;
const DAYS = 25;

let team: TestTeam;
let phone: Phone;
let clientIds: string[];

beforeAll(async () => {
  team = await makeTestTeam('Many');
  const { rungIds } = await withTeamPg(team.scope, (tx) => copyLibrary(tx));
  phone = { team, rungs: rungIds, ...(await anotherPhone(team, 'One of many')) };
  await fill(team, rungIds.get('H3.4') ?? randomUUID());
  const rows = await ownerQuery<{ id: string }>(
    `select id from client where team_id = $1 order by id limit 10`,
    [team.teamId],
  );
  clientIds = rows.map(({ id }) => id);
}, 60_000);

/** Teams of clients with some weeks behind them: rows only, as their plans are asked for and not what they say. */
async function fill({ teamId, memberId }: TestTeam, rungId: string): Promise<void> {
  await ownerQuery(`set session_replication_role = replica;
    create temp table person as select case when n % ${TEAMS} = 0 then '${teamId}'::uuid else md5('team' || n % ${TEAMS})::uuid end as team_id,
      gen_random_uuid() as id, n from generate_series(1, ${TEAMS * CLIENTS}) n;
    insert into client (team_id, id, coach_id, name, zone, standing, joined_at)
      select team_id, id, '${memberId}', 'Client ' || n, 'UTC', 'in-training', '2026-09-01' from person;
    insert into check_in (team_id, client_id, body_hash, date, zone, sent_at, kind, session, effort, minutes, nothing_hurts)
      select team_id, id, 'x', date '${TODAY}' - d, 'UTC', date '${TODAY}' - d, 'training', 'A', 6, 60, true from generate_series(1, ${DAYS}) d, person;
    insert into check_in_set (team_id, check_in_id, client_id, rung_id, side, idx, planned, value, how)
      select team_id, id, client_id, '${rungId}', 'both', i, 20, 15, 'typed' from check_in, generate_series(1, 2) i;
    insert into pain_score (team_id, check_in_id, client_id, region, side, moment, value, kind)
      select team_id, id, client_id, 'wrist-back', 'left', 'after', 1, 'joint' from check_in;
    insert into day_rollup (team_id, client_id, date, state, session_load_au, worst_pain, check_ins, facts)
      select team_id, client_id, date, 'trained', 360, 1, 1, '[]' from check_in;
    insert into week_rollup (team_id, client_id, week, days)
      select team_id, client_id, week_of(date), string_agg(packed_day(date, facts), ',' order by date)
      from day_rollup group by 1, 2, 3;
    insert into night_client (team_id, client_id, local_date, done_at, rules_version, attempts)
      select team_id, id, date '${TODAY}' - d, now(), '1', 1 from generate_series(2, ${DAYS}) d, person;
    insert into seen_mark (team_id, client_id, by_id, at)
      select team_id, id, '${memberId}', date '${TODAY}' - d from generate_series(1, 20) d, person;
    insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date)
      select p.team_id, p.id, r.ladder_id, '${rungId}', 'both', date '${TODAY}' - 10 * d
      from generate_series(1, 8) d, person p, rung r where r.id = '${rungId}';
    insert into plan (team_id, client_id, version, from_date, sessions_per_week)
      select team_id, id, v, date '${TODAY}' - 40 + v, 3 from generate_series(1, 6) v, person;
    insert into plan_session (team_id, plan_id, label, position) select team_id, id, 'A', 1 from plan;
    insert into plan_item (team_id, session_id, rung_id, side, position, sets, target, times_per_week)
      select team_id, id, '${rungId}', 'both', i, 3, 20, 3 from plan_session, generate_series(1, 4) i;
    insert into reason (team_id, client_id, kind, subject_key, subject, level, points, tier, sentence, short, since, step, clears,
        evidence, working, rules_version, raised_at, updated_at, closed_at)
      select team_id, id, 'stalled', 'k' || i, '{"key":"k","label":""}', 'watch', 1, 'this-week', 's', 's', date '${TODAY}', '{"kind":"look","text":""}', '',
        '{}', '{"daysKnown":{"known":1,"of":1}}', '1', now(), now(), case when i > 1 then now() end
      from generate_series(1, 6) i, person;
    insert into reason_event (team_id, reason_id, at, night, what) select team_id, id, now(), date '${TODAY}' - 3, 'raised' from reason;
    insert into outbox (team_id, kind, dedupe_key, body, sent_at)
      select team_id, 'after-check-in', id::text, '{}', now() from check_in;
    analyze`);
}

type PlanLine = { 'QUERY PLAN': string };

function inOne(lines: readonly PlanLine[]): string {
  return lines.map((line) => line['QUERY PLAN']).join('\n');
}

/** Every statement that the work sends, with its plan, as the application's role has it planned inside its walls. */
async function plansOf(work: () => Promise<unknown>): Promise<{ sql: string; plan: string }[]> {
  const plans: { sql: string; plan: string }[] = [];
  type Named = { text: string; values: unknown[] };
  const send: (this: pg.Client, sql: string, values?: unknown[]) => Promise<unknown> =
    pg.Client.prototype.query;
  vi.spyOn(pg.Client.prototype, 'query').mockImplementation(async function (
    this: pg.Client,
    asked: string | Named,
    given?: unknown[],
  ) {
    const [sql, values] = typeof asked === 'string' ? [asked, given] : [asked.text, asked.values];
    if (/^\s*(select|with|insert|update|delete)/i.test(sql)) {
      // Named ones are planned once, whatever their values.
      const explained =
        typeof asked === 'string' ? [`explain ${sql}`, values] : [`explain (generic_plan) ${sql}`];
      const { rows } = (await send.apply(this, explained as [string])) as { rows: PlanLine[] };
      plans.push({ sql, plan: inOne(rows) });
    }
    return send.call(this, sql, values);
  } as never);
  await work();
  return plans;
}

function sequential(plans: { sql: string; plan: string }[]): string[] {
  return plans.filter(({ plan }) => SEQUENTIAL.test(plan)).map(({ sql, plan }) => `${sql}\n${plan}`);
}

afterEach(() => vi.restoreAllMocks());

describe('no large table is read from end to end', () => {
  it('by a batch of the night', async () => {
    const plans = await plansOf(() =>
      runNightBatch(team.scope, { localDate: '2026-11-23', clientIds }, new Date('2026-11-24T04:00:00Z')),
    );
    expect(plans.length).toBeGreaterThan(15);
    expect(sequential(plans)).toEqual([]);
    const days = plans.find(({ sql }) => sql.includes('from day_rollup r'))?.plan;
    expect(days).toContain('day_rollup_pkey');
    expect(days).toContain('week_rollup_pkey');
  });

  it('by a submit and the checks after it', async () => {
    const plans = await plansOf(async () => {
      await submitCheckIn(phone.actor, aTraining(phone), NOW);
      await checkClientNow(team.scope, phone.clientId, NOW);
    });
    expect(plans.length).toBeGreaterThan(25);
    expect(sequential(plans)).toEqual([]);
  });

  it('by the board of one team', async () => {
    const actor = { ...phone.actor, role: 'lead' as const, memberId: team.memberId, clientId: null };
    const plans = await plansOf(() =>
      readBoard(actor, { coach: 'all' }, NOW, [undefined, () => ({ from: 0, to: 20 })]),
    );
    expect(plans.length).toBeGreaterThan(3);
    expect(sequential(plans)).toEqual([]);
  });

  it('by the question which nights are owed', async () => {
    const [body] = await ownerQuery<{ sql: string }>(
      `select prosrc as sql from pg_proc where proname = 'owed_nights_of'`,
    );
    const sql = (body?.sql ?? '')
      .replace(/\bat\b/g, `timestamptz '2026-11-24 04:00Z'`)
      .replace(/\bcap\b/g, '14')
      .replaceAll('team is null', 'false')
      .replace(/= team\)/, `= '${team.teamId}')`)
      .replace(/clients is null or c.id = any \(clients\)/, 'true');
    const rows = await ownerQuery<PlanLine>(`explain ${sql}`);
    expect(sequential([{ sql, plan: inOne(rows) }])).toEqual([]);
  });
});
