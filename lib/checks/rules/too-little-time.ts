import type { Outcome } from '#lib/domain/finding.ts';
import { binomialTail } from '#lib/stats/binomial-tail.ts';
import { reaches } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { roundTo } from '../in-numbers.ts';
import { daysHere } from '../new-start.ts';
import { askedNow } from '../plan-items.ts';
import { isHardlyTrained, plannedPractice } from '../planned-practice.ts';
import { type Standing, standingsOf, subjectOf } from '../standings.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted } from '../words.ts';

const KIND = 'too-little-time';

export const tooLittleTime: Check = {
  kind: KIND,
  title: 'Too little time',
  question: 'Does the plan ask for a rung that is hardly trained in the sessions that are logged?',
  evaluate: (view, limits) => standingsOf(view).map((standing) => judge(view, standing, limits)),
};

function judge(view: ClientView, standing: Standing, limits: Limits): Outcome {
  const subject = subjectOf(standing);
  if (askedNow(view, standing.rung.id, standing.side).length === 0)
    return { status: 'clear', kind: KIND, subject };
  const here = daysHere(view);
  if (here < limits['tooLittleTime.fromDays']) {
    const missing = `day ${here} of ${limits['tooLittleTime.fromDays']} here`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  const practice = plannedPractice(view, standing, limits);
  const { planned, trained } = practice;
  if (planned < limits['tooLittleTime.expected']) {
    const missing = `${planned} of ${counted(limits['tooLittleTime.expected'], 'logged session')} with it in the plan`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  const chance = limits['tooLittleTime.honestShare'];
  const p = binomialTail({ successes: trained, trials: planned, chance, tail: 'lower' }) ?? 1;
  if (!isHardlyTrained(practice, limits) || reaches(p, limits['tooLittleTime.p'])) {
    return { status: 'clear', kind: KIND, subject };
  }
  return findingOf(
    {
      kind: KIND,
      subject,
      level: 'watch',
      sentence: `${subject.label}: trained in **${trained} of ${planned}** logged sessions of ${limits['tooLittleTime.days']} days that have it in the plan.`,
      short: `${subject.label}: too little time, ${trained} of ${planned}`,
      since: view.days.at(-limits['tooLittleTime.days'])?.date ?? view.days[0]?.date ?? view.asOf.date,
      step: { kind: 'more-time', text: 'Move it to the start of the session, or ask what keeps it out' },
      clears: 'trained in half of the logged sessions that have it, or taken out of the plan',
      evidence: { trained, planned, logged: practice.logged, p: roundTo(p, 4) },
      inputs: [
        { name: 'logged sessions with it in the plan', value: planned, unit: 'sessions' },
        { name: 'of these trained', value: trained, unit: 'sessions' },
        { name: 'sessions logged at all', value: practice.logged, unit: 'sessions' },
        { name: 'chance of so few for an honest trainer', value: roundTo(p, 4), unit: '' },
      ],
      formula: `under half of the logged sessions that have it, and the binomial chance of so few under ${limits['tooLittleTime.p']} for somebody who does it in ${limits['tooLittleTime.honestShare'] * 100} % of them`,
      thresholds: [
        'tooLittleTime.days',
        'tooLittleTime.share',
        'tooLittleTime.expected',
        'tooLittleTime.honestShare',
        'tooLittleTime.p',
        'tooLittleTime.planFromDays',
        'tooLittleTime.fromDays',
      ],
      daysKnown: null,
      doubt:
        'Judged against sessions logged, not the calendar: a forgotten log is no skipped drill, and a drill done but not written down counts as skipped.',
    },
    limits,
  );
}
