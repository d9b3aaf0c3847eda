import { expect, test } from 'vitest';
import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { copyLibrary } from '#lib/db/library.ts';
import { rebuildRollups } from '#lib/db/rollups.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { boardFilter } from '#lib/schemas/board.ts';
import { startAsked } from '#lib/schemas/start-tests.ts';
import { changeStanding } from '#lib/usecases/change-standing.ts';
import { loadClient } from '#lib/usecases/load-client.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { readBoard } from '#lib/usecases/read-board.ts';
import { loadStart } from '#lib/usecases/start/load-start.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';
import { leadOf } from '../clients/support.ts';

// Somebody who trained here, left for 100 days and is back: starts as new, on the phone, for the coach and on the board.
const TODAY = '2026-11-25';
const NOW = new Date(`${TODAY}T07:00:00.000Z`);

async function arranged(away: number) {
  const team = await makeTestTeam();
  const { clientId, userId } = await makeTestClient(team, { name: 'Ximena', standing: 'paused' });
  await ownerQuery(`update client set joined_at = '2025-01-10T10:00:00Z' where id = $1`, [clientId]);
  const ids = await withTeamPg(team.scope, (tx) => copyLibrary(tx));
  const trained = async (date: string) => {
    await ownerQuery(
      `insert into check_in (team_id, client_id, date, zone, sent_at, kind, body_hash, effort, minutes, nothing_hurts)
       values ($1, $2, $3, 'Europe/Berlin', $4, 'training', 'x', 6, 50, true)`,
      [team.teamId, clientId, date, `${date}T18:00:00Z`],
    );
    await withTeamPg(team.scope, (tx) => rebuildRollups(tx, clientId, [date]));
  };
  const last = addDays(TODAY, -away - 1);
  for (const days of [0, 2, 5, 9]) await trained(addDays(last, -days));
  await ownerQuery(
    `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date) values ($1, $2, $3, $4, 'both', '2025-06-01')`,
    [team.teamId, clientId, ids.ladderIds.get('H2'), ids.rungIds.get('H2.8')],
  );
  const lead = leadOf(team);
  const phone: Actor = { ...lead, userId, role: 'client', memberId: null, clientId };
  return { lead, phone, clientId, trained };
}

const gettingToKnow = async (lead: Actor) =>
  (
    await readBoard(lead, boardFilter.parse({}), NOW, [undefined, () => ({ from: 0, to: 0 })])
  ).board.gettingToKnow.map(({ name }) => name);

test('after twelve weeks away everything begins anew, and nothing is lost', async () => {
  const { lead, phone, clientId, trained } = await arranged(99);
  const { line } = await changeStanding(lead, { clientId, standing: 'back' }, NOW);
  expect(line).toContain('starting as new: ask start tests and place every ladder afresh');
  expect((await loadToday(phone, NOW)).backAsNew).toBe(true);
  expect((await loadStart(lead, clientId, startAsked.parse({}), NOW))?.startsAs).toBe('back-as-new');
  expect((await loadClient(lead, clientId, NOW))?.page.startsAnew).toBe(true);
  await trained(TODAY);
  expect((await loadToday(phone, NOW)).backAsNew).toBe(true);
  const page = (await loadClient(lead, clientId, NOW))?.page;
  expect(page?.startsAnew).toBe(true);
  expect(page?.timeline.length).toBe(5);
  expect(await gettingToKnow(lead)).toEqual(['Ximena']);
});

test('the phone greets for a week from the first check-in after 84 days on', async () => {
  const { lead, phone, clientId, trained } = await arranged(84);
  const greeted = async (days: number) =>
    (await loadToday(phone, new Date(`${addDays(TODAY, days)}T07:00:00.000Z`))).backAsNew;
  expect(await greeted(0)).toBe(false); // the coach has not said that they are back
  await changeStanding(lead, { clientId, standing: 'back' }, NOW);
  expect(await greeted(-1)).toBe(false);
  expect(await greeted(0)).toBe(true);
  await trained(TODAY);
  expect(await greeted(6)).toBe(true);
  expect(await greeted(7)).toBe(false);
});

test('a team’s own number decides, and what is longer ago than the checks look back is seen', async () => {
  const { lead, phone, clientId } = await arranged(240);
  await changeStanding(lead, { clientId, standing: 'back' }, NOW);
  expect((await loadStart(lead, clientId, startAsked.parse({}), NOW))?.startsAs).toBe('back-as-new');
  expect((await loadToday(phone, NOW)).backAsNew).toBe(true);
  await ownerQuery(
    `insert into team_settings (team_id, version, values, by_id, why)
     select team_id, 1, '{"day.newStartDays": 300}', $2, 'test' from client where id = $1`,
    [clientId, lead.memberId],
  );
  expect((await loadToday(phone, NOW)).backAsNew).toBe(false);
});

test('after less it goes on as before', async () => {
  const { lead, phone, clientId, trained } = await arranged(60);
  await changeStanding(lead, { clientId, standing: 'back' }, NOW);
  await trained(TODAY);
  expect((await loadToday(phone, NOW)).backAsNew).toBe(false);
  expect((await loadStart(lead, clientId, startAsked.parse({}), NOW))?.startsAs).toBe('known');
  expect((await loadClient(lead, clientId, NOW))?.page.startsAnew).toBe(false);
  expect(await gettingToKnow(lead)).toEqual([]);
});
