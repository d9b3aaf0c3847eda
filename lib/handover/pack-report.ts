import { buildLongView } from '#lib/checks/view.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { daysBetween, localDateOf } from '#lib/domain/local-date.ts';
import type { Batches, LoadDay } from '#lib/domain/record.ts';
import { pageDate } from '#lib/views/client-page.ts';
import { allRows } from './all-rows.ts';
import { loadDays } from './load-days.ts';
import type { PackContent, PackOptions } from './pack-content.ts';
import { historyWithin, type Period, recordWithin } from './period.ts';
import type { ReportInput, ReportRecord } from './report/input.ts';
import { type Weeks, weeksOf } from './weeks.ts';

/** What the report, the tables and the files of a pack are all made from: one period, worked out once. */
export type PackedPeriod = {
  period: { from: string; to: string };
  /** Which rows belong to it. */
  rows: Period;
  history: ClientHistory;
  days: LoadDay[];
  weeks: Weeks;
  report: ReportInput;
};

const OF_REPORT = [
  'checkIns',
  'reasons',
  'verdicts',
  'steps',
  'leftAlone',
  'plans',
  'questions',
  'limits',
  'clinicianWords',
  'films',
  'intake',
  'consents',
  'absences',
  'goals',
] as const satisfies readonly (keyof ReportRecord)[];

/** The period that a pack covers: as chosen, or from the first day known to the newest day that is over. */
export async function packedPeriod(content: PackContent, options: PackOptions): Promise<PackedPeriod> {
  const { made, about, limits } = content;
  const { zone } = content.history.client;
  const today = localDateOf(made, zone);
  const dates = content.history.checkIns.map((one) => one.date).sort();
  // Days are counted to the newest that is over; what was said or decided today belongs all the same.
  const to = options.period.to ?? pageDate(dates, today);
  const rows = { from: options.period.from, to: options.period.to ?? today };
  const history = historyWithin(content.history, rows);
  const days = loadDays(history, content.limits);
  const weeks = weeksOf(history, days, to);
  const first = options.period.from ?? dates[0] ?? startOf(content.history) ?? to;
  const from = daysBetween(first, to) >= 0 ? first : to;
  const period = { from, to };
  const view = buildLongView(history, { date: to, instant: made.toISOString() }, limits);
  const record = await reportRecord(content, rows);
  return {
    period,
    rows,
    history,
    days,
    weeks,
    report: { history, view, limits, days, weeks, period, today, made, record, about, words: options.words },
  };
}

function startOf({ client }: ClientHistory): string | undefined {
  return client.joinedAt === null ? undefined : localDateOf(new Date(client.joinedAt), client.zone);
}

async function reportRecord(content: PackContent, period: Period): Promise<ReportRecord> {
  const record = recordWithin(content.record, period);
  const entries: [string, unknown[]][] = [];
  for (const name of OF_REPORT) entries.push([name, await allRows(record[name] as Batches<unknown>)]);
  return Object.fromEntries(entries) as unknown as ReportRecord;
}
