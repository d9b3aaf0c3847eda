import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { parseWith } from '#lib/edge/parse-with.ts';
import { AppError } from '#lib/errors.ts';
import { recipientFilter, wordsFirstSchema } from '#lib/schemas/reply.ts';
import { keepReply } from '#lib/usecases/keep-reply.ts';
import { loadRecipients } from '#lib/usecases/load-recipients.ts';
import { markSeen } from '#lib/usecases/mark-seen.ts';
import { undoAct } from '#lib/usecases/undo-act.ts';
import { writeFirst } from '#lib/usecases/write-first.ts';
import { leadOf, NOW, openReason } from '../board/board-rows.ts';
import { copyLibraryInto } from '../clients/support.ts';
import { idOf } from '../library/arrange.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';

let team: TestTeam;
let ids: string[];
const named = (name: string, over: { standing?: string } = {}) =>
  makeTestClient(team, { name, ...over }).then((made) => made.clientId);
beforeEach(async () => {
  team = await makeTestTeam();
  ids = [await named('Ana Reis'), await named('Bo Lind'), await named('Cy Okoro')];
  for (const id of ids) {
    await ownerQuery('update client set email = $2 where id = $1', [id, `${id}@client.example`]);
    await ownerQuery('insert into client_notice (team_id, client_id, mail) values ($1, $2, true)', [
      team.teamId,
      id,
    ]);
  }
});
const write = (body: object, of = team) =>
  writeFirst(leadOf(of), parseWith(wordsFirstSchema, { actId: randomUUID(), clientIds: ids, ...body }), NOW);
const refusal = (promise: Promise<unknown>): Promise<AppError> =>
  promise.then(
    () => expect.fail('was not refused'),
    (error: unknown) => (error instanceof AppError ? error : expect.fail(String(error))),
  );
const words = () =>
  ownerQuery<{ name: string; text: string; act: string }>(
    `select c.name, w.text, w.act_id as act from coach_word w join client c on c.id = w.client_id
     where w.team_id = $1 order by c.name`,
    [team.teamId],
  );
const mails = () =>
  ownerQuery(`select client_id from outbox where team_id = $1 and kind = 'mail' and sent_at is null`, [
    team.teamId,
  ]);

describe('words first', () => {
  it('go to each as their own, with the own name, and each is told', async () => {
    const actId = randomUUID();
    const done = await write({ actId, text: '[name], the camp is in May.' });
    expect(done).toEqual({ actId, line: 'Sent to 3 clients, each as words of their own.', folds: false });
    expect(await words()).toEqual([
      { name: 'Ana Reis', text: 'Ana Reis, the camp is in May.', act: actId },
      { name: 'Bo Lind', text: 'Bo Lind, the camp is in May.', act: actId },
      { name: 'Cy Okoro', text: 'Cy Okoro, the camp is in May.', act: actId },
    ]);
    expect(await mails()).toHaveLength(3);
    const again = await write({ actId, text: '[name], the camp is in May.' });
    expect(again).toEqual(done);
    expect(await words()).toHaveLength(3);
  });

  it('are taken back as a whole: unsent notices stay here, what was read is said', async () => {
    const actId = randomUUID();
    await write({ actId, text: 'Rest tomorrow.' });
    await ownerQuery(`update outbox set sent_at = now() where client_id = $1`, [ids[0]]);
    await ownerQuery('update coach_word set read_at = now() where client_id = $1', [ids[1]]);
    expect(await undoAct(leadOf(team), { actId }, NOW)).toEqual({
      clientId: null,
      line: 'Taken back from 3 clients. Read already by Bo Lind.',
    });
    expect([await words(), await mails()]).toEqual([[], []]);
    expect((await refusal(undoAct(leadOf(team), { actId }, NOW))).code).toBe('not-found');
  });

  it('to one client say the name', async () => {
    const done = await write({ clientIds: [ids[2]], text: 'How is the wrist?' });
    expect(done.line).toBe('Sent to Cy Okoro.');
    expect(await undoAct(leadOf(team), { actId: done.actId }, NOW)).toEqual({
      clientId: ids[2],
      line: 'Taken back. Nobody had read it yet.',
    });
  });

  it('are refused as a whole, by name, when one has left; nobody of another team is reached', async () => {
    const left = await named('Dag Holm', { standing: 'left' });
    const error = await refusal(write({ clientIds: [...ids, left], text: 'Hello.' }));
    expect(error.fields).toEqual({
      clientIds: 'Dag Holm has left and is not written to: take the tick away',
    });
    const other = await makeTestTeam('Other');
    expect((await refusal(write({ text: 'Hello.' }, other))).code).toBe('not-found');
    expect(await words()).toEqual([]);
  });

  it('from a kept reply are refused with their open fields; [name] is none of them', async () => {
    const { id } = await keepReply(leadOf(team), { name: 'Camp', text: '[name], come on [date].' }, NOW);
    const error = await refusal(write({ text: '[name], come on [date].', keptReplyId: id }));
    expect(error.fields.text).toContain('[date] is not filled in yet');
    expect(await words()).toEqual([]);
    await write({ text: '[name], come on 3 May.', keptReplyId: id });
    expect((await words())[0]?.text).toBe('Ana Reis, come on 3 May.');
  });
});

describe('whom to write to', () => {
  const shown = async (filter: object) =>
    (await loadRecipients(leadOf(team), recipientFilter.parse(filter), NOW)).clients.map(({ name }) => name);
  it('by standing, reason, name, coach and days without a look; never one who left', async () => {
    await named('Dag Holm', { standing: 'left' });
    const paused = await named('Eve Brook', { standing: 'paused' });
    await openReason(team, paused, 'stalled');
    await markSeen(leadOf(team), { clientId: ids[0] ?? '' }, NOW);
    expect(await shown({})).toEqual(['Ana Reis', 'Bo Lind', 'Cy Okoro', 'Eve Brook']);
    expect(await shown({ standing: 'paused' })).toEqual(['Eve Brook']);
    expect(await shown({ standing: 'left' })).toEqual([]);
    expect(await shown({ reason: 'stalled' })).toEqual(['Eve Brook']);
    expect(await shown({ q: 'LÍND' })).toEqual(['Bo Lind']);
    expect(await shown({ coach: 'mine' })).toHaveLength(4);
    expect(await shown({ coach: randomUUID() })).toEqual([]);
    expect(await shown({ unseen: '14' })).toEqual(['Bo Lind', 'Cy Okoro', 'Eve Brook']);
  });

  it('by ladder and rung where they stand now', async () => {
    await copyLibraryInto(team);
    const [ladder = '', low = '', high = ''] = [
      await idOf(team, 'ladder', 'PU'),
      await idOf(team, 'rung', 'PU.2'),
      await idOf(team, 'rung', 'PU.3'),
    ];
    const stands = (clientId: string | undefined, rungId: string, from: string) =>
      ownerQuery(
        `insert into placement (team_id, client_id, ladder_id, side, rung_id, from_date) values ($1, $2, $3, 'both', $4, $5)`,
        [team.teamId, clientId, ladder, rungId, from],
      );
    await stands(ids[0], low, '2026-09-01');
    await stands(ids[0], high, '2026-11-01');
    await stands(ids[1], low, '2026-10-01');
    await stands(ids[1], high, '2026-12-01'); // not yet
    expect(await shown({ ladder })).toEqual(['Ana Reis', 'Bo Lind']);
    expect(await shown({ rung: high })).toEqual(['Ana Reis']);
    expect(await shown({ ladder, rung: low })).toEqual(['Bo Lind']);
  });
});
