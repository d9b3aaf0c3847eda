import type { KeptCounts } from '#lib/domain/kept-record.ts';
import { exactDate } from '../say-date.ts';

/** "412 check-ins, from Monday 2 March 2026 to …": what is kept of a client, one line a kind of which there is something. */
export function keptLines(kept: KeptCounts): string[] {
  const { firstDate, lastDate } = kept;
  const span = firstDate && lastDate ? `, from ${exactDate(firstDate)} to ${exactDate(lastDate)}` : '';
  const lines: [many: number, words: string][] = [
    [1, `${count(kept.checkIns, 'check-in')}${span}, corrected and deleted ones too`],
    [kept.painScores, count(kept.painScores, 'pain score')],
    [kept.questions, `${count(kept.questions, 'question')} with the answers`],
    [kept.pictures, count(kept.pictures, 'picture')],
    [
      kept.films,
      `${count(kept.films, 'film')}: too long for the record below, see and keep each on your Films page`,
    ],
    [kept.plans, `${count(kept.plans, 'version')} of your plan`],
    [kept.limits, count(kept.limits, 'limit')],
    [kept.coachWords, `${count(kept.coachWords, 'message')} of your coach`],
    [kept.reasons, `${count(kept.reasons, 'reason')} why your coach was told to look at you`],
    [
      kept.notes,
      `${count(kept.notes, 'note')} that coaches wrote for themselves: ask for them, they are not in the record below`,
    ],
    [1, 'what you said at the start, your consents, your goals and days away'],
  ];
  return lines.filter(([many]) => many > 0).map(([, words]) => words);
}

function count(many: number, what: string): string {
  return `${many.toLocaleString('en-GB')} ${what}${many === 1 ? '' : 's'}`;
}

/** The same to a coach. */
export function keptForCoach(kept: KeptCounts): string[] {
  const { firstDate, lastDate } = kept;
  const span = firstDate && lastDate ? `, from ${exactDate(firstDate)} to ${exactDate(lastDate)}` : '';
  return [
    `${count(kept.checkIns, 'check-in')}${span}, ${count(kept.painScores, 'pain score')}`,
    `${count(kept.questions, 'question')}, ${count(kept.pictures, 'picture')}, ${count(kept.films, 'film')}, ${count(kept.coachWords, 'message')} of coaches`,
    `${count(kept.plans, 'version')} of the plan, ${count(kept.limits, 'limit')}, ${count(kept.reasons, 'reason')}, ${count(kept.notes, 'note')} private to coaches`,
  ];
}
