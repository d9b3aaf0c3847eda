import type { ClipVerdict, Fault, Side } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

/** Which set a verdict is about; `checkInId` and `index` null: one that was told in no check-in. */
export type VerdictPlace = { checkInId: string | null; rungId: string; side: Side; index: number | null };
export type ClipVerdictRow = VerdictPlace & {
  id: string;
  verdict: ClipVerdict;
  faults: Fault[];
  by: string;
  at: Date;
};

/** The key of a set within its check-in. */
export function setKey({
  rungId,
  side,
  index,
}: {
  rungId: string;
  side: Side;
  index: number | null;
}): string {
  return `${rungId} ${side} ${index ?? ''}`;
}

/** Verdicts of one clip that were not undone, the newest of each set, in the order in which they were given. */
export async function listClipVerdicts(tx: TeamPg, clipId: string): Promise<ClipVerdictRow[]> {
  const { rows } = await tx.client.query<ClipVerdictRow>(
    `select * from (select distinct on (v.check_in_id, v.rung_id, v.side, v.idx) v.id, v.check_in_id as "checkInId",
         v.rung_id as "rungId", v.side, v.idx as index, v.verdict, coalesce(v.faults, '{}') as faults, m.name as by, v.at
       from set_verdict v join member m on m.team_id = v.team_id and m.id = v.by_id
       where v.team_id = $1 and v.clip_id = $2::uuid and v.undone_at is null
       order by v.check_in_id, v.rung_id, v.side, v.idx, v.at desc, v.id desc) newest order by at, id`,
    [tx.teamId, clipId],
  );
  return rows;
}

export type NewVerdict = VerdictPlace & {
  clientId: string;
  clipId: string;
  byId: string;
  verdict: ClipVerdict;
  faults: readonly Fault[];
  at: Date;
};

export async function insertSetVerdict(tx: TeamPg, given: NewVerdict): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into set_verdict (team_id, client_id, clip_id, by_id, check_in_id, rung_id, side, idx, verdict, faults, at)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11) returning id`,
    [
      tx.teamId,
      given.clientId,
      given.clipId,
      given.byId,
      given.checkInId,
      given.rungId,
      given.side,
      given.index,
      given.verdict,
      [...given.faults],
      given.at,
    ],
  );
  return rows[0]?.id ?? '';
}

/** Takes a verdict back: what was seen before of this set counts again. */
export async function undoSetVerdict(tx: TeamPg, verdictId: string, at: Date): Promise<void> {
  await tx.client.query(
    'update set_verdict set undone_at = $3 where team_id = $1 and id = $2::uuid and undone_at is null',
    [tx.teamId, verdictId, at],
  );
}

/** A correction takes over what was seen of the sets it corrects: by rung, side and number, as they are looked up. */
export async function carryVerdicts(tx: TeamPg, of: { from: string; to: string }): Promise<void> {
  await tx.client.query(
    'update set_verdict set check_in_id = $3 where team_id = $1 and check_in_id = $2::uuid',
    [tx.teamId, of.from, of.to],
  );
}

/** What a clip says as a whole, beside its sets. */
export async function setClipVerdict(
  tx: TeamPg,
  clipId: string,
  { verdict, faults }: { verdict: ClipVerdict | null; faults: readonly Fault[] },
): Promise<void> {
  await tx.client.query('update clip set verdict = $3, faults = $4 where team_id = $1 and id = $2::uuid', [
    tx.teamId,
    clipId,
    verdict,
    [...faults],
  ]);
}
