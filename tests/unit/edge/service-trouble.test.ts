import { describe, expect, it } from 'vitest';
import { serviceTrouble } from '#lib/edge/service-trouble.ts';

const coded = (code: string, message = 'x') => Object.assign(new Error(message), { code });

describe('a failure of the service', () => {
  it.each<[string, unknown, RegExp, number]>([
    ['disk full', coded('53100'), /no room left/, 300],
    ['too many connections', coded('53300'), /too many requests/, 30],
    ['our pool is used up', new Error('timeout exceeded when trying to connect'), /too many requests/, 30],
    ['a serialization failure', coded('40001'), /changed the same/, 5],
    ['a deadlock', coded('40P01'), /changed the same/, 5],
    ['no server', coded('ECONNREFUSED'), /not reached/, 15],
    ['no server, several addresses', new AggregateError([coded('ECONNREFUSED')]), /not reached/, 15],
    ['shut down', coded('57P01'), /not reached/, 15],
    ['cut', new Error('Connection terminated unexpectedly'), /not reached/, 15],
    ['under Prisma', new Error('x', { cause: { originalCode: '53100', kind: 'postgres' } }), /no room/, 300],
    [
      'inside its meta',
      Object.assign(new Error(), { meta: { driverAdapterError: { cause: coded('57P03') } } }),
      /not reached/,
      15,
    ],
  ])('%s is said as what it is', (_, error, words, seconds) => {
    expect(serviceTrouble(error)?.message).toMatch(words);
    expect(serviceTrouble(error)?.retryAfterSeconds).toBe(seconds);
  });

  it.each<[string, unknown]>([
    ['a fault of ours', new TypeError('x is not a function')],
    ['a broken rule of the data', coded('23505')],
    ['nothing', undefined],
    ['a text', 'ECONNREFUSED'],
  ])('%s is none', (_, error) => expect(serviceTrouble(error)).toBeNull());
});
