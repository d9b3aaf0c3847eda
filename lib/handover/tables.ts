import type { HistoryRung } from '#lib/domain/history.ts';
import type { LoadDay, RecordSource } from '#lib/domain/record.ts';
import { TISSUES } from '#lib/domain/vocabulary.ts';
import type { Column } from './csv.ts';
import { decisionTables } from './decision-tables.ts';
import { held, list, type NamedTable, table } from './table.ts';
import { unitOf } from './unit-of.ts';
import { weekTables } from './week-tables.ts';
import type { Weeks } from './weeks.ts';

export type TablesInput = {
  record: RecordSource;
  days: LoadDay[];
  weeks: Weeks;
  rungs: readonly HistoryRung[];
  zone: string;
  /** Whether notes private to coaches are among them. */
  notes: boolean;
};

/** The CSVs of a client's record. Instants are UTC, dates local with their zone beside. */
export function recordTables(input: TablesInput): NamedTable[] {
  const { record, days, zone } = input;
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
      ['on_film', (row) => row.onFilm],
      ['faults_on_film', (row) => list(row.faultsOnFilm)],
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
    table('load_by_day.csv', held(days), [
      ['date', (row) => row.date],
      ['zone', () => zone],
      ['day', (row) => row.state],
      ['session_load_au', (row) => row.sessionLoadAu],
      ...TISSUES.flatMap((tissue) =>
        (['left', 'right'] as const).map((side): [string, Column<LoadDay>['value']] => [
          `${tissue.replaceAll('-', '_')}_${side}_bw_s`,
          (row) =>
            row.state === 'trained' || row.state === 'rest' || row.state === 'taken-as-rest'
              ? (row.tissueLoads[`${tissue}:${side}`] ?? 0)
              : null,
        ]),
      ),
    ]),
    ...weekTables(input.weeks, input.rungs, zone),
    ...decisionTables(record, zone, input.notes),
  ];
}

function loadOf(effort: number | null, minutes: number | null): number | null {
  return effort === null || minutes === null ? null : effort * minutes;
}
