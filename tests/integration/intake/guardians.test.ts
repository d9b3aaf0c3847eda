import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Actor } from '#lib/auth/actor.ts';
import { findActor } from '#lib/db/accounts.ts';
import { teamScope, withTeamPg } from '#lib/db/client.ts';
import { listStartNews } from '#lib/db/told-holds.ts';
import { CONSENT_VERSION } from '#lib/domain/consent.ts';
import { planSchema } from '#lib/schemas/plan.ts';
import {
  decideAsGuardian,
  GUARDIAN_READS,
  withdrawAsGuardian,
} from '#lib/usecases/guardians/decide-as-guardian.ts';
import { linkGuardian } from '#lib/usecases/guardians/link-guardian.ts';
import { loadGuardian } from '#lib/usecases/guardians/load-guardian.ts';
import { nameGuardian } from '#lib/usecases/guardians/name-guardian.ts';
import { loadStartPage } from '#lib/usecases/intake/load-start-page.ts';
import { sendIntake } from '#lib/usecases/intake/send-intake.ts';
import { joinByLink } from '#lib/usecases/join-by-link.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { giveConsent } from '#lib/usecases/rights/give-consent.ts';
import { savePlan } from '#lib/usecases/save-plan.ts';
import { mailSignInLink } from '#lib/usecases/sign-in-link.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { aDraft } from '#tests/fixtures/intake-draft.ts';
import { aPhone, aTraining, NOW, type Phone, TODAY } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';
import { leadOf } from '../team/arrange.ts';

const later = (hours: number) => new Date(NOW.getTime() + hours * 3_600_000);
const AGREE = { decision: 'agree', version: GUARDIAN_READS, share: false } as const;
const DECLINE = { ...AGREE, decision: 'decline' } as const;

let phone: Phone;
beforeEach(async () => {
  phone = await aPhone('Zofia');
  await ownerQuery('update client set under18 = true where id = $1', [phone.clientId]);
  const plan = planSchema.parse({
    baseVersion: 0,
    from: '2026-11-01',
    until: null,
    sessionsPerWeek: 3,
    items: [
      { session: 'A', rungId: phone.rungs.get('H3.4'), side: 'both', sets: 3, target: 20, timesPerWeek: 3 },
    ],
  });
  await savePlan(coach(), { clientId: phone.clientId, plan }, NOW);
});
const coach = () => leadOf(phone.team);
const name = (email: string | null = 'marta@home.example') =>
  nameGuardian(coach(), { clientId: phone.clientId, guardian: { name: 'Marta', email } }, NOW);
const tokenOf = (url: string) => url.split('/').at(-1) ?? '';
async function open(at = NOW): Promise<Actor> {
  const { guardianId } = await name();
  const { url } = await linkGuardian(coach(), guardianId, at);
  const joined = await joinByLink(tokenOf(url), at);
  const found = joined && (await findActor(joined.userId));
  if (!joined || !found) throw new Error('the link does not open');
  const { teamId, ...rest } = found;
  return { ...rest, scope: teamScope(teamId), userId: joined.userId };
}
const sessions = async () => (await loadToday(phone.actor, later(1))).sessions.length;
const mails = async () =>
  (
    await ownerQuery<{ body: { to: string; subject: string; text: string } }>(
      `select body from outbox where kind = 'mail' and dedupe_key like 'guardian:%' and client_id = $1 order by created_at`,
      [phone.clientId],
    )
  ).map(({ body }) => body);
const sore = (value: number, over: object = {}) =>
  aTraining(phone, {
    pain: [{ region: 'wrist-back', side: 'right', moment: 'during', value, kind: 'joint' }],
    ...over,
  });

describe('training under 18', () => {
  it('does not begin before a parent or guardian agrees by their own link', async () => {
    const today = await loadToday(phone.actor, NOW);
    expect(today.start.guardian).toBe('a parent or guardian');
    expect(today.sessions).toEqual([]);

    const guardian = await open();
    expect(guardian).toMatchObject({ role: 'guardian', clientId: phone.clientId, name: 'Marta' });
    const read = await loadGuardian(guardian);
    expect(read).toMatchObject({ state: 'asked', client: 'Zofia', version: GUARDIAN_READS });
    expect(read.about.join(' ')).toContain('Zofia is under 18');
    expect((await loadToday(phone.actor, NOW)).start.guardian).toBe('Marta');
    expect(await sessions()).toBe(0);

    await decideAsGuardian(guardian, AGREE, NOW);
    await decideAsGuardian(guardian, AGREE, later(1));
    expect(await sessions()).toBe(1);
    expect((await loadToday(phone.actor, later(1))).start.guardian).toBeNull();
    expect(
      await ownerQuery(
        `select kind, given_by from consent where client_id = $1 and withdrawn_at is null and given_by like 'Marta%'`,
        [phone.clientId],
      ),
    ).toEqual([{ kind: 'health-data', given_by: 'Marta, parent or guardian' }]);
    expect((await loadGuardian(guardian)).state).toBe('agreed');
    const page = await loadStartPage(coach(), phone.clientId, later(2));
    expect(page).toMatchObject({ guardiansAgree: true, guardians: [{ name: 'Marta', agreed: true }] });
  });

  it('a no, and a yes taken back, end it; the client’s phone cannot say yes instead', async () => {
    const guardian = await open();
    await decideAsGuardian(guardian, DECLINE, NOW);
    await decideAsGuardian(guardian, DECLINE, NOW);
    const again = { version: CONSENT_VERSION, share: false, guardian: 'Marta' };
    await expect(giveConsent(phone.actor, again, later(1))).rejects.toMatchObject({
      code: 'forbidden',
      message: expect.stringContaining('Marta has said no'),
    });
    await expect(submitCheckIn(phone.actor, sore(0), later(1))).rejects.toMatchObject({
      code: 'consent-needed',
    });

    await decideAsGuardian(guardian, AGREE, later(2));
    expect(await sessions()).toBe(1);
    await withdrawAsGuardian(guardian, later(3));
    await withdrawAsGuardian(guardian, later(3));
    expect(await sessions()).toBe(0);
    expect((await loadGuardian(guardian)).state).toBe('withdrawn');
    await expect(giveConsent(phone.actor, again, later(4))).rejects.toMatchObject({ code: 'forbidden' });
    expect(
      (
        await ownerQuery<{ action: string }>(
          `select action from audit where client_id = $1 and action like 'guardian-%' order by at, id`,
          [phone.clientId],
        )
      )
        .map(({ action }) => action)
        .filter((action) => !/named|link/.test(action)),
    ).toEqual(['guardian-declined', 'guardian-agreed', 'guardian-withdrawn']);
  });

  it('waits on the board as on the page: where one agrees and another says no, too', async () => {
    const waits = async () =>
      (
        await withTeamPg(phone.team.scope, (tx) =>
          listStartNews(tx, { coachId: coach().memberId ?? '', date: TODAY, since: NOW }),
        )
      ).map(({ name: who, guardian }) => [who, guardian]);
    expect(await waits()).toEqual([['Zofia', true]]);
    await decideAsGuardian(await open(), AGREE, NOW);
    expect(await waits()).toEqual([]);
    await ownerQuery(
      `insert into guardian (team_id, client_id, name, declined_at) values ($1, $2, 'Jan', now())`,
      [phone.team.teamId, phone.clientId],
    );
    expect(await waits()).toEqual([['Zofia', true]]);
    expect(await sessions()).toBe(0);
  });

  it('who is named on the client’s phone is asked by a link too', async () => {
    await ownerQuery('delete from consent where client_id = $1', [phone.clientId]);
    await giveConsent(phone.actor, { version: CONSENT_VERSION, share: false, guardian: 'Jan' }, NOW);
    expect((await loadToday(phone.actor, NOW)).start.guardian).toBe('Jan');
    expect((await loadStartPage(coach(), phone.clientId, NOW))?.guardians).toMatchObject([
      { name: 'Jan', state: 'no link made yet', email: null },
    ]);
  });
});

describe('the link of a parent or guardian', () => {
  it('works once, and a newer one closes it', async () => {
    const { guardianId } = await name();
    const first = await linkGuardian(coach(), guardianId, NOW);
    const second = await linkGuardian(coach(), guardianId, later(1));
    expect(second.mailedTo).toBe('marta@home.example');
    expect(await joinByLink(tokenOf(first.url), later(2))).toBeUndefined();
    expect(await joinByLink(tokenOf(second.url), later(2))).toBeDefined();
    expect(await joinByLink(tokenOf(second.url), later(2))).toBeUndefined();
    const third = await linkGuardian(coach(), guardianId, later(3));
    expect(await joinByLink(tokenOf(third.url), later(3 + 7 * 24))).toBeUndefined();
  });

  it('is mailed anew to who has opened one before, and to nobody else', async () => {
    const { guardianId } = await name('halina@home.example');
    const links = async () =>
      (
        await ownerQuery<{ body: { to: string; text: string } }>(
          `select body from outbox where client_id = $1 and body ->> 'subject' = 'Your link as parent or guardian'`,
          [phone.clientId],
        )
      ).map(({ body }) => body);
    await mailSignInLink('halina@home.example', NOW);
    expect(await links()).toEqual([]);
    const { url } = await linkGuardian(coach(), guardianId, NOW);
    await joinByLink(tokenOf(url), NOW);
    await mailSignInLink('Halina@home.example', NOW);
    const [mail, ...more] = await links();
    expect(more).toEqual([]);
    const token = /guardian\/([\w-]+)/.exec(mail?.text ?? '')?.[1] ?? '';
    expect(await joinByLink(token, later(1))).toBeUndefined();
    expect(await joinByLink(token, new Date(NOW.getTime() + 60_000))).toBeDefined();
  });

  it('opens one client only, and nobody else decides', async () => {
    const guardian = await open();
    const stranger = await aPhone('Stranger');
    await expect(decideAsGuardian(phone.actor, AGREE, NOW)).rejects.toMatchObject({ code: 'forbidden' });
    await expect(decideAsGuardian({ ...guardian, userId: randomUUID() }, AGREE, NOW)).rejects.toMatchObject({
      code: 'forbidden',
    });
    await expect(loadGuardian({ ...guardian, scope: stranger.team.scope })).rejects.toMatchObject({
      code: 'not-found',
    });
    const { guardianId } = await name();
    await expect(linkGuardian(leadOf(stranger.team), guardianId, NOW)).rejects.toMatchObject({
      code: 'not-found',
    });
    await expect(linkGuardian(phone.actor, guardianId, NOW)).rejects.toMatchObject({ code: 'forbidden' });
    await expect(decideAsGuardian(guardian, { ...AGREE, version: '0/0' }, NOW)).rejects.toMatchObject({
      code: 'conflict',
    });
    await ownerQuery('update client set under18 = false where id = $1', [phone.clientId]);
    await expect(name()).rejects.toMatchObject({ code: 'conflict' });
  });
});

it('under 18 pain of 5 is told to stop and is on the board at once; grown up it is not', async () => {
  const open = () =>
    ownerQuery(`select kind, tier from reason where client_id = $1 and closed_at is null`, [phone.clientId]);
  const four = await submitCheckIn(phone.actor, sore(4), NOW);
  expect([four.cautions, await open()]).toEqual([[], []]);
  await ownerQuery('update client set under18 = false where id = $1', [phone.clientId]);
  const grown = await submitCheckIn(phone.actor, sore(5, { session: 'B' }), NOW);
  expect([grown.cautions, await open()]).toEqual([[], []]);
  await ownerQuery('update client set under18 = true where id = $1', [phone.clientId]);
  const five = await submitCheckIn(phone.actor, sore(5, { session: 'C' }), NOW);
  expect(five.cautions[0]?.text).toContain('licensed clinician');
  expect(await open()).toEqual([{ kind: 'pain-high', tier: 'now' }]);
});

describe('mails to a parent or guardian', () => {
  it('tell of pain of 4 and of danger signs, once a check-in, with what to do and no more', async () => {
    const guardian = await open();
    await submitCheckIn(phone.actor, sore(5), NOW);
    expect(await mails()).toEqual([]);
    await decideAsGuardian(guardian, AGREE, later(1));

    await submitCheckIn(phone.actor, sore(3, { session: 'B' }), later(2));
    expect(await mails()).toEqual([]);
    const four = sore(4, { session: 'C' });
    await submitCheckIn(phone.actor, four, later(2));
    await submitCheckIn(phone.actor, four, later(2));
    await submitCheckIn(phone.actor, sore(5, { session: 'C', correctsId: four.id }), later(3));
    const [mail, ...more] = await mails();
    expect(more).toEqual([]);
    expect(mail?.to).toBe('marta@home.example');
    expect(mail?.text).toContain('pain of 4 or more of 10');
    expect(mail?.text).toContain('licensed clinician');
    expect(mail?.text).not.toMatch(/wrist|right|5 of 10/i);

    const sign = { sign: 'chest-pain', goneWithinMinute: false, region: null, side: null } as const;
    await submitCheckIn(phone.actor, sore(0, { session: 'D', pain: [], dangerSigns: [sign] }), later(4));
    const urgent = (await mails()).at(-1);
    expect(urgent?.text).toContain('medical help at once');
    expect(urgent?.text).not.toMatch(/chest/i);
  });

  it('are not written for somebody of age, nor without an address', async () => {
    const guardian = await open();
    await decideAsGuardian(guardian, AGREE, NOW);
    await ownerQuery('update guardian set email = null where client_id = $1', [phone.clientId]);
    await submitCheckIn(phone.actor, sore(7), NOW);
    await ownerQuery('update client set under18 = false where id = $1', [phone.clientId]);
    await ownerQuery(`update guardian set email = 'marta@home.example' where client_id = $1`, [
      phone.clientId,
    ]);
    await submitCheckIn(phone.actor, sore(7, { session: 'B' }), NOW);
    expect(await mails()).toEqual([]);
  });
});

it('told in the intake, somebody under 18 counts as such, and the named guardian is there to be asked', async () => {
  await ownerQuery('update client set under18 = false where id = $1', [phone.clientId]);
  const at = new Date(`${TODAY}T20:00:00.000Z`);
  const you = {
    adult: 'no',
    birthYear: '2011',
    guardianName: 'Jan',
    guardianEmail: 'jan@home.example',
  } as const;
  await sendIntake(phone.actor, { key: randomUUID(), draft: aDraft({ you }, at.toISOString()) }, at);
  expect((await loadToday(phone.actor, at)).start.guardian).toBe('Jan');
  expect((await loadStartPage(coach(), phone.clientId, at))?.guardians).toMatchObject([
    { name: 'Jan', email: 'jan@home.example' },
  ]);
});
