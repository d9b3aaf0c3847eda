import { describe, expect, test } from 'vitest';
import { type Draft, newDraft, setKey } from '#app/(client)/_phone/draft.ts';
import {
  addExtra,
  drillsToAdd,
  dropExtra,
  extrasTaken,
  setsOfExtras,
  withExtras,
} from '#app/(client)/_phone/extras.ts';
import { toBody } from '#app/(client)/_phone/to-body.ts';
import { checkInSchema } from '#lib/schemas/check-in.ts';
import type { OtherDrill } from '#lib/views/phone-other-drills.ts';
import { aPhoneSession } from '#tests/fixtures/phone-session.ts';

const PLANNED = '11111111-1111-4111-8111-111111111111';
const OTHER = '33333333-3333-4333-8333-333333333333';
const AT = new Date('2026-11-24T18:42:00.000Z');

const session = aPhoneSession({
  sides: [{ side: 'both', rungId: PLANNED, rung: 'p', sets: 1, target: 8, tries: null, dose: '' }],
});
const lever: OtherDrill = {
  rungId: OTHER,
  rung: 'One-arm hang',
  ladder: 'Hangs',
  measure: 'hold',
  eachSide: true,
  faults: [],
  target: 30,
  tries: null,
  lastDone: null,
};
const planned: OtherDrill = { ...lever, rungId: PLANNED, eachSide: false };

function aDraft(): Draft {
  return newDraft({
    kind: 'training',
    date: '2026-11-24',
    zone: 'UTC',
    planVersion: 3,
    session,
    usualMinutes: null,
    now: AT,
    id: '22222222-2222-4222-8222-222222222222',
  });
}
const right = setKey(OTHER, 'right');

describe('a drill that was not planned', () => {
  test('comes in open on both sides, and goes out as a set with no planned value', () => {
    const draft = { ...aDraft(), ...addExtra(aDraft(), lever) };
    const told: Draft = {
      ...draft,
      sets: { ...draft.sets, [right]: [{ how: 'timed', value: 21, tried: null, faults: [] }] },
    };
    const body = toBody(told, withExtras(session, told), AT);
    expect(body.sets).toEqual([
      expect.objectContaining({
        rungId: OTHER,
        side: 'right',
        index: 1,
        planned: null,
        value: 21,
        how: 'timed',
      }),
    ]);
    expect(checkInSchema.safeParse(body).error?.issues).toBeUndefined();
  });

  test('needs no plan at all', () => {
    const draft = { ...aDraft(), session: null, sets: {} };
    const added = { ...draft, ...addExtra(draft, lever) };
    expect(withExtras(null, added)?.drills.map((drill) => drill.title)).toEqual(['One-arm hang']);
    expect(withExtras(null, draft)).toBeNull();
  });

  test('stays out of the session when that has the same drill by now', () => {
    const draft = { ...aDraft(), ...addExtra(aDraft(), planned) };
    expect(withExtras(session, draft)?.drills).toHaveLength(1);
  });

  test('taken out again it leaves nothing behind, and nothing planned goes with it', () => {
    const draft = { ...aDraft(), ...addExtra(aDraft(), lever) };
    const [extra] = draft.extras ?? [];
    expect(setsOfExtras(draft)).toHaveProperty([right]);
    expect(extra && dropExtra(draft, extra)).toEqual({ extras: [], sets: aDraft().sets });
  });

  test('what the session has is not offered again', () => {
    expect(drillsToAdd([planned, lever], session, null)).toEqual([lever]);
    expect(drillsToAdd([planned, lever], null, session)).toEqual([lever]);
  });

  test('is found again in a check-in that could not be sent', () => {
    const draft = {
      ...aDraft(),
      sets: { [right]: [{ how: 'typed', value: 9, tried: null, faults: [] } as const] },
    };
    const sets = { [right]: draft.sets[right]?.map((set) => ({ ...set, faults: [] })) ?? [] };
    expect(extrasTaken(session, { ...draft, sets }, [planned, lever]).map((drill) => drill.title)).toEqual([
      'One-arm hang',
    ]);
    expect(extrasTaken(session, aDraft(), [lever])).toEqual([]);
  });
});
