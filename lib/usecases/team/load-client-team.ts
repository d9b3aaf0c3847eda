import type { Actor } from '#lib/auth/actor.ts';
import { may } from '#lib/auth/permissions.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { type ClientMoveLine, listMovesOf, lockClientCoaches } from '#lib/db/moves.ts';
import { listStandingChanges } from '#lib/db/standing-changes.ts';
import { listTeamMembers, type TeamMember } from '#lib/db/team-members.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';
import { exactDate, longDate, saidDate } from '#lib/views/say-date.ts';
import { STANDING_LABELS } from '#lib/views/standing-labels.ts';

export type TraceLine = { id: string; on: string; exact: string; words: string };
export type ClientTeam = {
  coachId: string;
  coach: string;
  /** Coaches that the client can be moved to; empty: this member may not move the client. */
  others: { id: string; name: string }[];
  /** The note that came with the client, for the new coach: until it is read, or 14 days. */
  note: { moveId: string; words: string } | null;
  /** Moves and changes of standing, newest first. */
  trace: TraceLine[];
  /** A standing that begins on a day to come. */
  ahead: { changeId: string; words: string } | null;
};

const NOTE_DAYS = 14;

/** With which coach a client is and was, and how the standing changed; undefined: no such client here. */
export function loadClientTeam(actor: Actor, clientId: string, now: Date): Promise<ClientTeam | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const [client] = await lockClientCoaches(tx, [clientId]);
    if (!client) return undefined;
    const members = await listTeamMembers(tx, now);
    const self = members.find(({ id }) => id === actor.memberId);
    const zone = self?.zone ?? 'UTC';
    const today = localDateOf(now, zone);
    const mayMove = may(actor.role, 'move-clients') && (actor.role === 'lead' || client.coachId === self?.id);
    const { trace, note } = await movesOf(tx, clientId, { self, coachId: client.coachId, zone, today, now });
    const standings = await standingsOf(tx, clientId, { zone, today });
    return {
      coachId: client.coachId,
      coach: members.find(({ id }) => id === client.coachId)?.name ?? 'somebody who left the team',
      others: mayMove ? members.filter(({ id, role }) => role !== 'assistant' && id !== client.coachId) : [],
      note,
      trace: [...trace, ...standings.trace].sort((a, b) => b.at.getTime() - a.at.getTime()),
      ahead: standings.ahead,
    };
  });
}

type Seen = { self: TeamMember | undefined; coachId: string; zone: string; today: string; now: Date };
type Dated = TraceLine & { at: Date };

async function movesOf(
  tx: TeamPg,
  clientId: string,
  { self, coachId, zone, today, now }: Seen,
): Promise<{ trace: Dated[]; note: ClientTeam['note'] }> {
  const moves = await listMovesOf(tx, clientId);
  const oldest = now.getTime() - NOTE_DAYS * 86_400_000;
  const [newest] = moves;
  const heard = (move: ClientMoveLine) => {
    if (move.readAt) return `; read ${saidDate(localDateOf(move.readAt, zone), today)}`;
    return move === newest && move.toId === coachId ? '; not read yet' : '';
  };
  const unread = newest?.toId === self?.id && newest?.readAt === null && newest.at.getTime() >= oldest;
  return {
    trace: moves.map((move) => ({
      id: move.id,
      at: move.at,
      ...onDay(move.at, zone, today),
      words: `From ${move.from} to ${move.to}, by ${move.by}${move.note ? `: “${move.note}”` : ''}${heard(move)}`,
    })),
    note:
      newest && unread
        ? {
            moveId: newest.id,
            words: `${saidDate(localDateOf(newest.at, zone), today)}: from ${newest.from} to you, by ${newest.by}${newest.note ? `: “${newest.note}”` : ', without a note'}`,
          }
        : null,
  };
}

async function standingsOf(
  tx: TeamPg,
  clientId: string,
  { zone, today }: { zone: string; today: string },
): Promise<{ trace: Dated[]; ahead: ClientTeam['ahead'] }> {
  const changes = await listStandingChanges(tx, clientId);
  const pending = changes.find(({ appliedAt }) => appliedAt === null);
  return {
    trace: changes
      .filter(({ appliedAt }) => appliedAt !== null)
      .map(({ id, createdAt, before, after, from, by, why }) => ({
        id,
        at: createdAt,
        ...onDay(createdAt, zone, today),
        words: `${label(before)} to ${label(after)} from ${longDate(from)}, by ${by}${why ? `: “${why}”` : ''}`,
      })),
    ahead: pending
      ? {
          changeId: pending.id,
          words: `From ${longDate(pending.from)}: ${label(pending.after)}${pending.why ? ` (“${pending.why}”)` : ''}`,
        }
      : null,
  };
}

function label(standing: Standing): string {
  return STANDING_LABELS[standing];
}

function onDay(at: Date, zone: string, today: string): { on: string; exact: string } {
  const date = localDateOf(at, zone);
  return { on: saidDate(date, today), exact: exactDate(date) };
}
