import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import type { OtherDrill } from '#lib/views/phone-other-drills.ts';
import type { PhoneDrill, PhoneSession } from '#lib/views/phone-session.ts';
import { type Draft, type SetDraft, setKey } from './draft.ts';
import { OPEN_SET } from './set-acts.ts';

/** The session with the drills that were added to it; those it has anyway by now are left to it. */
export function withExtras(session: PhoneSession | null, draft: Draft): PhoneSession | null {
  const { extras = [] } = draft;
  const planned = new Set(session?.drills.flatMap(placesOf));
  const added = extras.filter((extra) => !placesOf(extra).some((place) => planned.has(place)));
  if (added.length === 0) return session;
  const nothingPlanned = {
    label: draft.session ?? '',
    minutes: null,
    warmUp: '',
    how: [],
    note: '',
    drills: [],
  };
  const whole = session ?? nothingPlanned;
  return { ...whole, drills: [...whole.drills, ...added] };
}

/** A drill that was not planned comes in with one open set on each side. */
export function addExtra(draft: Draft, other: OtherDrill): Pick<Draft, 'extras' | 'sets'> {
  const drill = extraDrill(other);
  const open = placesOf(drill).map((key): [string, SetDraft[]] => [key, [OPEN_SET]]);
  return { extras: [...(draft.extras ?? []), drill], sets: { ...draft.sets, ...Object.fromEntries(open) } };
}

/** What was filled in of the drills that were added: stays when another session is chosen. */
export function setsOfExtras({ extras = [], sets }: Draft): Draft['sets'] {
  const added = extras.flatMap(placesOf);
  return Object.fromEntries(Object.entries(sets).filter(([key]) => added.includes(key)));
}

/** Taken out again, with what was filled in of it. */
export function dropExtra(draft: Draft, drill: PhoneDrill): Pick<Draft, 'extras' | 'sets'> {
  const gone = placesOf(drill);
  return {
    extras: (draft.extras ?? []).filter((extra) => extra.key !== drill.key),
    sets: Object.fromEntries(Object.entries(draft.sets).filter(([key]) => !gone.includes(key))),
  };
}

/** Which drills the sets of a draft were that its session does not plan, for one that is opened again. */
export function extrasTaken(
  session: PhoneSession | null,
  draft: Draft,
  others: readonly OtherDrill[] = [],
): PhoneDrill[] {
  return drillsToAdd(others, session, null)
    .map(extraDrill)
    .filter((extra) => placesOf(extra).some((place) => place in draft.sets));
}

/** Those that are not in the session yet. */
export function drillsToAdd(
  others: readonly OtherDrill[],
  session: PhoneSession | null,
  planned: PhoneSession | null,
): OtherDrill[] {
  const there = new Set([session, planned].flatMap((one) => one?.drills.flatMap(rungsOf) ?? []));
  return others.filter(({ rungId }) => !there.has(rungId));
}

function extraDrill({ rungId, rung, measure, eachSide, faults, target, tries }: OtherDrill): PhoneDrill {
  const sides = eachSide ? (['left', 'right'] as const) : (['both'] as const);
  return {
    key: `extra ${rungId}`,
    title: rung,
    rungsDiffer: false,
    measure,
    unit: MEASURE_UNITS[measure],
    sides: sides.map((side) => ({ side, rungId, rung, sets: 0, target, tries, dose: 'not planned' })),
    faults,
    support: null,
    note: '',
    last: null,
  };
}

function placesOf({ sides }: PhoneDrill): string[] {
  return sides.map(({ rungId, side }) => setKey(rungId, side));
}

function rungsOf({ sides }: PhoneDrill): string[] {
  return sides.map(({ rungId }) => rungId);
}
