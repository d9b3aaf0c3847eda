import type { Actor } from '#lib/auth/actor.ts';
import { findBoardHead } from '#lib/db/board.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { listReasonsLeftAlone, listStepsTaken } from '#lib/db/followed-steps.ts';
import type { StepsFilter } from '#lib/schemas/steps-filter.ts';
import { daysOfPeriod } from '#lib/views/steps/step-period.ts';
import { type StepsOverview, stepsOverview } from '#lib/views/steps/steps-overview.ts';

export type StepsLoaded = {
  today: string;
  span: { from: string; to: string };
  coaches: { id: string; name: string }[];
  overview: StepsOverview;
};

/** What became of the steps of a period, beside what became of reasons that were left alone. Four queries. */
export function loadSteps(actor: Actor, filter: StepsFilter, now: Date): Promise<StepsLoaded> {
  return withTeamPg(actor.scope, async (tx) => {
    const { today, coaches } = await findBoardHead(tx, actor.memberId ?? null, now);
    const span = daysOfPeriod(filter.period, today);
    const asked = { ...span, coachId: filter.coach, kind: filter.kind };
    const steps = await listStepsTaken(tx, asked);
    const alone = await listReasonsLeftAlone(tx, asked);
    return { today, span, coaches, overview: stepsOverview({ steps, alone, today }) };
  });
}
