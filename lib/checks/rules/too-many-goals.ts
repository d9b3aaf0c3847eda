import type { Outcome, Subject } from '#lib/domain/finding.ts';
import type { HistoryPlan } from '#lib/domain/history.ts';
import { isResting } from '../contact-silence.ts';
import { findingOf } from '../finding-of.ts';
import { plansThatHeld } from '../plans-that-held.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted } from '../words.ts';

const SUBJECT: Subject = { key: 'goals', label: '' };

/** Skills in focus and strength drills a session of the plan in force, or of the next one. Common practice. */
export const tooManyGoals: Check = {
  kind: 'too-many-goals',
  title: 'Too many goals',
  question: 'Does the plan ask for more skills or more strength drills at once than usually go well?',
  evaluate: (view, limits) => [judge(view, limits)],
};

function judge(view: ClientView, limits: Limits): Outcome {
  const clear: Outcome = { status: 'clear', kind: 'too-many-goals', subject: SUBJECT };
  const plan = view.planOn(view.asOf.date) ?? nextPlan(view);
  if (!plan || isResting(view)) return clear;
  const skills = new Set(plan.skillsInFocus).size;
  const { session, drills } = fullestSession(view, plan);
  const tooManySkills = skills > limits['tooManyGoals.skills'];
  const tooManyDrills = drills > limits['tooManyGoals.drills'];
  if (!tooManySkills && !tooManyDrills) return clear;
  const parts = [
    ...(tooManySkills ? [`**${counted(skills, 'skill')}** in focus at once`] : []),
    ...(tooManyDrills ? [`**${counted(drills, 'strength drill')}** in session ${session}`] : []),
  ];
  return findingOf(
    {
      kind: 'too-many-goals',
      subject: SUBJECT,
      level: 'watch',
      sentence: `The plan asks for ${parts.join(' and ')}; at most ${limits['tooManyGoals.skills']} and ${limits['tooManyGoals.drills']} usually go well.`,
      short: 'too many goals',
      since: plan.from,
      step: { kind: 'drop-a-goal', text: 'Drop a goal for now, or say until when it stays' },
      clears: 'A plan with fewer skills and drills, or “I know, until” a date.',
      evidence: { skills, drills, session: tooManyDrills ? session : null },
      inputs: [
        { name: 'skills in focus', value: skills, unit: '' },
        { name: 'strength drills in the fullest session', value: drills, unit: '' },
      ],
      formula:
        'Counted on the plan: skills in focus, and ladders of the four strength families in one session.',
      thresholds: ['tooManyGoals.skills', 'tooManyGoals.drills'],
      doubt: 'A rule of thumb of the trade. Some people thrive on more.',
    },
    limits,
  );
}

/** The first plan that will hold after tonight. */
function nextPlan(view: ClientView): HistoryPlan | undefined {
  return plansThatHeld(view.history.plans).find((plan) => plan.from > view.asOf.date);
}

function fullestSession(view: ClientView, plan: HistoryPlan): { session: string; drills: number } {
  const ladders = new Map<string, Set<string>>();
  for (const { session, rungId } of plan.items) {
    const rung = view.rungs.get(rungId);
    if (!rung || rung.family === 'balance' || rung.family === 'mobility') continue;
    const known = ladders.get(session) ?? new Set<string>();
    ladders.set(session, known.add(rung.ladderId));
  }
  const [fullest] = [...ladders].sort(([a, one], [b, two]) => two.size - one.size || (a < b ? -1 : 1));
  return fullest ? { session: fullest[0], drills: fullest[1].size } : { session: '', drills: 0 };
}
