import { beforeAll, expect, it } from 'vitest';
import type { CheckInBody } from '#lib/schemas/check-in.ts';
import { checkAfterCheckIn } from '#lib/usecases/check-after-check-in.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { aPhone, aTraining, NOW, type Phone } from '#tests/integration/check-in/arrange.ts';
import { ownerQuery } from '#tests/integration/support/database.ts';
import { forgetNights, type Group, makeGroup } from './arrange.ts';
import { FAILURES, unhandledDuring, withFailingCall } from './failing-calls.ts';
import { meaning } from './rows.ts';

// Each call that a night's batch and a submit make to the database fails once, in three ways. Nothing is half-written,
// the next try ends as an undisturbed one, and no rejection is left without somebody who hears it.

const SLOW = 240_000;
let group: Group;
let twin: Group;
const now = new Date('2026-04-01T03:05:00Z');
const night = ({ team, clientIds }: Group) =>
  runNightBatch(team.scope, { localDate: '2026-03-31', clientIds }, now);

/** All that a night writes for a team, in one value: what differs between two teams with the same data is left out. */
async function printOf({ team }: Group): Promise<string> {
  const [row] = await ownerQuery<{ print: string }>(
    `select concat_ws('; ',
       (select string_agg(c.name || (to_jsonb(r) - '{id,team_id,client_id,subject,step,evidence,working}'::text[])::text, ',' order by c.name, r.kind, r.subject_key)
        from reason r join client c on c.id = r.client_id where r.team_id = $1),
       (select string_agg(c.name || r.kind || e.what || e.at || e.night || e.body::text, ',' order by c.name, r.kind, r.subject_key, e.what)
        from reason_event e join reason r on r.id = e.reason_id join client c on c.id = r.client_id where r.team_id = $1),
       (select string_agg(c.name || (to_jsonb(n) - '{team_id,client_id,findings}'::text[])::text, ',' order by c.name)
        from night_client n join client c on c.id = n.client_id where n.team_id = $1),
       (select string_agg((to_jsonb(n) - '{team_id,id,finished_at}'::text[])::text || (finished_at is not null), ',') from night_run n where n.team_id = $1)
     ) as print`,
    [team.teamId],
  );
  return row?.print ?? '';
}

beforeAll(async () => {
  twin = await makeGroup();
  await night(twin);
  group = await makeGroup();
});

it.each(FAILURES)(
  'a night’s batch: %s',
  async (_, failure, every) => {
    const whole = await printOf(twin);
    expect(whole).toContain('pain-high');
    let calls = 0;
    const unhandled = await unhandledDuring(async () => {
      for (; ; calls += every) {
        await forgetNights(group.team.teamId);
        const { failed, result } = await withFailingCall(calls, failure, () => night(group));
        if (!failed) break;
        if (result.status === 'rejected') expect(await printOf(group), `call ${calls}`).toBe('');
        await night(group);
        expect(await printOf(group), `call ${calls}`).toBe(whole);
      }
    });
    expect(unhandled).toEqual([]);
    expect(calls).toBeGreaterThan(15);
  },
  SLOW,
);

const TABLES = [
  'check_in',
  'check_in_set',
  'pain_score',
  'danger_sign_told',
  'question',
  'outbox',
  'day_rollup',
  'reason',
];

/** How many rows of each kind a client has, but for what an outbox row says of its tries. */
async function rowsOf(clientId: string): Promise<Record<string, unknown>> {
  const counts = TABLES.map(
    (table) => `(select count(*)::int from ${table} where client_id = $1) as ${table}`,
  );
  const [row] = await ownerQuery<Record<string, unknown>>(`select ${counts.join(', ')}`, [clientId]);
  return row ?? {};
}

async function forgetCheckIns(clientId: string): Promise<void> {
  const tables = [
    'reason',
    'question',
    'outbox',
    'day_rollup',
    'check_in_set',
    'pain_score',
    'danger_sign_told',
    'check_in',
  ];
  await ownerQuery(tables.map((table) => `delete from ${table} where client_id = '${clientId}'`).join('; '));
}

it.each(FAILURES)(
  'a submit with high pain, a danger sign and a question: %s',
  async (_, failure, every) => {
    const phone = await aPhone('Failing');
    const pain = {
      region: 'elbow-inner',
      side: 'right',
      moment: 'after',
      kind: 'joint',
      usual: false,
      value: 8,
    } as const;
    const body = aTraining(phone, {
      pain: [pain],
      dangerSigns: [{ sign: 'swelling' }],
      question: 'Is it kept?',
    });
    const nothing = await rowsOf(phone.clientId);
    await wholeSubmit(phone, body);
    const whole = await rowsOf(phone.clientId);
    expect(whole).toMatchObject({
      check_in: 1,
      check_in_set: 2,
      pain_score: 1,
      question: 1,
      outbox: 1,
      day_rollup: 1,
    });
    expect(whole.reason).toBeGreaterThan(0);
    let calls = 0;
    const unhandled = await unhandledDuring(async () => {
      for (; ; calls += every) {
        await forgetCheckIns(phone.clientId);
        const { failed, result } = await withFailingCall(calls, failure, () =>
          submitCheckIn(phone.actor, body, NOW),
        );
        if (!failed) break;
        const after = await rowsOf(phone.clientId);
        if (result.status === 'rejected') expect(after, `call ${calls}`).toEqual(nothing);
        // Kept without its reason: a check failed, the rest is whole, and the outbox has the checks run again.
        else expect({ ...after, reason: 0 }, `call ${calls}`).toEqual({ ...whole, reason: 0 });
        await wholeSubmit(phone, body);
        expect(await rowsOf(phone.clientId), `call ${calls}`).toEqual(whole);
      }
    });
    expect(unhandled).toEqual([]);
    expect(calls).toBeGreaterThan(15);
  },
  SLOW,
);

/** Sends it (again), and runs the checks that the outbox asks for. */
async function wholeSubmit(phone: Phone, body: CheckInBody): Promise<void> {
  await submitCheckIn(phone.actor, body, NOW);
  await checkAfterCheckIn({ teamId: phone.team.teamId, clientId: phone.clientId }, NOW);
}

it('rows that the database itself cannot read fail for their client alone', async () => {
  await forgetNights(group.team.teamId);
  const [poisoned = ''] = group.clientIds;
  const planted: Record<string, string> = {
    team_id: 'team_id',
    id: 'id',
    client_id: 'id',
    date: `'2026-01-01'::date + 1 / (case when id = '${poisoned}' then 0 else 1 end)`,
    words: `''`,
    created_at: 'now()',
  };
  const columns = await ownerQuery<{ name: string }>(
    `select column_name as name from information_schema.columns
     where table_name = 'clinician_word' and table_schema = 'public' order by ordinal_position`,
  );
  await ownerQuery('alter table clinician_word rename to clinician_word_kept');
  await ownerQuery(
    `create view clinician_word as select * from clinician_word_kept union all
     select ${columns.map(({ name }) => planted[name] ?? 'null').join()} from client where id = '${poisoned}'`,
  );
  await ownerQuery('grant select on clinician_word to plumbline_app');
  try {
    expect(await night(group)).toEqual({ done: 2, failed: 1 });
  } finally {
    await ownerQuery('drop view clinician_word');
    await ownerQuery('alter table clinician_word_kept rename to clinician_word');
  }
  const [failed] = await ownerQuery(
    'select client_id, attempts, failure from night_client where done_at is null and team_id = $1',
    [group.team.teamId],
  );
  expect(failed).toMatchObject({
    client_id: poisoned,
    attempts: 1,
    failure: expect.stringMatching(/^error/i),
  });
  expect(await night(group)).toEqual({ done: 1, failed: 0 });
  expect(await meaning(group.team.teamId)).toEqual(await meaning(twin.team.teamId));
});
