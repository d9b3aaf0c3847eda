import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { insertClient } from '#lib/db/clients.ts';
import { AppError } from '#lib/errors.ts';
import type { NewClient } from '#lib/schemas/client.ts';

/** Keeps a new client, standing "invited", with the acting coach as theirs. */
export async function makeClient(actor: Actor, input: NewClient, now: Date): Promise<{ clientId: string }> {
  const { memberId } = actor;
  if (!memberId) throw new AppError('forbidden', 'Only a coach makes clients.');
  const clientId = await withTeamPg(actor.scope, async (tx) => {
    const id = await insertClient(
      tx,
      {
        coachId: memberId,
        name: input.name,
        email: input.email,
        zone: input.zone,
        under18: input.under18,
        goal: input.goal,
        usualSessionMinutes: input.usualSessionMinutes,
        toldWeekAu: toldWeekAu(input.toldWeek),
      },
      now,
    );
    await insertAudit(tx, actor, { action: 'client-made', clientId: id, fields: [] });
    return id;
  });
  return { clientId };
}

/** Days x minutes x effort, arbitrary units; null unless all three were told. */
function toldWeekAu(told: NewClient['toldWeek']): number | null {
  if (!told || told.days === null || told.minutes === null || told.effort === null) return null;
  return told.days * told.minutes * told.effort;
}
