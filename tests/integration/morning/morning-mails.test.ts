import { randomUUID } from 'node:crypto';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { chooseMorningMail } from '#lib/usecases/choose-morning-mail.ts';
import { deliverMails } from '#lib/usecases/deliver-mails.ts';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { loadMorningMail } from '#lib/usecases/load-morning-mail.ts';
import { writeMorningMails } from '#lib/usecases/write-morning-mails.ts';
import { leadOf, openReason } from '../board/board-rows.ts';
import { openMailServer } from '../notices/mail-server.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';

// Read once, when the first mail is due.
const service = await openMailServer();
process.env.PLUMBLINE_MAIL_SERVER = service.address;
process.env.PLUMBLINE_MAIL_FROM = 'Plumbline <training@low-wall.example>';
afterAll(() => service.close());

const HOUR = 3_600_000;
/** 06:00 in Berlin on Thursday 26 November 2026. */
const SIX = new Date('2026-11-26T05:00:00.000Z');
const later = (hours: number, from = SIX) => new Date(from.getTime() + hours * HOUR);
let team: TestTeam;
let clientId: string;

beforeEach(async () => {
  await ownerQuery(`update member set morning_mail = 'off'`); // of the teams of other tests
  service.status = 250;
  service.taken.length = 0;
  team = await makeTestTeam('Low Wall');
  ({ clientId } = await makeTestClient(team, { name: 'Maren Oduya' }));
  await nightsDone(team);
});

/** As if every night had run: what is owed would be waited for. */
async function nightsDone(of: TestTeam): Promise<void> {
  await ownerQuery(
    `insert into night_client (team_id, client_id, local_date, done_at, rules_version)
     select c.team_id, c.id, d::date, now(), '1' from client c, generate_series('2026-10-15'::date, '2026-12-05'::date, '1 day') d
     where c.team_id = $1 on conflict do nothing`,
    [of.teamId],
  );
}
const mailsOf = (of = team) =>
  ownerQuery<{ to: string; subject: string; text: string; sent: boolean }>(
    `select body->>'to' as to, body->>'subject' as subject, body->>'text' as text, sent_at is not null as sent
     from outbox where team_id = $1 and kind = 'mail' order by created_at`,
    [of.teamId],
  );
const decided = () =>
  ownerQuery<{ date: string; why: string | null }>(
    `select right(dedupe_key, 10) as date, body->>'decided' as why from outbox
     where team_id = $1 and kind = 'morning' order by dedupe_key`,
    [team.teamId],
  );
async function aCoach(name: string, of = team): Promise<string> {
  const [userId, memberId] = [randomUUID(), randomUUID()];
  await ownerQuery('insert into "user" (id, name, email) values ($1, $2, $3)', [
    userId,
    name,
    `${userId}@x.example`,
  ]);
  await ownerQuery(
    `insert into member (team_id, id, user_id, role, name, email, zone) values ($1, $2, $3, 'coach', $4, $5, 'Europe/Berlin')`,
    [of.teamId, memberId, userId, name, `${name}@x.example`],
  );
  return memberId;
}

describe('once a coach and local day', () => {
  it('at the hour, through the outbox, once, however often the tick asks', async () => {
    await openReason(team, clientId, 'pain-high');
    expect(await writeMorningMails(later(-0.25))).toBe(0);
    expect(await writeMorningMails(SIX)).toBe(1);
    for (const hours of [0, 0.25, 5, 17.9]) expect(await writeMorningMails(later(hours))).toBe(0);
    const [mail, ...others] = await mailsOf();
    expect(others).toEqual([]);
    expect(mail?.subject).toBe('Thursday 26 November: one to answer now');
    expect(mail?.text).toContain('Maren Oduya: pain of 6 or more (since Fri 20 Nov)');
    expect(await deliverMails(SIX)).toBe(1);
    expect(service.taken).toHaveLength(1);
    expect(await deliverMails(later(1))).toBe(0);
    expect(await writeMorningMails(later(24))).toBe(1);
  });

  it('says no good news while pain of 6 is with the client', async () => {
    await openReason(team, clientId, 'step-up-earned');
    const pain = await openReason(team, clientId, 'pain-high');
    await ownerQuery(`update reason set state = 'with-client' where id = $1`, [pain]);
    expect(await writeMorningMails(SIX)).toBe(0);
    expect((await loadMorningMail(leadOf(team), SIX)).mail.text).not.toContain('Maren Oduya');
  });

  it('two workers at the same moment write one', async () => {
    await openReason(team, clientId, 'pain-high');
    const written = await Promise.all([1, 2, 3, 4].map(() => writeMorningMails(SIX)));
    expect(written.sort()).toEqual([0, 0, 0, 1]);
    expect(await mailsOf()).toHaveLength(1);
  });

  it('across clock changes: every quarter of an hour of a week with one, one mail a date', async () => {
    await openReason(team, clientId, 'pain-high');
    await ownerQuery(
      `update member set zone = 'America/Nuuk', morning_mail_hour = 23, morning_mail = 'when-new' where id = $1`,
      [team.memberId],
    );
    const from = Date.parse('2027-03-25T12:00:00Z'); // the clock goes from 23:00 of the 27th to 00:00 of the 28th
    await ownerQuery(
      `insert into night_client (team_id, client_id, local_date, done_at, rules_version)
       select $1, $2, d::date, now(), '1' from generate_series('2027-03-01'::date, '2027-04-05'::date, '1 day') d`,
      [team.teamId, clientId],
    );
    for (let at = from; at < from + 5 * 24 * HOUR; at += HOUR / 4) {
      const hour = new Date(at).getUTCHours();
      if (hour < 23 && hour > 3) continue; // the evenings of Nuuk are looked at
      if (await writeMorningMails(new Date(at))) await deliverMails(new Date(at));
    }
    expect((await decided()).map(({ date }) => date)).toEqual([
      '2027-03-25',
      '2027-03-26',
      '2027-03-27',
      '2027-03-28',
      '2027-03-29',
    ]);
    expect(service.taken).toHaveLength(5);
  });

  it('a machine that slept sends today’s, and one that could not send drops the days before', async () => {
    await openReason(team, clientId, 'pain-high');
    await writeMorningMails(SIX);
    service.status = 451;
    expect(await deliverMails(SIX)).toBe(0);
    expect(await writeMorningMails(later(3 * 24 + 9))).toBe(1);
    expect((await mailsOf()).map(({ subject }) => subject)).toEqual([
      'Sunday 29 November: one to answer now',
    ]);
    expect((await decided()).map(({ date }) => date)).toEqual(['2026-11-26', '2026-11-29']);
  });

  it('waits up to an hour for nights that are owed, then says how far they got', async () => {
    await openReason(team, clientId, 'pain-high');
    await ownerQuery('delete from night_client where team_id = $1', [team.teamId]);
    expect(await writeMorningMails(SIX)).toBe(0);
    expect(await writeMorningMails(later(0.75))).toBe(0);
    expect(await writeMorningMails(later(1))).toBe(1);
  });
  it('goes at once when the nights end meanwhile', async () => {
    await openReason(team, clientId, 'pain-high');
    await ownerQuery('delete from night_client where team_id = $1', [team.teamId]);
    expect(await writeMorningMails(SIX)).toBe(0);
    await nightsDone(team);
    expect(await writeMorningMails(later(0.25))).toBe(1);
  });
});

describe('who wants it, and what is new', () => {
  const choose = (mail: 'off' | 'when-new' | 'always', hour = 6) =>
    chooseMorningMail(leadOf(team), { mail, hour, zone: 'Europe/Berlin' });

  it('when something is new: nothing on a morning without; what came since the last is new', async () => {
    await openReason(team, clientId, 'stalled'); // raised on the 21st
    expect(await writeMorningMails(SIX)).toBe(0);
    expect(await decided()).toEqual([{ date: '2026-11-26', why: 'nothing-new' }]);
    await ownerQuery(
      `insert into reason_event (team_id, reason_id, at, what, body) select team_id, id, $2, 'worse', '{}' from reason where team_id = $1`,
      [team.teamId, later(20)],
    );
    expect(await writeMorningMails(later(24))).toBe(1);
    expect((await mailsOf())[0]?.text).toContain('Maren Oduya: stalled (new)');
    expect(await writeMorningMails(later(48))).toBe(0);
  });

  it('always: also when nothing is new; off: never; another hour: then', async () => {
    await choose('always', 9);
    expect(await writeMorningMails(SIX)).toBe(0);
    expect(await writeMorningMails(later(3))).toBe(1);
    await choose('off');
    expect(await writeMorningMails(later(30))).toBe(0);
  });

  it('nobody who left', async () => {
    await openReason(team, clientId, 'pain-high');
    await ownerQuery('update member set left_at = now() where id = $1', [team.memberId]);
    expect(await writeMorningMails(SIX)).toBe(0);
  });

  it('says what the board says: as many rows in each group', async () => {
    const other = await makeTestClient(team, { name: 'Bo Lind' });
    await openReason(team, clientId, 'pain-high');
    await openReason(team, clientId, 'stalled');
    await openReason(team, other.clientId, 'stalled');
    const { mail } = await loadMorningMail(leadOf(team), SIX);
    const { groups } = await loadBoard(leadOf(team), {}, SIX);
    expect(groups.length).toBe(2);
    for (const group of groups) expect(mail.text).toContain(`${group.title} (${group.rows.length})\n`);
  });

  it('carries nothing of another team, and of another coach only what is covered', async () => {
    const bo = await aCoach('bo');
    const theirs = await makeTestClient(team, { name: 'Of Bo' });
    await ownerQuery('update client set coach_id = $2 where id = $1', [theirs.clientId, bo]);
    await openReason(team, clientId, 'pain-high');
    await openReason(team, theirs.clientId, 'pain-high');
    const strangers = await makeTestTeam('High Wall');
    const stranger = await makeTestClient(strangers, { name: 'A stranger' });
    await openReason(strangers, stranger.clientId, 'pain-high');
    await nightsDone(team);
    await nightsDone(strangers);
    expect(await writeMorningMails(SIX)).toBe(3);
    const texts = (await mailsOf()).map(({ to, text }) => [
      to.startsWith('bo@'),
      /Of Bo/.test(text),
      /Maren/.test(text),
    ]);
    expect(texts.sort()).toEqual([
      [false, false, true],
      [true, true, false],
    ]);
    expect((await mailsOf()).some(({ text }) => text.includes('stranger'))).toBe(false);

    await ownerQuery(
      `insert into cover (team_id, member_id, covered_by_id, from_date, to_date) values ($1, $2, $3, '2026-11-27', '2026-11-28')`,
      [team.teamId, bo, team.memberId],
    );
    expect(await writeMorningMails(later(24))).toBe(2); // the lead and the strangers
    const covered = (await mailsOf()).filter(({ subject }) => subject.startsWith('Friday'));
    expect(covered).toHaveLength(1);
    expect(covered[0]?.to.startsWith('bo@')).toBe(false);
    expect(covered[0]?.text).toMatch(
      /Of Bo[\s\S]*With the clients whom you cover for: bo, until Sat 28 Nov\./,
    );
    expect(covered[0]?.text).toContain('Maren');
    expect(await writeMorningMails(later(72))).toBe(3); // Bo is back on the 29th
  });
});
