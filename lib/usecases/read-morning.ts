import { hasDangerWords } from '#lib/checks/danger-words.ts';
import { env } from '#lib/config/env.ts';
import type { TeamPg } from '#lib/db/client.ts';
import {
  findMorningNight,
  listMorningReasons,
  type MorningChoice,
  readMorningTeam,
} from '#lib/db/morning-mails.ts';
import { listWaitingQuestions } from '#lib/db/waiting-questions.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { coachesCarried, isAway } from '#lib/views/morning/carried-clients.ts';
import { type MorningMail, morningMail } from '#lib/views/morning/morning-mail.ts';

export type MorningRead = {
  /** Somebody covers this member today: their mail goes there. */
  away: boolean;
  clientIds: string[];
  mail: MorningMail;
};
type Reader = Pick<MorningChoice, 'zone'> & { memberId: string; date: string; lastAt: Date; now: Date };

/** A member's morning in words: own clients, and those of everybody they cover that day. */
export async function readMorning(
  tx: TeamPg,
  { memberId, date, zone, lastAt, now }: Reader,
): Promise<MorningRead> {
  const team = await readMorningTeam(tx, date);
  const here = team.members.filter((member) => !member.left);
  const members = {
    here: new Set(here.map((member) => member.id)),
    leads: new Set(here.filter((member) => member.role === 'lead').map((member) => member.id)),
    covers: team.covers,
  };
  const coachIds = [...new Set(team.clients.map((client) => client.coachId))];
  const carried = new Set(coachesCarried(memberId, coachIds, members));
  const clients = team.clients.filter((client) => carried.has(client.coachId));
  const clientIds = clients.map((client) => client.id);
  const own = new Set(clientIds);
  const covered = team.covers
    .filter((cover) => cover.coveredById === memberId)
    .map(({ memberId: id, to }) => ({ name: team.members.find((one) => one.id === id)?.name ?? '', to }));
  const questions = (await listWaitingQuestions(tx)).filter((question) => own.has(question.clientId));
  const mail = morningMail({
    today: date,
    lastAt: lastAt.toISOString(),
    clients,
    reasons: await listMorningReasons(tx, clientIds),
    questions: questions.map(({ clientId, askedAt, text }) => ({
      clientId,
      askedAt,
      askedOn: localDateOf(new Date(askedAt), zone),
      danger: hasDangerWords(text),
    })),
    night: await findMorningNight(tx, { zone, clientIds, now }),
    covered,
    origin: env().PLUMBLINE_ORIGIN,
  });
  return { away: isAway(memberId, members), clientIds, mail };
}
