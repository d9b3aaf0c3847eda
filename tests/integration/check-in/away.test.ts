import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { buildView } from '#lib/checks/view.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { absenceSchema } from '#lib/schemas/absence.ts';
import { sayAbsence } from '#lib/usecases/say-absence.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { ownerQuery } from '../support/database.ts';
import { anotherPhone, aPhone, aTraining, NOW, type Phone, TODAY } from './arrange.ts';

let phone: Phone;
beforeAll(async () => {
  phone = await aPhone('Away');
});

const absencesOf = (clientId: string) =>
  ownerQuery('select from_date::text as "from", to_date::text as "to" from absence where client_id = $1', [
    clientId,
  ]);

async function statesOf(clientId: string): Promise<Record<string, string>> {
  const history = await withTeamPg(phone.team.scope, async (tx) =>
    (await loadHistories(tx, [clientId], { from: '2026-11-01', asOf: TODAY })).get(clientId),
  );
  if (!history) throw new Error('no history');
  const { days } = buildView(history, { date: TODAY, instant: NOW.toISOString() });
  return Object.fromEntries(days.map((day) => [day.date, day.state]));
}

test('illness from a day on counts as known days, and ends with the next training', async () => {
  const { actor, clientId } = await anotherPhone(phone.team, 'Ill');
  await submitCheckIn(actor, aTraining(phone, { date: '2026-11-15' }), NOW);
  const ill = absenceSchema.parse({ id: randomUUID(), kind: 'illness', from: '2026-11-16' });
  await sayAbsence(actor, ill, NOW);
  expect((await statesOf(clientId))[TODAY]).toBe('off');
  await submitCheckIn(actor, aTraining(phone, { date: '2026-11-21' }), NOW);
  expect(await absencesOf(clientId)).toEqual([{ from: '2026-11-16', to: '2026-11-20' }]);
  expect(await statesOf(clientId)).toMatchObject({
    '2026-11-20': 'off',
    '2026-11-21': 'trained',
    '2026-11-22': 'unknown',
  });
  await sayAbsence(actor, ill, NOW); // the answer was lost on the way: said again, it is the same one
});

test('a day without training, training from before, and days with a known end change no absence', async () => {
  const { actor, clientId } = await anotherPhone(phone.team, 'Still away');
  const away = (from: string, to: string | null) =>
    sayAbsence(actor, absenceSchema.parse({ id: randomUUID(), kind: 'holiday', from, to }), NOW);
  await away('2026-11-20', null);
  await away('2026-11-01', '2026-11-23');
  const rest = { kind: 'rest', session: null, effort: null, minutes: null, sets: [] } as const;
  await submitCheckIn(actor, aTraining(phone, { ...rest, sets: [], nothingHurts: true }), NOW);
  await submitCheckIn(actor, aTraining(phone, { date: '2026-11-19' }), NOW);
  expect(await absencesOf(clientId)).toEqual(
    expect.arrayContaining([
      { from: '2026-11-20', to: null },
      { from: '2026-11-01', to: '2026-11-23' },
    ]),
  );
});

test('training on the first day away leaves that one day', async () => {
  const { actor, clientId } = await anotherPhone(phone.team, 'First day');
  await sayAbsence(actor, absenceSchema.parse({ id: randomUUID(), kind: 'pause', from: TODAY }), NOW);
  await submitCheckIn(actor, aTraining(phone), NOW);
  expect(await absencesOf(clientId)).toEqual([{ from: TODAY, to: TODAY }]);
});
