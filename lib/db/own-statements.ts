import { createHash } from 'node:crypto';
import type pg from 'pg';

type Query = (text: string, values?: unknown[]) => Promise<unknown>;

/**
 * A connection as one transaction uses it, until `end`: what comes later is refused, because a part of an act may go on
 * after another part failed, and the connection is somebody else's by then. `named`: each text under a name of its own,
 * which stays with the connection until it ends.
 */
export function ownStatements(
  connection: pg.PoolClient,
  { named }: { named: boolean },
): { client: pg.PoolClient; end: () => void } {
  let isOver = false;
  const send: Query = (text, values) =>
    named && values ? connection.query({ name: nameOf(text), text, values }) : connection.query(text, values);
  const query: Query = (text, values) =>
    isOver ? Promise.reject(new Error('the transaction is over')) : send(text, values);
  const client = new Proxy(connection, { get: (target, key) => propertyOf(target, key, query) });
  return {
    client,
    end: () => {
      isOver = true;
    },
  };
}

function propertyOf(connection: object, key: string | symbol, query: Query): unknown {
  if (key === 'query') return query;
  const value: unknown = Reflect.get(connection, key);
  return typeof value === 'function' ? value.bind(connection) : value;
}

const names = new Map<string, string>();

function nameOf(text: string): string {
  const known = names.get(text);
  if (known) return known;
  const name = createHash('sha256').update(text).digest('hex').slice(0, 32);
  names.set(text, name);
  return name;
}
