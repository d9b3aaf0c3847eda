import { expect, it } from 'vitest';
import { checkClientNow } from '#lib/usecases/check-client-now.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { ownerQuery } from '#tests/integration/support/database.ts';
import { checkIn, type Group, makeGroup } from './arrange.ts';

const NIGHT = '2026-03-31';
const now = new Date('2026-04-01T03:05:00Z');

async function keep(group: Group, version: number, clientId: string | null, values: object) {
  await ownerQuery(
    `insert into team_settings (team_id, version, client_id, values, by_id, why) values ($1, $2, $3, $4, $5, 'test')`,
    [group.team.teamId, version, clientId, values, group.team.memberId],
  );
}

const openOf = (clientId: string) =>
  ownerQuery<{ kind: string; version: number }>(
    'select kind, settings_version as version from reason where client_id = $1 and closed_at is null order by kind',
    [clientId],
  );
const kindsOf = async (clientId: string) => (await openOf(clientId)).map(({ kind }) => kind);

it('a night goes by the defaults, the team’s numbers over them, a client’s own over those, and writes down which', async () => {
  const group = await makeGroup();
  const [fine = '', , silent = ''] = group.clientIds;
  await keep(group, 1, null, { 'goneQuiet.watchDays': 40, 'goneQuiet.actDays': 40 }); // silent for 21 days
  await keep(group, 2, fine, { 'noLetUp.restDays': 12, 'unheard.of': 3 });
  expect(
    await runNightBatch(group.team.scope, { localDate: NIGHT, clientIds: group.clientIds }, now),
  ).toEqual({
    done: 3,
    failed: 0,
  });
  expect(await kindsOf(silent)).not.toContain('gone-quiet');
  const ledger = await ownerQuery<{ id: string; version: number }>(
    'select client_id as id, settings_version as version from night_client where team_id = $1',
    [group.team.teamId],
  );
  expect(Object.fromEntries(ledger.map(({ id, version }) => [id, version]))).toEqual({
    ...Object.fromEntries(group.clientIds.map((id) => [id, 1])),
    [fine]: 2,
  });
});

it('a client’s own numbers are used for that client only, and the newest version counts', async () => {
  const group = await makeGroup();
  const [, , silent = ''] = group.clientIds;
  await keep(group, 1, silent, { 'goneQuiet.watchDays': 40, 'goneQuiet.actDays': 40 });
  await keep(group, 2, silent, { 'goneQuiet.watchDays': 9 });
  await keep(group, 3, null, { 'painHigh.from': 6 });
  await runNightBatch(group.team.scope, { localDate: NIGHT, clientIds: group.clientIds }, now);
  expect(await openOf(silent)).toContainEqual({ kind: 'gone-quiet', version: 3 });
});

it('what a check-in raises at once goes by the same numbers', async () => {
  const group = await makeGroup();
  const [fine = ''] = group.clientIds;
  await checkIn(group.team, fine, { date: '2026-04-02', rungId: group.rungId, pain: 5 });
  const evening = new Date('2026-04-02T18:30:00Z');
  await checkClientNow(group.team.scope, fine, evening);
  expect(await kindsOf(fine)).not.toContain('pain-high');
  await keep(group, 1, fine, { 'painHigh.from': 5, 'grade.stop': 5 });
  await checkClientNow(group.team.scope, fine, evening);
  expect(await openOf(fine)).toContainEqual({ kind: 'pain-high', version: 1 });
});
