import type { Tier } from '#lib/domain/vocabulary.ts';
import type { BoardChanges } from './board-print.ts';

/** A row as the page is told of it while it stands open. */
export type Changed = { clientId: string; name: string; tier: Tier; print: string };

/** "2 rows changed, 1 new, 1 gone"; empty when nothing is different. */
export function newsWords({ changed, fresh, gone }: BoardChanges<Changed>): string {
  const parts = [
    changed.length > 0 && `${changed.length === 1 ? '1 row' : `${changed.length} rows`} changed`,
    fresh.length > 0 && `${fresh.length} new`,
    gone > 0 && `${gone} gone`,
  ];
  return parts.filter((part) => part !== false).join(', ');
}

/** Who has come to stand under "now" meanwhile, by name; empty when nobody has. */
export function urgentWords({ changed, fresh }: BoardChanges<Changed>): string {
  const names = [...fresh, ...changed].filter((row) => row.tier === 'now').map((row) => row.name);
  return names.length === 0 ? '' : `To answer now: ${names.join(', ')}.`;
}
