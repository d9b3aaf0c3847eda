import { dayFacts } from '#lib/checks/day-facts.ts';
import type { HistoryCheckIn, HistoryRung } from '#lib/domain/history.ts';
import { packFacts } from './packed-facts.ts';

/** A day rollup as it is written. */
export type Rollup = {
  date: string;
  state: 'trained' | 'rest';
  load: number | null;
  tissues: object;
  pain: number | null;
  count: number;
  facts: string;
};

/** What the check-ins of one local date add up to. */
export function rollupOf(
  date: string,
  checkIns: HistoryCheckIn[],
  rungs: ReadonlyMap<string, HistoryRung>,
  bodyMassKg: number | null,
): Rollup {
  const { trained, sessionLoad, tissueLoad, worstPain } = dayFacts(checkIns, rungs, bodyMassKg);
  return {
    date,
    state: trained ? 'trained' : 'rest',
    load: sessionLoad ?? null,
    tissues: tissueLoad,
    pain: worstPain,
    count: checkIns.length,
    facts: packFacts(checkIns),
  };
}
