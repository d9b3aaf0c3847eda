import { addDays } from '#lib/domain/local-date.ts';
import { FIRST_WEEK_DAYS } from '#lib/planning/start/start-numbers.ts';
import type { StartLine, StartPlan } from '#lib/planning/start/start-plan.ts';
import type { PlanDraft, PlanDraftLine } from '../plan-draft.ts';
import { longDate } from '../say-date.ts';

/**
 * A start plan as a draft over the kept plan it was made of: each line in the place of the kept one, what the client does
 * not get taken out. `week`: the first one with its fewer sets, or those after it.
 */
export function startDraft(
  plan: StartPlan,
  about: { name: string; today: string; week: 'first' | 'later' },
): PlanDraft {
  const { name, today, week } = about;
  const lines = week === 'first' ? plan.firstWeek : plan.lines;
  const fromWeekTwo = longDate(addDays(today, FIRST_WEEK_DAYS));
  return {
    source: 'start',
    reasonId: null,
    lines: [...lines.map((line, at) => put(line, plan.lines[at])), ...dropped(plan)],
    why:
      week === 'first'
        ? `Start plan from “${name}”, first week.`
        : `Start plan from “${name}”, from the second week on, ${fromWeekTwo}.`,
    notes: '',
    dropSkills: [],
    easyWeeks: [],
    later: week === 'first' ? [`from ${fromWeekTwo} the full dose: a second draft holds it`] : undefined,
  };
}

function put(line: StartLine, full: StartLine | undefined): PlanDraftLine {
  const { session, rungId, side, sets, target, minutes, timesPerWeek, support, planned } = line;
  const isLess = full !== undefined && full.sets > sets;
  return {
    act: 'put',
    session,
    rungId,
    side,
    sets,
    target,
    minutes,
    timesPerWeek,
    support,
    replaces: planned === rungId ? undefined : planned,
    why: isLess
      ? `First week: ${sets} of ${full.sets} sets (start rule, common practice).`
      : 'As the start tests place it.',
  };
}

function dropped({ leftOut }: StartPlan): PlanDraftLine[] {
  return leftOut.map(({ line, side, name, why }) => ({
    act: 'drop',
    session: line.session,
    rungId: line.rungId,
    side,
    sets: line.sets,
    target: line.target,
    minutes: line.minutes,
    timesPerWeek: line.timesPerWeek,
    why: `${name} ${why}.`,
  }));
}
