import type { HistoryLimit } from '#lib/domain/history.ts';
import type { LimitInput } from '#lib/schemas/limit.ts';
import type { TeamPg } from './client.ts';
import { idOf } from './id-of.ts';

export type LimitRow = HistoryLimit & {
  id: string;
  words: string;
  endedAt: Date | null;
  /** Held by a yes at the start: only a clinician's word ends it. */
  told: string | null;
};

/** All limits a client ever had, the newest first. */
export async function listLimits(tx: TeamPg, clientId: string): Promise<LimitRow[]> {
  const { rows } = await tx.client.query<LimitRow>(
    `select id, tissue, region, side, rule, percent, from_date as "from", until_date as until, who, words,
       ended_at as "endedAt", told
     from limit_rule where team_id = $1 and client_id = $2 order by from_date desc, created_at desc, id`,
    [tx.teamId, clientId],
  );
  return rows;
}

export async function insertLimit(
  tx: TeamPg,
  limit: LimitInput & { clientId: string; now: Date },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into limit_rule (team_id, client_id, tissue, region, side, rule, percent, from_date, until_date, who, words, created_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12) returning id`,
    [
      tx.teamId,
      limit.clientId,
      limit.tissue,
      limit.region,
      limit.side,
      limit.rule,
      limit.percent,
      limit.from,
      limit.until,
      limit.who,
      limit.words,
      limit.now,
    ],
  );
  return idOf(rows);
}

/** Ends a limit that still stands; `lastDay` is the last day it held. False: it is not there, or over already. */
export async function endLimit(
  tx: TeamPg,
  ending: { clientId: string; limitId: string; lastDay: string; now: Date },
): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `update limit_rule set ended_at = $5, until_date = least(until_date, $4::date)
     where team_id = $1 and client_id = $2 and id = $3 and ended_at is null and told is null
       and (until_date is null or until_date > $4::date)`,
    [tx.teamId, ending.clientId, ending.limitId, ending.lastDay, ending.now],
  );
  return rowCount === 1;
}
