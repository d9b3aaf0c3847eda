import type { CheckKind } from '#lib/domain/vocabulary.ts';
import type { LimitId, Limits } from '../thresholds.ts';
import { dangerSignSince } from './danger-sign.ts';
import { faultSince } from './fault.ts';
import { hardSince } from './hard.ts';
import { loadSince } from './load.ts';
import { painSince } from './pain.ts';
import { passShareSince } from './pass-share.ts';
import { practiceSince } from './practice.ts';
import { quietSince } from './quiet.ts';
import { restSince } from './rest.ts';
import { sideGapSince } from './side-gap.ts';
import type { Measure } from './types.ts';
import { windowGapSince } from './window-gap.ts';

/** What a step is likely to act on: the body as a whole, one ladder, or how often the client is heard of. */
export type FollowedFamily = 'body' | 'ladder' | 'contact';
type Following = { measure: Measure; windows: readonly LimitId[]; family: FollowedFamily };

const PAIN_WINDOWS = ['betterSince.painFirst', 'betterSince.painSecond', 'betterSince.painThird'] as const;
const PROGRESS_WINDOWS = ['betterSince.progressFirst', 'betterSince.progressSecond'] as const;
const SIDES_WINDOWS = ['betterSince.sidesFirst', 'betterSince.sidesSecond'] as const;

const pain: Following = { measure: painSince, windows: PAIN_WINDOWS, family: 'body' };
const load: Following = { measure: loadSince, windows: ['betterSince.loadDays'], family: 'body' };
const quiet: Following = { measure: quietSince, windows: ['betterSince.quietDays'], family: 'contact' };
const progress: Following = { measure: passShareSince, windows: PROGRESS_WINDOWS, family: 'ladder' };

/**
 * How each kind of reason is followed. Not here: what is owed (a question, a film, a plan that ends), which is done or
 * not; good news and a plan that is too small, which nothing has to become better of; too many goals, which is a plan
 * and not a state; a return after a break, whose first week comes once.
 */
const FOLLOWING: Partial<Record<CheckKind, Following>> = {
  'danger-sign': { measure: dangerSignSince, windows: PAIN_WINDOWS, family: 'body' },
  'pain-high': pain,
  'pain-rising': pain,
  'pain-lingering': pain,
  'pain-after-ground': pain,
  'load-jump': load,
  'new-hardest': load,
  'stacked-stress': load,
  'no-let-up': { measure: restSince, windows: ['betterSince.loadDays'], family: 'body' },
  'too-hard': { measure: hardSince, windows: ['betterSince.tooHardDays'], family: 'ladder' },
  stalled: progress,
  slipping: progress,
  'too-little-time': { measure: practiceSince, windows: PROGRESS_WINDOWS, family: 'ladder' },
  'window-gap': { measure: windowGapSince, windows: SIDES_WINDOWS, family: 'ladder' },
  'side-gap': { measure: sideGapSince, windows: SIDES_WINDOWS, family: 'ladder' },
  'one-side-fault': { measure: faultSince, windows: SIDES_WINDOWS, family: 'ladder' },
  'gone-quiet': quiet,
  fading: quiet,
};

/** Days after which a reason of this kind is looked at, the shortest first; none: the kind is not followed. */
export function windowsOf(kind: CheckKind, limits: Limits): number[] {
  const days = (FOLLOWING[kind]?.windows ?? []).map((id) => limits[id]);
  return [...new Set(days)].sort((a, b) => a - b);
}

/** What is compared for this kind; undefined: the kind is not followed. */
export function measureOf(kind: CheckKind): Measure | undefined {
  return FOLLOWING[kind]?.measure;
}

/** Steps for reasons of one family are not "nothing done" about each other; undefined: the kind is not followed. */
export function familyOf(kind: CheckKind): FollowedFamily | undefined {
  return FOLLOWING[kind]?.family;
}
