import { pool, type TeamPg, type TeamScope, teamScope } from './client.ts';
import { idOf } from './id-of.ts';

/** Why a link opens nothing any more. */
export type LinkEnd = 'ended' | 'consent' | 'deletion' | 'codes' | 'over';

export type LinkToInsert = {
  packId: string;
  tokenHash: string;
  codeHash: string;
  forWhom: string;
  withPack: boolean;
  at: Date;
  expiresAt: Date;
};

export async function insertHandoverLink(tx: TeamPg, link: LinkToInsert): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into handover_link (team_id, pack_id, token_hash, code_hash, for_whom, with_pack, created_at, expires_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8) returning id`,
    [
      tx.teamId,
      link.packId,
      link.tokenHash,
      link.codeHash,
      link.forWhom,
      link.withPack,
      link.at,
      link.expiresAt,
    ],
  );
  return idOf(rows);
}

export type TriedLink = {
  scope: TeamScope;
  linkId: string;
  clientId: string;
  fits: boolean;
  triesLeft: number;
};

/** Tries a code at a link, across teams. Undefined: the link opens nothing. */
export async function tryHandoverLink(
  tokenHash: string,
  codeHash: string,
  at: Date,
): Promise<TriedLink | undefined> {
  const { rows } = await pool().query<Omit<TriedLink, 'scope'> & { teamId: string }>(
    `select team_id as "teamId", link_id as "linkId", client_id as "clientId", fits, tries_left as "triesLeft"
     from try_handover_link($1, $2, $3)`,
    [tokenHash, codeHash, at],
  );
  const [row] = rows;
  if (!row) return undefined;
  const { teamId, ...tried } = row;
  return { ...tried, scope: teamScope(teamId) };
}

export type OpenedLink = {
  clientId: string;
  forWhom: string;
  expiresAt: Date;
  withPack: boolean;
  options: unknown;
  team: string;
  by: string;
};

/** What a link shows, and that it was opened; undefined where it opens nothing any more. */
export async function openHandoverLink(
  tx: TeamPg,
  linkId: string,
  at: Date,
): Promise<OpenedLink | undefined> {
  const { rows } = await tx.client.query<OpenedLink>(
    `with opened as (
       update handover_link l set openings = openings + 1, last_opened_at = $3
       from handover_pack p where l.team_id = $1 and l.id = $2 and p.team_id = l.team_id and p.id = l.pack_id
         and handover_link_end(l, p.client_id, $3) is null
       returning l.pack_id, l.for_whom, l.expires_at, l.with_pack
     )
     select p.client_id as "clientId", o.for_whom as "forWhom", o.expires_at as "expiresAt", o.with_pack as "withPack",
       p.options, t.name as team, m.name as by
     from opened o join handover_pack p on p.team_id = $1 and p.id = o.pack_id join team t on t.id = p.team_id
     join member m on m.team_id = p.team_id and m.id = p.by_id`,
    [tx.teamId, linkId, at],
  );
  return rows[0];
}

export type LinkRow = {
  id: string;
  forWhom: string;
  why: string;
  by: string;
  createdAt: Date;
  expiresAt: Date;
  revokedAt: Date | null;
  end: LinkEnd | null;
  openings: number;
  lastOpenedAt: Date | null;
  wrongCodes: number;
  withPack: boolean;
};

/** Links to the record of a client, newest first. */
export async function listHandoverLinks(tx: TeamPg, clientId: string, at: Date): Promise<LinkRow[]> {
  const { rows } = await tx.client.query<LinkRow>(
    `select l.id, l.for_whom as "forWhom", p.why, m.name as by, l.created_at as "createdAt", l.expires_at as "expiresAt",
       l.revoked_at as "revokedAt", handover_link_end(l, p.client_id, $3) as end, l.openings,
       l.last_opened_at as "lastOpenedAt", l.wrong_codes as "wrongCodes", l.with_pack as "withPack"
     from handover_link l join handover_pack p on p.team_id = l.team_id and p.id = l.pack_id
     join member m on m.team_id = p.team_id and m.id = p.by_id
     where l.team_id = $1 and p.client_id = $2 order by l.created_at desc, l.id`,
    [tx.teamId, clientId, at],
  );
  return rows;
}

/** Ends a link of this client; false: there is none of this id. Twice is as once. */
export async function endHandoverLink(
  tx: TeamPg,
  link: { clientId: string; linkId: string; at: Date },
): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `update handover_link l set revoked_at = coalesce(l.revoked_at, $4) from handover_pack p
     where l.team_id = $1 and l.id = $3 and p.team_id = l.team_id and p.id = l.pack_id and p.client_id = $2`,
    [tx.teamId, link.clientId, link.linkId, link.at],
  );
  return rowCount !== 0;
}

/** The name and the time zone of a client; undefined: nobody of this team. */
export async function findNameAndZone(
  tx: TeamPg,
  clientId: string,
): Promise<{ name: string; zone: string } | undefined> {
  const { rows } = await tx.client.query<{ name: string; zone: string }>(
    'select name, zone from client where team_id = $1 and id = $2::uuid',
    [tx.teamId, clientId],
  );
  return rows[0];
}
