import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { type EarlierAnswer, findEarlierAnswers } from '#lib/db/earlier-answers.ts';

const FOUND = 12;

/** The team's earlier answers that hold these words in any form, best first. */
export function findAnswers(actor: Actor, words: string): Promise<EarlierAnswer[]> {
  return withTeamPg(actor.scope, (tx) => findEarlierAnswers(tx, words, FOUND));
}
