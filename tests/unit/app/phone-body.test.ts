import { describe, expect, test } from 'vitest';
import { type Draft, draftOf, newDraft, setKey } from '#app/(client)/_phone/draft.ts';
import { toBody } from '#app/(client)/_phone/to-body.ts';
import { groupOfRegion } from '#lib/domain/pain-groups.ts';
import { checkInSchema } from '#lib/schemas/check-in.ts';
import { aPhoneSession } from '#tests/fixtures/phone-session.ts';

const RUNG = '11111111-1111-4111-8111-111111111111';
const ID = '22222222-2222-4222-8222-222222222222';
const SENT = new Date('2026-11-24T18:42:00.000Z');

const session = aPhoneSession({
  sides: (['left', 'right'] as const).map((side) => ({
    side,
    rungId: RUNG,
    rung: 'r',
    sets: 2,
    target: 8,
    tries: null,
    dose: '',
  })),
});
function aDraft(changes: Partial<Draft> = {}): Draft {
  const draft = newDraft({
    kind: 'training',
    date: '2026-11-24',
    zone: 'UTC',
    planVersion: 3,
    session,
    usualMinutes: null,
    now: SENT,
    id: ID,
  });
  return { ...draft, ...changes };
}
const open = { how: 'open', value: null, tried: null, faults: [] } as const;

describe('from the draft to what is sent', () => {
  test('nothing is chosen beforehand but the minutes that are planned', () => {
    expect(aDraft()).toMatchObject({
      effort: null,
      minutes: 60,
      nothingHurts: false,
      places: [],
      step: 'sets',
    });
  });

  test('without a plan it begins with what can be added, else with how hard it was', () => {
    const start = { kind: 'training', date: '2026-11-24', zone: 'UTC', planVersion: null } as const;
    const bare = { ...start, session: null, usualMinutes: null, now: SENT, id: ID };
    expect(newDraft({ ...bare, canAdd: true }).step).toBe('sets');
    expect(newDraft(bare).step).toBe('effort');
    expect(newDraft({ ...bare, kind: 'rest', canAdd: true }).step).toBe('pain');
  });

  test('sets nobody said anything about are left out', () => {
    const left = [{ ...open, how: 'as-planned', value: 8 } as const, open];
    const body = toBody(
      aDraft({ sets: { [setKey(RUNG, 'left')]: left as never, [setKey(RUNG, 'right')]: [open as never] } }),
      session,
      SENT,
    );
    expect(body.sets).toMatchObject([
      { rungId: RUNG, side: 'left', index: 1, planned: 8, value: 8, how: 'as-planned', clean: true },
    ]);
  });

  test('a fault makes a set not clean', () => {
    const set = { how: 'typed', value: 6, tried: null, faults: ['came-off'] } as const;
    const body = toBody(aDraft({ sets: { [setKey(RUNG, 'left')]: [set as never] } }), session, SENT);
    expect(body.sets[0]).toMatchObject({ clean: false, planned: 8, value: 6 });
  });

  test('what the phone sends is what the door takes, also after a plan changed under the draft', () => {
    const draft = aDraft({
      effort: 8,
      sets: {
        [setKey(RUNG, 'left')]: [
          { how: 'as-planned', value: 12, tried: null, faults: [] },
          { how: 'not-done', value: null, tried: null, faults: [] },
        ],
      },
      places: [
        {
          group: 'elbow',
          region: 'elbow-inner',
          side: 'right',
          kind: 'joint',
          scores: { during: 6, after: 4 },
          usual: null,
        },
      ],
      signs: [{ sign: 'numb-or-tingling', gone: true, region: 'elbow-inner', side: 'right' }],
      question: ' Which ground? ',
    });
    const parsed = checkInSchema.safeParse(toBody(draft, session, SENT));
    expect(parsed.error?.issues).toBeUndefined();
    expect(parsed.data).toMatchObject({
      question: 'Which ground?',
      dangerSigns: [{ goneWithinMinute: true }],
    });
    expect(parsed.data?.pain).toHaveLength(2);
  });

  test('a kept check-in opened again and sent unchanged says the same, as its correction', () => {
    const draft = aDraft({
      effort: 8,
      nothingHurts: true,
      words: 'wind',
      ground: 'grass',
      sleepHours: 7,
      sets: { [setKey(RUNG, 'left')]: [{ how: 'typed', value: 7, tried: null, faults: ['came-off'] }] },
    });
    const first = toBody(draft, session, SENT);
    const second = toBody(draftOf(first, { id: RUNG, groupOf: groupOfRegion, now: SENT }), session, SENT);
    const { id, correctsId, planVersion, startedAt, ...rest } = second;
    expect({ id, correctsId }).toEqual({ id: RUNG, correctsId: ID });
    expect(first).toMatchObject(rest);
  });

  test('a day without training carries no sets, effort or minutes', () => {
    const draft = newDraft({
      kind: 'rest',
      date: '2026-11-24',
      zone: 'UTC',
      planVersion: 3,
      session,
      usualMinutes: 45,
      now: SENT,
      id: ID,
    });
    const body = toBody({ ...draft, nothingHurts: true }, null, SENT);
    expect(checkInSchema.safeParse(body).success).toBe(true);
    expect(body).toMatchObject({ kind: 'rest', sets: [], effort: null, minutes: null });
  });
});
