import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { markWordsRead } from '#lib/db/check-in-words.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import type { LookAct } from '#lib/schemas/looking.ts';
import { loadOwnCheckIn } from '#lib/usecases/load-own-check-in.ts';
import { loadLooking } from '#lib/usecases/looking/load-looking.ts';
import { loadOwnFilm } from '#lib/usecases/looking/load-own-film.ts';
import { lookAtFilm } from '#lib/usecases/looking/look-at-film.ts';
import { takeStill } from '#lib/usecases/looking/take-still.ts';
import { undoLook } from '#lib/usecases/looking/undo-look.ts';
import { rebuildTeamRollups } from '#lib/usecases/rebuild-rollups.ts';
import { loadStillPage } from '#lib/usecases/stills/load-still-page.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { approveAct } from '#lib/usecases/team/decide-approval.ts';
import { loadApprovals } from '#lib/usecases/team/load-approvals.ts';
import { undoApproval } from '#lib/usecases/team/undo-approval.ts';
import { aPhoto } from '#tests/fixtures/pictures.ts';
import { anotherPhone, aPhone, aTraining, NOW, type Phone, TODAY } from '../check-in/arrange.ts';
import { makeTestTeam, ownerQuery } from '../support/database.ts';
import { addMemberTo, leadOf, type MemberActor } from '../team/arrange.ts';

let phone: Phone;
let lead: MemberActor;
let clipId: string;
let checkInId: string;
const later = (minutes: number) => new Date(NOW.getTime() + minutes * 60_000);

async function aClip(over: { rung?: string; side?: string; state?: string } = {}): Promise<string> {
  const id = randomUUID();
  await ownerQuery(
    `insert into clip (team_id, id, client_id, rung_id, side, filmed_on, storage_key, bytes, state, received_at, seconds, fps, width, height)
     values ($1, $2, $3, $4, $5, $6, $7, 1000, $8, $9, 8, 30, 360, 640)`,
    [
      phone.team.teamId,
      id,
      phone.clientId,
      phone.rungs.get(over.rung ?? 'H3.4'),
      over.side ?? 'both',
      TODAY,
      `clips/${id}`,
      over.state ?? 'ready',
      NOW,
    ],
  );
  return id;
}
beforeEach(async () => {
  phone = await aPhone('Filmed');
  lead = leadOf(phone.team);
  const training = aTraining(phone);
  checkInId = training.id;
  await submitCheckIn(phone.actor, training, NOW);
  clipId = await aClip();
});

const told = (index: number, id = checkInId) => ({
  told: true as const,
  checkInId: id,
  side: 'both' as const,
  index,
});
const verdict = (over: Partial<Extract<LookAct, { act: 'verdict' }>> = {}): LookAct => ({
  act: 'verdict',
  clipId,
  set: told(1),
  verdict: 'not-clean',
  faults: ['ribs-open'],
  ...over,
});
const words = (text = 'Push taller here.', atSeconds = 2.4): LookAct => ({
  act: 'words',
  clipId,
  atSeconds,
  text,
});
const setsOf = async (from: string | null) => {
  const histories = await withTeamPg(phone.team.scope, (tx) =>
    loadHistories(tx, [phone.clientId], { from, asOf: TODAY }),
  );
  return histories.get(phone.clientId);
};
const firstSet = async () => {
  const [night, raw] = [await setsOf('2026-01-01'), await setsOf(null)];
  expect(night?.checkIns).toEqual(raw?.checkIns);
  return night?.checkIns[0]?.sets[0];
};
const isLooked = async () =>
  (
    await ownerQuery<{ looked: boolean }>('select looked_at is not null as looked from clip where id = $1', [
      clipId,
    ])
  )[0]?.looked;

describe('a verdict on a set', () => {
  it('counts in what nights read and in exports, beside what was told, and comes back with undo', async () => {
    const done = await lookAtFilm(lead, verdict(), NOW);
    expect(done).toMatchObject({ line: 'Kept: not clean: ribs open.' });
    expect(await firstSet()).toMatchObject({
      index: 1,
      clean: false,
      faults: ['ribs-open'],
      onFilm: { verdict: 'not-clean', faults: ['ribs-open'], told: { clean: true, faults: [] } },
    });
    expect((await setsOf(null))?.films?.[0]).toMatchObject({
      rungId: phone.rungs.get('H3.4'),
      lookedAt: NOW.toISOString(),
      verdicts: [
        { filmedOn: TODAY, side: 'both', checkInId, index: 1, verdict: 'not-clean', at: NOW.toISOString() },
      ],
    });
    const raw = await ownerQuery(
      'select clean, faults from check_in_set where check_in_id = $1 and idx = 1',
      [checkInId],
    );
    expect(raw).toEqual([{ clean: true, faults: [] }]);

    const second = await lookAtFilm(lead, verdict({ verdict: 'clean', faults: [], set: told(2) }), later(1));
    expect((await setsOf(null))?.checkIns[0]?.sets[1]).toMatchObject({ clean: true, faults: [] });
    expect(await ownerQuery('select verdict, faults from clip where id = $1', [clipId])).toEqual([
      { verdict: 'not-clean', faults: ['ribs-open'] },
    ]);
    await undoLook(lead, { clipId, id: done.actId }, later(2));
    await undoLook(lead, { clipId, id: second.actId }, later(2));
    expect(await firstSet()).not.toHaveProperty('onFilm');
    expect(await ownerQuery('select verdict from clip where id = $1', [clipId])).toEqual([{ verdict: null }]);
    await expect(undoLook(lead, { clipId, id: done.actId }, later(3))).rejects.toMatchObject({
      code: 'conflict',
    });
  });

  it('of two on one set the newer counts, and the older again once that is taken back', async () => {
    await lookAtFilm(lead, verdict(), NOW);
    const newer = await lookAtFilm(lead, verdict({ verdict: 'clean', faults: [] }), later(5));
    expect(await firstSet()).toMatchObject({ clean: true, onFilm: { verdict: 'clean' } });
    await undoLook(lead, { clipId, id: newer.actId }, later(6));
    expect(await firstSet()).toMatchObject({ clean: false, onFilm: { verdict: 'not-clean' } });
  });

  it('goes over to a correction of its check-in, whose form asks about what was told', async () => {
    await lookAtFilm(lead, verdict(), NOW);
    const own = await loadOwnCheckIn(phone.actor, checkInId);
    expect(own.checkIn.sets[0]).toMatchObject({ clean: true, faults: [] });
    expect(own.checkIn.sets[0]).not.toHaveProperty('onFilm');
    const corrected = aTraining(phone, { correctsId: checkInId, effort: 4 });
    await submitCheckIn(phone.actor, corrected, later(10));
    expect(await firstSet()).toMatchObject({ clean: false, onFilm: { verdict: 'not-clean' } });
    const looking = await loadLooking(lead, clipId, later(11));
    expect(looking?.sets[0]).toMatchObject({ told: 'told clean', seen: { verdict: 'not-clean' } });
  });

  it('leaves day rollups as they would be computed anew', async () => {
    await lookAtFilm(lead, verdict(), NOW);
    await submitCheckIn(phone.actor, aTraining(phone, { correctsId: checkInId }), later(1));
    const drift = [];
    for await (const { mended } of rebuildTeamRollups(phone.team.scope)) drift.push(...mended);
    expect(drift).toEqual([]);
  });

  it('asks for the checks of this client once more, for each verdict and its undo', async () => {
    const before = await ownerQuery("select 1 from outbox where kind = 'after-check-in' and client_id = $1", [
      phone.clientId,
    ]);
    const { actId } = await lookAtFilm(lead, verdict(), NOW);
    await undoLook(lead, { clipId, id: actId }, later(1));
    const after = await ownerQuery("select 1 from outbox where kind = 'after-check-in' and client_id = $1", [
      phone.clientId,
    ]);
    expect(after.length - before.length).toBe(2);
  });

  it('may be on a try that was told nowhere, by the side that the drill is counted in', async () => {
    await lookAtFilm(
      lead,
      verdict({ set: { told: false, side: 'both' }, verdict: 'clean', faults: [] }),
      NOW,
    );
    expect((await setsOf(null))?.films?.[0]?.verdicts).toMatchObject([
      { checkInId: null, index: null, verdict: 'clean' },
    ]);
    const one = await aClip({ rung: 'OA.2', side: 'left' });
    const [{ each }] = (await ownerQuery<{ each: boolean }>(
      'select d.each_side as each from rung r join drill d on d.team_id = r.team_id and d.id = r.drill_id where r.id = $1',
      [phone.rungs.get('OA.2')],
    )) as [{ each: boolean }];
    const side = each ? 'both' : 'left';
    await expect(
      lookAtFilm(lead, { ...verdict(), clipId: one, set: { told: false, side } } as LookAct, NOW),
    ).rejects.toMatchObject({ code: 'invalid' });
  });

  it('is refused without a fault, with one of another ladder, or on a set that does not stand', async () => {
    const refused = async (over: Parameters<typeof verdict>[0]) =>
      lookAtFilm(lead, verdict(over), NOW).then(
        () => 'taken',
        (error: { code: string; fields?: Record<string, string> }) => [
          error.code,
          Object.keys(error.fields ?? {}),
        ],
      );
    expect(await refused({ faults: [] })).toEqual(['invalid', ['faults']]);
    expect(await refused({ faults: ['hips-drop'] })).toEqual(['invalid', ['faults']]);
    expect(await refused({ verdict: 'clean' })).toEqual(['invalid', ['faults']]);
    expect(await refused({ set: told(9) })).toEqual(['conflict', []]);
    expect(await refused({ set: told(1, randomUUID()) })).toEqual(['conflict', []]);
    expect(await isLooked()).toBe(false);
    const gone = await aClip({ state: 'gone' });
    await expect(lookAtFilm(lead, { ...verdict(), clipId: gone }, NOW)).rejects.toMatchObject({
      code: 'conflict',
    });
  });
});

describe('words and looks', () => {
  it('stand at their moment for the client, say that it was looked at, and can be taken back while unread', async () => {
    const first = await lookAtFilm(lead, words(), NOW);
    await lookAtFilm(lead, words('Then slower.', 1), later(1));
    expect(await isLooked()).toBe(true);
    const own = await loadOwnFilm(phone.actor, clipId);
    expect(own?.words.map(({ moment, text }) => [moment, text])).toEqual([
      ['0:01.0', 'Then slower.'],
      ['0:02.4', 'Push taller here.'],
    ]);
    await undoLook(lead, { clipId, id: first.actId }, later(2));
    const [left] = (await loadOwnFilm(phone.actor, clipId))?.words ?? [];
    await withTeamPg(phone.team.scope, (tx) =>
      markWordsRead(tx, { clientId: phone.clientId, wordIds: [left?.id ?? ''], at: later(3) }),
    );
    await expect(undoLook(lead, { clipId, id: left?.id ?? '' }, later(4))).rejects.toThrow('it was read');
    await expect(lookAtFilm(lead, words('late', 60), NOW)).rejects.toMatchObject({ code: 'invalid' });
  });

  it('make the request done, and the film waits again where the look is taken back', async () => {
    const [request] = await ownerQuery<{ id: string }>(
      `insert into film_request (team_id, client_id, by_id, rung_id, side, angle, created_at)
       values ($1, $2, $3, $4, 'both', 'from the side', $5) returning id`,
      [phone.team.teamId, phone.clientId, lead.memberId, phone.rungs.get('H3.4'), NOW],
    );
    await ownerQuery('update clip set request_id = $2 where id = $1', [clipId, request?.id]);
    const { actId } = await lookAtFilm(lead, { act: 'looked', clipId }, NOW);
    expect((await setsOf(null))?.films).toMatchObject([{ id: request?.id, lookedAt: NOW.toISOString() }]);
    expect(await ownerQuery('select done_at from film_request where id = $1', [request?.id])).toEqual([
      { done_at: NOW },
    ]);
    await ownerQuery("update clip set keep_until = '2027-01-01' where id = $1", [clipId]);
    await undoLook(lead, { clipId, id: actId }, later(1));
    expect((await setsOf(null))?.films).toMatchObject([{ lookedAt: null }]);
    expect(
      await ownerQuery(
        'select f.done_at, k.keep_until from film_request f join clip k on k.request_id = f.id where f.id = $1',
        [request?.id],
      ),
    ).toEqual([{ done_at: null, keep_until: null }]);
  });

  it('tell the client what was seen in plain words, and nobody else', async () => {
    await ownerQuery("update clip set angle = 'from behind' where id = $1", [clipId]);
    await lookAtFilm(lead, verdict({ verdict: 'cannot-see', faults: [] }), NOW);
    expect((await loadOwnFilm(phone.actor, clipId))?.seen).toMatchObject([
      { set: 'set 1: 20 s', words: 'could not be seen: film it again, please, from behind' },
    ]);
    const other = await anotherPhone(phone.team, 'Another');
    expect(await loadOwnFilm(other.actor, clipId)).toBeUndefined();
    const stranger = leadOf(await makeTestTeam('Elsewhere'));
    expect(await loadLooking(stranger, clipId, NOW)).toBeUndefined();
    await expect(lookAtFilm(stranger, words(), NOW)).rejects.toMatchObject({ code: 'not-found' });
  });

  it('of an assistant wait for a coach, who approves them and takes that back', async () => {
    const sol = await addMemberTo(phone.team, 'assistant', 'Sol Ahlgren');
    const said = await lookAtFilm(sol, words(), NOW);
    const judged = await lookAtFilm(sol, verdict(), later(1));
    expect([said.waits, judged.waits]).toEqual([true, true]);
    expect(await isLooked()).toBe(false);
    const { waiting } = await loadApprovals(lead, {}, NOW);
    expect(waiting.map(({ title, does, words: text }) => [title, does, text])).toEqual([
      ['Words on a film', ['At 0:02.4.'], 'Push taller here.'],
      ['A set on film', ['set 1: not clean: ribs open.'], null],
    ]);
    const body = { ...words(), text: 'Push taller, please.' };
    await approveAct(lead, { approvalId: said.actId, body }, later(1));
    await approveAct(lead, { approvalId: judged.actId }, later(1));
    expect((await loadOwnFilm(phone.actor, clipId))?.words).toMatchObject([
      { text: 'Push taller, please.', by: 'Lead of Team of Filmed' },
    ]);
    expect(await firstSet()).toMatchObject({ clean: false });
    const { seen } = (await loadLooking(lead, clipId, NOW))?.sets[0] ?? {};
    await expect(undoLook(sol, { clipId, id: seen?.id ?? '' }, later(2))).rejects.toMatchObject({
      code: 'forbidden',
    });
    await undoApproval(lead, judged.actId, later(2));
    await undoApproval(lead, said.actId, later(2));
    expect(await firstSet()).toMatchObject({ clean: true });
    expect((await loadOwnFilm(phone.actor, clipId))?.words).toEqual([]);
  });
});

it('takes a still from a film, which opens to its joints and knows its moment', async () => {
  const { id } = await takeStill(lead, { clipId, atSeconds: 2.4, bytes: await aPhoto() }, NOW);
  expect(await loadStillPage(lead, id)).toMatchObject({ client: { id: phone.clientId }, frames: [] });
  expect((await loadLooking(lead, clipId, NOW))?.stills).toMatchObject([{ id, moment: '0:02.4' }]);
  await expect(
    takeStill(lead, { clipId, atSeconds: 1, bytes: new Uint8Array([1, 2, 3]) }, NOW),
  ).rejects.toMatchObject({ code: 'invalid' });
  await expect(takeStill(lead, { clipId, atSeconds: 60, bytes: await aPhoto() }, NOW)).rejects.toThrow(
    'atSeconds: is after the end of the film',
  );
  const stranger = leadOf(await makeTestTeam('Elsewhere too'));
  await expect(
    takeStill(stranger, { clipId, atSeconds: 1, bytes: await aPhoto() }, NOW),
  ).rejects.toMatchObject({ code: 'not-found' });
});
