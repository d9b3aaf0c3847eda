import type { TeamPg } from '#lib/db/client.ts';
import type { DemoClient } from '../life.ts';
import { writeFilms } from './films.ts';
import { insertRows } from './insert.ts';
import type { ReasonsOfSteps } from './past-reasons.ts';
import { coachOf, idOf, type Place } from './place.ts';

/** What is done about a kind of reason, where the history names the reason alone. */
const STEP_OF_KIND: Readonly<Record<string, string>> = {
  'step-up-earned': 'step-up',
  'load-jump': 'cut-volume',
};

/** What went to and fro: questions and answers, words, notes, looks, steps taken and films. */
export async function writeContact(
  tx: TeamPg,
  clients: DemoClient[],
  place: Place,
  reasons: ReasonsOfSteps,
): Promise<void> {
  const each = <Row>(make: (client: DemoClient, of: { client_id: string; by_id: string }) => Row[]): Row[] =>
    clients.flatMap((client) =>
      make(client, { client_id: client.history.client.id, by_id: coachOf(place, client) }),
    );
  const questions = each(({ history }, of) => history.questions.map((question) => ({ ...of, ...question })));
  await insertRows(
    tx,
    'question',
    { id: 'uuid', client_id: 'uuid', text: 'text', asked_at: 'timestamptz', answered_at: 'timestamptz' },
    questions.map((asked) => ({
      id: asked.id,
      client_id: asked.client_id,
      text: asked.text,
      asked_at: asked.askedAt,
      answered_at: asked.answeredAt,
    })),
  );
  await insertRows(
    tx,
    'answer',
    {
      question_id: 'uuid',
      by_id: 'uuid',
      text: 'text',
      kept_for_reuse: 'boolean',
      created_at: 'timestamptz',
    },
    questions
      .filter((asked) => asked.answer !== null)
      .map((asked) => ({
        question_id: asked.id,
        by_id: asked.by_id,
        text: asked.answer,
        kept_for_reuse: false,
        created_at: asked.answeredAt,
      })),
  );
  await insertRows(
    tx,
    'coach_word',
    { client_id: 'uuid', by_id: 'uuid', check_in_id: 'uuid', text: 'text', created_at: 'timestamptz' },
    each(({ extra }, of) =>
      extra.coachWords.map((word) => ({
        ...of,
        check_in_id: word.checkInId,
        text: word.text,
        created_at: word.at,
      })),
    ),
  );
  await insertRows(
    tx,
    'private_note',
    { client_id: 'uuid', by_id: 'uuid', text: 'text', created_at: 'timestamptz' },
    each(({ extra }, of) =>
      extra.privateNotes.map((note) => ({ ...of, text: note.text, created_at: note.at })),
    ),
  );
  await insertRows(
    tx,
    'seen_mark',
    { client_id: 'uuid', by_id: 'uuid', at: 'timestamptz' },
    each(({ history }, of) => history.seen.map((at) => ({ ...of, at }))),
  );
  await insertRows(
    tx,
    'step_taken',
    {
      client_id: 'uuid',
      by_id: 'uuid',
      reason_id: 'uuid',
      kind: 'text',
      ladder_id: 'uuid',
      side: 'text',
      words: 'text',
      taken_on: 'date',
      review_on: 'date',
      created_at: 'timestamptz',
    },
    each(({ history }, of) =>
      history.steps.map((step) => ({
        ...of,
        reason_id: reasons.get(step)?.reasonId ?? null,
        kind: reasons.get(step)?.kind ?? STEP_OF_KIND[step.kind] ?? step.kind,
        ladder_id: step.ladderId === null ? null : idOf(place.ladderIds, step.ladderId),
        side: step.side,
        words: step.words,
        taken_on: step.takenOn,
        review_on: step.reviewOn,
        created_at: `${step.takenOn}T08:00:00Z`,
      })),
    ),
  );
  await writeFilms(tx, clients, place);
}
