/** `ended`: the time ran to its end; false: still running when last looked at (censored). */
export type Duration = { time: number; ended: boolean };
export type SurvivalStep = {
  time: number;
  atRisk: number;
  events: number;
  share: number;
  standardError: number;
};

/**
 * Share still running over time (Kaplan & Meier 1958), Greenwood's standard error. Events come before censorings at
 * the same time. Empty when nothing ended.
 */
export function kaplanMeier(durations: readonly Duration[]): SurvivalStep[] {
  const times = [...new Set(durations.filter((each) => each.ended).map((each) => each.time))].sort(
    (a, b) => a - b,
  );
  let share = 1;
  let variance = 0;
  return times.map((time) => {
    const atRisk = durations.filter((each) => each.time >= time).length;
    const events = durations.filter((each) => each.ended && each.time === time).length;
    share *= 1 - events / atRisk;
    if (atRisk > events) variance += events / (atRisk * (atRisk - events));
    return { time, atRisk, events, share, standardError: share * Math.sqrt(variance) };
  });
}

/** First time at which half or fewer are still running. Undefined when that is not reached. */
export function kaplanMeierMedian(durations: readonly Duration[]): number | undefined {
  return kaplanMeier(durations).find((step) => step.share <= 0.5 + 1e-12)?.time;
}
