import pg from 'pg';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { pool } from '#lib/db/client.ts';
import { checkClientNow } from '#lib/usecases/check-client-now.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { ownerQuery } from '#tests/integration/support/database.ts';
import { checkIn, forgetNights, type Group, makeGroup, TRAINED, trainingClient } from './arrange.ts';
import { allRows, meaning } from './rows.ts';

const NIGHT = '2026-03-31';
const now = new Date('2026-04-01T03:05:00Z');
let group: Group;
let twin: Group;

beforeAll(async () => {
  group = await makeGroup();
  twin = await makeGroup();
});

beforeEach(async () => {
  await forgetNights(group.team.teamId);
  await forgetNights(twin.team.teamId);
});

const run = ({ team, clientIds }: Group, localDate = NIGHT, at = now) =>
  runNightBatch(team.scope, { localDate, clientIds }, at);

const openReasons = (clientId: string) =>
  ownerQuery<{ kind: string; state: string; tier: string | null }>(
    `select kind, state, tier from reason where client_id = $1 and closed_at is null order by kind`,
    [clientId],
  );

describe('a night batch', () => {
  it('writes reasons, their events, the ledger and the run', async () => {
    expect(await run(group)).toEqual({ done: 3, failed: 0 });
    const [, hurting = '', silent = ''] = group.clientIds;
    expect(await openReasons(hurting)).toContainEqual({ kind: 'pain-high', state: 'open', tier: 'now' });
    expect(await openReasons(silent)).toContainEqual({
      kind: 'gone-quiet',
      state: 'client-page',
      tier: 'this-week',
    });
    const events = await ownerQuery(
      `select e.what, e.night::text from reason_event e join reason r on r.id = e.reason_id
       where r.kind = 'pain-high' and r.team_id = $1`,
      [group.team.teamId],
    );
    expect(events).toEqual([{ what: 'raised', night: NIGHT }]);
    const runs = await ownerQuery(
      'select clients_due, clients_done, clients_failed, finished_at is not null as finished from night_run where team_id = $1',
      [group.team.teamId],
    );
    expect(runs).toEqual([{ clients_due: 3, clients_done: 3, clients_failed: 0, finished: true }]);
  });

  it('changes nothing when it runs a second time', async () => {
    await run(group);
    const before = await allRows(group.team.teamId);
    expect(await run(group, NIGHT, new Date('2026-04-01T05:00:00Z'))).toEqual({ done: 0, failed: 0 });
    expect(await allRows(group.team.teamId)).toBe(before);
  });

  it('says and dates the same when the clock is set back between the queue and the night', async () => {
    const raised = ({ team }: Group) =>
      ownerQuery(
        'select kind, raised_at, known_from from reason where team_id = $1 order by kind, raised_at',
        [team.teamId],
      );
    await run(twin);
    await run(group, NIGHT, new Date('2026-03-31T20:00:00Z'));
    expect(await meaning(group.team.teamId)).toEqual(await meaning(twin.team.teamId));
    expect(await raised(group)).toEqual(await raised(twin));
    expect((await raised(group)).length).toBeGreaterThan(1);
  });

  it('is as one when two run at once, and when batches overlap', async () => {
    await run(twin);
    // Connections stand ready, so that the three start together.
    await Promise.all([1, 2, 3].map(() => pool().query('select pg_sleep(0.05)')));
    const reversed = { ...group, clientIds: [...group.clientIds].reverse() };
    const results = await Promise.all([run(group), run(reversed), run(group)]);
    expect(results.reduce((sum, each) => sum + each.done, 0)).toBe(3);
    expect(await meaning(group.team.teamId)).toEqual(await meaning(twin.team.teamId));
  });

  it('counts the whole run when its batches run at once', async () => {
    await run(twin);
    await ownerQuery(
      `insert into night_run (team_id, local_date, started_at, clients_due, rules_version) values ($1, $2, $3, 3, 'test')`,
      [group.team.teamId, NIGHT, now],
    );
    // Whoever holds the row makes all three come to their count before any of them has written it.
    const holder = new pg.Client({ connectionString: process.env.DATABASE_URL });
    await holder.connect();
    await holder.query('begin');
    await holder.query('select 1 from night_run where team_id = $1 for update', [group.team.teamId]);
    const batches = group.clientIds.map((clientId) => run({ ...group, clientIds: [clientId] }));
    await holder.query('select pg_sleep(1)');
    await holder.query('commit');
    await holder.end();
    await Promise.all(batches);
    expect(await meaning(group.team.teamId)).toEqual(await meaning(twin.team.teamId));
  });

  it('says the same when it runs late', async () => {
    for (const [date, at] of [
      ['2026-03-29', '2026-03-30T03:01:00Z'],
      ['2026-03-30', '2026-03-31T03:01:00Z'],
      ['2026-03-31', '2026-04-01T03:01:00Z'],
    ] as const) {
      await run(twin, date, new Date(at));
      await run(group, date, new Date('2026-04-05T12:00:00Z'));
    }
    expect(await meaning(group.team.teamId)).toEqual(await meaning(twin.team.teamId));
  });

  it('runs late and leaves alone what was written about the days after it', async () => {
    const { team, rungId } = twin;
    const clientId = await trainingClient(team, { rungId, ...TRAINED, pain: { '2026-03-31': 7 } });
    const sentence = async () =>
      (
        await ownerQuery(`select sentence from reason where client_id = $1 and kind = 'pain-high'`, [
          clientId,
        ])
      )[0];
    await checkClientNow(team.scope, clientId, new Date('2026-03-31T20:00:00Z'));
    const ofSeven = await sentence();
    await checkIn(team, clientId, { date: '2026-04-01', rungId, pain: 9 });
    await checkClientNow(team.scope, clientId, new Date('2026-04-01T06:00:00Z'));
    const ofNine = await sentence();
    expect(ofNine).not.toEqual(ofSeven);
    await runNightBatch(
      team.scope,
      { localDate: NIGHT, clientIds: [clientId] },
      new Date('2026-04-01T09:00:00Z'),
    );
    expect(await sentence()).toEqual(ofNine);
    await ownerQuery('delete from client where id = $1', [clientId]);
  });

  it('shows a reason of the first three nights on the client page, on the board from the fourth on', async () => {
    const [, , silent = ''] = group.clientIds;
    const states: (string | undefined)[] = [];
    for (const date of ['2026-03-28', '2026-03-29', '2026-03-30', '2026-03-31']) {
      await run(group, date, new Date('2026-04-02T12:00:00Z'));
      states.push((await openReasons(silent)).find((reason) => reason.kind === 'gone-quiet')?.state);
    }
    expect(states).toEqual(['client-page', 'client-page', 'client-page', 'open']);
    const counted = await ownerQuery(
      `select 1 from reason_event e join reason r on r.team_id = e.team_id and r.id = e.reason_id
       where e.what = 'counted' and r.kind = 'gone-quiet' and e.team_id = $1`,
      [group.team.teamId],
    );
    expect(counted).toHaveLength(1);
  });
});

describe('the checks right after a check-in', () => {
  it('raise and update at once, and never close', async () => {
    const [fine = '', hurting = ''] = twin.clientIds;
    expect(await checkClientNow(twin.team.scope, fine, new Date('2026-03-31T20:00:00Z'))).toBe(0);
    await checkClientNow(twin.team.scope, hurting, new Date('2026-03-31T20:00:00Z'));
    expect(await openReasons(hurting)).toContainEqual({ kind: 'pain-high', state: 'open', tier: 'now' });
    const before = await allRows(twin.team.teamId);
    await checkClientNow(twin.team.scope, hurting, new Date('2026-03-31T20:00:00Z'));
    expect(await allRows(twin.team.teamId)).toBe(before);
    for (const date of ['2026-04-01', '2026-04-02', '2026-04-03'])
      await checkIn(twin.team, hurting, { date, rungId: twin.rungId });
    await checkClientNow(twin.team.scope, hurting, new Date('2026-04-03T20:00:00Z'));
    expect((await openReasons(hurting)).map((reason) => reason.kind)).toContain('pain-high');
  });
});
