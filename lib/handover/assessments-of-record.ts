import type { HistoryAssessedPart, HistoryAssessment } from '#lib/domain/history-assessment.ts';
import type { RecordAssessed } from '#lib/domain/record.ts';
import { unitOf } from './unit-of.ts';

/** The assessments of a record, whose rows are one for each part and side in order, as history.json carries them. */
export function assessmentsOfRecord(rows: readonly RecordAssessed[]): HistoryAssessment[] {
  const made = new Map<string, HistoryAssessment>();
  const parts = new Map<string, HistoryAssessedPart>();
  for (const row of rows) {
    const { id, date, skill, aim, by, kit } = row;
    const whole = made.get(id) ?? { id, date, skill, aim, by, kit, parts: [] };
    made.set(id, whole);
    const place = `${id} ${row.partAt}`;
    const { part, ladder, asked } = row;
    const within = parts.get(place) ?? { part, ladder, asked, sides: [] };
    if (!parts.has(place)) whole.parts.push(within);
    parts.set(place, within);
    const { side, film, rung, sets, value, clean, pain } = row;
    within.sides.push({ side, film, rung, unit: unitOf(row.measure), sets, value, clean, pain });
  }
  return [...made.values()];
}
