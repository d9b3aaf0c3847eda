import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { copyLibrary } from '#lib/db/library.ts';
import { ownerQuery, type TestTeam } from '#tests/integration/support/database.ts';

/** The team's own copy of the starter library; answers with rungs to plan with. */
export async function copyLibraryInto(
  team: TestTeam,
): Promise<{ both: string; both2: string; each: string }> {
  await withTeamPg(team.scope, (tx) => copyLibrary(tx));
  const rungs = await ownerQuery<{ id: string; each: boolean }>(
    `select r.id, d.each_side as each from rung r join drill d on d.team_id = r.team_id and d.id = r.drill_id
     join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
     where r.team_id = $1 and d.measure = 'reps' order by l.position, r.position`,
    [team.teamId],
  );
  const both = rungs.filter((rung) => !rung.each);
  return {
    both: both[0]?.id ?? '',
    both2: both[1]?.id ?? '',
    each: rungs.find((rung) => rung.each)?.id ?? '',
  };
}

/** The lead of a test team as somebody who acts. */
export function leadOf(team: TestTeam): Actor {
  return {
    scope: team.scope,
    userId: team.userId,
    role: 'lead',
    memberId: team.memberId,
    clientId: null,
    name: 'Lead',
    teamName: 'Team',
  };
}
