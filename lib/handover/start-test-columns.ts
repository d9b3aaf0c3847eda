import type { RecordStartTest } from '#lib/domain/record.ts';
import type { Column } from './csv.ts';
import { unitOf } from './unit-of.ts';

/** Columns of start_tests.csv: a line for each test and side. */
export function startTestColumns(): [string, Column<RecordStartTest>['value']][] {
  return [
    ['start_tests_id', (row) => row.id],
    ['asked_at_utc', (row) => row.askedAt],
    ['by', (row) => row.by],
    ['ladder', (row) => row.ladder],
    ['rung', (row) => row.rung],
    ['side', (row) => row.side],
    ['asked_sets', (row) => row.sets],
    ['film_asked', (row) => row.film],
    ['outcome', (row) => row.outcome],
    ['unit', (row) => unitOf(row.measure)],
    ['each_set_in_unit', (row) => row.values.join('; ')],
    ['tried', (row) => row.tried],
    ['clean', (row) => row.clean],
    ['pain_0_10', (row) => row.pain],
    ['region', (row) => row.region],
    ['answered_all_at_utc', (row) => row.doneAt],
    ['taken_back_at_utc', (row) => row.endedAt],
    ['placed_at_utc', (row) => row.placedAt],
  ];
}
