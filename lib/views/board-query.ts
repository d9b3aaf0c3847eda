import type { BoardFilter } from './board-types.ts';

const FIELDS = ['coach', 'reason', 'skill', 'group', 'q'] as const;

/** A filter as the address says it, always in the same order; empty without one. */
export function queryOf(filter: BoardFilter): string {
  return FIELDS.flatMap((field) => {
    const value = filter[field];
    return value === undefined ? [] : [`${field}=${encodeURIComponent(value)}`];
  }).join('&');
}
