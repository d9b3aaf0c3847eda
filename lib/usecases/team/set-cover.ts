import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { type CoverRow, endCover, findCover, insertCover, listCovers, lockCovers } from '#lib/db/covers.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { CoverInput } from '#lib/schemas/team.ts';
import { exactDate } from '#lib/views/say-date.ts';
import { assertMember } from '../assert-member.ts';
import { presentMember } from './change-role.ts';

/** Longest cover, days (own choice). */
const LONGEST_DAYS = 366;

/**
 * One coach has the clients of another from a day to a day. A coach says it of oneself, a lead of everybody. Nobody is
 * covered twice on one day, nor by somebody who is away then.
 */
export async function setCover(actor: Actor, input: CoverInput, now: Date): Promise<{ coverId: string }> {
  const selfId = assertMember(actor);
  if (actor.role !== 'lead' && input.memberId !== selfId)
    throw new AppError('forbidden', 'A coach says this of oneself; a lead says it of anybody.');
  return withTeamPg(actor.scope, async (tx) => {
    await lockCovers(tx);
    const away = await presentMember(tx, input.memberId, now);
    const by = await presentMember(tx, input.coveredById, now);
    if (by.role === 'assistant') throw refused('coveredById', `${by.name} is an assistant: choose a coach`);
    if (input.to < away.today) throw refused('to', 'is over already: choose days from today on');
    if (input.to > addDays(input.from, LONGEST_DAYS)) throw refused('to', 'is more than a year later');
    await assertNoneAway(tx, input, { away: away.name, by: by.name });
    const coverId = await insertCover(tx, input);
    await insertAudit(tx, actor, {
      action: 'cover-set',
      objectId: coverId,
      fields: ['coveredBy', 'from', 'to'],
    });
    return { coverId };
  });
}

/** Ends a cover with yesterday, or takes one away that has not begun. Answers with what it was, for the way back. */
export async function stopCover(actor: Actor, coverId: string, now: Date): Promise<{ was: CoverRow }> {
  const selfId = assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    await lockCovers(tx);
    const was = await findCover(tx, coverId);
    if (!was) throw new AppError('not-found', 'This cover is not there any more, or not of your team.');
    if (actor.role !== 'lead' && was.memberId !== selfId)
      throw new AppError('forbidden', 'Only who is away or a lead ends this.');
    const { today } = await presentMember(tx, was.memberId, now);
    await endCover(tx, coverId, addDays(today, -1));
    await insertAudit(tx, actor, { action: 'cover-ended', objectId: coverId, fields: ['to'] });
    return { was };
  });
}

async function assertNoneAway(
  tx: TeamPg,
  input: CoverInput,
  names: { away: string; by: string },
): Promise<void> {
  const meeting = (await listCovers(tx, input.from)).filter((cover) => cover.from <= input.to);
  const twice = meeting.find((cover) => cover.memberId === input.memberId);
  if (twice) throw refused('from', `${names.away} is covered by ${twice.coveredBy} ${daysOf(twice)} already`);
  const alsoAway = meeting.find((cover) => cover.memberId === input.coveredById);
  if (alsoAway) throw refused('coveredById', `${names.by} is away ${daysOf(alsoAway)}`);
  const covering = meeting.find((cover) => cover.coveredById === input.memberId);
  if (covering) throw refused('from', `${names.away} covers for ${covering.name} ${daysOf(covering)}`);
}

function daysOf({ from, to }: CoverRow): string {
  return from === to ? `on ${exactDate(from)}` : `from ${exactDate(from)} to ${exactDate(to)}`;
}

function refused(field: string, message: string): AppError {
  return new AppError('invalid', `${field}: ${message}`, { fields: { [field]: message } });
}
