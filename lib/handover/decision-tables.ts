import type { RecordSource } from '#lib/domain/record.ts';
import { assessmentColumns } from './assessment-columns.ts';
import { besideTables } from './beside-tables.ts';
import { planColumns } from './plan-columns.ts';
import { startTestColumns } from './start-test-columns.ts';
import { list, type NamedTable, table } from './table.ts';

/** The CSVs of what was said, decided and done beside the check-ins. */
export function decisionTables(record: RecordSource, zone: string, notes: boolean): NamedTable[] {
  return [
    table('reasons.csv', record.reasons, [
      ['reason_id', (row) => row.id],
      ['kind', (row) => row.kind],
      ['about', (row) => row.subject],
      ['level', (row) => row.level],
      ['when_to_answer', (row) => row.tier],
      ['points', (row) => row.points],
      ['sentence', (row) => row.sentence.replaceAll('**', '')],
      ['proposed_step', (row) => row.proposedStep],
      ['what_would_clear_it', (row) => row.clears],
      ['since', (row) => row.since],
      ['zone', () => zone],
      ['raised_at_utc', (row) => row.raisedAt],
      ['state', (row) => row.state],
      ['closed_at_utc', (row) => row.closedAt],
      ['closed_why', (row) => row.closedWhy],
    ]),
    table('reason_events.csv', record.reasonEvents, [
      ['reason_id', (row) => row.reasonId],
      ['at_utc', (row) => row.at],
      ['what', (row) => row.what],
      ['level', (row) => row.level],
      ['by', (row) => row.by],
      ['details_json', (row) => row.body],
    ]),
    table('steps_taken.csv', record.steps, [
      ['reason_id', (row) => row.reasonId],
      ['step', (row) => row.kind],
      ['taken_on', (row) => row.takenOn],
      ['review_on', (row) => row.reviewOn],
      ['zone', () => zone],
      ['words', (row) => row.words],
      ['undone_at_utc', (row) => row.undoneAt],
      ['looked_after_days', (row) => row.windowDays],
      ['better_since', (row) => row.outcome],
    ]),
    table('reasons_left_alone.csv', record.leftAlone, [
      ['reason_id', (row) => row.reasonId],
      ['kind', (row) => row.kind],
      ['known_from', (row) => row.knownFrom],
      ['zone', () => zone],
      ['looked_after_days', (row) => row.windowDays],
      ['better_since', (row) => row.outcome],
    ]),
    table('plans.csv', record.plans, planColumns(zone)),
    table('goals.csv', record.goals, [
      ['skill', (row) => row.skill],
      ['from', (row) => row.from],
      ['wanted_by', (row) => row.wantedBy],
      ['ended_on', (row) => row.endedOn],
      ['zone', () => zone],
    ]),
    table('assessments.csv', record.assessed, assessmentColumns(zone)),
    table('start_tests.csv', record.startTests, startTestColumns()),
    table('placements.csv', record.placements, [
      ['from', (row) => row.from],
      ['zone', () => zone],
      ['ladder', (row) => row.ladder],
      ['rung', (row) => row.rung],
      ['side', (row) => row.side],
      ['why', (row) => row.why],
    ]),
    table('questions.csv', record.questions, [
      ['question_id', (row) => row.id],
      ['asked_at_utc', (row) => row.askedAt],
      ['question', (row) => row.text],
      ['answered_at_utc', (row) => row.answeredAt],
      ['answered_by', (row) => row.answeredBy],
      ['answer', (row) => row.answer],
      ['stills', (row) => list(row.stills.map((id) => `stills/${id}.jpg`))],
    ]),
    table('coach_words.csv', record.coachWords, [
      ['written_at_utc', (row) => row.writtenAt],
      ['by', (row) => row.by],
      ['check_in_id', (row) => row.checkInId],
      ['date', (row) => row.date],
      ['zone', () => zone],
      ['rung', (row) => row.rung],
      ['side', (row) => row.side],
      ['set', (row) => row.set],
      ['filmed_on', (row) => row.filmedOn],
      ['at_film_s', (row) => row.atSeconds],
      ['words', (row) => row.text],
      ['read_at_utc', (row) => row.readAt],
    ]),
    table('absences.csv', record.absences, [
      ['kind', (row) => row.kind],
      ['from', (row) => row.from],
      ['to', (row) => row.to],
      ['zone', () => zone],
      ['said_at_utc', (row) => row.saidAt],
    ]),
    table('limits.csv', record.limits, [
      ['limit_id', (row) => row.id],
      ['rule', (row) => row.rule],
      ['tissue', (row) => row.tissue],
      ['region', (row) => row.region],
      ['side', (row) => row.side],
      ['percent_of_sets', (row) => row.percent],
      ['from', (row) => row.from],
      ['last_day', (row) => row.until],
      ['zone', () => zone],
      ['ended_at_utc', (row) => row.endedAt],
      ['said_by', (row) => row.who],
      ['words', (row) => row.words],
    ]),
    ...besideTables(record, zone),
    ...(notes
      ? [
          table('private_notes.csv', record.notes, [
            ['written_at_utc', (row) => row.at],
            ['by', (row) => row.by],
            ['words', (row) => row.text],
          ]),
        ]
      : []),
  ];
}
