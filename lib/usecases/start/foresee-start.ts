import { addDays } from '#lib/domain/local-date.ts';
import { projectLoads } from '#lib/planning/project-loads.ts';
import { START_PLAN_DAYS } from '#lib/planning/start/start-numbers.ts';
import type { StartPlan } from '#lib/planning/start/start-plan.ts';
import { plainSentence } from '#lib/views/sentence.ts';
import type { GapFacts } from '../gap-facts.ts';

/**
 * What the checks would say of a start plan done as planned, with its full dose, in their sentences; first what its weeks
 * come to, where effort was told or known. In the first four weeks the measure is the told usual week.
 */
export function foreseeStart({ view, context, today }: GapFacts, plan: StartPlan, perWeek: number): string[] {
  if (plan.lines.length === 0) return [];
  const edited = {
    version: 0,
    from: today,
    until: addDays(today, START_PLAN_DAYS - 1),
    sessionsPerWeek: perWeek,
    items: plan.lines,
    easyWeeks: [],
    testWeeks: [],
    acceptedWeekAu: null,
    skillsInFocus: [],
  };
  const { session, warnings } = projectLoads({
    history: view.history,
    plan: edited,
    date: addDays(today, -1),
    rungs: context.library.flatMap(({ rungs }) => rungs),
    limits: context.numbers,
  });
  const told = view.history.client.toldWeekAu;
  const most = Math.max(...session.weeks.map((week) => week ?? 0));
  const against = told === null ? '' : ` of ${Math.round(told)} AU told as the usual week`;
  const sum = most > 0 ? [`Done as planned its fullest week comes to ${Math.round(most)} AU${against}.`] : [];
  return [...sum, ...warnings.map(({ sentence }) => plainSentence(sentence))];
}
