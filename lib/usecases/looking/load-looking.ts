import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import {
  type ClipStill,
  type ClipToLook,
  findClipToLook,
  findSetOfClip,
  listClipStills,
  listClipsToLook,
  listFilmWords,
} from '#lib/db/looking.ts';
import { listEffectiveCheckIns } from '#lib/db/raw-check-ins.ts';
import { listClipVerdicts } from '#lib/db/set-verdicts.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import type { Measure } from '#lib/domain/vocabulary.ts';
import { filmSecond } from '#lib/views/looking/film-second.ts';
import { firstToJudge, type SetToJudge, setsToJudge } from '#lib/views/looking/sets-to-judge.ts';
import { faultsToSee } from '#lib/views/looking/verdict-words.ts';
import { datedDay, exactDate } from '#lib/views/say-date.ts';

export type FilmChoice = {
  id: string;
  label: string;
  fps: number | null;
  seconds: number | null;
  width: number | null;
  height: number | null;
};
export type WordOnFilm = {
  id: string;
  atSeconds: number;
  moment: string;
  text: string;
  by: string;
  /** "read Tue 24 Nov"; empty: no phone has shown it, and it can be taken back. */
  read: string;
};
export type Looking = {
  clip: ClipToLook;
  /** "filmed Tuesday 24 November 2026, from behind, 12.4 s." */
  about: string;
  /** "looked at by Ana, Tue 24 Nov"; empty: nobody has. */
  looked: string;
  /** Why there is nothing to look at. */
  notHere: string;
  sets: SetToJudge[];
  first: string;
  faults: ClipToLook['faults'];
  words: WordOnFilm[];
  stills: (ClipStill & { moment: string })[];
  /** Other films of the client, the newest first, those of the same rung before others. */
  others: FilmChoice[];
};

const OTHERS = 60;

/** A film with what was seen and said of it; undefined: not there, or not in the team. */
export function loadLooking(actor: Actor, clipId: string, now: Date): Promise<Looking | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const clip = await findClipToLook(tx, clipId);
    if (!clip) return undefined;
    const { clientId, filmedOn, rungId, eachSide, side } = clip;
    const today = localDateOf(now, clip.zone);
    const around = [-1, 0, 1].map((days) => addDays(filmedOn, days));
    const sentWith = await findSetOfClip(tx, clipId);
    const checkIns = (await listEffectiveCheckIns(tx, [clientId], around)).get(clientId) ?? [];
    const unit = MEASURE_UNITS[clip.measure as Measure];
    const verdicts = await listClipVerdicts(tx, clipId);
    const sets = setsToJudge({ rungId, eachSide, unit, side, filmedOn, checkIns, verdicts });
    const others = await listClipsToLook(tx, clientId, OTHERS);
    return {
      clip,
      about: aboutFilm(clip),
      looked: clip.lookedAt
        ? `Looked at ${clip.lookedBy ? `by ${clip.lookedBy}, ` : ''}${datedDay(localDateOf(clip.lookedAt, clip.zone), today)}.`
        : '',
      notHere: NOT_HERE[clip.state] ?? 'This film cannot be shown.',
      sets,
      first: firstToJudge(sets, { side, sentWith }),
      faults: faultsToSee(clip.faults),
      words: (await listFilmWords(tx, { clipId, clientId })).map(({ id, atSeconds, text, by, readAt }) => ({
        id,
        atSeconds,
        moment: filmSecond(atSeconds),
        text,
        by,
        read: readAt ? `read ${datedDay(localDateOf(readAt, clip.zone), today)}` : '',
      })),
      stills: (await listClipStills(tx, { clipId, clientId })).map((still) => ({
        ...still,
        moment: filmSecond(still.atSeconds),
      })),
      others: others
        .filter(({ id }) => id !== clipId)
        .sort((a, b) => Number(b.rungId === rungId) - Number(a.rungId === rungId))
        .map((one) => ({
          id: one.id,
          label: filmInWords(one, today),
          fps: one.fps,
          seconds: one.seconds,
          width: one.width,
          height: one.height,
        })),
    };
  });
}

const NOT_HERE: Readonly<Record<string, string>> = {
  arriving: 'This film is still on its way from the phone. Open the page again later.',
  checking: 'This film has come and is being checked. Open the page again in a minute.',
  refused: 'This film could not be taken: the phone was told why.',
  gone: 'This film is no longer kept: its time is over. What was seen and said of it stays.',
};

function aboutFilm({ filmedOn, angle, seconds }: ClipToLook): string {
  const parts = [
    `filmed ${exactDate(filmedOn)}`,
    angle ?? '',
    seconds === null ? '' : `${seconds.toFixed(1)} s`,
  ];
  return `${parts.filter(Boolean).join(', ')}.`;
}

/** "Tue 24 Nov: one-arm handstand, two fingers, left, from behind". */
function filmInWords({ filmedOn, rung, side, angle }: ClipToLook, today: string): string {
  const parts = [rung, side === 'both' ? '' : side, angle ?? ''].filter(Boolean);
  return `${datedDay(filmedOn, today)}: ${parts.join(', ')}`;
}
