import { pool } from './client.ts';

export type Allowance = { readonly allowed: boolean; readonly retryAfterSeconds: number };

/**
 * Counts one request against a key in one atomic statement, so that parallel requests cannot all slip through.
 * The window starts with the first request and is over `windowSeconds` later; without `at`, by the database's clock.
 */
export async function countRequest(
  key: string,
  rule: { max: number; windowSeconds: number },
  at?: Date,
): Promise<Allowance> {
  const { rows } = await pool().query<{ count: number; left_ms: string }>({
    name: 'count-request',
    text: `insert into rate_limit as r (key, count, last_request)
     values ($1, 1, coalesce($3::bigint, (extract(epoch from clock_timestamp()) * 1000)::bigint))
     on conflict (key) do update set
       count = case when r.last_request + $2 <= excluded.last_request then 1 else r.count + 1 end,
       last_request = case when r.last_request + $2 <= excluded.last_request then excluded.last_request else r.last_request end
     returning count, last_request + $2 - coalesce($3::bigint, (extract(epoch from clock_timestamp()) * 1000)::bigint) as left_ms`,
    values: [key, rule.windowSeconds * 1000, at?.getTime() ?? null],
  });
  const count = rows[0]?.count ?? 1;
  const left = Number(rows[0]?.left_ms ?? 0);
  return { allowed: count <= rule.max, retryAfterSeconds: Math.max(1, Math.ceil(left / 1000)) };
}

/** Forgets keys that nobody used for a day: every window is shorter. */
export async function forgetOldRequests(): Promise<void> {
  await pool().query(
    `delete from rate_limit where last_request < (extract(epoch from now() - interval '1 day') * 1000)::bigint`,
  );
}
