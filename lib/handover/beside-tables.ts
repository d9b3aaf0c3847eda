import type { RecordSource } from '#lib/domain/record.ts';
import { list, type NamedTable, table } from './table.ts';

/** The CSVs of clinicians' words, films, looks of coaches, verdicts, the start and consents. */
export function besideTables(record: RecordSource, zone: string): NamedTable[] {
  return [
    table('clinician_words.csv', record.clinicianWords, [
      ['date', (row) => row.date],
      ['zone', () => zone],
      ['region', (row) => row.region],
      ['side', (row) => row.side],
      ['clinician', (row) => row.clinician ?? null],
      ['told_at_the_start', (row) => row.told ?? null],
      ['allows', (row) => row.lifts ?? null],
      ['words', (row) => row.words],
      ['look_again_on', (row) => row.reviewOn],
      ['recorded_by', (row) => row.by],
    ]),
    table('films.csv', record.films, [
      ['asked_at_utc', (row) => row.askedAt],
      ['by', (row) => row.by],
      ['ladder', (row) => row.ladder],
      ['rung', (row) => row.rung],
      ['side', (row) => row.side],
      ['camera', (row) => row.angle],
      ['wanted_by', (row) => row.byDate],
      ['zone', () => zone],
      ['words', (row) => row.words],
      ['received_at_utc', (row) => row.receivedAt],
      ['looked_at_utc', (row) => row.lookedAt],
      ['verdict', (row) => row.verdict],
      ['faults', (row) => list(row.faults)],
    ]),
    table('seen.csv', record.seen, [
      ['at_utc', (row) => row.at],
      ['by', (row) => row.by],
      ['check_in_id', (row) => row.checkInId],
    ]),
    table('verdicts.csv', record.verdicts, [
      ['reason_id', (row) => row.reasonId],
      ['at_utc', (row) => row.at],
      ['by', (row) => row.by],
      ['right_to_tell', (row) => row.rightToTell],
      ['words', (row) => row.text],
    ]),
    table('told_at_the_start.csv', record.intake, [
      ['about', (row) => row.about],
      ['told', (row) => row.told],
      ['completed_at_utc', (row) => row.completedAt],
    ]),
    table('consents.csv', record.consents, [
      ['consent', (row) => row.kind],
      ['text_version', (row) => row.textVersion],
      ['given_at_utc', (row) => row.givenAt],
      ['withdrawn_at_utc', (row) => row.withdrawnAt],
      ['given_by', (row) => row.givenBy],
    ]),
  ];
}
