import { beforeEach, expect, it } from 'vitest';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { loadNights } from '#lib/usecases/load-nights.ts';
import { withdrawConsent } from '#lib/usecases/rights/withdraw-consent.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { anotherPhone } from '../check-in/arrange.ts';
import { makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { leadOf } from '../team/arrange.ts';

// The coach and one client live in Berlin. Where the other one lives the same night is due eleven hours later.
const MORNING = new Date('2026-11-25T06:00:00Z');
const AFTERNOON = new Date('2026-11-25T13:30:00Z');
const HAWAII = 'Pacific/Honolulu';
let team: TestTeam;
let near: Awaited<ReturnType<typeof anotherPhone>>;
let far: typeof near;
beforeEach(async () => {
  team = await makeTestTeam('Two Shores');
  [near, far] = [await anotherPhone(team, 'Near'), await anotherPhone(team, 'Far')];
  await ownerQuery('update client set zone = $2 where id = $1', [far.clientId, HAWAII]);
});

const run = (clientIds: string[], at: Date) =>
  runNightBatch(team.scope, { localDate: '2026-11-24', clientIds }, at);
const board = (at: Date) => loadBoard(leadOf(team), {}, at);
const newest = async (at: Date) => (await loadNights(leadOf(team), null, at)).lines[0];

it('a night that has not come to a zone is said as such, and the morning is not called unfinished', async () => {
  await run([near.clientId], MORNING);
  const seen = await board(MORNING);
  expect(seen.night).toMatchObject({ due: 2, done: 1, failed: 0, later: 1, endedAt: null, late: false });
  expect([seen.state, seen.notChecked]).toEqual(['nothing-new', []]);
  expect(await newest(MORNING)).toMatchObject({
    took: 'goes on',
    checked: '1 of 2; 1 to come at 03:00 where they live',
  });
});

it('once it is due there and has not run, the night is not finished', async () => {
  await run([near.clientId], MORNING);
  const seen = await board(AFTERNOON);
  expect(seen.night).toMatchObject({ done: 1, later: 0 });
  expect(seen.state).toBe('night-running');
  expect(seen.notChecked.map(({ words }) => words)).toEqual(['the last night has not reached this client']);
  expect(await newest(AFTERNOON)).toMatchObject({ took: 'not finished', checked: '1 of 2' });

  await run([far.clientId], AFTERNOON);
  expect((await board(AFTERNOON)).night).toMatchObject({ done: 2, later: 0, endedAt: '14:30' });
});

it('who took their consent back keeps no night from being finished', async () => {
  await withdrawConsent(far.actor, new Date('2026-11-24T12:00:00Z'));
  await run([near.clientId], MORNING);
  expect((await board(MORNING)).night).toMatchObject({ due: 1, done: 1, later: 0, endedAt: '07:00' });
  expect((await board(AFTERNOON)).notChecked.map(({ words }) => words)).toEqual([
    'took the consent to checks back: no night until it is given again',
  ]);
});
