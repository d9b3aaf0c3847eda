import type { z } from 'zod';

type Item = { session: string; rungId: string; side: string; pairedWith: string | null };
type Plan = {
  from: string;
  until: string | null;
  easyWeeks: string[];
  testWeeks: string[];
  noKitWeeks: string[];
  sessions: { label: string }[];
  items: Item[];
  goals?: { skillId: string; wantedBy: string | null }[] | undefined;
};
type Refuse = (path: (string | number)[], message: string) => void;

/** What the fields of a plan must be to each other; each refusal names the field and the fix. */
export function checkPlan(plan: Plan, context: z.RefinementCtx): void {
  const refuse: Refuse = (path, message) => context.addIssue({ code: 'custom', path, message });
  if (plan.until !== null && plan.until < plan.from) refuse(['until'], 'is before the first day');
  checkWeeks(plan, refuse);
  checkSessions(plan, refuse);
  checkItems(plan.items, refuse);
  checkGoals(plan, refuse);
}

function checkWeeks(plan: Plan, refuse: Refuse): void {
  for (const kind of ['easyWeeks', 'testWeeks', 'noKitWeeks'] as const) {
    for (const [index, week] of plan[kind].entries()) {
      const outside = week < plan.from || (plan.until !== null && week > plan.until);
      if (outside) refuse([kind, index], `${week} is outside the plan`);
    }
  }
  for (const [index, week] of plan.testWeeks.entries()) {
    if (plan.easyWeeks.includes(week))
      refuse(['testWeeks', index], `${week} is an easy week already: choose one`);
  }
}

function checkSessions(plan: Plan, refuse: Refuse): void {
  const seen = new Set<string>();
  for (const [index, { label }] of plan.sessions.entries()) {
    if (seen.has(label)) refuse(['sessions', index, 'label'], `session ${label} stands twice`);
    seen.add(label);
    if (!plan.items.some((item) => item.session === label)) {
      refuse(['sessions', index, 'label'], `session ${label} has no drill: add one, or take the session out`);
    }
  }
}

function checkItems(items: Item[], refuse: Refuse): void {
  const seen = new Set<string>();
  for (const [index, one] of items.entries()) {
    const key = `${one.session} ${one.rungId} ${one.side}`;
    if (seen.has(key)) {
      refuse(['items', index, 'rungId'], `is already in session ${one.session} for this side`);
    }
    seen.add(key);
    if (one.pairedWith === null) continue;
    const partner = items.some(
      (other) =>
        other.session === one.session && other.rungId === one.pairedWith && worksWith(other.side, one.side),
    );
    if (one.pairedWith === one.rungId || !partner) {
      refuse(
        ['items', index, 'pairedWith'],
        `must be another line of session ${one.session} with this side: choose it again, or none`,
      );
    }
  }
}

function worksWith(a: string, b: string): boolean {
  return a === b || a === 'both' || b === 'both';
}

function checkGoals(plan: Plan, refuse: Refuse): void {
  const seen = new Set<string>();
  for (const [index, goal] of (plan.goals ?? []).entries()) {
    if (seen.has(goal.skillId)) refuse(['goals', index, 'skillId'], 'stands twice: keep one');
    seen.add(goal.skillId);
    if (goal.wantedBy !== null && goal.wantedBy < plan.from) {
      refuse(
        ['goals', index, 'wantedBy'],
        'is before the first day of the plan: choose a later date, or none',
      );
    }
  }
}
