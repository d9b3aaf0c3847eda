import { createHash } from 'node:crypto';
import type pg from 'pg';

const names = new Map<string, string>();

/** The same transaction, its statements under a name of their own. Each stays with the connection until it ends. */
export function withNamedStatements<Tx extends { client: pg.PoolClient }>(tx: Tx): Tx {
  const { client } = tx;
  const query = (text: string, values?: unknown[]) =>
    values ? client.query({ name: nameOf(text), text, values }) : client.query(text);
  return { ...tx, client: new Proxy(client, { get: (target, key) => propertyOf(target, key, query) }) };
}

function propertyOf(client: object, key: string | symbol, query: unknown): unknown {
  if (key === 'query') return query;
  const value: unknown = Reflect.get(client, key);
  return typeof value === 'function' ? value.bind(client) : value;
}

function nameOf(text: string): string {
  const known = names.get(text);
  if (known) return known;
  const name = createHash('sha256').update(text).digest('hex').slice(0, 32);
  names.set(text, name);
  return name;
}
