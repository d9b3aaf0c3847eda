import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { RESTING_STANDINGS } from '#lib/domain/standing-steps.ts';
import { CHECK_KINDS, type CheckKind, STANDINGS, type Standing } from '#lib/domain/vocabulary.ts';
import { judgeClient } from '#lib/usecases/judge-client.ts';
import { anyLife, type Case, told } from './properties/any-history.ts';

const ALL: readonly CheckKind[] = CHECK_KINDS;
/** What waits for something: of somebody who has days off nothing is waited for. */
const WAITS: readonly CheckKind[] = [
  'too-many-goals',
  'gone-quiet',
  'fading',
  'film-waiting',
  'plan-ending',
  'not-seen',
  'asked-no-answer',
  'limit-ending',
];
/** Fire while resting only for a reason of their own: a danger sign in a question, a return that was real. */
const FOR_A_REASON: readonly CheckKind[] = ['question-waiting', 'return-too-fast'];

/** Which kinds may come up in which standing. Of a paused client only what a check-in itself says, and only then. */
const MAY_FIRE: Readonly<Record<Standing, readonly CheckKind[]>> = {
  invited: ALL,
  starting: ALL,
  'in-training': ALL,
  ending: ALL,
  back: ALL,
  paused: ALL.filter((kind) => !WAITS.includes(kind)),
  left: [],
};
const SAMPLES = 400;

/** Kinds that a new judgement of this history raises or notes, with the client standing so. */
function fired({ history, asOf }: Case, standing: Standing): CheckKind[] {
  const there = { ...history, client: { ...history.client, standing } };
  const { changes } = judgeClient(there, [], asOf, {
    limits: DEFAULT_LIMITS,
    version: 0,
    nightsDone: 100,
  });
  return changes.flatMap((change) => (change.change === 'raise' ? [change.outcome.kind] : []));
}

const cases = fc.sample(anyLife, { numRuns: SAMPLES, seed: 20_261_126 }).map(told);
const found = new Map(
  STANDINGS.map((standing) => [standing, new Set(cases.flatMap((one) => fired(one, standing)))]),
);

describe('what may come up in each standing', () => {
  it('is asked of histories in which every check speaks', () => {
    expect([...(found.get('in-training') ?? [])].sort()).toEqual([...ALL].sort());
  });

  it.each(STANDINGS.flatMap((standing) => ALL.map((kind) => [standing, kind] as const)))(
    '%s: %s',
    (standing, kind) => {
      const fires = found.get(standing)?.has(kind) ?? false;
      const may = MAY_FIRE[standing].includes(kind);
      if (!may) expect(fires).toBe(false);
      // An invited client of these histories has come in long ago by what they sent: only the first word differs.
      else if (!FOR_A_REASON.includes(kind) || !RESTING_STANDINGS.includes(standing))
        expect(fires).toBe(true);
    },
  );
});
