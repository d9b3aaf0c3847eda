import fc from 'fast-check';
import { expect, test } from 'vitest';
import { canonicalJson } from '#lib/domain/canonical-json.ts';

test('the order of keys does not count, the order of lists does', () => {
  expect(canonicalJson({ a: 1, b: { d: 2, c: 3 } })).toBe(canonicalJson({ b: { c: 3, d: 2 }, a: 1 }));
  expect(canonicalJson({ a: [1, 2] })).not.toBe(canonicalJson({ a: [2, 1] }));
});

test('a field that a later version adds with an empty default changes nothing', () => {
  const before = canonicalJson({ effort: 7, words: 'x' });
  expect(canonicalJson({ effort: 7, words: 'x', clip: null, tags: [], note: '', flag: false })).toBe(before);
});

test('0 says something', () => {
  expect(canonicalJson({ effort: 0 })).not.toBe(canonicalJson({}));
});

test('equal texts only for bodies that are read alike', () => {
  fc.assert(
    fc.property(fc.jsonValue({ noNullPrototype: true } as object), (value) => {
      expect(canonicalJson(JSON.parse(JSON.stringify(value)))).toBe(canonicalJson(value));
    }),
    { numRuns: 300 },
  );
});
