import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { copyLibrary } from '#lib/db/library.ts';
import { type CheckInBody, type CheckInInput, checkInSchema } from '#lib/schemas/check-in.ts';
import { makeTestClient, makeTestTeam, type TestTeam } from '../support/database.ts';

export const NOW = new Date('2026-11-24T19:00:00.000Z');
export const TODAY = '2026-11-24';

export type Phone = { team: TestTeam; actor: Actor; clientId: string; rungs: Map<string, string> };

/** A team with the starter library and one client's phone in it. */
export async function aPhone(name = 'Client'): Promise<Phone> {
  const team = await makeTestTeam(`Team of ${name}`);
  const { rungIds } = await withTeamPg(team.scope, (tx) => copyLibrary(tx));
  return { team, rungs: rungIds, ...(await anotherPhone(team, name)) };
}

export async function anotherPhone(
  team: TestTeam,
  name: string,
): Promise<{ actor: Actor; clientId: string }> {
  const { clientId, userId } = await makeTestClient(team, { name });
  const actor: Actor = {
    scope: team.scope,
    userId,
    role: 'client',
    memberId: null,
    clientId,
    name,
    teamName: 'Team',
  };
  return { actor, clientId };
}

/** An ordinary training: heel pulls, both hands. */
export function aTraining(phone: Phone, changes: Partial<CheckInInput> = {}): CheckInBody {
  const rungId = phone.rungs.get('H3.4') ?? '';
  const set = { rungId, side: 'both', planned: 20, how: 'typed' } as const;
  return checkInSchema.parse({
    id: randomUUID(),
    date: TODAY,
    zone: 'Europe/Berlin',
    kind: 'training',
    session: 'A',
    effort: 7,
    minutes: 60,
    sets: [
      { ...set, index: 1, value: 20 },
      { ...set, index: 2, value: 18, faults: ['came-off'], clean: false },
    ],
    ...changes,
  });
}
