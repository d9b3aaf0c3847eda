import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import {
  findPhoneClient,
  listOpenQuestions,
  listSaidByCoach,
  type SaidByCoach,
} from '#lib/db/phone-reads.ts';
import { AppError } from '#lib/errors.ts';

const SHOWN = 50;

export type Answers = {
  clientId: string;
  teamName: string;
  coachName: string;
  zone: string;
  said: SaidByCoach[];
  open: { id: string; text: string; askedAt: Date }[];
};

/** What coaches said and answered, newest first, and what still waits for an answer. */
export async function loadAnswers(actor: Actor): Promise<Answers> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client has answers from a coach.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findPhoneClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const said = await listSaidByCoach(tx, clientId, SHOWN);
    const open = await listOpenQuestions(tx, clientId);
    const { teamName, coachName, zone } = client;
    return { clientId, teamName, coachName, zone, said, open };
  });
}
