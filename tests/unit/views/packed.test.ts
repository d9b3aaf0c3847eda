import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays } from '#lib/domain/local-date.ts';
import { pack, unpack } from '#lib/views/packed.ts';
import { sampleCheckIn, sampleHistory } from '#tests/fixtures/sample-history.ts';

test('what is packed comes out again as JSON would carry it', () => {
  const plain = fc.jsonValue().filter((value) => typeof value === 'object' && value !== null);
  fc.assert(
    fc.property(plain, (value) => {
      const sent = JSON.parse(JSON.stringify(pack(value as object)));
      expect(unpack(sent)).toEqual(JSON.parse(JSON.stringify(value)));
    }),
  );
});

test('fields that are undefined are left out, and nothing that comes out is shared', () => {
  const set = { value: 4, added: undefined };
  const { sets } = unpack(pack({ sets: [set, { ...set }] }));
  expect(sets).toStrictEqual([{ value: 4 }, { value: 4 }]);
  expect(sets[0]).not.toBe(sets[1]);
});

test('a text that reads like a number and the number stay apart', () => {
  expect(unpack(pack(['4', 4, true, 'true', null, 'null', [], {}]))).toEqual([
    '4',
    4,
    true,
    'true',
    null,
    'null',
    [],
    {},
  ]);
});

test('a history of sixty sessions comes to less than a fifth', () => {
  const checkIns = Array.from({ length: 60 }, (_, at) =>
    sampleCheckIn({ id: `${at}`, date: addDays('2026-09-01', at) }),
  );
  const history = sampleHistory({ checkIns });
  const size = (value: object) => JSON.stringify(value).length;
  expect(unpack(pack(history))).toEqual(JSON.parse(JSON.stringify(history)));
  expect(size(pack(history))).toBeLessThan(size(history) / 5);
});
