import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { listOwedNights } from '#lib/db/ledger.ts';
import { CONSENT_VERSION } from '#lib/domain/consent.ts';
import { addStill } from '#lib/usecases/add-still.ts';
import { askQuestion } from '#lib/usecases/ask-question.ts';
import { checkAfterCheckIn } from '#lib/usecases/check-after-check-in.ts';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { giveConsent } from '#lib/usecases/rights/give-consent.ts';
import { loadConsent } from '#lib/usecases/rights/load-consent.ts';
import { withdrawConsent } from '#lib/usecases/rights/withdraw-consent.ts';
import { sayAbsence } from '#lib/usecases/say-absence.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { aPhoto } from '#tests/fixtures/pictures.ts';
import { aPhone, aTraining, NOW, type Phone, TODAY } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';
import { leadOf } from '../team/arrange.ts';

let phone: Phone;
const body = { version: CONSENT_VERSION, share: false, guardian: '' };
const later = (hours: number) => new Date(NOW.getTime() + hours * 3_600_000);
const count = async (table: string) =>
  (
    await ownerQuery<{ n: number }>(`select count(*)::int as n from ${table} where client_id = $1`, [
      phone.clientId,
    ])
  )[0]?.n;
const owes = async (at: Date) =>
  (await listOwedNights(at))
    .filter((night) => night.clientId === phone.clientId)
    .map((night) => night.localDate);

beforeEach(async () => {
  phone = await aPhone('Zofia');
});
const forget = () => ownerQuery('delete from consent where client_id = $1', [phone.clientId]);

describe('without consent to the text in force', () => {
  it('no row about health is kept, and the same check-in is taken once it is given', async () => {
    await forget();
    const sent = aTraining(phone, { question: 'Bars or floor?' });
    const needed = { code: 'consent-needed' };
    await expect(submitCheckIn(phone.actor, sent, NOW)).rejects.toMatchObject(needed);
    await expect(
      sayAbsence(phone.actor, { id: randomUUID(), kind: 'illness', from: TODAY, to: null }, NOW),
    ).rejects.toMatchObject(needed);
    await expect(askQuestion(phone.actor, { id: randomUUID(), text: 'Why?' }, NOW)).rejects.toMatchObject(
      needed,
    );
    for (const table of ['check_in', 'check_in_set', 'day_rollup', 'question', 'absence'])
      expect(await count(table), table).toBe(0);

    await giveConsent(phone.actor, body, NOW);
    await submitCheckIn(phone.actor, sent, later(1));
    expect(await count('check_in')).toBe(1);
  });

  it('an earlier version asks again and its line stays; a version that is not in force is refused', async () => {
    await ownerQuery(`update consent set text_version = '0' where client_id = $1`, [phone.clientId]);
    expect((await loadConsent(phone.actor)).health.state).toBe('older');
    await expect(submitCheckIn(phone.actor, aTraining(phone), NOW)).rejects.toMatchObject({
      code: 'consent-needed',
    });
    expect(await owes(later(24))).not.toEqual([]); // nights go on: nothing was taken back
    await expect(giveConsent(phone.actor, { ...body, version: '0' }, NOW)).rejects.toMatchObject({
      code: 'conflict',
    });
    await giveConsent(phone.actor, body, NOW);
    const rows = await ownerQuery<{ v: string; live: boolean; by: string | null }>(
      `select text_version as v, withdrawn_at is null as live, withdrawn_by as by from consent where client_id = $1
       and kind = 'health-data' order by given_at`,
      [phone.clientId],
    );
    expect(rows).toEqual([
      { v: '0', live: false, by: null },
      { v: CONSENT_VERSION, live: true, by: null },
    ]);
  });

  it('under 18 a parent or guardian is named', async () => {
    await forget();
    await ownerQuery('update client set under18 = true where id = $1', [phone.clientId]);
    await expect(giveConsent(phone.actor, body, NOW)).rejects.toMatchObject({ fields: { guardian: /name/ } });
    await giveConsent(phone.actor, { ...body, guardian: 'Marta Krawiec' }, NOW);
    expect((await loadConsent(phone.actor)).health).toMatchObject({
      givenBy: 'Marta Krawiec, parent or guardian',
    });
  });

  it('given twice is as once, with one line in the record of acts', async () => {
    await forget();
    await Promise.all([giveConsent(phone.actor, body, NOW), giveConsent(phone.actor, body, NOW)]);
    expect(await count('consent')).toBe(1);
    const [lines] = await ownerQuery<{ n: number }>(
      `select count(*)::int as n from audit where client_id = $1 and action = 'consent-given'`,
      [phone.clientId],
    );
    expect(lines?.n).toBe(1);
  });
});

describe('consent that is taken back', () => {
  it('ends checks and check-ins, closes what was found, keeps what is kept; given again, it goes on from that day', async () => {
    const hurting = aTraining(phone, {
      pain: [
        { region: 'elbow-inner', side: 'right', moment: 'during', value: 7, kind: 'joint', usual: false },
      ],
    });
    await submitCheckIn(phone.actor, hurting, NOW);
    expect(
      await ownerQuery('select from reason where client_id = $1 and closed_at is null', [phone.clientId]),
    ).not.toEqual([]);
    await withdrawConsent(phone.actor, later(1));
    await withdrawConsent(phone.actor, later(1));

    expect(await owes(later(48))).toEqual([]);
    await expect(
      submitCheckIn(phone.actor, aTraining(phone, { session: 'B' }), later(2)),
    ).rejects.toMatchObject({
      code: 'consent-needed',
    });
    await checkAfterCheckIn({ teamId: phone.team.teamId, clientId: phone.clientId }, later(2));
    const reasons = await ownerQuery<{ why: string | null }>(
      'select closed_why as why from reason where client_id = $1',
      [phone.clientId],
    );
    expect(new Set(reasons.map(({ why }) => why))).toEqual(new Set(['consent taken back']));
    expect(await count('check_in')).toBe(1);
    const { lines } = await loadBoard(leadOf(phone.team), {}, later(2));
    expect(lines.map(({ words }) => words)).toEqual([
      'Zofia took their consent back on Tuesday 24 November: no checks, no check-ins',
    ]);
    expect((await loadConsent(phone.actor)).health).toMatchObject({ state: 'withdrawn', by: 'Zofia' });

    await giveConsent(phone.actor, body, later(72));
    expect((await owes(later(120)))[0]).toBe('2026-11-27'); // the days without are owed to nobody
    await submitCheckIn(phone.actor, aTraining(phone, { session: 'B', date: '2026-11-27' }), later(73));
  });

  it('takes no picture of a question that was asked before', async () => {
    const question = randomUUID();
    await askQuestion(phone.actor, { id: question, text: 'Is this straight?' }, NOW);
    await withdrawConsent(phone.actor, NOW);
    const sent = { questionId: question, stillId: randomUUID(), bytes: await aPhoto() };
    await expect(addStill(phone.actor, sent, NOW)).rejects.toMatchObject({ code: 'consent-needed' });
  });
});
