import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { TeamPg } from '#lib/db/client.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { clipKey } from '#lib/files/clip-pieces.ts';
import { fileStore } from '#lib/files/file-store.ts';
import type { DemoClient } from '../life.ts';
import { insertRows } from './insert.ts';
import { coachOf, idOf, type Place } from './place.ts';

/** What prisma/draw-clips.ts draws. */
const DRAWN = { width: 360, height: 480, fps: 15, codec: 'h264', seconds: 6 } as const;
const SAID = 'Here the shoulders sink a little. Push the floor away before the toes leave the wall.';

type Film = {
  client_id: string;
  by_id: string;
  rung_id: string;
  zone: string;
  asked: DemoClient['extra']['films'][number];
  film: NonNullable<DemoClient['history']['films']>[number];
};

/** Films: asked for, come and looked at, with the drawn files in the store. */
export async function writeFilms(tx: TeamPg, clients: DemoClient[], place: Place): Promise<void> {
  const films = clients.flatMap((client) =>
    client.extra.films.flatMap((asked): Film[] => {
      const film = client.history.films?.find((each) => each.id === asked.id);
      const { id: client_id, zone } = client.history.client;
      const rung_id = idOf(place.rungIds, asked.rungKey);
      return film ? [{ asked, film, client_id, zone, rung_id, by_id: coachOf(place, client) }] : [];
    }),
  );
  await writeRequests(tx, films);
  for (const film of films) {
    if (film.film.receivedAt === null) await writeRefused(tx, film);
    else await writeClip(tx, film, film.film.receivedAt);
  }
}

async function writeRequests(tx: TeamPg, films: Film[]): Promise<void> {
  await insertRows(
    tx,
    'film_request',
    {
      id: 'uuid',
      client_id: 'uuid',
      by_id: 'uuid',
      rung_id: 'uuid',
      side: 'text',
      angle: 'text',
      words: 'text',
      by_date: 'date',
      created_at: 'timestamptz',
      done_at: 'timestamptz',
    },
    films.map(({ asked, film, client_id, by_id, rung_id }) => ({
      id: film.id,
      client_id,
      by_id,
      rung_id,
      side: asked.side,
      angle: asked.angle,
      words: film.words,
      by_date: asked.by,
      created_at: film.askedAt,
      done_at: film.lookedAt,
    })),
  );
}

async function writeClip(tx: TeamPg, of: Film, receivedAt: string): Promise<void> {
  const { film, asked, client_id, by_id, rung_id, zone } = of;
  const bytes = await readFile(new URL(`../clips/${drawnFor(asked)}.mp4`, import.meta.url));
  const storageKey = clipKey(tx.teamId, film.id);
  await tx.client.query(
    `insert into clip (team_id, id, client_id, request_id, rung_id, side, angle, filmed_on, storage_key, content_type, state,
       bytes, upload_length, upload_offset, width, height, fps, codec, seconds, created_at, received_at, looked_at, looked_by_id)
     values ($1, $2, $3, $2, $4, $5, $6, $7, $8, 'video/mp4', 'ready', $9, $9, $9, $10, $11, $12, $13, $14, $15, $15, $16, $17)`,
    [
      tx.teamId,
      film.id,
      client_id,
      rung_id,
      asked.side,
      asked.angle,
      localDateOf(new Date(receivedAt), zone),
      storageKey,
      bytes.byteLength,
      DRAWN.width,
      DRAWN.height,
      DRAWN.fps,
      DRAWN.codec,
      DRAWN.seconds,
      receivedAt,
      film.lookedAt,
      film.lookedAt === null ? null : by_id,
    ],
  );
  await fileStore().write(storageKey, bytes);
  if (film.lookedAt !== null) await writeSeen(tx, of, film.lookedAt);
  if (film.lookedAt !== null)
    await tx.client.query(
      `insert into coach_word (team_id, client_id, by_id, clip_id, at_seconds, text, created_at, read_at)
       values ($1, $2, $3, $4, 1.8, $5, $6, $6)`,
      [tx.teamId, client_id, by_id, film.id, SAID, film.lookedAt],
    );
}

/** What the coach saw of it, where the ladder names that fault. */
async function writeSeen(
  tx: TeamPg,
  { film, asked, client_id, by_id, rung_id }: Film,
  at: string,
): Promise<void> {
  await tx.client.query(
    `with seen as (
       insert into set_verdict (team_id, client_id, clip_id, by_id, rung_id, side, verdict, faults, at)
       select $1, $2, $3, $4, r.id, $6, 'not-clean', '{shoulder-sinks}', $7 from rung r
       join ladder l on l.team_id = r.team_id and l.id = r.ladder_id join drill d on d.team_id = r.team_id and d.id = r.drill_id
       where r.team_id = $1 and r.id = $5 and 'shoulder-sinks' = any(l.faults) and d.each_side = ($6 <> 'both') returning 1)
     update clip set verdict = 'not-clean', faults = '{shoulder-sinks}' where team_id = $1 and id = $3 and exists (select from seen)`,
    [tx.teamId, client_id, film.id, by_id, rung_id, asked.side, at],
  );
}

/** What came for an open request was too long: it is asked for still. */
async function writeRefused(tx: TeamPg, { film, asked, client_id, rung_id, zone }: Film): Promise<void> {
  const at = new Date(Date.parse(film.askedAt) + 10 * 3_600_000);
  await tx.client.query(
    `insert into clip (team_id, client_id, request_id, rung_id, side, angle, filmed_on, storage_key, state, refused_why, bytes,
       created_at, received_at)
     values ($1, $2, $3, $4, $5, $6, $7, $10, 'refused', $8, 0, $9, $9)`,
    [
      tx.teamId,
      client_id,
      film.id,
      rung_id,
      asked.side,
      asked.angle,
      localDateOf(at, zone),
      'It is 47 s long, at most 30 s are taken. Cut it on your phone, or film one set again.',
      at,
      clipKey(tx.teamId, randomUUID()),
    ],
  );
}

function drawnFor({ rungKey, angle }: Film['asked']): string {
  if (angle.startsWith('from behind')) return 'handstand-behind';
  if (rungKey.startsWith('H4')) return 'handstand-hips';
  return rungKey.startsWith('H') ? 'handstand-side' : 'lean-side';
}
