import type { StartNews, ToldHold, ToldWord } from '#lib/domain/intake/told-at-start.ts';
import type { LimitRule } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

/** What a yes at the start holds, until a clinician's word; the same yes twice holds once, but one to come holds nothing yet. */
export async function insertToldHold(
  tx: TeamPg,
  hold: {
    clientId: string;
    told: string;
    rule: LimitRule;
    from: string;
    who: string;
    words: string;
    at: Date;
  },
): Promise<void> {
  await tx.client.query(
    `insert into limit_rule (team_id, client_id, rule, from_date, who, words, told, created_at)
     select $1, $2, $3, $4::date, $5, $6, $7, $8
     where not exists (select from limit_rule l where l.team_id = $1 and l.client_id = $2 and l.told = $7
       and l.ended_at is null and l.from_date <= $4::date and (l.until_date is null or l.until_date >= $4::date))`,
    [tx.teamId, hold.clientId, hold.rule, hold.from, hold.who, hold.words, hold.told, hold.at],
  );
}

/** Ends what one yes holds; `lastDay` is the last day it held. */
export async function endToldHolds(
  tx: TeamPg,
  ending: { clientId: string; told: string; lastDay: string; at: Date },
): Promise<void> {
  await tx.client.query(
    `update limit_rule set ended_at = $5, until_date = least(until_date, $4::date)
     where team_id = $1 and client_id = $2 and told = $3 and ended_at is null`,
    [tx.teamId, ending.clientId, ending.told, ending.lastDay, ending.at],
  );
}

/** Holds that stand on a date or begin after it, the oldest first. */
export async function listToldHolds(tx: TeamPg, clientId: string, date: string): Promise<ToldHold[]> {
  const { rows } = await tx.client.query<ToldHold>(
    `select told, from_date as "from" from limit_rule
     where team_id = $1 and client_id = $2 and told is not null and ended_at is null
       and (until_date is null or until_date >= $3::date)
     order by from_date, told`,
    [tx.teamId, clientId, date],
  );
  return rows;
}

/** Clinicians' words about what was told at the start, the newest first. */
export async function listToldWords(tx: TeamPg, clientId: string): Promise<ToldWord[]> {
  const { rows } = await tx.client.query<ToldWord>(
    `select w.told, w.date, w.clinician, w.words, w.lifts, w.review_on as "reviewOn", m.name as by
     from clinician_word w left join member m on m.team_id = w.team_id and m.id = w.by_id
     where w.team_id = $1 and w.client_id = $2 and w.told is not null
     order by w.date desc, w.created_at desc, w.id`,
    [tx.teamId, clientId],
  );
  return rows;
}

/**
 * A coach's own clients of whom something of the start waits: a hold in force for a clinician's word, parents or
 * guardians who do not agree (as `guardiansAgree` says it), answers that came in the last days and that nobody has
 * looked at since.
 */
export async function listStartNews(
  tx: TeamPg,
  { coachId, date, since }: { coachId: string; date: string; since: Date },
): Promise<StartNews[]> {
  // Few of a thousand clients have news: those are gathered first, and nothing is asked of each client.
  const { rows } = await tx.client.query<StartNews>(
    `with held as materialized (
       select client_id, array_agg(distinct told order by told) as told from limit_rule
       where team_id = $1 and told is not null and ended_at is null
         and from_date <= $3::date and (until_date is null or until_date >= $3::date) group by client_id
     ), agreed as materialized (
       select client_id from guardian where team_id = $1 group by client_id
       having bool_or(agreed_at is not null and withdrawn_at is null)
         and not bool_or(declined_at is not null or withdrawn_at is not null)
     ), sent as materialized (
       select i.client_id, i.completed_at as at from intake i where i.team_id = $1 and i.completed_at >= $4
         and not exists (select from audit a where a.team_id = i.team_id and a.client_id = i.client_id
           and a.action = 'record-read' and a.at >= i.completed_at)
     )
     select c.id as "clientId", c.name, coalesce(held.told, '{}') as told,
       c.under18 and agreed.client_id is null as guardian, sent.at as "sentAt"
     from client c
     left join held on held.client_id = c.id
     left join agreed on agreed.client_id = c.id
     left join sent on sent.client_id = c.id
     where c.team_id = $1 and c.coach_id = $2 and c.standing not in ('left', 'invited')
       and (held.told is not null or c.under18 and agreed.client_id is null or sent.at is not null)
     order by lower(c.name), c.id`,
    [tx.teamId, coachId, date, since],
  );
  return rows;
}
