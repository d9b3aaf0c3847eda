import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import type { AppError } from '#lib/errors.ts';
import { changeViews } from '#lib/usecases/change-views.ts';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { loadBoardChanges } from '#lib/usecases/load-board-changes.ts';
import { loadFold } from '#lib/usecases/load-fold.ts';
import { loadMoreRows } from '#lib/usecases/load-more-rows.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { leadOf, NOW, openReason, waitingQuestion } from './board-rows.ts';

let team: TestTeam;
let other: TestTeam;

beforeEach(async () => {
  team = await makeTestTeam('Low Wall');
  other = await makeTestTeam('High Wall');
});

const client = async (name: string, of = team) => (await makeTestClient(of, { name })).clientId;
const board = () => loadBoard(leadOf(team), {}, NOW);
const night = (over: { finished?: boolean; date?: string } = {}) =>
  ownerQuery(
    `insert into night_run (team_id, local_date, started_at, finished_at, clients_due, clients_done, clients_failed, rules_version)
     values ($1, $2, '2026-11-25T02:10:00Z', $3, 2, 1, 1, '1')`,
    [team.teamId, over.date ?? '2026-11-24', over.finished === false ? null : '2026-11-25T02:12:00Z'],
  );

describe('the board', () => {
  it('has a row for a question that waits alone, with its words and nothing to close', async () => {
    const id = await client('Ada');
    const questionId = await waitingQuestion(team, id);
    expect((await board()).groups[0]?.rows[0]).toMatchObject({
      name: 'Ada',
      onlyQuestion: true,
      questions: [{ id: questionId, text: 'Bars or floor?' }],
      since: { said: 'Sun 22 Nov' },
    });
  });

  it('counts who was not reached and who failed, once the night was due where they live', async () => {
    const [done, failed, missed] = [await client('Done'), await client('Failed'), await client('Missed')];
    const { clientId: later } = await makeTestClient(team, { name: 'Later', zone: 'Pacific/Honolulu' });
    await night();
    for (const [id, at, bad] of [
      [done, NOW, null],
      [failed, null, NOW],
    ] as const) {
      await ownerQuery(
        `insert into night_client (team_id, client_id, local_date, done_at, failed_at, rules_version) values ($1, $2, '2026-11-24', $3, $4, '1')`,
        [team.teamId, id, at, bad],
      );
    }
    const found = await board();
    expect(found.notChecked.map((one) => [one.clientId, one.words])).toEqual([
      [failed, 'the last night failed for this client'],
      [missed, 'the last night has not reached this client'],
    ]);
    // In Honolulu the day of this night is not over yet.
    expect(found.nothingNew.map((one) => one.clientId).toSorted()).toEqual([done, later].toSorted());
  });

  it.each([
    ['2026-11-24', false],
    ['2026-11-23', true],
  ])('the last night is of %s: the next one is late: %s', async (date, late) => {
    await client('Ada');
    await night({ date });
    const found = await board();
    expect([found.night?.late, found.state]).toEqual([late, late ? 'night-running' : 'nothing-new']);
  });

  it('gets to know who joined in the last 28 days', async () => {
    const id = await client('New');
    await ownerQuery(`update client set joined_at = '2026-11-15T10:00:00Z' where id = $1`, [id]);
    for (const date of ['2026-11-16', '2026-11-18', '2026-11-24'])
      await ownerQuery(
        `insert into day_rollup (team_id, client_id, date, state, session_load_au, worst_pain, check_ins, facts)
         values ($1, $2, $3, 'trained', 300, 0, 1, '[]')`,
        [team.teamId, id, date],
      );
    expect((await board()).gettingToKnowWords).toBe('Getting to know 1 client: 4 of 28 days');
  });
});

describe('parts of it that follow later', () => {
  it('gives the rows behind one, in order, and only of the team', async () => {
    const names = Array.from({ length: 56 }, (_, index) => `Client ${String(index).padStart(2, '0')}`);
    for (const name of names) await openReason(team, await client(name));
    await openReason(other, await client('Stranger', other));
    const group = (await board()).groups[0];
    expect([group?.rows.length, group?.more, group?.count]).toEqual([6, 50, 56]);
    const after = group?.rows.at(-1)?.clientId;
    const rest = await loadMoreRows(leadOf(team), { filter: {}, of: 'this-week', after }, NOW);
    expect([...(group?.rows ?? []), ...rest.rows].map((row) => row.name)).toEqual(names);
    expect(rest.more).toBe(0);
    const theirs = await loadMoreRows(leadOf(other), { filter: {}, of: 'this-week', after }, NOW);
    expect(theirs.rows.map((row) => row.name)).toEqual(['Stranger']);
  });

  it('gives the people of a fold, under the filter', async () => {
    await client('Ada');
    await client('Theirs', other);
    const { list } = await loadFold(leadOf(team), { filter: {}, fold: 'nothingNew' }, NOW);
    expect(list.map((one) => [one.name, one.words])).toEqual([['Ada', 'no check-in yet']]);
  });

  it('says what is different, and nothing where nothing is', async () => {
    const id = await client('Ada');
    const ask = (stamp: string) => loadBoardChanges(leadOf(team), { filter: {}, stamp }, NOW);
    const first = await ask('');
    expect(first.rows).toEqual([]);
    expect(await ask(first.stamp)).toEqual({ stamp: first.stamp });
    await openReason(team, id, 'pain-high');
    expect((await ask(first.stamp)).rows).toMatchObject([{ clientId: id, name: 'Ada', tier: 'now' }]);
    await openReason(other, await client('Theirs', other), 'pain-high');
    const second = await ask('');
    expect(second.rows).toHaveLength(1);
  });
});

describe('kept views', () => {
  const keep = (name: string, query: string, of = team) =>
    changeViews(leadOf(of), { act: 'keep', name, query });
  const refused = (promise: Promise<unknown>) =>
    promise.then(
      () => expect.fail('was not refused'),
      (error: AppError) => [error.code, ...Object.keys(error.fields)],
    );

  it('are kept in one spelling, renamed, deleted, and are each member’s own', async () => {
    const { views } = await keep('Planche today', '?q=&group=today&skill=Planche&evil=1');
    expect(views).toEqual([
      { id: expect.any(String), name: 'Planche today', query: 'skill=Planche&group=today' },
    ]);
    const id = views[0]?.id ?? '';
    expect((await board()).views).toEqual(views);
    expect((await loadBoard(leadOf(other), {}, NOW)).views).toEqual([]);
    expect(await refused(changeViews(leadOf(other), { act: 'delete', id }))).toEqual(['not-found']);
    expect(await refused(changeViews(leadOf(other), { act: 'rename', id, name: 'Mine' }))).toEqual([
      'not-found',
    ]);
    await changeViews(leadOf(team), { act: 'rename', id, name: 'Planche' });
    expect((await board()).views.map((view) => view.name)).toEqual(['Planche']);
    expect((await changeViews(leadOf(team), { act: 'delete', id })).views).toEqual([]);
  });

  it('take the newer filter under the same name, and refuse what makes no view', async () => {
    await keep('One', 'group=now');
    const { views } = await keep('One', 'group=today');
    expect(views.map((view) => view.query)).toEqual(['group=today']);
    expect(await refused(keep('Two', 'evil=1'))).toEqual(['invalid', 'query']);
    const second = (await keep('Two', 'group=now')).views.find((view) => view.name === 'Two');
    const rename = { act: 'rename' as const, id: second?.id ?? '', name: 'One' };
    expect(await refused(changeViews(leadOf(team), rename))).toEqual(['invalid', 'name']);
    expect(await refused(changeViews(leadOf(team), { act: 'delete', id: randomUUID() }))).toEqual([
      'not-found',
    ]);
  });
});
