import type { CheckKind, Tier } from '#lib/domain/vocabulary.ts';
import type { BoardBrief } from './board-types.ts';
import { longDate } from './say-date.ts';

export const TIER_TITLE: Record<Tier, string> = {
  now: 'Now',
  today: 'Today',
  'this-week': 'This week',
  'good-news': 'Good news',
};

/** Each kind of reason in a few words, for filters and lists. */
export const KIND_WORDS: Record<CheckKind, string> = {
  'danger-sign': 'danger sign',
  'pain-high': 'pain of 6 or more',
  'pain-rising': 'pain rising',
  'pain-lingering': 'pain that stays',
  'pain-after-ground': 'wrist after soft ground',
  'load-jump': 'load jump',
  'new-hardest': 'new hardest drill',
  'stacked-stress': 'stresses stacked',
  'no-let-up': 'no let-up',
  'return-too-fast': 'back too fast',
  'too-many-goals': 'too many goals',
  'too-hard': 'rung too hard',
  'plan-outgrown': 'plan outgrown',
  stalled: 'stalled',
  slipping: 'slipping',
  'too-little-time': 'too little time',
  'window-gap': 'balance window uneven',
  'side-gap': 'one side weaker',
  'one-side-fault': 'fault on one side',
  'gone-quiet': 'gone quiet',
  fading: 'fading',
  'question-waiting': 'question waiting',
  'film-waiting': 'film waiting',
  'plan-ending': 'plan ending',
  'not-seen': 'not looked at',
  'asked-no-answer': 'asked, no answer',
  'limit-ending': 'limit ending',
  'step-up-earned': 'step up earned',
};

const SMALL = [
  'none',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** Small counts in words, larger ones in figures. */
export function countWords(count: number): string {
  return SMALL[count] ?? count.toLocaleString('en-GB');
}

/** "Wednesday 25 November. Two to answer now, three today." Rows folded as known are not counted. */
export function headline(today: string, rows: readonly BoardBrief[]): string {
  const count = (tier: Tier) => rows.filter((row) => row.tier === tier && row.known === null).length;
  return `${longDate(today)}. ${capital(dueWords(count))}.`;
}

function dueWords(count: (tier: Tier) => number): string {
  const [now, today, week, good] = [count('now'), count('today'), count('this-week'), count('good-news')];
  if (now > 0) return `${countWords(now)} to answer now, ${countWords(today)} today`;
  if (today > 0) return `none to answer now, ${countWords(today)} today`;
  if (week > 0) return `nothing to answer today, ${countWords(week)} this week`;
  if (good > 0) return `nothing to answer, ${countWords(good)} with good news`;
  return 'nothing to answer';
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Own estimate, no source: minutes to read, decide and answer one row of each tier. */
const MINUTES: Record<Tier, number> = { now: 8, today: 6, 'this-week': 4, 'good-news': 3 };
const MINUTES_EACH_MORE = 1;
const MINUTES_A_QUESTION = 3;

/** How long the rows take, in minutes, rounded up to five. 0 without rows. */
export function minutesFor(rows: readonly BoardBrief[]): number {
  const sum = rows.reduce(
    (total, row) =>
      total +
      MINUTES[row.tier] +
      MINUTES_EACH_MORE * (row.kinds.length - 1) +
      MINUTES_A_QUESTION * row.questions,
    0,
  );
  return Math.ceil(sum / 5) * 5;
}

/** "about 70 minutes", "about 6 hours": from two hours on nobody counts minutes. */
export function timeWords(minutes: number): string {
  return minutes < 120 ? `about ${minutes} minutes` : `about ${Math.round(minutes / 60)} hours`;
}

/** How `minutesFor` counts, in one sentence. */
export const MINUTES_SAID = `Counted as ${MINUTES.now} minutes for a row in now, ${MINUTES.today} in today, ${MINUTES['this-week']} in this week, ${MINUTES['good-news']} in good news; ${MINUTES_EACH_MORE} for each further reason and ${MINUTES_A_QUESTION} for a question. Our own estimate, not measured.`;
