import { existsSync, readFileSync } from 'node:fs';
import { appendFile } from 'node:fs/promises';
import { join } from 'node:path';
import type pg from 'pg';
import { type EraseLine, parseEraseList } from '#lib/schemas/erase-list.ts';

const NAME = 'erase-list.jsonl';

/**
 * Deletes again, in a database that was just restored, whoever had been deleted: by its own list, by the list among the
 * restored files, and by a newer list where one is named (its lines are added to the file). Answers how many had come
 * back. Their pictures are named in the list and removed by the worker.
 */
export async function forgetAgain(
  client: pg.Client,
  files: string,
  newer: string | undefined,
): Promise<number> {
  const kept = join(files, NAME);
  const here = existsSync(kept) ? parseEraseList(readFileSync(kept, 'utf8')) : [];
  const known = new Set(here.map(keyOf));
  const added = newer
    ? parseEraseList(readFileSync(newer, 'utf8')).filter((line) => !known.has(keyOf(line)))
    : [];
  if (added.length > 0)
    await appendFile(kept, added.map((line) => `${JSON.stringify(line)}\n`).join(''), { mode: 0o600 });
  let again = 0;
  for (const line of [...(await ownList(client)), ...here, ...added])
    if (await forget(client, line)) again += 1;
  return again;
}

function keyOf(line: EraseLine): string {
  return `${line.teamId} ${line.clientId}`;
}

async function ownList(client: pg.Client): Promise<EraseLine[]> {
  const { rows } = await client.query<
    Omit<EraseLine, 'askedAt' | 'erasedAt'> & { askedAt: Date; erasedAt: Date }
  >(
    `select team_id as "teamId", client_id as "clientId", receipt, origin, asked_at as "askedAt", erased_at as "erasedAt"
     from erase_list()`,
  );
  return rows.map((row) => ({
    ...row,
    askedAt: row.askedAt.toISOString(),
    erasedAt: row.erasedAt.toISOString(),
  }));
}

async function forget(client: pg.Client, line: EraseLine): Promise<boolean> {
  await client.query('begin');
  try {
    await client.query("select set_config('app.team_id', $1, true)", [line.teamId]);
    const { rows } = await client.query<{ done: boolean }>(
      'select erase_client($1, $2, $3, $4, $5) as done',
      [line.clientId, line.receipt, line.origin, line.askedAt, line.erasedAt],
    );
    await client.query('commit');
    return rows[0]?.done === true;
  } catch (error) {
    await client.query('rollback');
    throw error;
  }
}
