import type { GapResult } from '#lib/planning/gaps/find-gaps.ts';
import type { GapContext } from '#lib/planning/gaps/gap-context.ts';
import { intoSessions } from '#lib/planning/gaps/into-sessions.ts';
import type { PlanDraft } from '../plan-draft.ts';
import { longDate } from '../say-date.ts';
import { supportInWords, whyChosen } from './drill-words.ts';

/** Sessions a week where there is no plan yet. Common practice, no source. */
const SESSIONS_A_WEEK = 3;

/** The chosen drills as lines for the plan editor, each with why. */
export function gapDraft(
  result: GapResult,
  about: { context: Pick<GapContext, 'plan'>; skill: string; onDate: string },
): PlanDraft {
  const { plan } = about.context;
  const perWeek = (plan?.sessionsPerWeek ?? SESSIONS_A_WEEK) / result.room.length;
  const timesPerWeek = Math.max(1, Math.round(perWeek * 2) / 2);
  return {
    source: 'gap-finder',
    reasonId: null,
    lines: intoSessions(result.chosen, result.room, about.context).flatMap(({ session, drill }) => {
      const on = supportInWords(drill.option.support);
      const why = [...whyChosen(drill, result.chosen), ...(on ? [`Done ${on}.`] : [])].join(' ');
      return drill.option.lines.map((line) => ({
        act: 'put' as const,
        session,
        rungId: line.rung.id,
        side: line.side,
        sets: line.sets,
        target: line.target,
        minutes: line.minutes,
        timesPerWeek,
        support: drill.option.support,
        why,
      }));
    }),
    why: `Gaps of ${about.skill}, assessed on ${longDate(about.onDate)}.`,
    notes: '',
    dropSkills: [],
    easyWeeks: [],
  };
}
