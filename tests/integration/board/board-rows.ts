import type { Actor } from '#lib/auth/actor.ts';
import { ownerQuery, type TestTeam } from '#tests/integration/support/database.ts';

export const NOW = new Date('2026-11-25T07:00:00.000Z');

export function leadOf(team: TestTeam): Actor {
  return {
    scope: team.scope,
    userId: team.userId,
    role: 'lead',
    memberId: team.memberId,
    clientId: null,
    name: 'Ines Halloran',
    teamName: 'Low Wall',
  };
}

/** An open reason as a night would have written it. */
export async function openReason(team: TestTeam, clientId: string, kind = 'stalled'): Promise<string> {
  const tier = kind === 'pain-high' ? 'now' : 'this-week';
  const rows = await ownerQuery<{ id: string }>(
    `insert into reason (team_id, client_id, kind, subject_key, subject, level, points, tier, sentence, short, since,
       step, clears, evidence, working, rules_version, raised_at, updated_at)
     values ($1, $2, $3, 'toe-pull', '{"key":"toe-pull","label":"Toe pull"}', 'act', $5, $4, 'Toe pull for **52 days**.',
       'toe pull 52 days', '2026-11-20', '{"kind":"one-rung-back","text":"One rung back."}', 'the rung changes', '{}',
       '{"daysKnown":{"known":27,"of":28}}', '1', '2026-11-21T03:00:00Z', '2026-11-24T03:00:00Z') returning id`,
    [team.teamId, clientId, kind, tier, tier === 'now' ? 3 : 2],
  );
  return rows[0]?.id ?? '';
}

export async function waitingQuestion(team: TestTeam, clientId: string): Promise<string> {
  const rows = await ownerQuery<{ id: string }>(
    `insert into question (team_id, client_id, text, asked_at) values ($1, $2, 'Bars or floor?', '2026-11-22T10:00:00Z')
     returning id`,
    [team.teamId, clientId],
  );
  return rows[0]?.id ?? '';
}

/** What an act may change of a client's reasons, in one order. */
export function holdsOf(clientId: string): Promise<Record<string, unknown>[]> {
  return ownerQuery(
    `select kind, state, aside_until::text, aside_until_worse, with_client_until::text, clear_nights, closed_at, closed_why
     from reason where client_id = $1 order by kind`,
    [clientId],
  );
}
