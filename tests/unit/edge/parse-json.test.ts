import { describe, expect, it } from 'vitest';
import { parseJson } from '#lib/edge/parse-json.ts';

const refusal = (text: string) => {
  try {
    parseJson(text);
  } catch (error) {
    return (error as { code: string }).code;
  }
  return 'accepted';
};
const nested = (depth: number) => `${'['.repeat(depth)}${']'.repeat(depth)}`;

describe('parseJson', () => {
  it.each([
    '{"a":[1,2,{"b":"x"}],"c":null}',
    '{"a":{"k":1},"b":{"k":2}}',
    '[{"k":1},{"k":2}]',
    '{"a":"{\\"k\\":1,\\"k\\":2}"}',
    '{"a":"\\u00e9 👩‍👩‍👧 \\ud83d\\ude00"}',
    '"a \\\\"',
    '{}',
    'true',
    nested(32),
  ])('reads %s as JSON.parse does', (text) => {
    expect(parseJson(text)).toEqual(JSON.parse(text));
  });

  it.each([
    ['a key twice', '{"a":1,"a":2}'],
    ['a key twice, once escaped', '{"a":1,"\\u0061":2}'],
    ['a key twice, deep down', '{"x":[{"y":{"a":1,"b":[],"a":2}}]}'],
    ['__proto__', '{"__proto__":{"x":1}}'],
    ['constructor', '{"a":{"constructor":1}}'],
    ['prototype, escaped', '{"\\u0070rototype":1}'],
    ['half a pair', '{"a":"\\ud800"}'],
    ['half a pair in a key', '{"\\udc00":1}'],
    ['a null byte', '{"a":"x\\u0000y"}'],
    ['33 levels', nested(33)],
    ['33 levels of objects', `${'{"a":'.repeat(33)}1${'}'.repeat(33)}`],
    ['no JSON', 'hello'],
    ['nothing', ''],
    ['an open text', '{"a":"b'],
    ['NaN', '{"a":NaN}'],
    ['a trailing comma', '{"a":1,}'],
  ])('refuses %s', (_, text) => {
    expect(refusal(text)).toBe('invalid');
  });

  it('refuses ten thousand levels fast', () => {
    const started = performance.now();
    expect(refusal(nested(10_000))).toBe('invalid');
    expect(performance.now() - started).toBeLessThan(50);
  });
});
