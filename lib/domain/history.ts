import type { HistoryAssessment } from './history-assessment.ts';
import type {
  ClipVerdict,
  DangerSign,
  Family,
  Fault,
  Ground,
  LimitRule,
  Measure,
  PainKind,
  PainMoment,
  PainRegion,
  PainSide,
  Side,
  Standing,
  Support,
  Tissue,
} from './vocabulary.ts';

/**
 * One client's whole history, as the checks read it, as `history.json` carries it and as
 * `check-history` takes it. Plain values only: dates are local `YYYY-MM-DD` strings in the client's
 * own zone, instants are ISO 8601 in UTC. Nothing here knows a database or a clock.
 */
export type ClientHistory = {
  formatVersion: 1;
  client: HistoryClient;
  /** Every rung that plans, sets or placements of this client name, and the next one of each. */
  rungs: HistoryRung[];
  plans: HistoryPlan[];
  placements: HistoryPlacement[];
  absences: HistoryAbsence[];
  /** Effective check-ins only (the latest correction of each), any order. */
  checkIns: HistoryCheckIn[];
  questions: HistoryQuestion[];
  limits: HistoryLimit[];
  /** Steps taken by a coach: they silence and are followed. */
  steps: HistoryStep[];
  /** When a coach last looked at the client (ISO instants). */
  seen: string[];
  /** A clinician's word recorded by a coach: clears danger-sign / pain-high of that region. */
  clinicianWords: { date: string; region: PainRegion | null; side: PainSide | null; words: string }[];
  /** Skills the client works for, also those that ended; without it the plans' own skills in focus say it. */
  goals?: HistoryGoal[] | undefined;
  /** Films asked for: a film is waited for until it is received, and waits for a coach until it is looked at. */
  films?: HistoryFilm[] | undefined;
  /** Tests asked for at a start: waited for until nothing is left to answer. Those taken back are left out. */
  startTests?: HistoryStartTests[] | undefined;
  /** What coaches saw and measured of the parts of a skill. No check reads it. */
  assessments?: HistoryAssessment[] | undefined;
  /** When the team answers; without it the waiting hours run round the clock. */
  answering?: AnsweringHours | undefined;
};

export type HistoryGoal = { skill: string; from: string; wantedBy: string | null; endedOn: string | null };
export type HistoryFilm = {
  id: string;
  askedAt: string;
  receivedAt: string | null;
  lookedAt: string | null;
  words: string;
  /** What it shows. */
  rungId?: string | undefined;
  side?: Side | undefined;
  /** What coaches saw on it, the newest of each set. */
  verdicts?: HistoryFilmVerdict[] | undefined;
};
/** One set on a film; without a check-in and an index it was told in none. */
export type HistoryFilmVerdict = {
  /** The client's own date of the film. */
  filmedOn: string;
  side: Side;
  checkInId: string | null;
  index: number | null;
  verdict: ClipVerdict;
  faults: Fault[];
  at: string;
};
export type HistoryStartTests = {
  id: string;
  askedAt: string;
  /** The newest answer so far; null: none yet. */
  movedAt: string | null;
  /** Nothing was left to answer, or the coach placed by what had come. */
  doneAt: string | null;
};
/** Days 1 Monday to 7 Sunday; `from` and `to` as HH:MM in the team's zone, on the same day. */
export type AnsweringHours = { zone: string; days: number[]; from: string; to: string };

export type HistoryClient = {
  id: string;
  name: string;
  zone: string;
  standing: Standing;
  invitedAt: string | null;
  joinedAt: string | null;
  under18: boolean;
  bodyMassKg: number | null;
  /** Told usual week at intake: days x minutes x effort, arbitrary units. */
  toldWeekAu: number | null;
  /** How hard a session of that week was told to be, 0-10; absent: not told. */
  toldEffort?: number | undefined;
  /** Weeks without training before the start, told at intake; absent: not told, or trained until then. */
  breakWeeks?: number | undefined;
  /** Danger signs told at the start, the day they were told, and when a clinician spoke of each. */
  intakeSigns?: { date: string; signs: { sign: DangerSign; wordOn: string | null }[] } | undefined;
  intakePain: { region: PainRegion; side: PainSide; value: number; sinceWeeks: number }[];
};

export type HistoryRung = {
  id: string;
  /** Readable key such as `H3.4` when it came from the starter library. */
  key: string | null;
  ladderId: string;
  ladder: string;
  skill: string;
  part: string;
  position: number;
  name: string;
  family: Family;
  measure: Measure;
  /** Pass mark asked of each side apart. */
  eachSide: boolean;
  /** Legs, not hands, alternate: arms count as both hands. */
  eachIsLeg: boolean;
  pass: { sets: number; target: number; days: number; tries: number | null };
  /** Seconds under load a rep or a try; null for holds and lowerings (value is seconds). */
  secondsPerRep: number | null;
  /** Share of body weight on the hands, both together; one-arm: working hand. Null: no load on hands. */
  share: number | null;
  helpingShare: number | null;
  weights: Partial<Record<Tissue, number>>;
  /** The head comes below the heart. Absent: not said, and taken as no. */
  upsideDown?: boolean | undefined;
  usualWeeks: number;
  /** What it takes the clients of the team; absent while half of them are still on it, or nobody asked. */
  usualDaysHere?: UsualDaysHere | undefined;
  needsFilm: boolean;
  faults: Fault[];
};

/** Kaplan-Meier median of the team's clients on a rung, and how many of them passed it. */
export type UsualDaysHere = { days: number; passed: number };

export type HistoryPlan = {
  version: number;
  from: string;
  /** Last planned day; null: open. */
  until: string | null;
  sessionsPerWeek: number;
  items: HistoryPlanItem[];
  /** Local dates whose week (7 days from the date) is an easy or a test week. */
  easyWeeks: string[];
  testWeeks: string[];
  /** A load jump the coach saw and accepted: foreseen 7-day session load. */
  acceptedWeekAu: number | null;
  skillsInFocus: string[];
  /** Weeks without kit, named like the easy ones: lines that need kit are swapped or left out. */
  noKitWeeks?: string[] | undefined;
  /** In the order in which they are trained. */
  sessions?: HistoryPlanSession[] | undefined;
  by?: string | null | undefined;
  why?: string | undefined;
  /** Words to the client about this version. */
  notes?: string | undefined;
};
export type HistoryPlanSession = {
  label: string;
  restSeconds: number | null;
  warmUp?: string | undefined;
  warmUpMinutes?: number | undefined;
  /** Said by the coach; null: as the drills come to. */
  minutes?: number | null | undefined;
};
export type HistoryPlanItem = {
  session: string;
  rungId: string;
  side: Side;
  sets: number;
  /** In the rung's measure; null when practised by minutes. */
  target: number | null;
  minutes: number | null;
  timesPerWeek: number;
  support?: Support | null | undefined;
  stopRule?: string | undefined;
  notTwoDaysRunning?: boolean | undefined;
  /** The rung of the line of this session that it is done together with, as a pyramid. */
  pairedWith?: string | null | undefined;
  /** What stands in for it in a week without kit. */
  noKitRungId?: string | null | undefined;
};

/** The client stands on this rung, on this side, from this date (until the next placement of the ladder and side). */
export type HistoryPlacement = { ladderId: string; side: Side; rungId: string; from: string };
export type HistoryAbsence = { from: string; to: string | null; kind: 'pause' | 'holiday' | 'illness' };

export type HistoryCheckIn = {
  id: string;
  date: string;
  zone: string;
  sentAt: string;
  kind: 'training' | 'rest';
  session: string | null;
  effort: number | null;
  minutes: number | null;
  ground: Ground | null;
  sleepHours: number | null;
  nothingHurts: boolean;
  sets: HistorySet[];
  pain: HistoryPain[];
  dangerSigns: {
    sign: DangerSign;
    goneWithinMinute: boolean;
    region: PainRegion | null;
    side: PainSide | null;
  }[];
  words: string;
};
export type HistorySet = {
  rungId: string;
  side: Side;
  index: number;
  planned: number | null;
  /** Seconds, reps, degrees or cm; null: not done. For made-tried: tries made good. */
  value: number | null;
  tried: number | null;
  how: 'typed' | 'timed' | 'as-planned' | 'not-done';
  clean: boolean;
  faults: Fault[];
  support: Support | null;
  addedKg: number | null;
  /** Seen by a coach on film: `clean` and `faults` are then what counts, `told` what the client said. */
  onFilm?: { verdict: ClipVerdict; faults: Fault[]; told: { clean: boolean; faults: Fault[] } } | undefined;
};
export type HistoryPain = {
  region: PainRegion;
  side: PainSide;
  moment: PainMoment;
  value: number;
  kind: PainKind;
  usual: boolean | null;
};

export type HistoryQuestion = {
  id: string;
  askedAt: string;
  text: string;
  answeredAt: string | null;
  answer: string | null;
};
export type HistoryLimit = {
  tissue: Tissue | null;
  region: PainRegion | null;
  side: PainSide | null;
  rule: LimitRule;
  percent: number | null;
  from: string;
  until: string | null;
  who: string;
};
export type HistoryStep = {
  kind: string;
  takenOn: string;
  ladderId: string | null;
  side: Side | null;
  reviewOn: string | null;
  words: string;
};
