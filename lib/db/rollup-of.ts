import { dayFacts } from '#lib/checks/day-facts.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { packFacts } from './packed-facts.ts';

/** A day rollup as it is written. */
export type Rollup = {
  date: string;
  state: 'trained' | 'rest';
  load: number | null;
  pain: number | null;
  count: number;
  facts: string;
};

/**
 * What the check-ins of one local date add up to: only what follows from themselves. Loads of tissues are not kept: they
 * follow from drills too, which coaches edit, and would be wrong the day after.
 */
export function rollupOf(date: string, checkIns: HistoryCheckIn[]): Rollup {
  const { trained, sessionLoad, worstPain } = dayFacts(checkIns, new Map());
  return {
    date,
    state: trained ? 'trained' : 'rest',
    load: sessionLoad ?? null,
    pain: worstPain,
    count: checkIns.length,
    facts: packFacts(checkIns),
  };
}
