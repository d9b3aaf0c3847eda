/** The most that a plan can ask, for the form that reads it and for what is foreseen while it is typed. Own choice. */
export const PLAN_BOUNDS = {
  sets: 30,
  timesPerWeek: 14,
  sessionsPerWeek: 14,
  targetFrom: -360,
  targetTo: 3_600,
  minutes: 240,
  restSeconds: 900,
  warmUpMinutes: 120,
} as const;
