import { beforeEach, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { filmAskSchema } from '#lib/schemas/clip.ts';
import { askFilm } from '#lib/usecases/film/ask-film.ts';
import { takeBackFilm } from '#lib/usecases/film/take-back-film.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { approveAct } from '#lib/usecases/team/decide-approval.ts';
import { loadApprovals } from '#lib/usecases/team/load-approvals.ts';
import { undoApproval } from '#lib/usecases/team/undo-approval.ts';
import { aPhone, NOW, type Phone, TODAY } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';
import { addMemberTo, leadOf, type MemberActor } from '../team/arrange.ts';

let phone: Phone;
let lead: MemberActor;
let rungId: string;
beforeEach(async () => {
  phone = await aPhone('Asked');
  lead = leadOf(phone.team);
  rungId = phone.rungs.get('H3.4') ?? '';
});

const film = (more: object = {}) =>
  filmAskSchema.parse({
    rungId,
    side: 'both',
    angle: 'from the side',
    byDate: '2026-11-30',
    words: 'All of you.',
    ...more,
  });
const ask = (more: object = {}, by = lead) =>
  askFilm(by, { clientId: phone.clientId, film: film(more) }, NOW);
const onPhone = async () => (await loadToday(phone.actor, NOW)).films;
const inDays = (days: number) => new Date(NOW.getTime() + days * 86_400_000);

async function night(days: number): Promise<string[]> {
  const localDate = inDays(days).toISOString().slice(0, 10);
  await runNightBatch(phone.team.scope, { localDate, clientIds: [phone.clientId] }, inDays(days + 0.5));
  const open = await ownerQuery<{ kind: string }>(
    'select kind from reason where client_id = $1 and closed_at is null order by kind',
    [phone.clientId],
  );
  return open.map(({ kind }) => kind).filter((kind) => /film|asked/.test(kind));
}

async function clip(requestId: string, state: string, receivedAt: Date): Promise<string> {
  const [row] = await ownerQuery<{ id: string }>(
    `insert into clip (team_id, client_id, request_id, rung_id, side, filmed_on, storage_key, bytes, state, received_at)
     values ($1, $2, $3, $4, 'both', $5, gen_random_uuid()::text, 1, $6, $7) returning id`,
    [phone.team.teamId, phone.clientId, requestId, rungId, TODAY, state, receivedAt],
  );
  return row?.id ?? '';
}

it('stands on the phone until a clip that is taken came, or it is taken back; each with a line of the audit', async () => {
  const { actId } = await ask();
  expect(await onPhone()).toEqual([
    { rungId, side: 'both', angle: 'from the side', byDate: '2026-11-30', words: 'All of you.' },
  ]);
  await expect(ask()).rejects.toThrow(/asked for already/);
  await expect(ask({ angle: 'from behind', byDate: '2026-11-01' })).rejects.toThrow(/byDate: is over/);
  const refused = await clip(actId, 'refused', NOW);
  expect(await onPhone()).toHaveLength(1);
  await ownerQuery(`update clip set state = 'checking' where id = $1`, [refused]);
  expect(await onPhone()).toEqual([]);
  const second = await ask({ angle: 'from behind' });
  expect((await takeBackFilm(lead, second.actId, NOW)).line).toContain('Taken back');
  expect(await onPhone()).toEqual([]);
  await expect(takeBackFilm(lead, second.actId, NOW)).rejects.toThrow(/not asked for any more/);
  const lines = await ownerQuery<{ action: string }>(
    `select action from audit where client_id = $1 and action like 'film%' order by at, action`,
    [phone.clientId],
  );
  expect(lines.map(({ action }) => action)).toEqual(['film-asked', 'film-asked', 'film-taken-back']);
});

it('is asked once where the same is asked twice at once', async () => {
  await Promise.all(Array.from({ length: 6 }, onPhone)); // as many connections are open: all begin at once
  const all = await Promise.allSettled(Array.from({ length: 6 }, () => ask()));
  expect(all.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
  expect(await onPhone()).toHaveLength(1);
});

it('that is taken back leaves a clip on its way as one that nobody asked for', async () => {
  const { actId } = await ask();
  const clipId = await clip(actId, 'checking', NOW);
  await takeBackFilm(lead, actId, NOW);
  const histories = await withTeamPg(phone.team.scope, (tx) =>
    loadHistories(tx, [phone.clientId], { from: null, asOf: TODAY }),
  );
  expect(histories.get(phone.clientId)?.films).toMatchObject([{ id: clipId, words: '' }]);
});

it('waits for approval where an assistant asks, and is gone again when the decision is undone', async () => {
  const sol = await addMemberTo(phone.team, 'assistant', 'Sol Ahlgren');
  const done = await ask({}, sol);
  expect(done).toMatchObject({ waits: true });
  expect(await onPhone()).toEqual([]);
  const { waiting } = await loadApprovals(lead, {}, NOW);
  expect(waiting).toMatchObject([{ title: 'A film asked for', about: 'All of you.', words: null }]);
  expect(waiting[0]?.does[0]).toMatch(/from the side, by .*30 November/);
  expect(await approveAct(lead, { approvalId: done.actId }, NOW)).toMatchObject({ state: 'approved' });
  expect(await onPhone()).toHaveLength(1);
  await undoApproval(lead, done.actId, NOW);
  expect(await onPhone()).toEqual([]);
});

it('is followed by the nights: asked without an answer, then a film that waits, then neither', async () => {
  await ownerQuery(
    `update team set answering_hours = '{"zone":"Europe/Berlin","days":[1,2,3,4,5,6,7],"from":"08:00","to":"20:00"}' where id = $1`,
    [phone.team.teamId],
  );
  const { actId } = await ask();
  expect(await night(1)).toEqual([]);
  expect(await night(11)).toEqual(['asked-no-answer']);
  const clipId = await clip(actId, 'ready', inDays(11));
  expect(await night(15)).toContain('film-waiting');
  await ownerQuery('update clip set looked_at = $2 where id = $1', [clipId, inDays(15.6)]);
  for (const day of [16, 17, 18]) await night(day);
  expect(await night(19)).toEqual([]); // each closes after clear nights in a row, as reasons do
});
