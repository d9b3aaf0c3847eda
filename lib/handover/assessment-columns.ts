import type { RecordAssessed } from '#lib/domain/record.ts';
import type { Column } from './csv.ts';
import { unitOf } from './unit-of.ts';

/** Columns of assessments.csv: a line for each part and side. */
export function assessmentColumns(zone: string): [string, Column<RecordAssessed>['value']][] {
  return [
    ['assessment_id', (row) => row.id],
    ['date', (row) => row.date],
    ['zone', () => zone],
    ['saved_at_utc', (row) => row.savedAt],
    ['by', (row) => row.by],
    ['skill', (row) => row.skill],
    ['aim', (row) => row.aim],
    ['kit', (row) => row.kit.join('; ')],
    ['part', (row) => row.part],
    ['ladder', (row) => row.ladder],
    ['asked_rung', (row) => row.asked],
    ['side', (row) => row.side],
    ['film_shows', (row) => row.film],
    ['rung', (row) => row.rung],
    ['sets_or_tries', (row) => row.sets],
    ['unit', (row) => unitOf(row.measure)],
    ['done_in_unit', (row) => row.value],
    ['clean', (row) => row.clean],
    ['pain_0_10', (row) => row.pain],
  ];
}
