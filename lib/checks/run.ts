import type { AsOf, Outcome } from '#lib/domain/finding.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { CHECKS } from './registry.ts';
import { settle } from './settle.ts';
import { DEFAULT_LIMITS, type Limits } from './thresholds.ts';
import { buildView } from './view.ts';

/**
 * What every check says about one client on the evening of `asOf.date`. Same history, limits and date: same outcomes,
 * in the same order, whatever the order of the rows. Pure.
 */
export function runChecks(history: ClientHistory, asOf: AsOf, limits: Limits = DEFAULT_LIMITS): Outcome[] {
  const view = buildView(history, asOf, limits);
  return settle(
    view,
    CHECKS.flatMap((check) => check.evaluate(view, limits)),
    limits,
  );
}
