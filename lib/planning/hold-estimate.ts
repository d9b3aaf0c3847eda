import type { HistoryRung } from '#lib/domain/history.ts';

/** Fatigue and recovery rates of the three-compartment model, per second (Frey-Law, Looft and Heitsman 2012). */
const SHOULDER = { fatigue: 0.0182, recovery: 0.00168 };
const GENERAL = { fatigue: 0.0097, recovery: 0.00091 };
/** Exponent of the shoulder's endurance curve t = 14.86 f^-1.83 (Frey-Law and Avin 2010). */
const SHOULDER_EXPONENT = -1.83;

export type HoldEstimate = {
  /** Range of seconds, whole; 0: by this model not yet to be held at all. */
  low: number;
  high: number;
  /** Strength missing, as a part of what is there, where a model says that the hold is not feasible; else null. */
  gap: number | null;
  basis: 'models' | 'own results';
  doubt: string;
};
/** A hold done: its best clean seconds, and its load against any fixed unit, such as body weight x height. */
export type HeldAt = { seconds: number; load: number };

const MODELS_DOUBT =
  'Common practice has no rule for this, and no curve was ever tried on these holds: three published ones are laid beside each other. Near the maximum people differ most. An estimate, to be replaced by the first try.';
const OWN_DOUBT =
  'From two rungs of this client only, given 30 % to either side (the spread between people of Ma et al. 2011). An estimate, to be replaced by the first try.';
const OWN_SPREAD = 0.3;

/** A free balance ends by losing it, not by tiring: no curve of fatigue says how long it will be. */
export function isBalanceLimited({ family }: Pick<HistoryRung, 'family'>): boolean {
  return family === 'balance';
}

/**
 * How long a harder hold may be, from one on an easier rung: the range over three published models. One that asks more
 * than all strength there is gives 0 s and says how much is missing. Undefined for balance-limited holds, for a target
 * that is not harder, and for amounts that are not positive.
 */
export function estimateHold(
  rung: Pick<HistoryRung, 'family'>,
  from: HeldAt,
  toLoad: number,
): HoldEstimate | undefined {
  if (isBalanceLimited(rung) || !isHold(from) || !(toLoad > from.load)) return undefined;
  const ratio = toLoad / from.load;
  const models = [GENERAL, SHOULDER].map((rates) => threeCompartments(from.seconds, ratio, rates));
  const seconds = [...models.map((model) => model.seconds), from.seconds * ratio ** SHOULDER_EXPONENT];
  const gaps = models.map((model) => model.gap);
  return {
    low: Math.floor(Math.min(...seconds)),
    high: Math.ceil(Math.max(...seconds)),
    gap: gaps.some((gap) => gap > 0) ? Math.max(...gaps) : null,
    basis: 'models',
    doubt: MODELS_DOUBT,
  };
}

/**
 * The same from two rungs this client has held: the slope between them carried on, t3 = t2 (M3/M2)^b. Undefined where
 * the harder of the two was not held for less, or the loads are the same.
 */
export function estimateFromOwn(
  rung: Pick<HistoryRung, 'family'>,
  [easier, harder]: readonly [HeldAt, HeldAt],
  toLoad: number,
): HoldEstimate | undefined {
  if (isBalanceLimited(rung) || !isHold(easier) || !isHold(harder)) return undefined;
  if (!(harder.load > easier.load) || harder.seconds >= easier.seconds || !(toLoad > harder.load))
    return undefined;
  const slope = personalSlope(easier, harder);
  const seconds = harder.seconds * (toLoad / harder.load) ** slope;
  return {
    low: Math.floor(seconds * (1 - OWN_SPREAD)),
    high: Math.ceil(seconds * (1 + OWN_SPREAD)),
    gap: null,
    basis: 'own results',
    doubt: OWN_DOUBT,
  };
}

/** b = ln(t2/t1) / ln(M2/M1). */
export function personalSlope(easier: HeldAt, harder: HeldAt): number {
  return Math.log(harder.seconds / easier.seconds) / Math.log(harder.load / easier.load);
}

/** Part of maximum behind a hold to the end: the inverse of the model's endurance time. */
export function intensityOf(seconds: number, { fatigue, recovery } = SHOULDER): number {
  return 1 / (1 + (fatigue / recovery) * (1 - Math.exp(-recovery * seconds)));
}

function threeCompartments(
  seconds: number,
  ratio: number,
  rates: typeof SHOULDER,
): { seconds: number; gap: number } {
  const intensity = intensityOf(seconds, rates) * ratio;
  if (intensity >= 1) return { seconds: 0, gap: intensity - 1 };
  const { fatigue, recovery } = rates;
  const left = 1 - (recovery * (1 - intensity)) / (fatigue * intensity);
  return { seconds: -Math.log(left) / recovery, gap: 0 };
}

function isHold({ seconds, load }: HeldAt): boolean {
  return seconds > 0 && load > 0;
}
