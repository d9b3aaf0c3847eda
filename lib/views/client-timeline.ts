import { asTold } from '#lib/domain/clip-verdict.ts';
import type { HistoryCheckIn, HistoryRung, HistorySet } from '#lib/domain/history.ts';
import {
  asSentence,
  DANGER_SIGN_LABELS,
  FAULT_LABELS,
  GROUND_LABELS,
  MEASURE_UNITS,
  PAIN_KIND_LABELS,
  placeInWords,
} from '#lib/domain/labels.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { SOFT_GROUNDS } from '#lib/domain/vocabulary.ts';
import { clockTime } from './local-time.ts';
import { verdictInWords } from './looking/verdict-words.ts';
import { datedDay, exactDate } from './say-date.ts';
import { type DrillSets, drillSets } from './set-words.ts';
import {
  firstSeen,
  type SeenBy,
  seenInWords,
  type TimelineWord,
  type WordOnCheckIn,
  wordsOf,
} from './timeline-words.ts';

export type TimelineEntry = {
  id: string;
  day: string;
  exact: string;
  about: string;
  sent: string;
  words: string;
  /** What hurt, what was done, in one paragraph. */
  facts: string;
  seen: string;
  /** Nobody has looked at it yet. */
  unseen: boolean;
  /** "deleted by the client on Tue 24 Nov"; empty: it counts. */
  deleted: string;
  /** What coaches wrote on it, in order. */
  said: TimelineWord[];
  /** Its sets, to write words on one. */
  sets: DrillSets[];
  /** As it was sent before it was corrected, the first version first. */
  before: Before[];
};
export type Before = { id: string; sent: string; about: string; words: string; facts: string };

type Corrected = { checkIn: HistoryCheckIn; correctedBy: string };
type Deleted = { checkIn: HistoryCheckIn; deletedAt: string };

const SHOWN = 24;

/**
 * The newest check-ins first: the client's own words, what was done, what hurt, and who looked since. At most 24.
 * `today` is the client's. Those that the client deleted stand in their place and say so.
 */
export function timeline(input: {
  checkIns: readonly HistoryCheckIn[];
  deleted?: readonly Deleted[] | undefined;
  /** As they were sent before a correction. */
  corrected?: readonly Corrected[] | undefined;
  rungs: ReadonlyMap<string, HistoryRung>;
  seen: readonly SeenBy[];
  words?: readonly WordOnCheckIn[] | undefined;
  today: string;
}): TimelineEntry[] {
  const deletedAt = new Map(input.deleted?.map((one) => [one.checkIn.id, one.deletedAt]));
  return [...input.checkIns, ...(input.deleted ?? []).map((one) => one.checkIn)]
    .sort((a, b) => (a.date === b.date ? b.sentAt.localeCompare(a.sentAt) : b.date.localeCompare(a.date)))
    .slice(0, SHOWN)
    .map((checkIn) => ({
      id: checkIn.id,
      day: datedDay(checkIn.date, input.today),
      exact: `${exactDate(checkIn.date)}, ${checkIn.zone}`,
      about: aboutOf(checkIn),
      sent: `sent ${clockTime(checkIn.sentAt, checkIn.zone)}`,
      words: checkIn.words,
      facts: factsOf(checkIn, input.rungs),
      ...lookedAt(checkIn, input),
      deleted: deletedOn(deletedAt.get(checkIn.id), checkIn.zone, input.today),
      said: wordsOf(checkIn.id, input.words ?? [], { zone: checkIn.zone, today: input.today }),
      sets: drillSets(checkIn.sets, input.rungs),
      before: beforeOf(checkIn.id, input.corrected ?? []).map((old) => ({
        id: old.id,
        sent: `sent ${datedDay(localDateOf(new Date(old.sentAt), old.zone), input.today)}, ${clockTime(old.sentAt, old.zone)}`,
        about: aboutOf(old),
        words: old.words,
        facts: factsOf(old, input.rungs),
      })),
    }));
}

/** What one check-in replaced, and what that had replaced before: the oldest first. */
function beforeOf(id: string, corrected: readonly Corrected[]): HistoryCheckIn[] {
  const [last] = corrected.filter((one) => one.correctedBy === id);
  return last ? [...beforeOf(last.checkIn.id, corrected), last.checkIn] : [];
}

function factsOf(checkIn: HistoryCheckIn, rungs: ReadonlyMap<string, HistoryRung>): string {
  return paragraph([...signsOf(checkIn), ...painOf(checkIn), ...setsOf(checkIn, rungs), ...restOf(checkIn)]);
}

function deletedOn(at: string | undefined, zone: string, today: string): string {
  return at === undefined ? '' : `deleted by the client ${datedDay(localDateOf(new Date(at), zone), today)}`;
}

function paragraph(facts: readonly string[]): string {
  return facts.map((fact) => `${fact}.`).join(' ');
}

function aboutOf(checkIn: HistoryCheckIn): string {
  if (checkIn.kind === 'rest') return 'day without training';
  const parts = [
    checkIn.session === null ? '' : `session ${checkIn.session}`,
    checkIn.minutes === null ? '' : `${checkIn.minutes} min`,
    checkIn.effort === null ? '' : `effort ${checkIn.effort} of 10`,
  ];
  return parts.filter(Boolean).join(', ') || 'training';
}

function signsOf(checkIn: HistoryCheckIn): string[] {
  return checkIn.dangerSigns.map((told) => {
    const place = told.region ? `, ${placeInWords(told.region, told.side)}` : '';
    return `${asSentence(DANGER_SIGN_LABELS[told.sign])}${place}${told.goneWithinMinute ? ', gone within a minute' : ''}`;
  });
}

function painOf(checkIn: HistoryCheckIn): string[] {
  if (checkIn.pain.length === 0) return checkIn.nothingHurts ? ['Nothing hurts'] : [];
  return checkIn.pain.map((score) => {
    const kind = score.kind === 'joint' ? '' : `, ${PAIN_KIND_LABELS[score.kind]}`;
    const usual = score.usual === true ? ', the usual' : '';
    return `${asSentence(placeInWords(score.region, score.side))} ${score.value} of 10 (${score.moment})${kind}${usual}`;
  });
}

function setsOf(checkIn: HistoryCheckIn, rungs: ReadonlyMap<string, HistoryRung>): string[] {
  const groups = new Map<string, HistorySet[]>();
  for (const set of checkIn.sets) {
    const key = `${set.rungId} ${set.side}`;
    groups.set(key, [...(groups.get(key) ?? []), set]);
  }
  return [...groups.values()].map((sets) => {
    const first = sets[0];
    const rung = first && rungs.get(first.rungId);
    const side = first && first.side !== 'both' ? ` ${first.side}` : '';
    return `${rung?.name ?? 'A drill'}${side}: ${amounts(sets, rung)}${faultsOf(sets.map(asTold))}${onFilm(sets)}`;
  });
}

/** "8, 7, 6 s of 10", "4 x 8 as planned". */
function amounts(sets: HistorySet[], rung: HistoryRung | undefined): string {
  const unit = rung ? MEASURE_UNITS[rung.measure] : '';
  const withUnit = unit ? ` ${unit}` : '';
  if (sets.every((set) => set.how === 'as-planned')) {
    return `${sets.length} x ${sets[0]?.value ?? sets[0]?.planned ?? '?'}${withUnit} as planned`;
  }
  const done = [...sets]
    .sort((a, b) => a.index - b.index)
    .map((set) => (set.how === 'not-done' || set.value === null ? 'not done' : String(set.value)));
  const planned = sets.find((set) => set.planned !== null)?.planned;
  return `${done.join(', ')}${withUnit}${planned === undefined || planned === null ? '' : ` of ${planned}`}`;
}

function faultsOf(sets: HistorySet[]): string {
  const faults = [...new Set(sets.flatMap((set) => set.faults))].map((fault) => FAULT_LABELS[fault]);
  return faults.length > 0 ? ` (${faults.join(', ')})` : '';
}

/** "; on film set 2 not clean: hips turn": what a coach saw, beside what was told. */
function onFilm(sets: HistorySet[]): string {
  const inOrder = [...sets].sort((a, b) => a.index - b.index);
  const seen = inOrder.flatMap((set, at) =>
    set.onFilm ? [`set ${at + 1} ${verdictInWords(set.onFilm)}`] : [],
  );
  return seen.length > 0 ? `; on film ${seen.join(', ')}` : '';
}

function restOf(checkIn: HistoryCheckIn): string[] {
  return [
    checkIn.ground !== null && SOFT_GROUNDS.includes(checkIn.ground)
      ? `On ${GROUND_LABELS[checkIn.ground]}`
      : '',
    checkIn.sleepHours === null ? '' : `Sleep ${checkIn.sleepHours} h`,
  ].filter(Boolean);
}

function lookedAt(
  checkIn: HistoryCheckIn,
  input: { seen: readonly SeenBy[]; today: string },
): { seen: string; unseen: boolean } {
  const mark = firstSeen(checkIn, input.seen);
  return {
    seen: seenInWords(mark, { zone: checkIn.zone, today: input.today }),
    unseen: mark === undefined,
  };
}
