import type { TeamPg } from './client.ts';

export type CoverRow = {
  id: string;
  memberId: string;
  name: string;
  coveredById: string;
  coveredBy: string;
  from: string;
  to: string;
  /** Clients of the one who is away. */
  clients: number;
};

const COVER = `select v.id, v.member_id as "memberId", m.name, v.covered_by_id as "coveredById", b.name as "coveredBy",
    v.from_date as "from", v.to_date as "to",
    (select count(*)::int from client c where c.team_id = v.team_id and c.coach_id = v.member_id and c.standing <> 'left') as clients
  from cover v
  join member m on m.team_id = v.team_id and m.id = v.member_id
  join member b on b.team_id = v.team_id and b.id = v.covered_by_id
  where v.team_id = $1`;

/** Covers that have not ended before a day, the first to begin first. */
export async function listCovers(tx: TeamPg, notBefore: string): Promise<CoverRow[]> {
  const { rows } = await tx.client.query<CoverRow>(
    `${COVER} and v.to_date >= $2::date order by v.from_date, m.name, v.id`,
    [tx.teamId, notBefore],
  );
  return rows;
}

export async function findCover(tx: TeamPg, coverId: string): Promise<CoverRow | undefined> {
  const { rows } = await tx.client.query<CoverRow>(`${COVER} and v.id = $2`, [tx.teamId, coverId]);
  return rows[0];
}

export async function insertCover(
  tx: TeamPg,
  cover: { memberId: string; coveredById: string; from: string; to: string },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into cover (team_id, member_id, covered_by_id, from_date, to_date) values ($1, $2, $3, $4, $5) returning id`,
    [tx.teamId, cover.memberId, cover.coveredById, cover.from, cover.to],
  );
  return rows[0]?.id ?? '';
}

/** One change of covers of the team at a time. */
export async function lockCovers(tx: TeamPg): Promise<void> {
  await tx.client.query('select pg_advisory_xact_lock(hashtextextended($1, 13))', [tx.teamId]);
}

/** A cover that has begun ends with a day; one that has not is taken away. */
export async function endCover(tx: TeamPg, coverId: string, lastDay: string): Promise<void> {
  await tx.client.query(
    'update cover set to_date = $3 where team_id = $1 and id = $2 and from_date <= $3::date and to_date > $3::date',
    [tx.teamId, coverId, lastDay],
  );
  await tx.client.query('delete from cover where team_id = $1 and id = $2 and from_date > $3::date', [
    tx.teamId,
    coverId,
    lastDay,
  ]);
}

/** Who leaves neither covers nor is covered from that day on. */
export async function endCoversOf(tx: TeamPg, member: { id: string; today: string }): Promise<void> {
  const { rows } = await tx.client.query<{ id: string; yesterday: string }>(
    `select id, $3::date - 1 as yesterday from cover where team_id = $1 and (member_id = $2 or covered_by_id = $2)
       and to_date >= $3::date`,
    [tx.teamId, member.id, member.today],
  );
  for (const { id, yesterday } of rows) await endCover(tx, id, yesterday);
}

/** Members whose clients a coach has for another today, and who has this coach's. */
export async function listCoversOn(tx: TeamPg, memberId: string, day: string): Promise<CoverRow[]> {
  const { rows } = await tx.client.query<CoverRow>(
    `${COVER} and (v.member_id = $2 or v.covered_by_id = $2) and $3::date between v.from_date and v.to_date
     order by m.name, v.id`,
    [tx.teamId, memberId, day],
  );
  return rows;
}
