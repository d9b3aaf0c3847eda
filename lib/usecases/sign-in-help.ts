import { env } from '#lib/config/env.ts';
import { findActor, findUserId } from '#lib/db/accounts.ts';
import { type TeamScope, teamScope, withTeam } from '#lib/db/client.ts';
import { listClientNames } from '#lib/db/members.ts';
import { DEMO_SIGN_IN } from '#lib/library/demo-sign-in.ts';

export type DemoPerson = {
  readonly name: string;
  readonly what: string;
  readonly email: string;
  readonly password: string;
};
export type SignInHelp = {
  readonly people: readonly DemoPerson[];
  readonly clients: readonly { id: string; name: string }[];
  readonly firstClientId: string | undefined;
};

/** The invented people of the demo; nothing outside the demo. */
export async function loadSignInHelp(): Promise<SignInHelp | undefined> {
  const scope = await demoScope();
  if (!scope) return undefined;
  const clients = await withTeam(scope, (tx) => listClientNames(tx));
  const { coach, secondCoach, assistant, otherTeam, client } = DEMO_SIGN_IN;
  return {
    people: [
      { ...coach, what: 'lead' },
      { ...secondCoach, what: 'coach' },
      { ...assistant, what: 'assistant' },
      { ...otherTeam, what: 'lead of another team' },
    ],
    clients: clients.map(({ id, name }) => ({ id, name })),
    firstClientId: clients.find(({ name }) => name === client.name)?.id ?? clients[0]?.id,
  };
}

/** The demo's team; undefined outside the demo or before it is filled. */
export async function demoScope(): Promise<TeamScope | undefined> {
  if (env().PLUMBLINE_DEMO !== 'on') return undefined;
  const userId = await findUserId(DEMO_SIGN_IN.coach.email);
  const lead = userId ? await findActor(userId) : undefined;
  return lead ? teamScope(lead.teamId) : undefined;
}
