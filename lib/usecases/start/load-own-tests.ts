import type { Actor } from '#lib/auth/actor.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findPhoneClient } from '#lib/db/phone-reads.ts';
import { findOpenStartTests, listHowDone } from '#lib/db/start-tests.ts';
import { AppError } from '#lib/errors.ts';
import { type PhoneTests, phoneTests } from '#lib/views/start/phone-tests.ts';
import { loadGapFacts } from '../gap-facts.ts';
import { startOfToday } from '../intake/start-of-today.ts';
import { readTests, stepsOf } from './start-facts.ts';

/** The start tests that are asked of the client now; null: none are. */
export async function loadOwnTests(actor: Actor, now: Date): Promise<PhoneTests | null> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client has start tests.');
  return withTeamPg(actor.scope, async (tx) => {
    const row = await findOpenStartTests(tx, clientId);
    const client = await findPhoneClient(tx, clientId);
    const facts = row && (await loadGapFacts(tx, clientId, now));
    if (!row || !client || !facts) return null;
    // Under 18 nothing is trained or tested before a parent or guardian agrees.
    if ((await startOfToday(tx, clientId, client, now)).guardian !== null) return null;
    const tests = readTests(row);
    const how = await listHowDone(
      tx,
      tests.tests.map(({ rungId }) => rungId),
    );
    return phoneTests(
      {
        testsId: row.id,
        clientId,
        coach: row.by,
        team: client.teamName,
        under18: client.under18,
        words: row.words,
      },
      stepsOf(facts, tests),
      how,
    );
  });
}

/** What Today says of tests that wait; null: nothing. */
export async function startTestsWaiting(tx: TeamPg, clientId: string): Promise<string | null> {
  const row = await findOpenStartTests(tx, clientId);
  if (!row || row.doneAt) return null;
  const { answers } = readTests(row);
  return answers.length === 0 ? `${row.by} asks for them.` : `${answers.length} answered so far.`;
}
