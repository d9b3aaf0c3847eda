import type { KeptCounts } from '#lib/domain/kept-record.ts';
import { exactDate } from '../say-date.ts';

/** "412 check-ins, from 2 March 2026 to 24 November 2026": what is kept of a client, one line a kind. */
export function keptLines(kept: KeptCounts): string[] {
  const { firstDate, lastDate } = kept;
  const span = firstDate && lastDate ? `, from ${exactDate(firstDate)} to ${exactDate(lastDate)}` : '';
  return [
    `${count(kept.checkIns, 'check-in')}${span}, corrected and deleted ones too`,
    count(kept.painScores, 'pain score'),
    `${count(kept.questions, 'question')} with the answers, ${count(kept.pictures, 'picture')}`,
    `${count(kept.plans, 'version')} of your plan, ${count(kept.limits, 'limit')}`,
    `${count(kept.coachWords, 'message')} of your coach`,
    `${count(kept.reasons, 'reason')} why your coach was told to look at you`,
    `${count(kept.notes, 'note')} that coaches wrote for themselves: ask for them, they are not in the record below`,
  ];
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
    `${count(kept.questions, 'question')}, ${count(kept.pictures, 'picture')}, ${count(kept.coachWords, 'message')} of coaches`,
    `${count(kept.plans, 'version')} of the plan, ${count(kept.limits, 'limit')}, ${count(kept.reasons, 'reason')}, ${count(kept.notes, 'note')} private to coaches`,
  ];
}
