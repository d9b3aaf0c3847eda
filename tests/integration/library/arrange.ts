import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findLadder } from '#lib/db/library-ladder.ts';
import type { DrillState, LadderState, RungState } from '#lib/planning/ladders/ladder-state.ts';
import { type LadderChange, ladderChange } from '#lib/schemas/ladder.ts';
import { editTeamLadder, type LadderEdited } from '#lib/usecases/edit-ladder.ts';
import { loadLadder } from '#lib/usecases/load-ladder.ts';
import { rungBody, rungForm } from '#lib/views/ladders/rung-form.ts';
import { ownerQuery, type TestTeam } from '#tests/integration/support/database.ts';

export const NOW = new Date('2026-11-25T12:00:00.000Z');

/** Another coach of the same team. */
export async function anotherCoach(team: TestTeam, lead: Actor, name: string): Promise<Actor> {
  const [userId, memberId] = [randomUUID(), randomUUID()];
  const email = `${userId}@test.example`;
  await ownerQuery('insert into "user" (id, name, email) values ($1, $2, $3)', [userId, name, email]);
  await ownerQuery(
    `insert into member (team_id, id, user_id, role, name, email, zone) values ($1, $2, $3, 'coach', $4, $5, 'UTC')`,
    [team.teamId, memberId, userId, name, email],
  );
  return { ...lead, userId, memberId, role: 'coach', name };
}

/** The id of a ladder or rung that came from the starter library under this key. */
export async function idOf(team: TestTeam, table: 'ladder' | 'rung', key: string): Promise<string> {
  const [row] = await ownerQuery<{ id: string }>(`select id from ${table} where team_id = $1 and key = $2`, [
    team.teamId,
    key,
  ]);
  return row?.id ?? '';
}

export async function ladderNow(team: TestTeam, ladderId: string): Promise<LadderState> {
  const ladder = await withTeamPg(team.scope, (tx) => findLadder(tx, ladderId, { lock: false }));
  if (!ladder) throw new Error('no such ladder');
  return ladder;
}

/** The ladder as a coach has it open, and a way to send edits of it. */
export async function opened(actor: Actor, ladderId: string) {
  const loaded = await loadLadder(actor, ladderId, NOW);
  if (!loaded) throw new Error('no such ladder');
  const send = (edit: unknown, agreed: string | null = null, base = loaded.base): Promise<LadderEdited> => {
    const change: LadderChange = ladderChange.parse({ base, agreed, edit });
    return editTeamLadder(actor, { ladderId, change }, NOW);
  };
  return { ...loaded, send };
}

/** Sends an edit and says yes to whom it touches. */
export async function agreeTo(actor: Actor, ladderId: string, edit: unknown): Promise<void> {
  const { send } = await opened(actor, ladderId);
  const asked = await send(edit);
  if (!asked.saved) await send(edit, asked.agree);
}

/** A rung as its form sends it, with what is changed. */
export function rungEdit(
  ladder: LadderState,
  rungId: string,
  over: { rung?: object; drill?: object; swaps?: unknown[]; drillFor?: 'all' | 'this' },
): object {
  const form = rungForm(ladder, rungId);
  if (!form) throw new Error('no such rung');
  const body = rungBody(form);
  return {
    act: 'rung',
    rungId,
    drillFor: over.drillFor ?? 'all',
    rung: { ...body.rung, ...over.rung },
    drill: { ...body.drill, ...over.drill },
    swaps: over.swaps ?? body.swaps,
  };
}

export async function place(
  team: TestTeam,
  clientId: string,
  on: { ladderId: string; rungId: string; side?: string; from?: string },
): Promise<void> {
  await ownerQuery(
    `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date) values ($1, $2, $3, $4, $5, $6)`,
    [team.teamId, clientId, on.ladderId, on.rungId, on.side ?? 'both', on.from ?? '2026-11-02'],
  );
}

/** A plan version with one session A of these rungs. */
export async function plan(
  team: TestTeam,
  clientId: string,
  about: { version: number; from: string; rungIds: string[] },
): Promise<void> {
  const [planId, sessionId] = [randomUUID(), randomUUID()];
  await ownerQuery(
    `insert into plan (team_id, id, client_id, version, from_date, sessions_per_week) values ($1, $2, $3, $4, $5, 3)`,
    [team.teamId, planId, clientId, about.version, about.from],
  );
  await ownerQuery(
    `insert into plan_session (team_id, id, plan_id, label, position) values ($1, $2, $3, 'A', 0)`,
    [team.teamId, sessionId, planId],
  );
  await ownerQuery(
    `insert into plan_item (team_id, session_id, rung_id, side, position, sets, target, times_per_week)
     select $1, $2, rung.id, 'both', rung.at, 4, 10, 3 from unnest($3::uuid[]) with ordinality as rung(id, at)`,
    [team.teamId, sessionId, about.rungIds],
  );
}

export function rungNamed(ladder: LadderState, id: string): { rung: RungState; drill: DrillState } {
  const rung = ladder.rungs.find((one) => one.id === id);
  const drill = ladder.drills.find((one) => one.id === rung?.drillId);
  if (!rung || !drill) throw new Error('no such rung');
  return { rung, drill };
}
