import type { BoardBrief, BoardInput } from './board-types.ts';

/** Whether a row stands under the filter. Text is found anywhere in the name, capitals and accents aside. */
export function keeps(row: BoardBrief, { filter, ofSkill }: Pick<BoardInput, 'filter' | 'ofSkill'>): boolean {
  return (
    (filter.group === undefined || row.tier === filter.group) &&
    (filter.reason === undefined || row.kinds.includes(filter.reason)) &&
    (filter.skill === undefined || (ofSkill?.has(row.clientId) ?? false)) &&
    (filter.q === undefined || plain(row.name).includes(plain(filter.q)))
  );
}

function plain(text: string): string {
  return text.normalize('NFD').replaceAll(/\p{M}/gu, '').trim().toLowerCase();
}
