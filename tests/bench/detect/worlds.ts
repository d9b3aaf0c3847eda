/**
 * What is true in a world, apart from any client. Session-to-session variability of strength results: coefficient of
 * variation 3.7-13.7 % (range of published test-retest values as collected for this project); everything else is
 * common practice, no source. None of these numbers was fitted to the checks.
 */
export type World = {
  name: string;
  /** Session-to-session CV of a result, in percent: low and high of the clients. */
  cv: [number, number];
  daysPerWeek: [number, number];
  /** Share of done sessions that are never written down. */
  forgets: [number, number];
  /** Share of mornings whose pain is given. */
  mornings: [number, number];
  /** Share of planned sessions skipped or moved. */
  skips: [number, number];
  moves: [number, number];
  /** Harmless soreness 1-2 per check-in. */
  soreness: number;
  /** Factor on the usual weeks of a rung. */
  pace: [number, number];
};

const ordinary: World = {
  name: 'default',
  cv: [3.7, 13.7],
  daysPerWeek: [3, 5],
  forgets: [0, 0.1],
  mornings: [0.4, 0.8],
  skips: [0.03, 0.12],
  moves: [0.05, 0.2],
  soreness: 0.06,
  pace: [0.7, 1.5],
};

export const WORLDS: World[] = [
  ordinary,
  { ...ordinary, name: 'lowNoise', cv: [3, 6] },
  { ...ordinary, name: 'highNoise', cv: [12, 20] },
  { ...ordinary, name: 'fewDays', daysPerWeek: [2, 3] },
  { ...ordinary, name: 'manyDays', daysPerWeek: [5, 6] },
  { ...ordinary, name: 'poorlyLogged', forgets: [0.2, 0.4], mornings: [0.2, 0.6] },
  { ...ordinary, name: 'wellLogged', forgets: [0, 0.01], mornings: [0.85, 1] },
  { ...ordinary, name: 'irregular', skips: [0.15, 0.3], moves: [0.3, 0.5] },
  { ...ordinary, name: 'slowPace', pace: [1.2, 2] },
  { ...ordinary, name: 'sore', soreness: 0.16 },
];
