import type { HistoryRung } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { SIDES, type Side } from '#lib/domain/vocabulary.ts';
import { median } from '#lib/stats/median.ts';
import { scoredDays } from '../score.ts';
import { standingsOf } from '../standings.ts';
import type { ClientView } from '../types.ts';
import { asPercent, counted } from '../words.ts';
import type { Amount, Compared, Measure, Measured } from './types.ts';

/**
 * Share of the pass mark of the rung that the reason was about: the median of the last 3 scores in 21 days, before and
 * at the end of the window. On a higher rung by then: better, the rung was passed. On a lower one the scores there say
 * nothing about this rung, so it counts only what was trained of it.
 */
export const passShareSince: Measure = (compared) => {
  const { before, after, followed, limits } = compared;
  const rung = after.rungs.get(followed.subject.rungId ?? '');
  const of = (view: ClientView, since: string): Amount => {
    if (!rung) return { missing: 'the rung is not in the history any more' };
    const from = addDays(view.asOf.date, 1 - limits['betterSince.scoreDays']);
    const needed = limits['betterSince.scores'];
    const last = scoredDays(view, rung, sideOf(compared), limits)
      .filter((day) => day.date >= from && day.date > since)
      .slice(-needed);
    if (last.length < needed)
      return {
        missing: `${last.length} of ${counted(needed, 'training day')} of this rung with a score in ${limits['betterSince.scoreDays']} days`,
      };
    const value = median(last.map((day) => day.score)) ?? 0;
    return { value, said: asPercent(value) };
  };
  return {
    what: 'median share of the pass mark, last 3 training days of the rung',
    unit: 'of the pass mark',
    lowerIsBetter: false,
    tolerance: limits['betterSince.passShare'],
    before: of(before, ''),
    after: of(after, followed.from),
    ...passedTo(rung, compared),
  };
};

function passedTo(rung: HistoryRung | undefined, compared: Compared): Pick<Measured, 'passed'> {
  const side = sideOf(compared);
  const now = standingsOf(compared.after).filter(
    (one) =>
      one.rung.ladderId === rung?.ladderId && (side === 'both' || one.side === 'both' || one.side === side),
  );
  // Where both sides were asked about, both have to be higher.
  const higher = now.filter((one) => rung !== undefined && one.rung.position > rung.position);
  if (now.length === 0 || higher.length < now.length) return {};
  return { passed: `the rung was passed: on ${higher.map((one) => one.rung.name).join(' and ')} by then` };
}

function sideOf({ followed }: Compared): Side {
  return SIDES.find((side) => side === followed.subject.side) ?? 'both';
}
