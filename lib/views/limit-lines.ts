import { TISSUE_LABELS } from '#lib/checks/tissues.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { asSentence, placeInWords } from '#lib/domain/labels.ts';
import { datedDay } from './say-date.ts';

export type LimitLine = {
  id: string;
  /** "Nothing for the right wrist, bent back". */
  what: string;
  /** "from Wed 25 Nov until Fri 11 Dec, said by the physiotherapist". */
  when: string;
  words: string;
  state: 'in force' | 'to come' | 'over';
  /** Held by a yes at the start: only a clinician's word ends it. */
  told: boolean;
  /** Lines of the plan in force that it takes out or cuts, in words. */
  touches: string[];
};
type Row = HistoryLimit & { id: string; words: string; told?: string | null };

/** What a limit says, as the start of a sentence. */
export function limitInWords(limit: HistoryLimit): string {
  return asSentence(ruleInWords(limit));
}

/** "until Fri 11 Dec", the last day included; "until further word" without an end. */
export function untilInWords({ until }: Pick<HistoryLimit, 'until'>, today: string): string {
  return until === null ? 'until further word' : `until ${datedDay(until, today)}`;
}

/** Limits as the client page lists them: in force first, then those to come, then those that are over. */
export function limitLines(
  rows: readonly Row[],
  today: string,
  touches: (limit: HistoryLimit) => string[],
): LimitLine[] {
  const lines = rows.map((row): LimitLine => {
    const state = stateOf(row, today);
    return {
      id: row.id,
      what: limitInWords(row),
      when: `from ${datedDay(row.from, today)} ${untilInWords(row, today)}, said by ${row.who}`,
      words: row.words,
      told: (row.told ?? null) !== null,
      state,
      touches: state === 'in force' ? touches(row) : [],
    };
  });
  return STATES.flatMap((state) => lines.filter((line) => line.state === state));
}

const STATES = ['in force', 'to come', 'over'] as const;

function stateOf({ from, until }: Row, today: string): LimitLine['state'] {
  if (until !== null && (until < today || until < from)) return 'over';
  return from > today ? 'to come' : 'in force';
}

function ruleInWords(limit: HistoryLimit): string {
  const place = placeOf(limit);
  if (limit.rule === 'no-floor') return withSide('no hands on the floor', limit);
  if (limit.rule === 'no-overhead') return withSide('nothing overhead', limit);
  if (limit.rule === 'no-upside-down') return 'nothing upside down';
  if (limit.rule === 'none') return place === '' ? 'no training' : `nothing for the ${place}`;
  const part = `${limit.percent ?? 0} % of the sets`;
  return place === '' ? `everything at ${part}` : `${place}: ${part}`;
}

function placeOf({ tissue, region, side }: HistoryLimit): string {
  if (region) return placeInWords(region, side);
  if (!tissue) return '';
  return side === 'left' || side === 'right' ? `${side} ${TISSUE_LABELS[tissue]}` : TISSUE_LABELS[tissue];
}

function withSide(words: string, { side }: HistoryLimit): string {
  return side === 'left' || side === 'right' ? `${words}, ${side}` : words;
}
