import { pool } from '#lib/db/client.ts';

/**
 * What the server itself answers: the transaction is spoilt, or the connection is gone, as it would be. The last number:
 * at every call, or at every second or third where a failure that takes more is tried at each. PLUMBLINE_EVERY_CALL=1
 * tries all of them at each.
 */
const EACH = process.env.PLUMBLINE_EVERY_CALL === '1';
export const FAILURES = [
  [
    'serialization failure',
    `do $$ begin raise exception 'planted' using errcode = '40001'; end $$`,
    EACH ? 1 : 2,
  ],
  [
    'statement timeout',
    `do $$ begin raise exception 'planted' using errcode = '57014'; end $$`,
    EACH ? 1 : 3,
  ],
  ['connection lost', 'select pg_terminate_backend(pg_backend_pid())', 1],
] as const;

/**
 * Runs `work` while the call to the database number `nth` (from 0) is answered by that failure; the calls before and
 * after are real. `failed`: whether there were so many calls at all.
 */
export async function withFailingCall<T>(
  nth: number,
  failure: string,
  work: () => Promise<T>,
): Promise<{ failed: boolean; result: PromiseSettledResult<T> }> {
  const shared = pool();
  const { connect } = shared;
  const connectReal = connect.bind(shared);
  let calls = 0;
  Object.assign(shared, {
    connect: async () => {
      const client = await connectReal();
      return new Proxy(client, {
        get: (target, name) => {
          const value = Reflect.get(target, name);
          if (name !== 'query') return typeof value === 'function' ? value.bind(target) : value;
          return (...asked: Parameters<typeof target.query>) => {
            calls += 1;
            return calls === nth + 1 ? target.query(failure) : target.query(...asked);
          };
        },
      });
    },
  });
  try {
    const [result] = await Promise.allSettled([work()]);
    return { failed: calls > nth, result };
  } finally {
    Object.assign(shared, { connect });
  }
}

/** Rejections that nobody handles while `work` runs: one would end the process. */
export async function unhandledDuring(work: () => Promise<void>): Promise<unknown[]> {
  const seen: unknown[] = [];
  const hear = (reason: unknown) => void seen.push(reason);
  process.on('unhandledRejection', hear);
  try {
    await work();
    await new Promise((done) => setTimeout(done, 20)); // they are told a turn later
  } finally {
    process.off('unhandledRejection', hear);
  }
  return seen;
}
