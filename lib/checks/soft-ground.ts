import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { SOFT_GROUNDS } from '#lib/domain/vocabulary.ts';

/** Whether a check-in was on ground that gives way. */
export function isOnSoftGround({ ground }: HistoryCheckIn): boolean {
  return ground !== null && SOFT_GROUNDS.includes(ground);
}
