import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { openRecord } from '#lib/db/records.ts';
import { allRows } from '#lib/handover/all-rows.ts';
import { deleteCheckIn } from '#lib/usecases/delete-check-in.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { ownerQuery } from '../support/database.ts';
import { anotherPhone, aPhone, aTraining, NOW, type Phone, TODAY } from './arrange.ts';

let phone: Phone;
beforeAll(async () => {
  phone = await aPhone('Deleting');
});
const JOINT = { region: 'elbow-inner', side: 'right', moment: 'after', kind: 'joint', usual: false } as const;
const daysOf = (clientId: string) =>
  ownerQuery<{ date: string; n: number }>(
    'select date::text, check_ins as n from day_rollup where client_id = $1 order by date',
    [clientId],
  );

test('it counts no more, the row and all in it stay for the record, one audit line and one job', async () => {
  const { actor, clientId } = await anotherPhone(phone.team, 'One');
  const [first, second] = [aTraining(phone), aTraining(phone, { session: 'B', date: '2026-11-23' })];
  await submitCheckIn(actor, first, NOW);
  await submitCheckIn(actor, second, NOW);
  await deleteCheckIn(actor, first.id, NOW);
  await deleteCheckIn(actor, first.id, NOW);

  expect(await daysOf(clientId)).toEqual([{ date: '2026-11-23', n: 1 }]);
  const record = await withTeamPg(phone.team.scope, async (tx) => {
    const { checkIns, sets } = openRecord(tx, clientId);
    return { checkIns: await allRows(checkIns), sets: await allRows(sets) };
  });
  expect(record.checkIns).toMatchObject([
    { id: second.id, deletedAt: null },
    { id: first.id, deletedAt: NOW.toISOString() },
  ]);
  expect(record.sets.filter((set) => set.checkInId === first.id).map((set) => set.replaced)).toEqual([
    true,
    true,
  ]);
  expect(
    await ownerQuery('select action, actor_role as role from audit where object_id = $1', [first.id]),
  ).toEqual([{ action: 'check-in-deleted', role: 'client' }]);
  const jobs = await ownerQuery('select dedupe_key as key from outbox where dedupe_key like $1 order by 1', [
    `${first.id}%`,
  ]);
  expect(jobs).toEqual([{ key: first.id }, { key: `${first.id} deleted` }]);
});

test('the session of that day can be told again; the old id stays deleted however often it is sent', async () => {
  const { actor, clientId } = await anotherPhone(phone.team, 'Again');
  const wrong = aTraining(phone);
  await submitCheckIn(actor, wrong, NOW);
  await deleteCheckIn(actor, wrong.id, NOW);
  await submitCheckIn(actor, wrong, NOW);
  expect(await daysOf(clientId)).toEqual([]);
  await submitCheckIn(actor, aTraining(phone), NOW);
  expect(await daysOf(clientId)).toEqual([{ date: TODAY, n: 1 }]);
});

test('a corrected one is refused, its correction goes and the original stays replaced', async () => {
  const { actor, clientId } = await anotherPhone(phone.team, 'Corrected');
  const wrong = aTraining(phone);
  const right = aTraining(phone, { correctsId: wrong.id });
  await submitCheckIn(actor, wrong, NOW);
  await submitCheckIn(actor, right, NOW);
  await expect(deleteCheckIn(actor, wrong.id, NOW)).rejects.toMatchObject({ code: 'conflict' });
  await deleteCheckIn(actor, right.id, NOW);
  expect(await daysOf(clientId)).toEqual([]);
});

test('nobody else’s, and nothing that is not there', async () => {
  const mine = await anotherPhone(phone.team, 'Mine');
  const mate = await anotherPhone(phone.team, 'Mate');
  const elsewhere = await aPhone('Other team');
  const body = aTraining(phone);
  await submitCheckIn(mine.actor, body, NOW);
  for (const [actor, id] of [
    [mate.actor, body.id],
    [elsewhere.actor, body.id],
    [mine.actor, randomUUID()],
  ] as const) {
    await expect(deleteCheckIn(actor, id, NOW)).rejects.toMatchObject({ code: 'not-found' });
  }
  expect(await daysOf(mine.clientId)).toEqual([{ date: TODAY, n: 1 }]);
});

test('a reason born of it closes as an entry corrected', async () => {
  const { actor, clientId } = await anotherPhone(phone.team, 'Slip');
  const slip = aTraining(phone, { pain: [{ ...JOINT, value: 8 }] });
  await submitCheckIn(actor, slip, NOW);
  const reasons = () =>
    ownerQuery<{ kind: string; state: string; why: string | null }>(
      `select kind, state, closed_why as why from reason where client_id = $1 and kind = 'pain-high'`,
      [clientId],
    );
  expect(await reasons()).toMatchObject([{ kind: 'pain-high', state: 'open' }]);
  await deleteCheckIn(actor, slip.id, NOW);
  const night = { localDate: TODAY, clientIds: [clientId] };
  await runNightBatch(phone.team.scope, night, new Date('2026-11-25T04:00:00.000Z'));
  expect(await reasons()).toEqual([{ kind: 'pain-high', state: 'closed', why: 'entry corrected' }]);
});
