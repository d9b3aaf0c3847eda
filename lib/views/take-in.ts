import { momentAsSaid } from './phone-dates.ts';
import { exactDate } from './say-date.ts';

const WORDS: Readonly<Record<string, readonly [one: string, many: string]>> = {
  check_in: ['check-in', 'check-ins'],
  check_in_set: ['set', 'sets'],
  pain_score: ['pain score', 'pain scores'],
  danger_sign_told: ['danger sign', 'danger signs'],
  plan: ['plan version', 'plan versions'],
  placement: ['place on a ladder', 'places on ladders'],
  limit_rule: ['limit', 'limits'],
  clinician_word: ['clinician’s word', 'clinicians’ words'],
  question: ['question', 'questions'],
  answer: ['answer', 'answers'],
  coach_word: ['word of a coach', 'words of coaches'],
  reason: ['reason', 'reasons'],
  reason_event: ['event of a reason', 'events of reasons'],
  step_taken: ['step taken', 'steps taken'],
  step_outcome: ['outcome of a step', 'outcomes of steps'],
  assessment: ['assessment', 'assessments'],
  absence: ['absence', 'absences'],
  film_request: ['film asked for', 'films asked for'],
  clip: ['film, without its file', 'films, without their files'],
  question_still: ['picture', 'pictures'],
  set_verdict: ['set seen on film', 'sets seen on film'],
  private_note: ['private note', 'private notes'],
  consent: ['consent given elsewhere', 'consents given elsewhere'],
  goal: ['goal', 'goals'],
  guardian: ['parent or guardian', 'parents or guardians'],
};
/** Said first, in this order; the rest together. */
const SHOWN = Object.keys(WORDS);

/** "212 check-ins", "1 limit": what a pack carries, the largest matters first; rows that nobody counts are one sum. */
export function packCounts(rows: Readonly<Record<string, number>>): string[] {
  const said = SHOWN.flatMap((table) => {
    const count = rows[table];
    return count ? [countOf(table, count)] : [];
  });
  const rest = Object.entries(rows).reduce(
    (sum, [table, count]) => (SHOWN.includes(table) || table === 'client' ? sum : sum + count),
    0,
  );
  return rest > 0 ? [...said, `${rest} more rows: plan lines, seen marks, standings and the like`] : said;
}

function countOf(table: string, count: number): string {
  const [one, many] = WORDS[table] ?? ['row', 'rows'];
  return `${count} ${count === 1 ? one : many}`;
}

/** "3 sets: what they belong to is not in the pack". */
export function leftOutLine({ table, rows, why }: { table: string; rows: number; why: string }): string {
  return `${WORDS[table] ? countOf(table, rows) : `${rows} rows of ${table.replaceAll('_', ' ')}`}: ${why}`;
}

/** What becomes of a ladder of the pack. */
export function ladderLine(ladder: {
  name: string;
  own: { name: string } | null;
  why: string;
  otherMarks: readonly string[];
}): string {
  if (!ladder.own) return `Brought in as a ladder of its own: ${ladder.why}.`;
  const same =
    ladder.own.name === ladder.name ? 'Your own ladder of this name.' : `Your own ${ladder.own.name}.`;
  if (ladder.otherMarks.length === 0) return same;
  return `${same} Your pass mark counts from now on for: ${ladder.otherMarks.join(', ')}.`;
}

/** The days that a pack covers. */
export function packPeriod({ from, to }: { from: string | null; to: string }): string {
  return from === null ? `from the first day to ${exactDate(to)}` : `${exactDate(from)} to ${exactDate(to)}`;
}

const CONSENT_WORDS: Readonly<Record<string, string>> = {
  'health-data': 'keeping health data',
  'share-with-next-coach': 'handing the record on',
};

type Consent = { kind: string; toTeam: string; givenOn: string; withdrawnOn: string | null };

/** A consent that was given to another team. */
export function elsewhereLine({ kind, toTeam, givenOn, withdrawnOn }: Consent): string {
  const back = withdrawnOn ? `, not in force since ${exactDate(withdrawnOn)}` : '';
  return `${CONSENT_WORDS[kind] ?? kind}, to ${toTeam} on ${exactDate(givenOn)}${back}`;
}

/** Where a client came from, and what was agreed there. */
export function cameFromLines(
  came: {
    team: string;
    by: string;
    at: Date;
    consents: readonly { kind: string; toTeam: string; givenAt: Date; withdrawnAt: Date | null }[];
  },
  zone: string,
  now: Date,
): string[] {
  const day = (at: Date) => at.toISOString().slice(0, 10);
  const given = came.consents.map((one) =>
    elsewhereLine({
      kind: one.kind,
      toTeam: one.toTeam,
      givenOn: day(one.givenAt),
      withdrawnOn: one.withdrawnAt && day(one.withdrawnAt),
    }),
  );
  return [
    `Came from ${came.team} with a pack, taken in ${momentAsSaid(came.at, zone, now)} by ${came.by}.`,
    ...(given.length > 0 ? [`Agreed to before, which allows nothing here: ${given.join('; ')}.`] : []),
  ];
}
