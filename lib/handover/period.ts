import type { ClientHistory } from '#lib/domain/history.ts';
import type { Batches, ClientRecord, RecordSource } from '#lib/domain/record.ts';

/** Local dates, both with; `from` null: from the first day on. */
export type Period = { from: string | null; to: string };
/** First and last day of a row, `last` null: open. Without dates it always belongs. */
type Span = { first: string; last: string | null } | null;
type SpanOf<Row> = (row: Row) => Span;

const day = (date: string): Span => ({ first: date.slice(0, 10), last: date.slice(0, 10) });
const always = () => null;

const SPANS: { [Name in keyof ClientRecord]: SpanOf<ClientRecord[Name][number]> } = {
  checkIns: (row) => day(row.date),
  sets: (row) => day(row.date),
  pain: (row) => day(row.date),
  dangerSigns: (row) => day(row.date),
  reasons: (row) => ({ first: row.since, last: row.closedAt?.slice(0, 10) ?? null }),
  reasonEvents: (row) => day(row.at),
  steps: (row) => day(row.takenOn),
  leftAlone: (row) => day(row.knownFrom),
  plans: (row) => ({ first: row.from, last: row.until }),
  goals: (row) => ({ first: row.from, last: row.endedOn }),
  assessed: (row) => day(row.date),
  startTests: (row) => day(row.askedAt),
  placements: (row) => ({ first: row.from, last: null }),
  questions: (row) => day(row.askedAt),
  coachWords: (row) => day(row.writtenAt),
  absences: (row) => ({ first: row.from, last: row.to }),
  limits: (row) => ({ first: row.from, last: row.until }),
  clinicianWords: always,
  films: (row) => day(row.askedAt),
  seen: (row) => day(row.at),
  verdicts: (row) => day(row.at),
  intake: always,
  consents: always,
  notes: (row) => day(row.at),
};

/** The rows of a record that belong to a period. What a clinician said, the start and the consents always do. */
export function recordWithin(record: RecordSource, period: Period): RecordSource {
  const entries = Object.entries(SPANS).map(([name, spanOf]) => {
    const batches = record[name as keyof RecordSource] as Batches<never>;
    return [name, within(batches, spanOf as SpanOf<never>, period)];
  });
  return Object.fromEntries(entries) as RecordSource;
}

function within<Row>(batches: Batches<Row>, spanOf: SpanOf<Row>, period: Period): Batches<Row> {
  return async function* () {
    for await (const batch of batches()) yield batch.filter((row) => touches(spanOf(row), period));
  };
}

function touches(span: Span, { from, to }: Period): boolean {
  if (span === null) return true;
  return span.first <= to && (from === null || span.last === null || span.last >= from);
}

/** The history of a period: what happened in it, and what held at its start. Rungs and the client stay whole. */
export function historyWithin(history: ClientHistory, period: Period): ClientHistory {
  const inside = (first: string, last: string | null = first) =>
    touches({ first: first.slice(0, 10), last: last?.slice(0, 10) ?? null }, period);
  const { goals, films, assessments, startTests } = history;
  return {
    ...history,
    plans: history.plans.filter((plan) => inside(plan.from, plan.until)),
    placements: history.placements.filter((one) => inside(one.from, null)),
    absences: history.absences.filter((one) => inside(one.from, one.to)),
    checkIns: history.checkIns.filter((one) => inside(one.date)),
    questions: history.questions.filter((one) => inside(one.askedAt)),
    limits: history.limits.filter((one) => inside(one.from, one.until)),
    steps: history.steps.filter((one) => inside(one.takenOn)),
    seen: history.seen.filter((at) => inside(at)),
    ...(goals && { goals: goals.filter((one) => inside(one.from, one.endedOn)) }),
    ...(films && { films: films.filter((one) => inside(one.askedAt)) }),
    ...(startTests && { startTests: startTests.filter((one) => inside(one.askedAt)) }),
    ...(assessments && { assessments: assessments.filter((one) => inside(one.date)) }),
  };
}
