import { beforeAll, describe, expect, it } from 'vitest';
import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { findPhonePlan } from '#lib/db/phone-plan.ts';
import { listPlannableRungs } from '#lib/db/plans.ts';
import { loadPlanForm } from '#lib/usecases/load-plan-form.ts';
import { loadProgress } from '#lib/usecases/load-progress.ts';
import { planFormModel } from '#lib/views/plan-form.ts';
import { copyLibraryInto, leadOf } from '#tests/integration/clients/support.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import {
  agreeTo,
  anotherCoach,
  idOf,
  ladderNow,
  NOW,
  opened,
  place,
  plan,
  rungEdit,
  rungNamed,
} from './arrange.ts';

const TODAY = '2026-11-25';
const MARK = { sets: '5', target: '10', days: '2', tries: '' };
let team: TestTeam;
let lead: Actor;
let ladderId: string;
let tuck: string;

beforeAll(async () => {
  team = await makeTestTeam();
  lead = leadOf(team);
  await copyLibraryInto(team);
  ladderId = await idOf(team, 'ladder', 'PL');
  tuck = await idOf(team, 'rung', 'PL.2');
});

const audit = () =>
  ownerQuery<{ action: string; fields: string[]; actor: string }>(
    `select action, fields, actor_user_id as actor from audit where team_id = $1 and object_id = $2 order by at`,
    [team.teamId, ladderId],
  );
const historyOf = async (clientId: string) =>
  (
    await withTeamPg(team.scope, (tx) => loadHistories(tx, [clientId], { from: '2026-10-01', asOf: TODAY }))
  ).get(clientId);
const asClient = (clientId: string): Actor => ({ ...lead, role: 'client', memberId: null, clientId });

describe('an edit of a rung', () => {
  it('is saved at once where nobody is touched, as typed, with a line in the audit', async () => {
    const rungId = await idOf(team, 'rung', 'PL.12');
    const { ladder, send } = await opened(lead, ladderId);
    const before = rungNamed(ladder, rungId);
    const swaps = [
      { insteadId: tuck, tissue: 'wrist-back', support: '', why: 'lighter' },
      { insteadId: rungId, tissue: 'wrist-back', support: 'wedge', why: '' },
    ];
    const edit = rungEdit(ladder, rungId, {
      rung: {
        name: 'Half-lay',
        pass: { ...MARK, target: '6,5' },
        usualWeeks: '9',
        needsFilm: false,
        note: 'hips level',
      },
      drill: { share: '97,5', shareSource: 'cp', camera: 'From the left.', equipment: ['rings', 'block'] },
      swaps,
    });
    expect(await send(edit)).toEqual({ saved: true });
    const after = await ladderNow(team, ladderId);
    const { rung, drill } = rungNamed(after, rungId);
    expect(rung).toMatchObject({
      name: 'Half-lay',
      pass: { sets: 5, target: 6.5, days: 2, tries: null },
      usualWeeks: 9,
      needsFilm: false,
      note: 'hips level',
      swaps: swaps.map((swap) => ({ ...swap, support: swap.support || null })),
    });
    expect(drill).toMatchObject({ share: 0.975, camera: 'From the left.', equipment: ['rings', 'block'] });
    expect(drill.weights).toEqual(before.drill.weights);
    const others = (state: typeof after) => state.rungs.filter((one) => one.id !== rungId);
    expect(others(after)).toEqual(others(ladder));
    expect((await audit()).at(-1)).toEqual({
      action: 'ladder-changed',
      actor: team.userId,
      fields: [
        'name of Half-lay (hips straight, knees bent)',
        'pass mark of Half-lay (hips straight, knees bent)',
        'usual weeks of Half-lay (hips straight, knees bent)',
        'film needed of Half-lay (hips straight, knees bent)',
        'note of Half-lay (hips straight, knees bent)',
        'swaps of Half-lay (hips straight, knees bent)',
        'drill of Half-lay (hips straight, knees bent)',
      ],
    });
  });

  it('that touches clients says whom and how, and is kept once that was agreed to; checks and phone read it', async () => {
    const stands = await makeTestClient(team, { name: 'Asha' });
    const planned = await makeTestClient(team, { name: 'Bela' });
    const gone = await makeTestClient(team, { name: 'Cyra', standing: 'left' });
    const before = await makeTestClient(team, { name: 'Dara' });
    const next = await idOf(team, 'rung', 'PL.3');
    for (const { clientId } of [stands, gone, before])
      await place(team, clientId, { ladderId, rungId: tuck });
    await place(team, before.clientId, { ladderId, rungId: next, from: '2026-11-10' });
    await plan(team, planned.clientId, { version: 1, from: '2026-11-01', rungIds: [tuck] });

    const { ladder, send } = await opened(lead, ladderId);
    const edit = rungEdit(ladder, tuck, { rung: { pass: MARK, name: 'Tuck held' } });
    const asked = await send(edit);
    if (asked.saved) throw new Error('should have asked');
    const names = asked.touches.map((one) => [one.words, one.clients.map((client) => client.name)]);
    expect(names).toEqual([
      ['Tuck: name Tuck → Tuck held', ['Asha', 'Bela']],
      ['Tuck: pass mark 5 × 6 s on 2 days → 5 × 10 s on 2 days', ['Asha']],
    ]);
    expect(await ladderNow(team, ladderId)).toEqual(ladder);
    expect(await send(edit, 'another word')).toEqual(asked);
    const lines = (await audit()).length;
    expect(await send(edit, asked.agree)).toEqual({ saved: true });
    expect((await audit()).length).toBe(lines + 1);

    const history = await historyOf(stands.clientId);
    expect(history?.rungs.find((rung) => rung.id === tuck)).toMatchObject({
      name: 'Tuck held',
      pass: { sets: 5, target: 10, days: 2 },
    });
    const phone = await withTeamPg(team.scope, (tx) => findPhonePlan(tx, planned.clientId, TODAY));
    expect(phone?.sessions[0]?.items[0]).toMatchObject({ rung: 'Tuck held', passTarget: 10 });
    const progress = await loadProgress(asClient(stands.clientId), NOW);
    expect(progress.ladders[0]?.standing[0]).toMatchObject({
      rung: 'Tuck held',
      passMark: 'to go up: 5 × 10 s, on 2 days',
    });
  });

  it('asks again when somebody else is touched by the time the coach agrees', async () => {
    const rungId = await idOf(team, 'rung', 'PL.9');
    const first = await makeTestClient(team, { name: 'Esra' });
    await place(team, first.clientId, { ladderId, rungId });
    const { ladder, send } = await opened(lead, ladderId);
    const edit = rungEdit(ladder, rungId, { rung: { pass: MARK } });
    const asked = await send(edit);
    const second = await makeTestClient(team, { name: 'Finn' });
    await place(team, second.clientId, { ladderId, rungId });
    const again = await send(edit, asked.saved ? '' : asked.agree);
    expect(again).toMatchObject({
      saved: false,
      touches: [{ clients: [{ name: 'Esra' }, { name: 'Finn' }] }],
    });
  });
});

describe('two coaches with one ladder open', () => {
  it('the second is told who changed what; both changes can be kept', async () => {
    const other = await anotherCoach(team, lead, 'Marta');
    const [ten, thirteen] = [await idOf(team, 'rung', 'PL.10'), await idOf(team, 'rung', 'PL.13')];
    const [mine, theirs] = [await opened(lead, ladderId), await opened(other, ladderId)];
    await theirs.send(rungEdit(theirs.ladder, thirteen, { rung: { note: 'theirs' } }));
    const edit = rungEdit(mine.ladder, ten, { rung: { note: 'mine' } });
    const refused = await mine.send(edit).catch((error: unknown) => error);
    expect(refused).toMatchObject({
      code: 'conflict',
      message: expect.stringMatching(/^Marta changed note of Straddle, 30° a side on/),
    });
    expect(rungNamed(await ladderNow(team, ladderId), ten).rung.note).toBe('');
    const { fields } = refused as { fields: Record<string, string> };
    expect(await mine.send(edit, null, fields.base)).toEqual({ saved: true });
    const after = await ladderNow(team, ladderId);
    expect([rungNamed(after, ten).rung.note, rungNamed(after, thirteen).rung.note]).toEqual([
      'mine',
      'theirs',
    ]);
  });

  it('of two at the same moment one is kept whole', async () => {
    const fifteen = await idOf(team, 'rung', 'PL.15');
    const { ladder, send } = await opened(lead, ladderId);
    const outcomes = await Promise.allSettled(
      ['one', 'two'].map((note) => send(rungEdit(ladder, fifteen, { rung: { note } }))),
    );
    expect(outcomes.map((one) => one.status).sort()).toEqual(['fulfilled', 'rejected']);
  });
});

describe('a retired rung', () => {
  it('stays in check-ins, placements and plans, and is no choice and no next rung any more', async () => {
    const [five, six, seven] = await Promise.all(
      ['PL.5', 'PL.6', 'PL.7'].map((key) => idOf(team, 'rung', key)),
    );
    if (!five || !six || !seven) throw new Error('rungs');
    const on = await makeTestClient(team, { name: 'Gita' });
    const below = await makeTestClient(team, { name: 'Hani' });
    await place(team, on.clientId, { ladderId, rungId: six });
    await place(team, below.clientId, { ladderId, rungId: five });
    await plan(team, on.clientId, { version: 1, from: '2026-11-02', rungIds: [six] });
    const { send } = await opened(lead, ladderId);
    const asked = await send({ act: 'retire-rung', rungId: six });
    expect(asked).toMatchObject({
      saved: false,
      touches: [
        { words: 'Opened to 100°: it was in use → retired', clients: [{ name: 'Gita' }] },
        {
          words: expect.stringContaining('Opened to 110° (knees under the navel): next rung'),
          clients: [{ name: 'Hani' }],
        },
      ],
    });
    await agreeTo(lead, ladderId, { act: 'retire-rung', rungId: six });

    const live = await withTeamPg(team.scope, listPlannableRungs);
    const own = live.filter((rung) => rung.ladderId === ladderId);
    expect(own.map((rung) => rung.position)).toEqual(own.map((_, index) => index + 1));
    expect(own.map((rung) => rung.id)).not.toContain(six);
    const history = await historyOf(on.clientId);
    expect(history?.rungs.map((rung) => rung.id)).toEqual([six, seven]);
    expect(history?.plans[0]?.items[0]?.rungId).toBe(six);
    expect((await historyOf(below.clientId))?.rungs.map((rung) => rung.id)).toEqual([five, seven]);
    const phone = await withTeamPg(team.scope, (tx) => findPhonePlan(tx, on.clientId, TODAY));
    expect(phone?.sessions[0]?.items[0]?.rung).toBe('Opened to 100°');
    const form = await loadPlanForm(lead, on.clientId, NOW);
    expect(form?.rungs.map((rung) => rung.id)).not.toContain(six);
    expect(form && planFormModel(form).versions[0]?.lines[0]).toContain('Opened to 100°');
    const progress = await loadProgress(asClient(on.clientId), NOW);
    expect(progress.ladders[0]?.standing[0]).toMatchObject({
      rung: 'Opened to 100°',
      next: 'Advanced tuck (hip 90°, shins level)',
    });

    await agreeTo(lead, ladderId, { act: 'put-back-rung', rungId: six });
    expect((await historyOf(below.clientId))?.rungs.map((rung) => rung.id)).toEqual([five, six]);
  });

  it('a retired ladder is no choice for plans, and whoever stands on it still sees it', async () => {
    const lean = await idOf(team, 'ladder', 'LN');
    const client = await makeTestClient(team, { name: 'Ilse' });
    await place(team, client.clientId, { ladderId: lean, rungId: await idOf(team, 'rung', 'LN.2') });
    await agreeTo(lead, lean, { act: 'retire-ladder' });
    const live = await withTeamPg(team.scope, listPlannableRungs);
    expect(live.some((rung) => rung.ladderId === lean)).toBe(false);
    expect((await loadProgress(asClient(client.clientId), NOW)).ladders).toHaveLength(1);
    await agreeTo(lead, lean, { act: 'put-back-ladder' });
    const back = await withTeamPg(team.scope, listPlannableRungs);
    expect(back.some((rung) => rung.ladderId === lean)).toBe(true);
  });
});

describe('other edits', () => {
  it('a split puts new rungs below, with swaps worked out and numbers without a gap', async () => {
    const four = await idOf(team, 'rung', 'PL.4');
    const steps = [{ name: 'Opened to 125°', pass: { ...MARK, target: '8' }, weight: '0,64' }];
    await agreeTo(lead, ladderId, { act: 'split', rungId: four, tissue: 'shoulder-forward', steps });
    const after = await ladderNow(team, ladderId);
    const at = after.rungs.findIndex((rung) => rung.id === four);
    const made = after.rungs[at - 1];
    expect(made).toMatchObject({ name: 'Opened to 125°', pass: { target: 8 }, usualWeeks: 2 });
    expect(rungNamed(after, made?.id ?? '').drill.weights['shoulder-forward']).toBe(0.64);
    expect(made?.swaps.length).toBeGreaterThan(0);
    const live = (await withTeamPg(team.scope, listPlannableRungs)).filter(
      (rung) => rung.ladderId === ladderId,
    );
    expect(live.map((rung) => rung.position)).toEqual(live.map((_, index) => index + 1));
    expect(live[at - 1]?.id).toBe(made?.id);
  });

  it('a new order is kept, and a rung with results keeps its measure', async () => {
    const { ladder, send } = await opened(lead, ladderId);
    const rungIds = ladder.rungs.filter((rung) => !rung.retired).map((rung) => rung.id);
    const swapped = [...rungIds.slice(0, -2), ...rungIds.slice(-2).reverse()];
    expect(await send({ act: 'order', rungIds: swapped })).toEqual({ saved: true });
    expect((await ladderNow(team, ladderId)).rungs.map((rung) => rung.id)).toEqual(swapped);
    const again = await opened(lead, ladderId);
    const reps = rungEdit(again.ladder, tuck, { drill: { measure: 'reps', secondsPerRep: '3' } });
    await expect(again.send(reps)).rejects.toMatchObject({
      code: 'invalid',
      fields: { 'edit.measure': expect.stringContaining('retire this one') },
    });
    await expect(again.send({ act: 'order', rungIds: rungIds.slice(1) })).rejects.toMatchObject({
      code: 'invalid',
    });
  });

  it('nothing of another team can be seen, changed or named', async () => {
    const strangers = await makeTestTeam('Strangers');
    const stranger = leadOf(strangers);
    await copyLibraryInto(strangers);
    const { send, base, ladder } = await opened(lead, ladderId);
    await expect(opened(stranger, ladderId)).rejects.toThrow('no such ladder');
    const edit = { act: 'retire-ladder' } as const;
    const { editTeamLadder } = await import('#lib/usecases/edit-ladder.ts');
    await expect(
      editTeamLadder(stranger, { ladderId, change: { base, agreed: null, edit } }, NOW),
    ).rejects.toMatchObject({ code: 'not-found' });
    const theirRung = await idOf(strangers, 'rung', 'PL.2');
    const swaps = [{ insteadId: theirRung, tissue: 'wrist-back', support: null, why: '' }];
    await expect(send(rungEdit(ladder, tuck, { swaps }))).rejects.toMatchObject({
      fields: { 'edit.swaps.0.insteadId': expect.stringContaining('choose one') },
    });
    const [part] = await ownerQuery<{ id: string }>('select id from part where team_id = $1 limit 1', [
      strangers.teamId,
    ]);
    const about = { act: 'about', name: 'X', partId: part?.id, family: 'balance', clean: '', faults: [] };
    await expect(send(about)).rejects.toMatchObject({ fields: { 'edit.partId': expect.any(String) } });
    expect(await ladderNow(team, ladderId)).toEqual(ladder);
  });
});
