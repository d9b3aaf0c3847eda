import type { Actor } from '#lib/auth/actor.ts';
import { listCheckInWords } from '#lib/db/check-in-words.ts';
import { withTeamPg } from '#lib/db/client.ts';
import {
  findPhoneClient,
  listOpenQuestions,
  listSaidByCoach,
  type OpenQuestion,
  type SaidByCoach,
} from '#lib/db/phone-reads.ts';
import { AppError } from '#lib/errors.ts';
import { wordsAbout } from '#lib/views/phone-words.ts';

const SHOWN = 50;
/** Before any check-in. */
const ALL = '2000-01-01';

/** `on`: the day and the set that words are about; empty for an answer and for words about nothing in particular. */
type Said = SaidByCoach & { on: string };
export type Answers = {
  clientId: string;
  teamName: string;
  coachName: string;
  zone: string;
  said: Said[];
  open: OpenQuestion[];
};

/** What coaches said and answered, newest first, and what still waits for an answer. */
export async function loadAnswers(actor: Actor): Promise<Answers> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client has answers from a coach.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findPhoneClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const words = new Map((await listCheckInWords(tx, clientId, ALL)).map((word) => [word.id, word]));
    const said = (await listSaidByCoach(tx, clientId, SHOWN)).map((one) => {
      const word = words.get(one.id);
      return { ...one, on: word ? wordsAbout(word) : '' };
    });
    const open = await listOpenQuestions(tx, clientId);
    const { teamName, coachName, zone } = client;
    return { clientId, teamName, coachName, zone, said, open };
  });
}
