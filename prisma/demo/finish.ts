import type { DemoClient, Life } from './life.ts';
import { demoRung } from './rungs.ts';

/** Closes a life: names every rung it uses and puts everything in order of time. */
export function finish(life: Life): DemoClient {
  const { history, extra } = life;
  const used = new Set([
    ...history.checkIns.flatMap((checkIn) => checkIn.sets.map((set) => set.rungId)),
    ...history.plans.flatMap((plan) => plan.items.map((item) => item.rungId)),
    ...history.placements.map((placement) => placement.rungId),
    ...extra.corrected.flatMap(({ first }) => first.sets.map((set) => set.rungId)),
    ...extra.films.map((film) => film.rungKey),
  ]);
  return {
    history: {
      ...history,
      rungs: [...used].sort().map(demoRung),
      checkIns: [...history.checkIns].sort((a, b) => (a.sentAt < b.sentAt ? -1 : 1)),
      seen: [...history.seen].sort(),
    },
    extra,
  };
}
