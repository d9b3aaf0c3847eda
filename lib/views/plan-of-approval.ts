import type { PlanFormModel } from './plan-form.ts';

type Dated = {
  from: string;
  until: string | null;
  why: string;
  notes: string;
  easyWeeks: string[];
  testWeeks: string[];
  noKitWeeks: string[];
  acceptedWeekAu: number | null;
  goals?: { skillId: string; wantedBy: string | null }[] | undefined;
};

/** The form as an assistant left it: what a copied plan leaves out, its dates, words, weeks and goals, is taken too. */
export function planOfApproval(model: PlanFormModel, plan: Dated): PlanFormModel {
  const { from, why, notes, easyWeeks, testWeeks, noKitWeeks, acceptedWeekAu } = plan;
  return {
    ...model,
    from,
    until: plan.until ?? '',
    why,
    notes,
    easyWeeks,
    testWeeks,
    noKitWeeks,
    acceptedWeekAu,
    goals: plan.goals?.map(({ skillId, wantedBy }) => ({ skillId, wantedBy: wantedBy ?? '' })) ?? model.goals,
  };
}
