import { createHash } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { lockClient } from '#lib/db/check-ins.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { isAskedAlready } from '#lib/db/film-requests.ts';
import { findOpenStartTests, saveStartAnswers } from '#lib/db/start-tests.ts';
import { insertFilmRequest } from '#lib/db/step-records.ts';
import { isUrgent } from '#lib/domain/caution.ts';
import { isForGuardians } from '#lib/domain/intake/guardian-mail.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { stepsLeft, type TestStep } from '#lib/planning/start/next-tests.ts';
import type { StartAnswer } from '#lib/planning/start/start-types.ts';
import { checkInSchema } from '#lib/schemas/check-in.ts';
import type { AnswerStartTest } from '#lib/schemas/start-tests.ts';
import { loadGapFacts } from '../gap-facts.ts';
import { waitsForGuardian } from '../intake/start-of-today.ts';
import { assertConsent } from '../rights/assert-consent.ts';
import { submitCheckIn } from '../submit-check-in.ts';
import { type ReadTests, readTests, stepsOf } from './start-facts.ts';

/** Days until a film of a start test is asked for again. */
const FILM_DAYS = 5;

/**
 * Keeps what a client says of one test on one side, or takes it back. An answer that is sent twice is kept once. Pain of
 * 6 or more is told to the coach at once, as a check-in of that day; under 18 what a parent or guardian hears of too.
 */
export async function answerTest(actor: Actor, input: AnswerStartTest, now: Date): Promise<{ left: number }> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client answers start tests.');
  const kept = await withTeamPg(actor.scope, async (tx) => {
    const client = await lockClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    await assertConsent(tx, clientId);
    const waits = client.under18 ? await waitsForGuardian(tx, clientId) : null;
    if (waits !== null)
      throw new AppError('conflict', `Start tests wait until ${waits} agrees. Nothing was kept.`);
    const row = await findOpenStartTests(tx, clientId, { lock: true });
    const facts = row && (await loadGapFacts(tx, clientId, now));
    if (!row || !facts)
      throw new AppError('conflict', 'Your coach asks for no start tests any more. Nothing was kept.');
    const tests = readTests(row);
    const step = assertAsked(stepsOf(facts, tests), input);
    const answers = [...tests.answers.filter((one) => !isSame(one, input)), ...answerOf(input)];
    const left = stepsLeft(stepsOf(facts, tests, answers));
    const doneAt = left === 0 ? (row.doneAt ?? now) : null;
    await saveStartAnswers(tx, row.id, { answers, movedAt: now, doneAt });
    const again = tests.answers.some((one) => isSame(one, input) && one.outcome === 'done');
    if (step.test.film && input.answer?.outcome === 'done' && !again)
      await askFilm(tx, { row: tests, step, clientId, today: facts.today, now });
    const { zone, under18 } = client;
    return { left, zone, under18, testsId: row.id, name: step.rung.name };
  });
  await tellOfPain(actor, input, kept, now);
  return { left: kept.left };
}

function assertAsked(steps: readonly TestStep[], input: AnswerStartTest): TestStep {
  const step = steps.find(
    ({ test, side }) =>
      test.ladderId === input.ladderId && test.rungId === input.rungId && side === input.side,
  );
  if (!step)
    throw new AppError('invalid', 'rungId: is not among the tests that are asked', {
      fields: { rungId: 'is not among the tests that are asked: open the page again' },
    });
  const { answer } = input;
  if (answer && !isSame(answer, input))
    throw new AppError('invalid', 'answer: is about another test', {
      fields: { answer: 'must name the same ladder, rung and side' },
    });
  if (answer?.outcome === 'done' && step.state !== 'next' && step.state !== 'answered')
    throw new AppError(
      'conflict',
      `This one is not to be done now. ${step.words || 'An easier one comes first.'}`,
    );
  if (answer?.outcome === 'done' && answer.values.length > step.test.sets)
    throw new AppError('invalid', `values: at most ${step.test.sets} sets were asked`, {
      fields: { values: `at most ${step.test.sets}` },
    });
  if (answer?.outcome === 'done' && step.rung.measure === 'made-tried' && isOverTried(answer))
    throw new AppError('invalid', 'tried: must be at least the tries made good', {
      fields: { tried: 'must be at least the tries made good' },
    });
  return step;
}

function isOverTried({ values, tried }: Pick<StartAnswer, 'values' | 'tried'>): boolean {
  return tried === null || (values[0] ?? 0) > tried;
}

function isSame(one: Pick<StartAnswer, 'ladderId' | 'rungId' | 'side'>, input: AnswerStartTest): boolean {
  return one.ladderId === input.ladderId && one.rungId === input.rungId && one.side === input.side;
}

function answerOf({ answer }: AnswerStartTest): StartAnswer[] {
  return answer ? [answer] : [];
}

async function askFilm(
  tx: TeamPg,
  about: { row: ReadTests; step: TestStep; clientId: string; today: string; now: Date },
): Promise<void> {
  const { row, step, clientId, today, now } = about;
  const film = {
    rungId: step.rung.id,
    side: step.side,
    angle: 'side',
    words: 'Of the start test',
    byDate: addDays(today, FILM_DAYS),
    clientId,
  };
  if (await isAskedAlready(tx, film)) return;
  await insertFilmRequest(tx, film, { memberId: row.byId, at: now });
}

/** The same id for the same pain on the same day, so that sending twice tells once. */
async function tellOfPain(
  actor: Actor,
  { answer, side }: AnswerStartTest,
  about: { zone: string; under18: boolean; testsId: string; name: string },
  now: Date,
): Promise<void> {
  if (answer?.outcome !== 'hurts' || !answer.region || answer.pain === null) return;
  const date = localDateOf(now, about.zone);
  const pain = {
    region: answer.region,
    side: side === 'both' ? ('middle' as const) : side,
    moment: 'during',
    value: answer.pain,
    kind: 'joint' as const,
  };
  const told = { pain: [pain], dangerSigns: [] };
  if (!isUrgent(told, about.under18) && !(about.under18 && isForGuardians(told))) return;
  const body = checkInSchema.parse({
    id: idFrom([about.testsId, answer.rungId, side, pain.region, String(pain.value), date]),
    date,
    zone: about.zone,
    kind: 'training',
    pain: [pain],
    words: `In a start test: ${about.name}`,
  });
  await submitCheckIn(actor, body, now);
}

function idFrom(parts: readonly string[]): string {
  const hex = createHash('sha256').update(parts.join(' ')).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
