import type { RecordPlanItem } from '#lib/domain/record.ts';
import { type Columns, list } from './table.ts';
import { unitOf } from './unit-of.ts';

/** Columns of plans.csv: a line for each line of each version. */
export function planColumns(zone: string): Columns<RecordPlanItem> {
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
