import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { planSchema } from '#lib/schemas/plan.ts';
import { toldWordSchema } from '#lib/schemas/told-word.ts';
import { endLimit } from '#lib/usecases/end-limit.ts';
import { changeIntake } from '#lib/usecases/intake/change-intake.ts';
import { holdTold } from '#lib/usecases/intake/hold-told.ts';
import { loadIntake } from '#lib/usecases/intake/load-intake.ts';
import { loadStartPage } from '#lib/usecases/intake/load-start-page.ts';
import { recordToldWord } from '#lib/usecases/intake/record-told-word.ts';
import { saveDraft } from '#lib/usecases/intake/save-intake-draft.ts';
import { sendIntake } from '#lib/usecases/intake/send-intake.ts';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { savePlan } from '#lib/usecases/save-plan.ts';
import { ALL_NO, aDraft } from '#tests/fixtures/intake-draft.ts';
import { anotherPhone, aPhone, type Phone } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';
import { leadOf } from '../team/arrange.ts';

const NOW = new Date('2026-11-25T10:00:00.000Z');
const later = (days: number) => new Date(NOW.getTime() + days * 86_400_000);
const EYES = { health: { said: { ...ALL_NO, eyes: 'yes' as const } } };

let phone: Phone;
beforeEach(async () => {
  phone = await aPhone('Zofia');
  await ownerQuery(`update client set standing = 'starting', goal = '', told_week_au = null where id = $1`, [
    phone.clientId,
  ]);
});
const send = (draft = aDraft(), key: string = randomUUID(), at = NOW) =>
  sendIntake(phone.actor, { key, draft }, at);
const coach = () => leadOf(phone.team);
const page = async (at = NOW) => {
  const found = await loadStartPage(coach(), phone.clientId, at);
  if (!found) throw new Error('no page');
  return found;
};
const history = async () =>
  (await withTeamPg(phone.team.scope, (tx) => loadHistories(tx, [phone.clientId], { from: null }))).get(
    phone.clientId,
  );

/** Toe pull, pull-up and push-up chest to wall in the plan. */
async function aPlan() {
  const keys = ['H4.3', 'PU.3', 'U1.8'];
  const plan = planSchema.parse({
    baseVersion: 0,
    from: '2026-11-01',
    until: null,
    sessionsPerWeek: 3,
    items: keys.map((key) => ({
      session: 'A',
      rungId: phone.rungs.get(key),
      side: 'both',
      sets: 4,
      target: 5,
      timesPerWeek: 3,
    })),
  });
  await savePlan(coach(), { clientId: phone.clientId, plan }, NOW);
}
const out = async (at = NOW) => {
  const today = await loadToday(phone.actor, at);
  return today.sessions[0]?.drills.map((drill) => drill.limit?.out === true);
};

describe('an intake that is filled in', () => {
  it('is kept page by page, the later one of each, and taken up a week later where it was', async () => {
    const { you, health, pain, signs } = aDraft();
    await saveDraft(phone.actor, { you, health, signs, pain }, NOW);
    await saveDraft(
      phone.actor,
      { health: { at: '2026-11-20T00:00:00.000Z', page: { said: {}, words: 'old' } } },
      NOW,
    );
    const found = await loadIntake(phone.actor, later(7));
    expect(found.draft).toEqual({ you, health, signs, pain });
    expect(found.sentAt).toBeNull();
    expect(found.skills).toContain('Handstand');

    const rest = aDraft({}, later(7).toISOString());
    await expect(
      send({ week: rest.week, kit: rest.kit, goals: rest.goals }, randomUUID(), later(7)),
    ).rejects.toMatchObject({
      code: 'invalid',
      fields: { signs: /say how it is now/, pain: /say how it is now/ },
    });
    expect((await loadIntake(phone.actor, later(7))).draft.you).toEqual(you);
    expect((await history())?.client.intakePain).toEqual([]);
    await send(rest, randomUUID(), later(7));
    expect((await history())?.client.intakePain).toHaveLength(1);
  });

  it('a page from a clock that is ahead does not stand for good', async () => {
    const ahead = aDraft({ goals: { goal: 'from the future' } }, '2031-01-01T00:00:00.000Z').goals;
    await saveDraft(phone.actor, { goals: ahead }, NOW);
    expect((await loadIntake(phone.actor, NOW)).draft.goals?.at).toBe(NOW.toISOString());
    await saveDraft(phone.actor, { goals: aDraft({}, later(1).toISOString()).goals }, later(1));
    expect((await loadIntake(phone.actor, later(1))).draft.goals?.page.goal).toBe('A free handstand');
  });

  it('nothing of it is kept without consent', async () => {
    await ownerQuery('delete from consent where client_id = $1', [phone.clientId]);
    await expect(saveDraft(phone.actor, aDraft(), NOW)).rejects.toMatchObject({ code: 'consent-needed' });
    await expect(send()).rejects.toMatchObject({ code: 'consent-needed' });
    expect(await ownerQuery('select from intake where client_id = $1', [phone.clientId])).toEqual([]);
  });

  it('is sent once: the same key again is the same answer, another is refused, and both at once are one', async () => {
    const key = randomUUID();
    const [first, second] = await Promise.all([send(aDraft(EYES), key), send(aDraft(EYES), key)]);
    expect(second.sentAt).toBe(first.sentAt);
    expect(await ownerQuery('select from limit_rule where client_id = $1', [phone.clientId])).toHaveLength(1);
    await expect(send(aDraft())).rejects.toMatchObject({ code: 'conflict' });
    await expect(saveDraft(phone.actor, aDraft(), NOW)).rejects.toMatchObject({ code: 'conflict' });
    expect(
      await ownerQuery(`select from audit where client_id = $1 and action = 'intake-sent'`, [phone.clientId]),
    ).toHaveLength(1);
  });

  it('becomes what checks and plans read', async () => {
    await send();
    expect((await history())?.client).toMatchObject({
      toldWeekAu: 3 * 75 * 6,
      bodyMassKg: 64.5,
      under18: false,
      intakePain: [{ region: 'elbow-inner', side: 'right', value: 3, sinceWeeks: 6 }],
    });
    expect(
      await ownerQuery('select goal, birth_year, usual_session_minutes from client where id = $1', [
        phone.clientId,
      ]),
    ).toEqual([{ goal: 'A free handstand', birth_year: 1990, usual_session_minutes: 75 }]);
    expect(await history().then((one) => one?.client)).not.toHaveProperty('intakeSigns');
  });

  it('belongs to its client: nobody else reads or sends it', async () => {
    await saveDraft(phone.actor, aDraft(), NOW);
    const other = await anotherPhone(phone.team, 'Other');
    expect((await loadIntake(other.actor, NOW)).draft).toEqual({});
    const stranger = await aPhone('Stranger');
    expect(await loadStartPage(leadOf(stranger.team), phone.clientId, NOW)).toBeUndefined();
    await expect(loadIntake(coach(), NOW)).rejects.toMatchObject({ code: 'forbidden' });
  });
});

describe('a yes to a health question', () => {
  const word = (over: object = {}) =>
    toldWordSchema.parse({
      told: 'eyes',
      lifts: 'yes',
      clinician: 'Dr Iwu, eye doctor',
      date: '2026-11-25',
      words: 'May train upside down, short holds.',
      reviewOn: '',
      ...over,
    });

  it('holds what is upside down on the phone and in the plan, and nothing but a word ends it', async () => {
    await aPlan();
    await send(aDraft(EYES));
    expect(await out()).toEqual([true, false, true]);
    const today = await loadToday(phone.actor, NOW);
    expect(today.limits).toEqual([
      'Nothing upside down, until further word (the health questions at the start)',
    ]);
    expect(today.sessions[0]?.drills[2]?.limit?.swaps[0]?.title).toBe('Push-up, floor');
    const [limit] = await ownerQuery<{ id: string }>('select id from limit_rule where client_id = $1', [
      phone.clientId,
    ]);
    await expect(
      endLimit(coach(), { clientId: phone.clientId, limitId: limit?.id ?? '' }, NOW),
    ).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringContaining('clinician’s word'),
    });
    expect((await page()).holds).toMatchObject([
      { told: 'eyes', what: 'Eye pressure or retina', isAhead: false },
    ]);

    await recordToldWord(
      coach(),
      { clientId: phone.clientId, word: word({ lifts: 'no', words: 'Not yet.' }) },
      NOW,
    );
    expect(await out()).toEqual([true, false, true]);
    await recordToldWord(coach(), { clientId: phone.clientId, word: word() }, NOW);
    expect(await out()).toEqual([false, false, false]);
    const after = await page();
    expect(after.holds).toEqual([]);
    expect(after.words.map(({ said }) => said)).toEqual([
      expect.stringContaining('Dr Iwu, eye doctor, '),
      expect.stringContaining('does not allow it'),
    ]);
    await expect(
      recordToldWord(coach(), { clientId: phone.clientId, word: word() }, NOW),
    ).rejects.toMatchObject({
      code: 'conflict',
    });
    // It is about the eyes, not about what hurts: no check takes it as a word about a place.
    expect((await history())?.clinicianWords).toEqual([]);
  });

  it('told again while a word lets it begin until a day to look again, it holds anew', async () => {
    await aPlan();
    await send(aDraft({ health: { said: { ...ALL_NO, eyes: 'yes' } } }));
    await recordToldWord(coach(), { clientId: phone.clientId, word: word({ reviewOn: '2026-12-10' }) }, NOW);
    expect(await out()).toEqual([false, false, false]);
    const told = { clientId: phone.clientId, told: ['eyes' as const], from: '2026-11-25', at: NOW };
    await withTeamPg(phone.team.scope, (tx) => holdTold(tx, told));
    await withTeamPg(phone.team.scope, (tx) => holdTold(tx, told));
    expect(await out()).toEqual([true, false, true]);
    expect((await page()).holds).toMatchObject([{ told: 'eyes', isAhead: false }]);
    await recordToldWord(coach(), { clientId: phone.clientId, word: word() }, NOW);
    expect((await page()).holds).toEqual([]);
  });

  it('two of them hold until both have their word; with a day to look again it is held again after it', async () => {
    await aPlan();
    await send(aDraft({ health: { said: { ...ALL_NO, eyes: 'yes', neck: 'yes' } } }));
    await recordToldWord(coach(), { clientId: phone.clientId, word: word() }, NOW);
    expect(await out()).toEqual([true, false, true]);
    await recordToldWord(
      coach(),
      { clientId: phone.clientId, word: word({ told: 'neck', reviewOn: '2026-12-10' }) },
      NOW,
    );
    expect(await out()).toEqual([false, false, false]);
    expect(await out(later(15))).toEqual([false, false, false]);
    expect(await out(later(16))).toEqual([true, false, true]);
    expect((await page()).holds).toMatchObject([{ told: 'neck', isAhead: true }]);
    await recordToldWord(
      coach(),
      { clientId: phone.clientId, word: word({ told: 'neck', date: '2026-11-25' }) },
      NOW,
    );
    expect(await out(later(16))).toEqual([false, false, false]);
  });

  it('refuses a word of tomorrow, without a name, or of somebody else’s client', async () => {
    await send(aDraft(EYES));
    const bad = (over: object) =>
      recordToldWord(coach(), { clientId: phone.clientId, word: word(over) }, NOW);
    await expect(bad({ date: '2026-11-26' })).rejects.toMatchObject({ fields: { date: /must be today/ } });
    await expect(bad({ date: '2026-11-01', reviewOn: '2026-11-02' })).rejects.toMatchObject({
      fields: { reviewOn: /over/ },
    });
    expect(toldWordSchema.safeParse({ ...word(), clinician: '' }).error?.issues[0]?.path).toEqual([
      'clinician',
    ]);
    expect(toldWordSchema.safeParse({ ...word(), lifts: '' }).error?.issues[0]?.path).toEqual(['lifts']);
    const stranger = await aPhone('Stranger');
    await expect(
      recordToldWord(leadOf(stranger.team), { clientId: phone.clientId, word: word() }, NOW),
    ).rejects.toMatchObject({ code: 'not-found' });
    await expect(
      recordToldWord(phone.actor, { clientId: phone.clientId, word: word() }, NOW),
    ).rejects.toMatchObject({
      code: 'forbidden',
    });
  });
});

describe('a danger sign at the start', () => {
  it('holds the plan, is on the board at once, and a clinician’s word lifts it', async () => {
    await aPlan();
    const draft = aDraft({ signs: { none: false, signs: ['chest-pain'] } });
    const key = randomUUID();
    const sent = await send(draft, key);
    expect(sent.cautions[0]?.text).toContain('medical help at once');
    expect(await send(draft, key, later(1))).toEqual(sent); // the first answer got lost on the way
    expect(await out()).toEqual([true, true, true]);
    const open = () =>
      ownerQuery(`select kind, tier from reason where client_id = $1 and closed_at is null`, [
        phone.clientId,
      ]);
    expect(await open()).toEqual([{ kind: 'danger-sign', tier: 'now' }]);
    expect((await history())?.client.intakeSigns).toEqual({
      date: '2026-11-25',
      signs: [{ sign: 'chest-pain', wordOn: null }],
    });
    const board = await loadBoard(coach(), {}, NOW);
    expect(board.lines.map(({ words }) => words)).toContain(
      'Zofia: the plan is held until a clinician’s word (chest pain); answers of the start have come',
    );
    await recordToldWord(
      coach(),
      {
        clientId: phone.clientId,
        word: toldWordSchema.parse({
          told: 'sign:chest-pain',
          lifts: 'yes',
          clinician: 'Dr Iwu',
          date: '2026-11-25',
          words: 'Heart looked at, may train.',
        }),
      },
      NOW,
    );
    expect(await out()).toEqual([false, false, false]);
    // The next night closes it, as after every word of a clinician.
    expect((await history())?.client.intakeSigns?.signs).toEqual([
      { sign: 'chest-pain', wordOn: '2026-11-25' },
    ]);
  });
});

describe('what a coach changes afterwards', () => {
  it('keeps what was told before, with who and why; a new yes holds at once', async () => {
    await aPlan();
    await expect(
      changeIntake(
        coach(),
        { clientId: phone.clientId, change: { field: 'job', value: 'nurse', why: 'told me' } },
        NOW,
      ),
    ).rejects.toMatchObject({ code: 'conflict' });
    await send();
    const change = (one: Parameters<typeof changeIntake>[1]['change']) =>
      changeIntake(coach(), { clientId: phone.clientId, change: one }, NOW);
    await change({ field: 'healthYes', value: 'pregnancy', why: 'told me on the phone' });
    expect(await out()).toEqual([true, false, true]);
    await change({ field: 'week', value: { days: 5, minutes: 60, effort: 7 }, why: 'two jobs less' });
    expect((await history())?.client.toldWeekAu).toBe(2_100);
    await expect(change({ field: 'healthYes', value: 'pregnancy', why: 'again' })).rejects.toMatchObject({
      code: 'invalid',
    });
    const { changes, told } = await page();
    expect(changes.map(({ field, why, before }) => [field, before, why])).toEqual([
      ['health questions', '“No to all of them”', 'told me on the phone'],
      ['usual week', '“3 days of 75 min, 6 of 10 hard”', 'two jobs less'],
    ]);
    expect(told.find(({ step }) => step === 'health')?.lines).toEqual(['Yes: pregnancy']);
    expect(
      await ownerQuery(
        `select fields from audit where client_id = $1 and action = 'intake-changed' order by at`,
        [phone.clientId],
      ),
    ).toEqual([{ fields: ['health'] }, { fields: ['week'] }]);
  });

  it('loses neither of two changes at once, and a year of birth that says under 18 counts', async () => {
    await send();
    const change = (one: Parameters<typeof changeIntake>[1]['change']) =>
      changeIntake(coach(), { clientId: phone.clientId, change: one }, NOW);
    await Promise.all([
      change({ field: 'job', value: 'nurse', why: 'told me' }),
      change({ field: 'otherSport', value: 'rowing', why: 'told me' }),
      change({ field: 'birthYear', value: 2012, why: 'mistyped' }),
    ]);
    const { told, under18 } = await page();
    const lines = told.flatMap((section) => section.lines);
    expect(lines).toEqual(expect.arrayContaining(['Work: nurse', 'Other sport: rowing', 'Born in 2012']));
    expect(under18).toBe(true);
  });
});

describe('after twelve weeks away', () => {
  const trained = (date: string) =>
    ownerQuery(
      `insert into check_in (team_id, client_id, body_hash, date, zone, sent_at, kind)
       values ($1, $2, 'x', $3, 'UTC', $3::date + time '18:00', 'training')`,
      [phone.team.teamId, phone.clientId, date],
    );
  const asked = async (at: Date) => (await loadToday(phone.actor, at)).start.intake;
  beforeEach(async () => {
    await ownerQuery(`update client set standing = 'in-training' where id = $1`, [phone.clientId]);
    await send(aDraft({}, NOW.toISOString()));
    await trained('2026-11-26');
  });

  it('the start is asked again, answers of before stay beside, a yes holds', async () => {
    expect(await asked(later(85))).toBeNull(); // 83 days without a check-in lie behind
    expect(await asked(later(86))).toBe('none');
    expect((await loadIntake(phone.actor, later(86))).sentAt).toBeNull();
    await trained('2027-02-19'); // came back without answering: asked all the same
    const back = later(90);
    expect(await asked(back)).toBe('none');
    const again = aDraft(EYES, back.toISOString());
    await saveDraft(phone.actor, { you: again.you }, back);
    expect(await asked(back)).toBe('begun');
    expect((await page(back)).state).toMatch(/begun to tell it again after a long break/);
    const key = randomUUID();
    await send(again, key, back);
    expect(await send(again, key, later(91))).toMatchObject({ sentAt: back.toISOString() });
    expect(await asked(later(91))).toBeNull();
    await expect(send(again, randomUUID(), later(91))).rejects.toMatchObject({ code: 'conflict' });
    const { holds, changes } = await page(later(91));
    expect(holds).toHaveLength(1);
    expect(changes).toMatchObject([
      { field: 'health questions', why: /told again after twelve weeks or more/ },
    ]);
  });

  it('a shorter break, or one long over, asks nothing', async () => {
    await trained('2027-01-30');
    expect(await asked(later(80))).toBeNull();
    await trained('2027-06-01');
    expect(await asked(new Date('2027-06-02T10:00:00Z'))).toBe('none');
    for (const date of ['2027-07-01', '2027-07-20', '2027-08-01']) await trained(date);
    expect(await asked(new Date('2027-08-02T10:00:00Z'))).toBeNull();
  });
});
