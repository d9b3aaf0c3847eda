import { beforeAll, expect, test } from 'vitest';
import { zoneSchema } from '#lib/schemas/zone.ts';
import { deleteCheckIn } from '#lib/usecases/delete-check-in.ts';
import { followZone } from '#lib/usecases/follow-zone.ts';
import { loadEarlier } from '#lib/usecases/load-earlier.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { ownerQuery } from '../support/database.ts';
import { anotherPhone, aPhone, aTraining, NOW, type Phone, TODAY } from './arrange.ts';

let phone: Phone;
beforeAll(async () => {
  phone = await aPhone('Travelling');
});

test('the zone follows the phone, once; the training day and its zone stay as told', async () => {
  const { actor, clientId } = await anotherPhone(phone.team, 'Far');
  await submitCheckIn(actor, aTraining(phone), NOW);
  await followZone(actor, 'Pacific/Auckland');
  await followZone(actor, 'Pacific/Auckland');
  expect((await loadToday(actor, NOW)).date).toBe('2026-11-25'); // 19:00 in Greenwich is morning there
  expect(await ownerQuery('select date::text, zone from check_in where client_id = $1', [clientId])).toEqual([
    { date: TODAY, zone: 'Europe/Berlin' },
  ]);
  expect(await ownerQuery('select action, fields from audit where client_id = $1', [clientId])).toEqual([
    { action: 'zone-followed', fields: ['zone'] },
  ]);
});

test('a zone that does not exist is refused', () => {
  expect(zoneSchema.safeParse({ zone: 'Europe/Atlantis' }).error?.issues[0]?.path).toEqual(['zone']);
});

test('earlier check-ins: two weeks, deleted ones in their place, nobody else’s', async () => {
  const { actor } = await anotherPhone(phone.team, 'Earlier');
  const mate = await anotherPhone(phone.team, 'Mate of earlier');
  const dates = ['2026-11-10', '2026-11-11', '2026-11-20', TODAY];
  const bodies = dates.map((date) => aTraining(phone, { date }));
  for (const body of bodies) await submitCheckIn(actor, body, NOW);
  await submitCheckIn(mate.actor, aTraining(phone), NOW);
  await deleteCheckIn(actor, bodies[2]?.id ?? '', NOW);
  const { rows } = await loadEarlier(actor, NOW);
  expect(rows.map((row) => [row.date, row.deletedAt])).toEqual([
    [TODAY, null],
    ['2026-11-20', NOW.toISOString()],
    ['2026-11-11', null],
  ]);
});

test('Today offers what was trained of late beyond the plan, and asks about the morning after pain', async () => {
  const { actor } = await anotherPhone(phone.team, 'Morning');
  const pain = [
    { region: 'elbow-inner', side: 'right', moment: 'after', kind: 'joint', usual: false, value: 4 },
  ] as const;
  await submitCheckIn(actor, aTraining(phone, { date: '2026-11-23', pain: [...pain] }), NOW);
  const today = await loadToday(actor, NOW);
  expect(today.otherDrills).toMatchObject([{ rungId: phone.rungs.get('H3.4'), lastDone: '2026-11-23' }]);
  expect(today.morning).toMatchObject({ why: 'pain', places: [{ region: 'elbow-inner', value: 4 }] });
});
