import type { CheckedFilm } from '#lib/domain/clip-bounds.ts';
import type { ClipState, Side } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

export type ClipToInsert = {
  id: string;
  clientId: string;
  requestId: string | null;
  rungId: string;
  side: Side;
  angle: string | null;
  filmedOn: string;
  sound: boolean;
  contentType: string | null;
  storageKey: string;
  length: number;
  at: Date;
};

/** Begins a clip; false: the id is taken. */
export async function insertClip(tx: TeamPg, clip: ClipToInsert): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `insert into clip (team_id, id, client_id, request_id, rung_id, side, angle, filmed_on, sound, content_type, storage_key,
       state, bytes, upload_length, created_at, piece_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, 'arriving', 0, $12, $13, $13) on conflict (team_id, id) do nothing`,
    [
      tx.teamId,
      clip.id,
      clip.clientId,
      clip.requestId,
      clip.rungId,
      clip.side,
      clip.angle,
      clip.filmedOn,
      clip.sound,
      clip.contentType,
      clip.storageKey,
      clip.length,
      clip.at,
    ],
  );
  return rowCount === 1;
}

/** How many uploads of a client are under way, and whether the rung is the team's; two beginning at once wait here. */
export async function lockClipsOf(
  tx: TeamPg,
  { clientId, rungId }: { clientId: string; rungId: string },
): Promise<{ open: number; hasRung: boolean } | undefined> {
  await tx.client.query('select from client where team_id = $1 and id = $2::uuid for no key update', [
    tx.teamId,
    clientId,
  ]);
  const { rows } = await tx.client.query<{ open: number; hasRung: boolean }>(
    `select (select count(*)::int from clip where team_id = $1 and client_id = $2::uuid and state = 'arriving') as open,
       exists (select from rung where team_id = $1 and id = $3::uuid) as "hasRung"`,
    [tx.teamId, clientId, rungId],
  );
  return rows[0];
}

export type Upload = {
  id: string;
  state: ClipState;
  length: number;
  offset: number;
  storageKey: string;
};

const UPLOAD = `id, state, upload_length as length, upload_offset as "offset", storage_key as "storageKey"`;

/** An own upload; anybody else's is not there. */
export async function findUpload(
  tx: TeamPg,
  own: { clipId: string; clientId: string },
): Promise<Upload | undefined> {
  const { rows } = await tx.client.query<Upload>(
    `select ${UPLOAD} from clip where team_id = $1 and id = $2::uuid and client_id = $3::uuid`,
    [tx.teamId, own.clipId, own.clientId],
  );
  return rows[0];
}

/** Takes the upload for one writer until a moment; undefined: another one has it, or it stands at another offset. */
export async function holdUpload(
  tx: TeamPg,
  clipId: string,
  { now, until, offset }: { now: Date; until: Date; offset: number },
): Promise<Upload | undefined> {
  const { rows } = await tx.client.query<Upload>(
    `update clip set writing_until = $4 where team_id = $1 and id = $2::uuid and state = 'arriving'
       and upload_offset = $5 and (writing_until is null or writing_until <= $3) returning ${UPLOAD}`,
    [tx.teamId, clipId, now, until, offset],
  );
  return rows[0];
}

/** Where the upload stands now, held on until a moment, or let go with `until` null. False: the hold was lost meanwhile. */
export async function moveUpload(
  tx: TeamPg,
  clipId: string,
  move: { held: Date; from: number; to: number; until: Date | null; at: Date },
): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `update clip set upload_offset = $5, writing_until = $6, piece_at = case when $5 > $4 then $7 else piece_at end
     where team_id = $1 and id = $2::uuid and state = 'arriving' and writing_until = $3 and upload_offset = $4`,
    [tx.teamId, clipId, move.held, move.from, move.to, move.until, move.at],
  );
  return rowCount === 1;
}

/** All of it is here: it is to be decoded, and the outbox says so. */
export async function finishUpload(tx: TeamPg, clipId: string, at: Date): Promise<void> {
  const { rows } = await tx.client.query<{ clientId: string }>(
    `update clip set state = 'checking', received_at = $3, bytes = upload_length, writing_until = null
     where team_id = $1 and id = $2::uuid and state = 'arriving' and upload_offset = upload_length
     returning client_id as "clientId"`,
    [tx.teamId, clipId, at],
  );
  const [row] = rows;
  if (!row) return;
  await tx.client.query(
    `insert into outbox (team_id, kind, client_id, dedupe_key, body, created_at) values ($1, 'check-clip', $2, $3, $4, $5)
     on conflict (team_id, kind, dedupe_key) do nothing`,
    [tx.teamId, row.clientId, clipId, { clipId }, at],
  );
}

/** An upload that was given up: nothing of it stays. Only one that is still arriving, or was refused. */
export async function deleteUpload(tx: TeamPg, own: { clipId: string; clientId: string }): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `delete from clip where team_id = $1 and id = $2::uuid and client_id = $3::uuid and state in ('arriving', 'refused')`,
    [tx.teamId, own.clipId, own.clientId],
  );
  return rowCount === 1;
}

export type ClipToCheck = {
  id: string;
  clientId: string;
  storageKey: string;
  length: number;
  sound: boolean;
  filmedOn: string;
};

/** A clip that waits to be decoded. Undefined: it is not there any more, or was decoded already. */
export async function findClipToCheck(tx: TeamPg, clipId: string): Promise<ClipToCheck | undefined> {
  const { rows } = await tx.client.query<ClipToCheck>(
    `select id, client_id as "clientId", storage_key as "storageKey", upload_length as length, sound, filmed_on as "filmedOn"
     from clip where team_id = $1 and id = $2::uuid and state = 'checking'`,
    [tx.teamId, clipId],
  );
  return rows[0];
}

/** How far a clip is; undefined: it is not there any more. */
export async function findClipState(tx: TeamPg, clipId: string): Promise<ClipState | undefined> {
  const { rows } = await tx.client.query<{ state: ClipState }>(
    'select state from clip where team_id = $1 and id = $2::uuid',
    [tx.teamId, clipId],
  );
  return rows[0]?.state;
}

/** Ready to be looked at, beside the set of that day that it shows, where one was told. False: somebody was faster. */
export async function readyClip(tx: TeamPg, clipId: string, film: CheckedFilm): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `update clip k set state = 'ready', refused_why = null, content_type = 'video/mp4', width = $3, height = $4, fps = $5,
       codec = $6, seconds = $7, bytes = $8, set_id = shown.id, check_in_id = shown.check_in_id
     from (select 1) one left join lateral (
       select s.id, s.check_in_id from clip f join check_in c on c.team_id = f.team_id and c.client_id = f.client_id
         and c.date = f.filmed_on and c.replaced_at is null and c.deleted_at is null
       join check_in_set s on s.team_id = c.team_id and s.check_in_id = c.id and s.rung_id = f.rung_id and s.side = f.side
       where f.team_id = $1 and f.id = $2::uuid and s.value is not null order by s.idx desc limit 1) shown on true
     where k.team_id = $1 and k.id = $2::uuid and k.state = 'checking'`,
    [tx.teamId, clipId, film.width, film.height, film.fps, film.codec, film.seconds, film.bytes],
  );
  return rowCount === 1;
}

export async function refuseClip(tx: TeamPg, clipId: string, why: string): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `update clip set state = 'refused', refused_why = $3, bytes = 0 where team_id = $1 and id = $2::uuid and state = 'checking'`,
    [tx.teamId, clipId, why],
  );
  return rowCount === 1;
}

export type ClipFile = { clientId: string; storageKey: string; bytes: number };

/** Where a clip that may be looked at lies; `clientId` null: of any client of the team. */
export async function findClipFile(
  tx: TeamPg,
  clipId: string,
  clientId: string | null,
): Promise<ClipFile | undefined> {
  const { rows } = await tx.client.query<ClipFile>(
    `select client_id as "clientId", storage_key as "storageKey", bytes from clip
     where team_id = $1 and id = $2::uuid and state = 'ready' and ($3::uuid is null or client_id = $3::uuid)`,
    [tx.teamId, clipId, clientId],
  );
  return rows[0];
}

/** Keeps a clip for as long as the client is here, or lets its days count again. */
export async function pinClip(tx: TeamPg, clipId: string, at: Date | null): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ clientId: string }>(
    `update clip set pinned_at = $3, keep_until = null where team_id = $1 and id = $2::uuid and state = 'ready'
     returning client_id as "clientId"`,
    [tx.teamId, clipId, at],
  );
  return rows[0]?.clientId;
}

/** The clips of a client whose files are kept, the oldest first. */
export async function listKeptClips(
  tx: TeamPg,
  clientId: string,
): Promise<{ id: string; filmedOn: string; bytes: number; storageKey: string }[]> {
  const { rows } = await tx.client.query<{ id: string; filmedOn: string; bytes: number; storageKey: string }>(
    `select id, filmed_on as "filmedOn", bytes, storage_key as "storageKey" from clip
     where team_id = $1 and client_id = $2::uuid and state = 'ready' order by filmed_on, id`,
    [tx.teamId, clientId],
  );
  return rows;
}
