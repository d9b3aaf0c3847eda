import type { HistoryRung } from '#lib/domain/history.ts';
import { TISSUES } from '#lib/domain/vocabulary.ts';
import { type Columns, held, type NamedTable, table } from './table.ts';
import { unitOf } from './unit-of.ts';
import type { Week, Weeks } from './weeks.ts';

/** The CSVs by week (7 days, counted back from the last day of the record), and the rungs that the record names. */
export function weekTables(weeks: Weeks, rungs: readonly HistoryRung[], zone: string): NamedTable[] {
  const week = <Row extends Week>(): Columns<Row> => [
    ['from', (row) => row.from],
    ['to', (row) => row.to],
    ['zone', () => zone],
  ];
  return [
    table('load_by_week.csv', held(weeks.load), [
      ...week<Weeks['load'][number]>(),
      ['days_known', (row) => row.knownDays],
      ['days_trained', (row) => row.trainedDays],
      ['session_load_au', (row) => row.sessionLoadAu],
    ]),
    table('tissue_by_week.csv', held(weeks.tissues), [
      ...week<Weeks['tissues'][number]>(),
      ['tissue', (row) => row.tissue],
      ['side', (row) => row.side],
      ['sets', (row) => row.sets],
      ['hard_sets', (row) => row.hardSets],
      ['seconds_under_load_s', (row) => row.seconds],
      ['load_bw_s', (row) => row.bodyWeightSeconds],
    ]),
    table('pain_by_week.csv', held(weeks.pain), [
      ...week<Weeks['pain'][number]>(),
      ['region', (row) => row.region],
      ['side', (row) => row.side],
      ['days_scored', (row) => row.daysSpoken],
      ['worst_0_10', (row) => row.worst],
      ['morning_0_10', (row) => row.morning],
    ]),
    table('rungs.csv', held(rungs), [
      ['rung_id', (row) => row.id],
      ['skill', (row) => row.skill],
      ['part', (row) => row.part],
      ['ladder', (row) => row.ladder],
      ['position', (row) => row.position],
      ['rung', (row) => row.name],
      ['family', (row) => row.family],
      ['unit', (row) => unitOf(row.measure)],
      ['each_side', (row) => row.eachSide],
      ['pass_sets', (row) => row.pass.sets],
      ['pass_target_in_unit', (row) => row.pass.target],
      ['pass_tries', (row) => row.pass.tries],
      ['pass_days', (row) => row.pass.days],
      ['needs_film', (row) => row.needsFilm],
      ['share_of_body_weight', (row) => row.share],
      ['helping_hand_share', (row) => row.helpingShare],
      ['seconds_a_rep_s', (row) => row.secondsPerRep],
      ...TISSUES.map((tissue): [string, (row: HistoryRung) => number] => [
        `stress_${tissue.replaceAll('-', '_')}_0_1`,
        (row) => row.weights[tissue] ?? 0,
      ]),
    ]),
  ];
}
