import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { rebuildRollups } from '#lib/db/rollups.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { ownerQuery } from '../support/database.ts';
import { anotherPhone, aPhone, aTraining, NOW, type Phone, TODAY } from './arrange.ts';

let phone: Phone;
let other: Phone;
beforeAll(async () => {
  phone = await aPhone('Here');
  other = await aPhone('Elsewhere');
});

const count = async (table: string, column: string, id: string) =>
  (await ownerQuery<{ n: number }>(`select count(*)::int as n from ${table} where ${column} = $1`, [id]))[0]
    ?.n;

async function kept(id: string) {
  return {
    checkIns: await count('check_in', 'id', id),
    sets: await count('check_in_set', 'check_in_id', id),
    pain: await count('pain_score', 'check_in_id', id),
    signs: await count('danger_sign_told', 'check_in_id', id),
    questions: await count('question', 'check_in_id', id),
    outbox: await count('outbox', 'dedupe_key', id),
  };
}
const NOTHING = { checkIns: 0, sets: 0, pain: 0, signs: 0, questions: 0, outbox: 0 };
const JOINT = { region: 'elbow-inner', side: 'right', moment: 'after', kind: 'joint', usual: false } as const;

describe('one check-in is kept once, whole', () => {
  test('with everything in it, its day and its outbox row', async () => {
    const body = aTraining(phone, {
      date: '2026-11-20',
      pain: [{ ...JOINT, value: 3 }],
      dangerSigns: [{ sign: 'swelling' }],
      question: 'Which ground?',
    });
    const answer = await submitCheckIn(phone.actor, body, NOW);
    expect(answer).toMatchObject({ id: body.id, receivedAt: NOW.toISOString() });
    expect(await kept(body.id)).toEqual({ checkIns: 1, sets: 2, pain: 1, signs: 1, questions: 1, outbox: 1 });
    const [day] = await ownerQuery(
      `select state, session_load_au as load, worst_pain as pain, check_ins as n
       from day_rollup where client_id = $1 and date = '2026-11-20'`,
      [phone.clientId],
    );
    // 7 x 60 minutes
    expect(day).toMatchObject({ state: 'trained', load: 420, pain: 3, n: 1 });
  });

  test('sent twenty times at once: one row, twenty equal answers', async () => {
    const body = aTraining(phone, { date: '2026-11-19', pain: [{ ...JOINT, value: 7 }] });
    const answers = await Promise.all(
      Array.from({ length: 20 }, (_, at) =>
        submitCheckIn(phone.actor, body, new Date(NOW.getTime() + at * 1_000)),
      ),
    );
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
    expect(await kept(body.id)).toMatchObject({ checkIns: 1, sets: 2, pain: 1, outbox: 1 });
  });

  test('the same id with another body is refused and changes nothing', async () => {
    const body = aTraining(phone, { date: '2026-11-18' });
    const first = await submitCheckIn(phone.actor, body, NOW);
    await expect(submitCheckIn(phone.actor, { ...body, effort: 3 }, NOW)).rejects.toMatchObject({
      code: 'conflict',
    });
    const [row] = await ownerQuery('select effort from check_in where id = $1', [body.id]);
    expect(row?.effort).toBe(7);
    expect(await submitCheckIn(phone.actor, body, NOW)).toEqual(first);
  });

  test('an id that a team mate used is refused, and says nothing of theirs', async () => {
    const mate = await anotherPhone(phone.team, 'Mate');
    const body = aTraining(phone, { date: '2026-11-17' });
    await submitCheckIn(phone.actor, body, NOW);
    await expect(submitCheckIn(mate.actor, body, NOW)).rejects.toMatchObject({ code: 'conflict' });
  });

  test('nothing is kept when the last insert fails', async () => {
    const body = aTraining(phone, {
      date: '2026-11-16',
      question: 'Will it fail?',
      pain: [{ ...JOINT, value: 2 }],
    });
    await ownerQuery(`alter table outbox add constraint planted check (dedupe_key <> '${body.id}')`);
    await expect(submitCheckIn(phone.actor, body, NOW)).rejects.toThrow();
    await ownerQuery('alter table outbox drop constraint planted');
    expect(await kept(body.id)).toEqual(NOTHING);
    expect(
      await ownerQuery(`select from day_rollup where client_id = $1 and date = '2026-11-16'`, [
        phone.clientId,
      ]),
    ).toEqual([]);
    await submitCheckIn(phone.actor, body, NOW);
    expect(await kept(body.id)).toMatchObject({ checkIns: 1, questions: 1, outbox: 1 });
  });
});

describe('what the database knows and the schema cannot', () => {
  test.each<[string, () => object, string]>([
    ['a drill of another team', () => ({ rungId: other.rungs.get('H3.4') }), 'sets.0.rungId'],
    ['a drill of nobody', () => ({ rungId: randomUUID() }), 'sets.0.rungId'],
    ['one side of a drill for both hands', () => ({ side: 'left' }), 'sets.0.side'],
    ['both sides of a one-sided drill', () => ({ rungId: phone.rungs.get('H1.2'), value: 3 }), 'sets.0.side'],
    ['-3 s', () => ({ value: -3 }), 'sets.0.value'],
    ['a hold of 90 minutes, not confirmed', () => ({ value: 5_400 }), 'sets.0.value'],
    ['1,001 reps', () => ({ rungId: phone.rungs.get('W1.1'), value: 1_001 }), 'sets.0.value'],
    ['half a rep', () => ({ rungId: phone.rungs.get('W1.1'), value: 7.5 }), 'sets.0.value'],
  ])('%s is refused and nothing is kept', async (_, change, field) => {
    const body = aTraining(phone, { session: null });
    const [set] = body.sets;
    const spoilt = { ...body, sets: [{ ...set, ...change() }] as typeof body.sets };
    await expect(submitCheckIn(phone.actor, spoilt, NOW)).rejects.toMatchObject({
      code: 'invalid',
      fields: { [field]: expect.any(String) },
    });
    expect(await kept(body.id)).toEqual(NOTHING);
  });

  test('a hold of 90 minutes that is confirmed, and a failed attempt of 0', async () => {
    const body = aTraining(phone, { session: null, confirmed: ['long-hold'] });
    const [set] = body.sets;
    const sets = [
      { ...set, value: 5_400 },
      { ...set, index: 2, value: 0 },
    ] as typeof body.sets;
    await submitCheckIn(phone.actor, { ...body, sets }, NOW);
    expect(await kept(body.id)).toMatchObject({ checkIns: 1, sets: 2 });
  });

  test.each([
    ['tomorrow', '2026-11-25', 'Europe/Berlin', 'invalid'],
    ['tomorrow in Berlin, today in Auckland', '2026-11-25', 'Pacific/Auckland', undefined],
    ['200 days ago, not confirmed', '2026-05-08', 'Europe/Berlin', 'invalid'],
    ['more than a year ago', '2025-11-20', 'Europe/Berlin', 'invalid'],
  ])('a training of %s', async (_, date, zone, code) => {
    const sent = submitCheckIn(phone.actor, aTraining(phone, { date, zone, session: null }), NOW);
    if (code) await expect(sent).rejects.toMatchObject({ code, fields: { date: expect.any(String) } });
    else await expect(sent).resolves.toBeDefined();
  });

  test('200 days ago, confirmed', async () => {
    const body = aTraining(phone, { date: '2026-05-08', session: null, confirmed: ['old-date'] });
    await expect(submitCheckIn(phone.actor, body, NOW)).resolves.toBeDefined();
  });

  test('one session a date: the second is refused, another session is not', async () => {
    await submitCheckIn(phone.actor, aTraining(phone, { date: '2026-11-10' }), NOW);
    await expect(
      submitCheckIn(phone.actor, aTraining(phone, { date: '2026-11-10' }), NOW),
    ).rejects.toMatchObject({ code: 'conflict' });
    await submitCheckIn(phone.actor, aTraining(phone, { date: '2026-11-10', session: 'B' }), NOW);
  });
});

describe('a correction', () => {
  test('stands for the original, which is kept; both days are computed again', async () => {
    const wrong = aTraining(phone, { date: '2026-11-08', effort: 9 });
    await submitCheckIn(phone.actor, wrong, NOW);
    const right = aTraining(phone, { date: '2026-11-09', correctsId: wrong.id, effort: 5 });
    await submitCheckIn(phone.actor, right, NOW);
    const rows = await ownerQuery<{ id: string; replaced: boolean }>(
      'select id, replaced_at is not null as replaced from check_in where id = any($1::uuid[]) order by date',
      [[wrong.id, right.id]],
    );
    expect(rows).toEqual([
      { id: wrong.id, replaced: true },
      { id: right.id, replaced: false },
    ]);
    const days = await ownerQuery<{ date: string; load: number }>(
      `select date::text, session_load_au as load from day_rollup
       where client_id = $1 and date between '2026-11-08' and '2026-11-09'`,
      [phone.clientId],
    );
    expect(days).toEqual([{ date: '2026-11-09', load: 300 }]);
    const again = aTraining(phone, { date: '2026-11-09', session: null, correctsId: wrong.id });
    await expect(submitCheckIn(phone.actor, again, NOW)).rejects.toMatchObject({ code: 'conflict' });
  });

  test('of somebody else’s check-in is not there', async () => {
    const theirs = aTraining(other);
    await submitCheckIn(other.actor, theirs, NOW);
    const body = aTraining(phone, { session: null, correctsId: theirs.id });
    await expect(submitCheckIn(phone.actor, body, NOW)).rejects.toMatchObject({ code: 'not-found' });
    expect(await kept(body.id)).toEqual(NOTHING);
  });
});

test('what submits leave behind equals the rollups computed again', async () => {
  const read = () =>
    ownerQuery(
      'select date::text, state, session_load_au, worst_pain, check_ins, facts from day_rollup where client_id = $1 order by date',
      [phone.clientId],
    );
  const before = await read();
  expect(before.length).toBeGreaterThan(5);
  const dates = before.map((row) => String(row.date));
  await withTeamPg(phone.team.scope, (tx) => rebuildRollups(tx, phone.clientId, dates));
  expect(await read()).toEqual(before);
});

describe('what cannot wait for the night', () => {
  const open = (clientId: string) =>
    ownerQuery<{ kind: string; tier: string }>(
      'select kind, tier from reason where client_id = $1 and closed_at is null',
      [clientId],
    );

  test('joint pain of 7 raises with the check-in and answers with a caution', async () => {
    const { actor, clientId } = await anotherPhone(phone.team, 'Hurting');
    const body = aTraining(phone, { pain: [{ ...JOINT, value: 7 }] });
    const answer = await submitCheckIn(actor, body, NOW);
    expect(answer.cautions).toEqual([
      { title: 'Right elbow, inner: 7 of 10', text: expect.stringContaining('licensed clinician') },
    ]);
    expect(await open(clientId)).toEqual([{ kind: 'pain-high', tier: 'now' }]);
    await submitCheckIn(actor, body, NOW);
    expect(await open(clientId)).toHaveLength(1);
  });

  test('a danger sign on a day without training does too', async () => {
    const { actor, clientId } = await anotherPhone(phone.team, 'Dizzy');
    const body = aTraining(phone, {
      kind: 'rest',
      session: null,
      effort: null,
      minutes: null,
      sets: [],
      dangerSigns: [{ sign: 'chest-pain' }],
    });
    const answer = await submitCheckIn(actor, body, NOW);
    expect(answer.cautions[0]?.text).toContain('at once');
    expect(await open(clientId)).toEqual([{ kind: 'danger-sign', tier: 'now' }]);
  });

  test('pain of 5, and sore muscle of 8, do not', async () => {
    const { actor, clientId } = await anotherPhone(phone.team, 'Sore');
    const pain = [
      { ...JOINT, value: 5 },
      { ...JOINT, region: 'back-of-thigh', kind: 'muscle', value: 8 },
    ] as const;
    const answer = await submitCheckIn(actor, aTraining(phone, { pain: [...pain] }), NOW);
    expect(answer.cautions).toEqual([]);
    expect(await open(clientId)).toEqual([]);
  });
});

test('a day without training is a known day of rest', async () => {
  const { actor, clientId } = await anotherPhone(phone.team, 'Resting');
  await submitCheckIn(
    actor,
    aTraining(phone, {
      kind: 'rest',
      session: null,
      effort: null,
      minutes: null,
      sets: [],
      nothingHurts: true,
    }),
    NOW,
  );
  const [day] = await ownerQuery(
    'select date::text, state, session_load_au as load, worst_pain as pain from day_rollup where client_id = $1',
    [clientId],
  );
  expect(day).toEqual({ date: TODAY, state: 'rest', load: 0, pain: 0 });
});
