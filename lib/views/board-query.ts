import type { BoardFilter } from './board-types.ts';

const FIELDS = ['coach', 'reason', 'skill', 'group', 'q'] as const;

/** A filter as the address says it, always in the same order; empty without one. */
export function queryOf(filter: BoardFilter): string {
  const query = new URLSearchParams();
  for (const field of FIELDS) {
    const value = filter[field];
    if (value !== undefined) query.set(field, value);
  }
  return query.toString();
}
