import type { HistoryLimit } from './history.ts';
import type { HistoryAssessedSide } from './history-assessment.ts';
import type { CheckKind, Level, PainRegion, PainSide, Side, Tier, Tissue } from './vocabulary.ts';

/** Everything kept about one client that `history.json` does not carry in the same detail; rows of the CSVs. */
export type RecordCheckIn = {
  id: string;
  date: string;
  zone: string;
  kind: string;
  session: string | null;
  planVersion: number | null;
  effort: number | null;
  minutes: number | null;
  ground: string | null;
  sleepHours: number | null;
  nothingHurts: boolean;
  words: string;
  startedAt: string | null;
  sentAt: string;
  receivedAt: string;
  correctsId: string | null;
  replacedAt: string | null;
  /** The client took it back. */
  deletedAt: string | null;
};
/** `replaced`: of a check-in that counts no more, corrected or deleted. */
type OfCheckIn = { checkInId: string; date: string; zone: string; replaced: boolean };
export type RecordSet = OfCheckIn & {
  skill: string;
  ladder: string;
  rung: string;
  measure: string;
  side: string;
  idx: number;
  planned: number | null;
  value: number | null;
  tried: number | null;
  how: string;
  /** As it was told. */
  clean: boolean;
  faults: string[];
  support: string | null;
  addedKg: number | null;
  /** What a coach saw of it on film, the newest that stands; it then counts before what was told. */
  onFilm: string | null;
  faultsOnFilm: string[];
};
export type RecordPain = OfCheckIn & {
  region: string;
  side: string;
  moment: string;
  value: number;
  kind: string;
  usual: boolean | null;
};
export type RecordDangerSign = OfCheckIn & {
  sign: string;
  goneWithinMinute: boolean;
  region: string | null;
  side: string | null;
};
export type RecordReason = {
  id: string;
  kind: CheckKind;
  subject: string;
  level: Level;
  tier: Tier | null;
  points: number;
  sentence: string;
  short: string;
  proposedStep: string;
  clears: string;
  since: string;
  raisedAt: string;
  closedAt: string | null;
  closedWhy: string | null;
  state: string;
};
export type RecordReasonEvent = {
  reasonId: string;
  at: string;
  what: string;
  level: string | null;
  by: string | null;
  body: string;
};
export type RecordStep = {
  reasonId: string | null;
  kind: string;
  takenOn: string;
  reviewOn: string | null;
  words: string;
  undoneAt: string | null;
  windowDays: number | null;
  outcome: string | null;
};
/** What became of a reason for which nothing was done, so many days after it was known. */
export type RecordLeftAlone = {
  reasonId: string;
  kind: string;
  knownFrom: string;
  windowDays: number;
  outcome: string;
};
export type RecordPlanItem = {
  version: number;
  from: string;
  until: string | null;
  sessionsPerWeek: number;
  why: string;
  notes: string;
  by: string | null;
  savedAt: string;
  easyWeeks: string[];
  testWeeks: string[];
  noKitWeeks: string[];
  acceptedWeekAu: number | null;
  session: string | null;
  restSeconds: number | null;
  warmUp: string | null;
  warmUpMinutes: number | null;
  sessionMinutes: number | null;
  ladder: string | null;
  rung: string | null;
  measure: string | null;
  side: string | null;
  sets: number | null;
  target: number | null;
  minutes: number | null;
  timesPerWeek: number | null;
  support: string | null;
  stopRule: string | null;
  notTwoDaysRunning: boolean | null;
  pairedWith: string | null;
  noKitRung: string | null;
};
export type RecordGoal = { skill: string; from: string; wantedBy: string | null; endedOn: string | null };
/** One part of an assessment on one side. `partAt`: the part's place in it. */
export type RecordAssessed = {
  id: string;
  date: string;
  savedAt: string;
  by: string | null;
  skill: string;
  aim: string | null;
  kit: string[];
  partAt: number;
  part: string | null;
  ladder: string | null;
  asked: string | null;
  side: Side;
  film: HistoryAssessedSide['film'];
  rung: string | null;
  measure: string | null;
  sets: number | null;
  value: number | null;
  clean: boolean | null;
  pain: number | null;
};
/** One start test on one side; what was not answered yet has no outcome. */
export type RecordStartTest = {
  id: string;
  askedAt: string;
  by: string;
  ladder: string | null;
  rung: string | null;
  measure: string | null;
  side: string | null;
  sets: number;
  film: boolean;
  outcome: string | null;
  values: number[];
  tried: number | null;
  clean: boolean | null;
  pain: number | null;
  region: string | null;
  doneAt: string | null;
  endedAt: string | null;
  placedAt: string | null;
};
export type RecordPlacement = { ladder: string; rung: string; side: string; from: string; why: string };
export type RecordQuestion = {
  id: string;
  askedAt: string;
  text: string;
  answeredAt: string | null;
  answeredBy: string | null;
  answer: string | null;
  /** Ids of the stills sent with it. */
  stills: string[];
};
/** A coach's words to the client; `checkInId` null: about no day in particular, `rung` null: about no set. */
export type RecordCoachWord = {
  writtenAt: string;
  by: string;
  checkInId: string | null;
  date: string | null;
  rung: string | null;
  side: string | null;
  set: number | null;
  /** The day of the film that they are about, and its moment in seconds. */
  filmedOn: string | null;
  atSeconds: number | null;
  text: string;
  readAt: string | null;
};
export type RecordLimit = {
  id: string;
  rule: HistoryLimit['rule'];
  tissue: Tissue | null;
  region: PainRegion | null;
  side: PainSide | null;
  percent: number | null;
  from: string;
  until: string | null;
  endedAt: string | null;
  who: string;
  words: string;
};
/** A clinician's word as a coach recorded it. */
export type RecordClinicianWord = {
  date: string;
  region: PainRegion | null;
  side: PainSide | null;
  words: string;
  reviewOn: string | null;
  by: string | null;
  clinician?: string | null;
  /** Health question or danger sign of the start that it is about, and whether it allows what that held. */
  told?: string | null;
  lifts?: boolean | null;
};
export type RecordFilm = {
  askedAt: string;
  by: string;
  ladder: string;
  rung: string;
  side: string;
  angle: string;
  byDate: string | null;
  words: string;
  receivedAt: string | null;
  lookedAt: string | null;
  verdict: string | null;
  faults: string[];
};
/** A coach looked; `checkInId` null: at the client as a whole. */
export type RecordSeen = { at: string; by: string; checkInId: string | null };
export type RecordVerdict = { reasonId: string; at: string; by: string; rightToTell: boolean; text: string };
/** One thing told at the start, as it was written. */
export type RecordIntake = { about: string; told: string; completedAt: string | null };
export type RecordConsent = {
  kind: string;
  textVersion: string;
  givenAt: string;
  withdrawnAt: string | null;
  givenBy: string;
};
/** Private to coaches: leaves only where somebody ticked it. */
export type RecordNote = { at: string; by: string; text: string };
export type RecordAbsence = { kind: string; from: string; to: string | null; saidAt: string };

export type ClientRecord = {
  checkIns: RecordCheckIn[];
  sets: RecordSet[];
  pain: RecordPain[];
  dangerSigns: RecordDangerSign[];
  reasons: RecordReason[];
  reasonEvents: RecordReasonEvent[];
  steps: RecordStep[];
  leftAlone: RecordLeftAlone[];
  plans: RecordPlanItem[];
  goals: RecordGoal[];
  assessed: RecordAssessed[];
  startTests: RecordStartTest[];
  placements: RecordPlacement[];
  questions: RecordQuestion[];
  coachWords: RecordCoachWord[];
  absences: RecordAbsence[];
  limits: RecordLimit[];
  clinicianWords: RecordClinicianWord[];
  films: RecordFilm[];
  seen: RecordSeen[];
  verdicts: RecordVerdict[];
  intake: RecordIntake[];
  consents: RecordConsent[];
  notes: RecordNote[];
};
/** Rows in batches, read when their turn comes: the largest table is never held whole. */
export type Batches<Row> = () => AsyncIterable<readonly Row[]>;
export type RecordSource = { [Name in keyof ClientRecord]: Batches<ClientRecord[Name][number]> };
/** One day of the load table. `sessionLoadAu` null: unknown. */
export type LoadDay = {
  date: string;
  state: string;
  sessionLoadAu: number | null;
  tissueLoads: Readonly<Partial<Record<string, number>>>;
};
