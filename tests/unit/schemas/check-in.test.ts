import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CheckInInput, checkInSchema } from '#lib/schemas/check-in.ts';

const RUNG = '11111111-1111-4111-8111-111111111111';

function aSet(changes: object = {}) {
  return {
    rungId: RUNG,
    side: 'both',
    index: 1,
    planned: 20,
    value: 18,
    how: 'typed',
    clean: true,
    faults: [],
    ...changes,
  };
}
function aScore(changes: object = {}) {
  return {
    region: 'elbow-inner',
    side: 'right',
    moment: 'during',
    value: 4,
    kind: 'joint',
    usual: false,
    ...changes,
  };
}
function aBody(changes: object = {}): object {
  return {
    id: '5f0c1c9e-6f0a-4c1e-9d5e-1b2a3c4d5e6f',
    date: '2026-11-24',
    zone: 'Europe/Berlin',
    kind: 'training',
    session: 'A',
    effort: 7,
    minutes: 60,
    sets: [aSet()],
    ...changes,
  };
}
/** Field path and message of the first refusal; undefined when the body is taken. */
function refusal(body: unknown): string | undefined {
  const parsed = checkInSchema.safeParse(body);
  const [issue] = parsed.error?.issues ?? [];
  return issue && `${issue.path.join('.')}: ${issue.message}`;
}
function parsed(changes: object) {
  return checkInSchema.parse(aBody(changes) as CheckInInput);
}

describe('what is taken', () => {
  test('an ordinary training and a day without', () => {
    expect(refusal(aBody())).toBeUndefined();
    expect(
      refusal(
        aBody({ kind: 'rest', session: null, effort: null, minutes: null, sets: [], nothingHurts: true }),
      ),
    ).toBeUndefined();
  });
  test('29 February of a leap year', () => {
    expect(refusal(aBody({ date: '2028-02-29' }))).toBeUndefined();
  });
  test.each([
    ['7,5', 7.5],
    ['7.5', 7.5],
    ['7.5 kg', 7.5],
  ])('added "%s" is 7.5 kg', (addedKg, value) => {
    expect(parsed({ sets: [aSet({ addedKg })] }).sets[0]?.addedKg).toBe(value);
  });
  test('a value of "1:30" is 90 s, "12 s" is 12', () => {
    expect(parsed({ sets: [aSet({ value: '1:30' })] }).sets[0]?.value).toBe(90);
    expect(parsed({ sets: [aSet({ value: '12 s' })] }).sets[0]?.value).toBe(12);
  });
  test('a pain score of "5 " is 5', () => {
    expect(parsed({ pain: [aScore({ value: '5 ' })] }).pain[0]?.value).toBe(5);
  });
  test('minus zero is zero', () => {
    expect(Object.is(parsed({ sets: [aSet({ value: -0 })] }).sets[0]?.value, 0)).toBe(true);
  });
  test('nothing hurts beside a score of 0', () => {
    expect(refusal(aBody({ nothingHurts: true, pain: [aScore({ value: 0 })] }))).toBeUndefined();
  });
  test('pain left out is not a zero', () => {
    expect(parsed({})).toMatchObject({ pain: [], nothingHurts: false });
  });
  test('text is kept as written, in NFC', () => {
    const words = `Cafe\u0301 👩‍👩‍👧 \u202Eabc <script>alert(1)</script> {{7*7}} ' or 1=1`;
    expect(parsed({ words }).words).toBe(words.normalize('NFC'));
  });
  test('4,000 letters of several units each', () => {
    expect(refusal(aBody({ words: '👩‍👩‍👧'.repeat(4_000) }))).toBeUndefined();
  });
  test('an unusual weight that is confirmed', () => {
    expect(refusal(aBody({ sets: [aSet({ addedKg: 320 })], confirmed: ['heavy'] }))).toBeUndefined();
  });
});

describe('what is refused, naming the field and the fix', () => {
  test.each<[string, object, RegExp]>([
    ['29 February of another year', { date: '2027-02-29' }, /^date: .*exists/],
    ['30 February', { date: '2027-02-30' }, /^date: /],
    ['31 April', { date: '2026-04-31' }, /^date: /],
    ['year 1', { date: '0001-01-01' }, /^date: /],
    ['year 1899', { date: '1899-12-31' }, /^date: .*2000/],
    ['day first', { date: '03/04/2026' }, /^date: .*2026-11-24/],
    ['no zone of this world', { zone: 'Mars/Base' }, /^zone: .*Europe\/Lisbon/],
    ['an id not made by a phone', { id: '17' }, /^id: /],
    ['1e9 typed', { sets: [aSet({ value: '1e9' })] }, /^sets\.0\.value: /],
    ['0x1F typed', { sets: [aSet({ value: '0x1F' })] }, /^sets\.0\.value: /],
    ['full-width digits', { sets: [aSet({ value: '１２' })] }, /^sets\.0\.value: /],
    ['1.000,5', { sets: [aSet({ value: '1.000,5' })] }, /^sets\.0\.value: /],
    ['nothing typed', { sets: [aSet({ value: '' })] }, /^sets\.0\.value: /],
    ['a million kg', { sets: [aSet({ addedKg: 1_000_000 })] }, /^sets\.0\.addedKg: .*500/],
    ['501 kg', { sets: [aSet({ addedKg: 501 })] }, /^sets\.0\.addedKg: .*500/],
    ['320 kg, not confirmed', { sets: [aSet({ addedKg: 320 })] }, /^sets\.0\.addedKg: .*confirm/],
    ['NaN', { effort: Number.NaN }, /^effort: /],
    ['Infinity', { minutes: Number.POSITIVE_INFINITY }, /^minutes: /],
    ['pain 11', { pain: [aScore({ value: 11 })] }, /^pain\.0\.value: .*0 to 10/],
    ['pain -1', { pain: [aScore({ value: -1 })] }, /^pain\.0\.value: /],
    ['pain 4.5', { pain: [aScore({ value: 4.5 })] }, /^pain\.0\.value: .*whole/],
    ['effort 13 of the 6-20 scale', { effort: 13 }, /^effort: .*0 rest to 10 maximal/],
    ['minutes beyond ten hours', { minutes: 601 }, /^minutes: /],
    ['an unknown ground', { ground: 'lava' }, /^ground: .*hard-floor/],
    ['a null byte', { words: 'a\u0000b' }, /^words: .*null/],
    ['half a character', { words: 'a\ud800' }, /^words: .*surrogate/],
    ['a letter too many', { words: 'é'.repeat(4_001) }, /^words: .*4000/],
    ['a list for a text', { words: ['a'] }, /^words: must be text/],
    ['a text for a list', { sets: 'all' }, /^sets: /],
    ['a set without its value', { sets: [aSet({ value: null })] }, /^sets\.0\.value: .*not-done/],
    ['a value in a set not done', { sets: [aSet({ how: 'not-done' })] }, /^sets\.0\.value: .*null/],
    ['as planned with another value', { sets: [aSet({ how: 'as-planned' })] }, /^sets\.0\.how: .*typed/],
    ['the same set twice', { sets: [aSet(), aSet()] }, /^sets\.1\.index: .*twice/],
    ['more made than tried', { sets: [aSet({ value: 8, tried: 5 })] }, /^sets\.0\.tried: /],
    ['the same score twice', { pain: [aScore(), aScore()] }, /^pain\.1: .*twice/],
    ['nothing hurts, and pain', { nothingHurts: true, pain: [aScore()] }, /^nothingHurts: /],
    [
      'nothing hurts, and a danger sign',
      { nothingHurts: true, dangerSigns: [{ sign: 'swelling' }] },
      /^nothingHurts: /,
    ],
    ['sets on a day without training', { kind: 'rest', effort: null, minutes: null }, /^sets: /],
    ['a correction of itself', { correctsId: '5f0c1c9e-6f0a-4c1e-9d5e-1b2a3c4d5e6f' }, /^correctsId: /],
  ])('%s', (_, changes, message) => {
    expect(refusal(aBody(changes))).toMatch(message);
  });

  test.each(['coachId', 'teamId', 'clientId', 'constructor'])('an extra field %s', (name) => {
    expect(checkInSchema.safeParse({ ...aBody(), [name]: 'x' }).success).toBe(false);
  });

  test('__proto__ pollutes nothing', () => {
    const body: unknown = JSON.parse(JSON.stringify(aBody()).replace('{', '{"__proto__":{"polluted":true},'));
    checkInSchema.safeParse(body);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  test('ten megabytes of text are refused quickly', () => {
    const started = performance.now();
    expect(refusal(aBody({ words: 'x'.repeat(10_000_000) }))).toMatch(/^words: /);
    expect(performance.now() - started).toBeLessThan(1_000);
  });
});

test('whatever arrives, the schema answers and never throws', () => {
  const anything = fc.anything({ withBigInt: false, withNullPrototype: true });
  const spoilt = fc.record(
    {
      date: anything,
      zone: anything,
      effort: anything,
      words: anything,
      sets: anything,
      pain: anything,
      dangerSigns: anything,
    },
    { requiredKeys: [] },
  );
  fc.assert(
    fc.property(spoilt, (changes) => {
      expect(typeof checkInSchema.safeParse(aBody(changes)).success).toBe('boolean');
    }),
    { numRuns: 500 },
  );
});
