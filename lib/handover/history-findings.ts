import { runChecks } from '#lib/checks/run.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import type { FindingRow } from '#lib/schemas/finding-row.ts';
import { nightInstant } from './night-instant.ts';

/** What the checks find on one evening, by all check-ins dated up to it, whenever they were sent. */
export function findingsOn(history: ClientHistory, date: string, limits: Limits): FindingRow[] {
  return runChecks(history, { date, instant: nightInstant(date, history.client.zone) }, limits).flatMap(
    (outcome) =>
      outcome.status === 'flagged'
        ? [
            {
              client: history.client.id,
              date,
              kind: outcome.kind,
              level: outcome.level,
              tier: outcome.tier,
              key: outcome.subject.key,
              subject: outcome.subject.label,
              sentence: outcome.sentence.replaceAll('**', ''),
              evidence: outcome.evidence,
            },
          ]
        : [],
  );
}

/**
 * Every evening from the first check-in to `last`, each by the check-ins that had been sent when its night was due.
 * Each reason once, on the evening it begins; after an evening without it, it may begin again.
 */
export function findingsByNight(history: ClientHistory, last: string, limits: Limits): FindingRow[] {
  const first = firstAndLast(history.checkIns.map((one) => one.date)).first ?? last;
  const rows: FindingRow[] = [];
  let before = new Set<string>();
  for (let date = first; date <= last; date = addDays(date, 1)) {
    const due = Date.parse(nightInstant(date, history.client.zone));
    const sent = history.checkIns.filter((one) => Date.parse(one.sentAt) <= due);
    const tonight = findingsOn({ ...history, checkIns: sent }, date, limits);
    rows.push(...tonight.filter((row) => !before.has(reasonOf(row))));
    before = new Set(tonight.map(reasonOf));
  }
  return rows;
}

function reasonOf(row: FindingRow): string {
  return JSON.stringify([row.kind, row.key]);
}

/** The date of the last check-in. Undefined: there is none. */
export function lastEvening(history: ClientHistory): string | undefined {
  return firstAndLast(history.checkIns.map((one) => one.date)).last;
}

/** The first evening that knows every check-in: one sent late is known only after the day it was sent. */
export function lastNight(history: ClientHistory): string | undefined {
  const { zone } = history.client;
  return firstAndLast(history.checkIns.flatMap((one) => [one.date, localDateOf(new Date(one.sentAt), zone)]))
    .last;
}

function firstAndLast(dates: string[]): { first: string | undefined; last: string | undefined } {
  const sorted = dates.sort();
  return { first: sorted[0], last: sorted.at(-1) };
}
