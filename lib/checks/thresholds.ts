import { BETTER_SINCE } from './thresholds/better-since.ts';
import { CONTACT } from './thresholds/contact.ts';
import { DAYS } from './thresholds/days.ts';
import { LOAD } from './thresholds/load.ts';
import { PAIN } from './thresholds/pain.ts';
import { PROGRESS } from './thresholds/progress.ts';
import { REASONS } from './thresholds/reasons.ts';
import { SIDES_APART } from './thresholds/sides.ts';
import type { Threshold } from './thresholds/threshold.ts';

/** Raised with every change of a rule or a default, so that stored results name what made them. */
export const RULES_VERSION = '2026.5';

const ALL = {
  ...DAYS,
  ...LOAD,
  ...PROGRESS,
  ...PAIN,
  ...SIDES_APART,
  ...CONTACT,
  ...REASONS,
  ...BETTER_SINCE,
};

export type LimitId = keyof typeof ALL;

/** Every number that decides, by id: default value, unit, meaning and source. Grouped in `thresholds/`. */
export const THRESHOLDS: Readonly<Record<LimitId, Threshold>> = ALL;

/** The numbers in force for one client: defaults with the team's and the client's own over them. */
export type Limits = Readonly<Record<LimitId, number>>;

export function isLimitId(text: string): text is LimitId {
  return Object.hasOwn(ALL, text);
}

/** Defaults with `over` laid over them. */
export function limitsWith(over: Partial<Limits>): Limits {
  const limits = { ...over } as Record<LimitId, number>;
  for (const id of Object.keys(ALL).filter(isLimitId)) limits[id] ??= ALL[id].value;
  // A copy is laid out for fast reading; an object filled key by key is not, and rules read it thousands of times.
  return { ...limits };
}

export const DEFAULT_LIMITS: Limits = limitsWith({});

/** The entries of a working: the numbers used, as they were in force. */
export function usedThresholds(ids: readonly LimitId[], limits: Limits) {
  return ids.map((id) => {
    const { unit, meaning, source } = ALL[id];
    return { id, value: limits[id], unit, meaning, source };
  });
}
