import type { HistoryCheckIn } from '#lib/domain/history.ts';
import type {
  DangerSign,
  Fault,
  Ground,
  PainKind,
  PainMoment,
  PainRegion,
  PainSide,
  Side,
} from '#lib/domain/vocabulary.ts';
import type { PhoneDrill, PhoneSession } from '#lib/views/phone-session.ts';

/** One set while it is filled in. `open`: planned, nothing said yet. */
export type SetDraft = {
  how: 'open' | 'as-planned' | 'typed' | 'timed' | 'not-done';
  value: number | null;
  tried: number | null;
  faults: Fault[];
};
export type PlaceDraft = {
  group: string;
  /** Null until it is told where exactly. */
  region: PainRegion | null;
  side: PainSide;
  kind: PainKind | null;
  scores: Partial<Record<PainMoment, number>>;
  usual: boolean | null;
};
export type SignDraft = { sign: DangerSign; gone: boolean; region: PainRegion | null; side: PainSide | null };
export type Step = 'sets' | 'effort' | 'pain' | 'score';

/** A check-in that is not sent yet, as it is kept on the phone. */
export type Draft = {
  version: 1;
  id: string;
  kind: 'training' | 'rest';
  correctsId: string | null;
  date: string;
  /** The day was chosen by hand: it is not asked about. */
  dayTold?: boolean | undefined;
  zone: string;
  session: string | null;
  planVersion: number | null;
  startedAt: string;
  sets: Record<string, SetDraft[]>;
  /** Swaps taken of drills that a limit rules out: see `swaps.ts`. Drafts kept before there were limits have none. */
  swaps?: Record<string, number> | undefined;
  /** Drills added that were not planned: see `extras.ts`. Absent: none. */
  extras?: PhoneDrill[] | undefined;
  effort: number | null;
  minutes: number | null;
  ground: Ground | null;
  sleepHours: number | null;
  nothingHurts: boolean;
  places: PlaceDraft[];
  /** The place that the score screen shows. */
  placeAt: number;
  signs: SignDraft[];
  words: string;
  question: string;
  step: Step;
  savedAt: string | null;
};

export function setKey(rungId: string, side: Side): string {
  return `${rungId} ${side}`;
}

type Start = {
  kind: 'training' | 'rest';
  date: string;
  zone: string;
  planVersion: number | null;
  session: PhoneSession | null;
  usualMinutes: number | null;
  /** Drills can be added, so that there is something to fill in without a plan too. */
  canAdd?: boolean;
  now: Date;
  id: string;
};

export function newDraft(start: Start): Draft {
  const isRest = start.kind === 'rest';
  return {
    version: 1,
    id: start.id,
    kind: start.kind,
    correctsId: null,
    date: start.date,
    zone: start.zone,
    session: isRest ? null : (start.session?.label ?? null),
    planVersion: isRest ? null : start.planVersion,
    startedAt: start.now.toISOString(),
    sets: isRest ? {} : plannedSets(start.session),
    effort: null,
    minutes: isRest ? null : (start.session?.minutes ?? start.usualMinutes),
    ground: null,
    sleepHours: null,
    nothingHurts: false,
    places: [],
    placeAt: 0,
    signs: [],
    words: '',
    question: '',
    step: firstStep(start),
    savedAt: null,
  };
}

function firstStep({ kind, session, canAdd = false }: Start): Step {
  if (kind === 'rest') return 'pain';
  return canAdd || (session?.drills.length ?? 0) > 0 ? 'sets' : 'effort';
}

export function plannedSets(session: PhoneSession | null): Draft['sets'] {
  const sets: Draft['sets'] = {};
  for (const drill of session?.drills ?? []) {
    if (drill.limit?.out) continue;
    for (const { rungId, side, sets: count } of drill.sides) {
      const key = setKey(rungId, side);
      const open = Array.from(
        { length: count },
        (): SetDraft => ({ how: 'open', value: null, tried: null, faults: [] }),
      );
      sets[key] = [...(sets[key] ?? []), ...open];
    }
  }
  return sets;
}

/** A kept check-in, opened again to be corrected: a new id, the old one named. */
export function draftOf(
  kept: HistoryCheckIn,
  fresh: { id: string; groupOf: (region: PainRegion) => string; now: Date },
): Draft {
  const draft = newDraft({
    kind: kept.kind,
    date: kept.date,
    zone: kept.zone,
    planVersion: null,
    session: null,
    usualMinutes: null,
    now: fresh.now,
    id: fresh.id,
  });
  const sets: Draft['sets'] = {};
  for (const set of [...kept.sets].sort((a, b) => a.index - b.index)) {
    const key = setKey(set.rungId, set.side);
    sets[key] = [
      ...(sets[key] ?? []),
      { how: set.how, value: set.value, tried: set.tried, faults: set.faults },
    ];
  }
  return {
    ...draft,
    correctsId: kept.id,
    session: kept.session,
    sets,
    effort: kept.effort,
    minutes: kept.minutes,
    ground: kept.ground,
    sleepHours: kept.sleepHours,
    nothingHurts: kept.nothingHurts,
    places: placesOf(kept, fresh.groupOf),
    signs: kept.dangerSigns.map(({ sign, goneWithinMinute, region, side }) => ({
      sign,
      gone: goneWithinMinute,
      region,
      side,
    })),
    words: kept.words,
    step: kept.kind === 'rest' ? 'pain' : kept.sets.length > 0 ? 'sets' : 'effort',
  };
}

function placesOf(kept: HistoryCheckIn, groupOf: (region: PainRegion) => string): PlaceDraft[] {
  const places = new Map<string, PlaceDraft>();
  for (const { region, side, moment, value, kind, usual } of kept.pain) {
    const key = `${region} ${side}`;
    const place = places.get(key) ?? { group: groupOf(region), region, side, kind, scores: {}, usual };
    places.set(key, { ...place, scores: { ...place.scores, [moment]: value } });
  }
  return [...places.values()];
}
