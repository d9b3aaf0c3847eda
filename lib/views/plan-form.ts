import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { Family, Measure, Side } from '#lib/domain/vocabulary.ts';
import { shortDate } from './say-date.ts';

type Rung = {
  id: string;
  name: string;
  ladderId: string;
  ladder: string;
  skill: string;
  family: Family;
  measure: Measure;
  eachSide: boolean;
  passSets: number;
  passTarget: number;
};
type Item = {
  session: string;
  rungId: string;
  side: Side;
  sets: number;
  target: number | null;
  minutes: number | null;
  timesPerWeek: number;
};
type Version = {
  version: number;
  from: string;
  until: string | null;
  sessionsPerWeek: number;
  why: string;
  notes: string;
  easyWeeks: string[];
  by: string | null;
  items: Item[];
};

export type FormRung = {
  id: string;
  /** "Toe pull, chest to wall: 4 x 10 s". */
  label: string;
  unit: string;
  eachSide: boolean;
  passSets: number;
  passTarget: number;
};
export type FormLadder = { id: string; name: string; skill: string; family: Family; rungs: FormRung[] };
/** One line of the form, as text: what was typed is kept as typed. */
export type FormRow = {
  key: number;
  session: string;
  ladderId: string;
  rungId: string;
  side: Side;
  sets: string;
  target: string;
  minutes: string;
  timesPerWeek: string;
};
export type PlanVersionLine = { title: string; why: string; lines: string[] };
export type PlanFormModel = {
  clientId: string;
  baseVersion: number;
  from: string;
  until: string;
  sessionsPerWeek: string;
  why: string;
  notes: string;
  easyWeeks: string[];
  rows: FormRow[];
  ladders: FormLadder[];
  versions: PlanVersionLine[];
};

/** A first plan runs four weeks (common practice, no source). */
const FIRST_PLAN_DAYS = 28;
const UNIT_WORDS: Record<Measure, string> = {
  hold: 's',
  lowering: 's',
  reps: 'reps',
  'made-tried': 'made',
  'range-up': 'degrees',
  'range-down': 'cm',
};

/** The plan form filled from the newest version, or empty for a first plan from `today`. */
export function planFormModel(loaded: {
  clientId: string;
  today: string;
  versions: Version[];
  rungs: Rung[];
}): PlanFormModel {
  const byId = new Map(loaded.rungs.map((rung) => [rung.id, rung]));
  const newest = loaded.versions[0];
  const rows = (newest?.items ?? []).map((item, key) =>
    toRow(item, key, byId.get(item.rungId)?.ladderId ?? ''),
  );
  return {
    clientId: loaded.clientId,
    baseVersion: newest?.version ?? 0,
    from: loaded.today,
    until: addDays(loaded.today, FIRST_PLAN_DAYS - 1),
    sessionsPerWeek: String(newest?.sessionsPerWeek ?? 3),
    why: '',
    notes: newest?.notes ?? '',
    easyWeeks: [],
    rows: rows.length > 0 ? rows : [emptyRow(0, 'A')],
    ladders: toLadders(loaded.rungs),
    versions: loaded.versions.map((version) => ({
      title: `Version ${version.version}, from ${shortDate(version.from)}${version.until ? ` to ${shortDate(version.until)}` : ''}${version.by ? `, by ${version.by}` : ''}`,
      why: version.why,
      lines: version.items.map((item) => planItemInWords(item, byId.get(item.rungId))),
    })),
  };
}

export function emptyRow(key: number, session: string): FormRow {
  return {
    key,
    session,
    ladderId: '',
    rungId: '',
    side: 'both',
    sets: '',
    target: '',
    minutes: '',
    timesPerWeek: '3',
  };
}

/** "A: Pull-up, 5 clean, left, 4 x 8 reps, 3 times a week". */
export function planItemInWords(item: Item, rung: { name: string; measure: Measure } | undefined): string {
  const unit = rung ? MEASURE_UNITS[rung.measure] : '';
  const dose =
    item.target === null
      ? `${item.minutes ?? 0} min`
      : `${item.sets} x ${item.target}${unit ? ` ${unit}` : ''}${item.minutes ? ` in ${item.minutes} min` : ''}`;
  const side = item.side === 'both' ? '' : `, ${item.side}`;
  return `${item.session}: ${rung?.name ?? 'a drill no longer in the ladders'}${side}, ${dose}, ${item.timesPerWeek} times a week`;
}

/** The weeks of a plan as first days, at most 16, for ticking easy weeks. */
export function weeksOf(from: string, until: string): { date: string; label: string }[] {
  const valid = /^\d{4}-\d{2}-\d{2}$/;
  if (!valid.test(from)) return [];
  const last = valid.test(until) ? until : addDays(from, 55);
  const weeks = Array.from({ length: 16 }, (_, index) => addDays(from, 7 * index)).filter(
    (date) => date <= last,
  );
  return weeks.map((date, index) => ({ date, label: `week ${index + 1}, from ${shortDate(date)}` }));
}

function toRow(item: Item, key: number, ladderId: string): FormRow {
  return {
    key,
    session: item.session,
    ladderId,
    rungId: item.rungId,
    side: item.side,
    sets: String(item.sets),
    target: item.target === null ? '' : String(item.target),
    minutes: item.minutes === null ? '' : String(item.minutes),
    timesPerWeek: String(item.timesPerWeek),
  };
}

function toLadders(rungs: Rung[]): FormLadder[] {
  const ladders = new Map<string, FormLadder>();
  for (const rung of rungs) {
    const ladder = ladders.get(rung.ladderId) ?? {
      id: rung.ladderId,
      name: rung.ladder,
      skill: rung.skill,
      family: rung.family,
      rungs: [],
    };
    ladder.rungs.push({
      id: rung.id,
      label: `${rung.name}: ${rung.passSets} x ${rung.passTarget} ${UNIT_WORDS[rung.measure]}${rung.eachSide ? ' each side' : ''}`,
      unit: UNIT_WORDS[rung.measure],
      eachSide: rung.eachSide,
      passSets: rung.passSets,
      passTarget: rung.passTarget,
    });
    ladders.set(rung.ladderId, ladder);
  }
  return [...ladders.values()];
}
