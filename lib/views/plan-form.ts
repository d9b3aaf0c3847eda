import { kitNeeded } from '#lib/domain/kit.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { PlanLine } from '#lib/domain/plan-line.ts';
import type { Family, Measure } from '#lib/domain/vocabulary.ts';
import { type ComparedPlan, planDifference } from './plan-difference.ts';
import { emptyRow, type FormRow, toRows } from './plan-rows.ts';
import { carryWeeks } from './plan-weeks.ts';
import { planItemInWords } from './plan-words.ts';
import { datedDay, shortDate } from './say-date.ts';
import { skillsInFocus } from './skills-in-focus.ts';

type Rung = {
  id: string;
  name: string;
  ladderId: string;
  ladder: string;
  skill: string;
  skillId: string;
  part: string;
  family: Family;
  measure: Measure;
  eachSide: boolean;
  passSets: number;
  passTarget: number;
  equipment: string[];
};
type Session = {
  label: string;
  restSeconds: number | null;
  warmUp: string;
  warmUpMinutes: number;
  minutes: number | null;
};
type Version = ComparedPlan & {
  version: number;
  from: string;
  why: string;
  notes: string;
  by: string | null;
  createdAt: Date;
  acceptedWeekAu: number | null;
  sessions: Session[];
  items: PlanLine[];
};
type Goal = { skillId: string; skill: string; wantedBy: string | null };

export type FormRung = {
  id: string;
  name: string;
  /** "Toe pull, chest to wall: 4 x 10 s". */
  label: string;
  unit: string;
  eachSide: boolean;
  passSets: number;
  passTarget: number;
  /** Kit it needs beyond a floor and a wall, in words. */
  kit: string[];
};
export type FormLadder = {
  id: string;
  name: string;
  skill: string;
  part: string;
  family: Family;
  rungs: FormRung[];
};
/** A session of the form, as text. */
export type FormSession = {
  label: string;
  restSeconds: string;
  warmUp: string;
  warmUpMinutes: string;
  minutes: string;
};
export type FormGoal = { skillId: string; wantedBy: string };
export type PlanVersionLine = {
  version: number;
  title: string;
  why: string;
  /** What it changed against the version before; empty for the first. */
  changes: string[];
  lines: string[];
};
/** Everything that is typed into the plan form, as text where it is text. */
export type PlanTyped = {
  from: string;
  until: string;
  sessionsPerWeek: string;
  why: string;
  notes: string;
  easyWeeks: string[];
  testWeeks: string[];
  noKitWeeks: string[];
  sessions: FormSession[];
  rows: FormRow[];
  goals: FormGoal[];
  acceptedWeekAu: number | null;
};
export type PlanFormModel = PlanTyped & {
  clientId: string;
  baseVersion: number;
  skills: { id: string; name: string }[];
  ladders: FormLadder[];
  versions: PlanVersionLine[];
};
/** What is copied into the form instead of the client's newest version. */
export type CopiedPlan = { sessionsPerWeek: number; notes: string; sessions: Session[]; items: PlanLine[] };

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

/**
 * The plan form filled from the newest version, or empty for a first plan from `today`; `copied`: filled with that
 * instead, still as the next version of this client. Weeks and a last day still to come are kept.
 */
export function planFormModel(loaded: {
  clientId: string;
  today: string;
  versions: Version[];
  rungs: Rung[];
  /** Rungs of earlier versions that are retired since: their names stay with those versions. */
  retired?: Rung[] | undefined;
  skills: { id: string; name: string }[];
  goals: Goal[];
  copied?: CopiedPlan | undefined;
}): PlanFormModel {
  const { today, versions } = loaded;
  const byId = new Map(loaded.rungs.map((rung) => [rung.id, rung]));
  const everById = new Map([...(loaded.retired ?? []), ...loaded.rungs].map((rung) => [rung.id, rung]));
  const newest = versions[0];
  const filled = loaded.copied ?? newest;
  const rows = toRows(filled?.items ?? [], (rungId) => byId.get(rungId)?.ladderId ?? '');
  const from = newest && newest.from > today ? newest.from : today;
  const until = newest?.until && newest.until > today ? newest.until : addDays(from, FIRST_PLAN_DAYS - 1);
  const weeks = (kind: 'easyWeeks' | 'testWeeks' | 'noKitWeeks') =>
    carryWeeks(newest?.[kind] ?? [], from, until);
  return {
    clientId: loaded.clientId,
    baseVersion: newest?.version ?? 0,
    from,
    until: newest?.until === null ? '' : until,
    sessionsPerWeek: String(filled?.sessionsPerWeek ?? 3),
    why: '',
    notes: newest?.notes ?? '',
    easyWeeks: weeks('easyWeeks'),
    testWeeks: weeks('testWeeks'),
    noKitWeeks: weeks('noKitWeeks'),
    acceptedWeekAu: newest?.acceptedWeekAu ?? null,
    sessions: (filled?.sessions ?? [{ ...BARE_SESSION, label: 'A' }]).map(toFormSession),
    rows: rows.length > 0 ? rows : [emptyRow(0, 'A')],
    goals: goalsOf(loaded, newest, everById),
    skills: loaded.skills,
    ladders: toLadders(loaded.rungs),
    versions: versions.map((version, index) => versionLine(version, versions[index + 1], everById, today)),
  };
}

const BARE_SESSION: Session = { label: '', restSeconds: null, warmUp: '', warmUpMinutes: 0, minutes: null };

/** A session nobody has said anything about. */
export function emptySession(label: string): FormSession {
  return toFormSession({ ...BARE_SESSION, label });
}

function toFormSession({ label, restSeconds, warmUp, warmUpMinutes, minutes }: Session): FormSession {
  const text = (value: number | null) => (value === null || value === 0 ? '' : String(value));
  return {
    label,
    restSeconds: restSeconds === null ? '' : String(restSeconds),
    warmUp,
    warmUpMinutes: text(warmUpMinutes),
    minutes: text(minutes),
  };
}

/** The goals kept; of a client without any, the skills of the plan as it was. */
function goalsOf(
  { goals, skills }: { goals: Goal[]; skills: { id: string; name: string }[] },
  newest: Version | undefined,
  rungs: Map<string, Rung>,
): FormGoal[] {
  if (goals.length > 0) return goals.map(({ skillId, wantedBy }) => ({ skillId, wantedBy: wantedBy ?? '' }));
  const names = newest?.skillsInFocus.length
    ? newest.skillsInFocus
    : skillsInFocus((newest?.items ?? []).flatMap((item) => rungs.get(item.rungId) ?? []));
  return names.flatMap((name) => {
    const skill = skills.find((one) => one.name === name);
    return skill ? [{ skillId: skill.id, wantedBy: '' }] : [];
  });
}

function versionLine(
  version: Version,
  before: Version | undefined,
  rungs: Map<string, Rung>,
  today: string,
): PlanVersionLine {
  const dates = `from ${shortDate(version.from)}${version.until ? ` to ${shortDate(version.until)}` : ''}`;
  const saved = `saved ${datedDay(version.createdAt.toISOString().slice(0, 10), today)}`;
  return {
    version: version.version,
    title: [`Version ${version.version}`, dates, saved, ...(version.by ? [`by ${version.by}`] : [])].join(
      ', ',
    ),
    why: version.why,
    changes: before ? planDifference(before, version, rungs) : [],
    lines: version.items.map((item) => `${item.session}: ${planItemInWords(item, rungs.get(item.rungId))}`),
  };
}

function toLadders(rungs: Rung[]): FormLadder[] {
  const ladders = new Map<string, FormLadder>();
  for (const rung of rungs) {
    const { ladderId: id, ladder: name, skill, part, family } = rung;
    const ladder = ladders.get(id) ?? { id, name, skill, part, family, rungs: [] };
    const unit = UNIT_WORDS[rung.measure];
    ladder.rungs.push({
      id: rung.id,
      name: rung.name,
      label: `${rung.name}: ${rung.passSets} x ${rung.passTarget} ${unit}${rung.eachSide ? ' each side' : ''}`,
      unit,
      eachSide: rung.eachSide,
      passSets: rung.passSets,
      passTarget: rung.passTarget,
      kit: kitNeeded(rung.equipment),
    });
    ladders.set(id, ladder);
  }
  return [...ladders.values()];
}
