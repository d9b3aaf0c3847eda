import { betterSince } from '#lib/checks/better-since/better-since.ts';
import { familyOf, windowsOf } from '#lib/checks/better-since/windows.ts';
import { type Limits, RULES_VERSION } from '#lib/checks/thresholds.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { type DueOutcome, listDueOutcomes, type NewOutcome, type Window } from '#lib/db/outcomes.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { CHECK_KINDS } from '#lib/domain/vocabulary.ts';

/** Windows of these clients that are over on the evening of a date and not told yet, by client; one query for all. */
export async function dueOutcomes(
  tx: TeamPg,
  clientIds: readonly string[],
  localDate: string,
  limitsOf: (clientId: string) => Limits,
): Promise<Map<string, DueOutcome[]>> {
  const byClient = new Map<string, DueOutcome[]>();
  for (const due of await listDueOutcomes(tx, clientIds, localDate, allWindows(clientIds.map(limitsOf)))) {
    if (!windowsOf(due.followed.kind, limitsOf(due.clientId)).includes(due.windowDays)) continue;
    const there = byClient.get(due.clientId);
    if (there) there.push(due);
    else byClient.set(due.clientId, [due]);
  }
  return byClient;
}

/** What the due windows of one client came to. Pure: throws only when the measures do. */
export function outcomesOf(
  history: ClientHistory,
  due: readonly DueOutcome[],
  localDate: string,
  limits: Limits,
): NewOutcome[] {
  return due.flatMap(({ of, id, windowDays, followed }) => {
    const since = betterSince(history, followed, windowDays, localDate, limits);
    if (!since || since.outcome === 'not-yet') return [];
    const { outcome, what, unit, before, after, said, changes, until } = since;
    const evidence = {
      what,
      unit,
      before,
      after,
      said,
      changes,
      from: followed.from,
      until,
      rulesVersion: RULES_VERSION,
    };
    return [{ of, id, windowDays, outcome, evidence }];
  });
}

/** The windows of all kinds under any of these limits: nearly always one set of limits for all. */
function allWindows(all: readonly Limits[]): Window[] {
  const windows = new Map<string, Window>();
  for (const limits of new Set(all)) {
    for (const kind of CHECK_KINDS) {
      const family = familyOf(kind);
      if (!family) continue;
      for (const days of windowsOf(kind, limits)) windows.set(`${kind} ${days}`, { kind, days, family });
    }
  }
  return [...windows.values()];
}
