import type { ClientRecord, LoadDay, RecordPlanItem } from '#lib/domain/record.ts';
import { TISSUES } from '#lib/domain/vocabulary.ts';
import { assessmentColumns } from './assessment-columns.ts';
import { type Column, csvPieces } from './csv.ts';
import { unitOf } from './unit-of.ts';

export type NamedTable = { name: string; pieces: () => Generator<string> };

const list = (words: string[]) => words.join('; ');

/** The CSVs of a client's record. Instants are UTC, dates local with their zone beside. */
export function recordTables(record: ClientRecord, days: LoadDay[], zone: string): NamedTable[] {
  return [
    table('check_ins.csv', record.checkIns, [
      ['check_in_id', (row) => row.id],
      ['date', (row) => row.date],
      ['zone', (row) => row.zone],
      ['kind', (row) => row.kind],
      ['session', (row) => row.session],
      ['plan_version', (row) => row.planVersion],
      ['effort_0_10', (row) => row.effort],
      ['minutes', (row) => row.minutes],
      ['session_load_au', (row) => loadOf(row.effort, row.minutes)],
      ['ground', (row) => row.ground],
      ['sleep_hours', (row) => row.sleepHours],
      ['nothing_hurts', (row) => row.nothingHurts],
      ['words', (row) => row.words],
      ['started_at_utc', (row) => row.startedAt],
      ['sent_at_utc', (row) => row.sentAt],
      ['received_at_utc', (row) => row.receivedAt],
      ['corrects_check_in_id', (row) => row.correctsId],
      ['replaced_at_utc', (row) => row.replacedAt],
      ['deleted_at_utc', (row) => row.deletedAt],
    ]),
    table('sets.csv', record.sets, [
      ['check_in_id', (row) => row.checkInId],
      ['date', (row) => row.date],
      ['zone', (row) => row.zone],
      ['check_in_replaced', (row) => row.replaced],
      ['skill', (row) => row.skill],
      ['ladder', (row) => row.ladder],
      ['rung', (row) => row.rung],
      ['side', (row) => row.side],
      ['set', (row) => row.idx],
      ['unit', (row) => unitOf(row.measure)],
      ['planned_in_unit', (row) => row.planned],
      ['done_in_unit', (row) => row.value],
      ['tried', (row) => row.tried],
      ['how', (row) => row.how],
      ['clean', (row) => row.clean],
      ['faults', (row) => list(row.faults)],
      ['support', (row) => row.support],
      ['added_kg', (row) => row.addedKg],
    ]),
    table('pain.csv', record.pain, [
      ['check_in_id', (row) => row.checkInId],
      ['date', (row) => row.date],
      ['zone', (row) => row.zone],
      ['check_in_replaced', (row) => row.replaced],
      ['region', (row) => row.region],
      ['side', (row) => row.side],
      ['moment', (row) => row.moment],
      ['pain_0_10', (row) => row.value],
      ['kind', (row) => row.kind],
      ['the_usual', (row) => row.usual],
    ]),
    table('danger_signs.csv', record.dangerSigns, [
      ['check_in_id', (row) => row.checkInId],
      ['date', (row) => row.date],
      ['zone', (row) => row.zone],
      ['check_in_replaced', (row) => row.replaced],
      ['sign', (row) => row.sign],
      ['gone_within_a_minute', (row) => row.goneWithinMinute],
      ['region', (row) => row.region],
      ['side', (row) => row.side],
    ]),
    table('load_by_day.csv', days, [
      ['date', (row) => row.date],
      ['zone', () => zone],
      ['day', (row) => row.state],
      ['session_load_au', (row) => row.sessionLoadAu],
      ...TISSUES.flatMap((tissue) =>
        (['left', 'right'] as const).map((side): [string, Column<LoadDay>['value']] => [
          `${tissue.replaceAll('-', '_')}_${side}_bw_s`,
          (row) =>
            row.state === 'trained' || row.state === 'rest'
              ? (row.tissueLoads[`${tissue}:${side}`] ?? 0)
              : null,
        ]),
      ),
    ]),
    ...decisionTables(record, zone),
  ];
}

function decisionTables(record: ClientRecord, zone: string): NamedTable[] {
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
    table('placements.csv', record.placements, [
      ['from', (row) => row.from],
      ['zone', () => zone],
      ['ladder', (row) => row.ladder],
      ['rung', (row) => row.rung],
      ['side', (row) => row.side],
      ['why', (row) => row.why],
    ]),
    table('questions.csv', record.questions, [
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
  ];
}

function planColumns(zone: string): [string, Column<RecordPlanItem>['value']][] {
  return [
    ['plan_version', (row) => row.version],
    ['from', (row) => row.from],
    ['last_day', (row) => row.until],
    ['zone', () => zone],
    ['sessions_per_week', (row) => row.sessionsPerWeek],
    ['by', (row) => row.by],
    ['saved_at_utc', (row) => row.savedAt],
    ['why', (row) => row.why],
    ['words_to_the_client', (row) => row.notes],
    ['easy_weeks_from', (row) => list(row.easyWeeks)],
    ['test_weeks_from', (row) => list(row.testWeeks)],
    ['no_kit_weeks_from', (row) => list(row.noKitWeeks)],
    ['accepted_week_au', (row) => row.acceptedWeekAu],
    ['session', (row) => row.session],
    ['rest_s', (row) => row.restSeconds],
    ['warm_up', (row) => row.warmUp],
    ['warm_up_minutes', (row) => row.warmUpMinutes],
    ['session_minutes', (row) => row.sessionMinutes],
    ['ladder', (row) => row.ladder],
    ['rung', (row) => row.rung],
    ['side', (row) => row.side],
    ['sets', (row) => row.sets],
    ['unit', (row) => unitOf(row.measure)],
    ['target_in_unit', (row) => row.target],
    ['practice_minutes', (row) => row.minutes],
    ['times_per_week', (row) => row.timesPerWeek],
    ['support', (row) => row.support],
    ['stop_rule', (row) => row.stopRule],
    ['not_two_days_running', (row) => row.notTwoDaysRunning],
    ['pyramid_with', (row) => row.pairedWith],
    ['without_kit', (row) => row.noKitRung],
  ];
}

function table<Row>(
  name: string,
  rows: readonly Row[],
  columns: [string, Column<Row>['value']][],
): NamedTable {
  const named = columns.map(([column, value]) => ({ name: column, value }));
  return { name, pieces: () => csvPieces(named, rows) };
}

function loadOf(effort: number | null, minutes: number | null): number | null {
  return effort === null || minutes === null ? null : effort * minutes;
}
