import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClipToLook, findSetOfClip, listFilmWords } from '#lib/db/looking.ts';
import { findPhoneClient } from '#lib/db/phone-reads.ts';
import { listEffectiveCheckIns } from '#lib/db/raw-check-ins.ts';
import { listClipVerdicts } from '#lib/db/set-verdicts.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { Measure } from '#lib/domain/vocabulary.ts';
import { filmSecond } from '#lib/views/looking/film-second.ts';
import { setsToJudge } from '#lib/views/looking/sets-to-judge.ts';
import { verdictToClient } from '#lib/views/looking/verdict-words.ts';

export type OwnFilm = {
  id: string;
  title: string;
  about: string;
  filmedOn: string;
  zone: string;
  coachName: string;
  isHere: boolean;
  seconds: number | null;
  words: {
    id: string;
    atSeconds: number;
    moment: string;
    text: string;
    by: string;
    at: Date;
    unread: boolean;
  }[];
  /** "left, set 2: not clean: hips turn". */
  seen: { id: string; set: string; words: string; by: string }[];
  lookedAt: Date | null;
  lookedBy: string | null;
};

/** One's own film with what coaches said at its moments; undefined: not there, or somebody else's. */
export async function loadOwnFilm(actor: Actor, clipId: string): Promise<OwnFilm | undefined> {
  const { clientId } = actor;
  if (!clientId) return undefined;
  return withTeamPg(actor.scope, async (tx) => {
    const clip = await findClipToLook(tx, clipId, clientId);
    const client = await findPhoneClient(tx, clientId);
    if (!clip || !client) return undefined;
    const { rung, side, angle, filmedOn, rungId, eachSide } = clip;
    const around = [-1, 0, 1].map((days) => addDays(filmedOn, days));
    const sets = setsToJudge({
      rungId,
      eachSide,
      unit: MEASURE_UNITS[clip.measure as Measure],
      side,
      filmedOn,
      checkIns: (await listEffectiveCheckIns(tx, [clientId], around)).get(clientId) ?? [],
      verdicts: await listClipVerdicts(tx, clipId),
    });
    const own = await findSetOfClip(tx, clipId);
    return {
      id: clip.id,
      title: `${rung}${side === 'both' ? '' : `, ${side}`}`,
      about: [angle ?? '', own ? `sent with set ${own.number}` : ''].filter(Boolean).join(', '),
      filmedOn,
      zone: client.zone,
      coachName: client.coachName,
      isHere: clip.state === 'ready',
      seconds: clip.seconds,
      words: (await listFilmWords(tx, { clipId, clientId })).map(({ readAt, ...word }) => ({
        ...word,
        moment: filmSecond(word.atSeconds),
        unread: readAt === null,
      })),
      seen: sets.flatMap(({ label, seen }) =>
        seen ? [{ id: seen.id, set: label, words: verdictToClient(seen, angle), by: seen.by }] : [],
      ),
      lookedAt: clip.lookedAt,
      lookedBy: clip.lookedBy,
    };
  });
}
