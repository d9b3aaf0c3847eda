import { emptyCheckIn } from '#lib/domain/empty-check-in.ts';
import type { Outcome, Subject } from '#lib/domain/finding.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { asSentence, DANGER_SIGN_LABELS, placeInWords } from '#lib/domain/labels.ts';
import { daysBetween } from '#lib/domain/local-date.ts';
import type { DangerSign, PainRegion, PainSide } from '#lib/domain/vocabulary.ts';
import { findingOf } from '../finding-of.ts';
import { oncePerCheckIns } from '../once-per-view.ts';
import { hasClinicianWord, PAIN_DOUBT, painLimit } from '../pain-place.ts';
import { EVERY_OTHER } from '../reasons.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted, dayInWords } from '../words.ts';

const KIND = 'danger-sign';
const START_ID = 'told at the start';
const TINGLING: DangerSign = 'numb-or-tingling';

const checkInsOf = oncePerCheckIns((view) => {
  const all: HistoryCheckIn[] = [];
  for (const { checkIns } of view.days) for (const checkIn of checkIns) all.push(checkIn);
  return all;
});

/** What was told at the start, as a check-in of that day would tell it. */
function atTheStart({ history, asOf }: ClientView): HistoryCheckIn[] {
  const { intakeSigns, zone } = history.client;
  if (!intakeSigns || intakeSigns.date > asOf.date) return [];
  const { date, signs } = intakeSigns;
  return [
    {
      ...emptyCheckIn({ id: START_ID, date, zone, sentAt: `${date}T00:00:00.000Z` }),
      dangerSigns: signs.map(({ sign }) => ({ sign, goneWithinMinute: false, region: null, side: null })),
    },
  ];
}

type Place = { region: PainRegion | null; side: PainSide | null };
type Told = Place & { sign: DangerSign; key: string };

export const dangerSign: Check = {
  kind: KIND,
  title: 'Danger sign',
  question: 'Did the client say yes to a danger sign, and has nobody cleared it?',
  evaluate: (view, limits) => {
    const start = atTheStart(view);
    const checkIns = start.length === 0 ? checkInsOf(view) : [...start, ...checkInsOf(view)];
    const coversFrom = view.days[0]?.date ?? view.asOf.date;
    const everyOther: Outcome = {
      status: 'clear',
      kind: KIND,
      subject: { key: EVERY_OTHER, label: '' },
      coversFrom,
    };
    return [...toldSigns(checkIns).map((told) => judge(view, checkIns, told, limits)), everyOther];
  },
};

function toldSigns(checkIns: readonly HistoryCheckIn[]): Told[] {
  const told = new Map<string, Told>();
  for (const { dangerSigns } of checkIns) {
    for (const { sign, region, side } of dangerSigns) {
      const key = keyOf({ sign, region, side });
      told.set(key, { sign, region, side, key });
    }
  }
  return [...told.values()].sort((a, b) => (a.key < b.key ? -1 : 1));
}

function keyOf({ sign, region, side }: Omit<Told, 'key'>): string {
  return `${sign}:${region ?? 'any'}:${side ?? 'any'}`;
}

function judge(view: ClientView, checkIns: readonly HistoryCheckIn[], told: Told, limits: Limits): Outcome {
  const subject = subjectOf(told);
  const { since, yes, times, lows, over } = episodeOf(view, checkIns, told, limits);
  const latest = yes.at(-1);
  if (!latest || over !== undefined)
    return { status: 'clear', kind: KIND, subject, ...(over !== undefined && { why: over }) };
  // One that lasted stays now until it is closed, also when a passing one comes after it.
  const isToday = (each: HistoryCheckIn) =>
    isPassing(checkIns, each, told, limits) ||
    hasClinicianWord(view, told, { from: each.date, to: view.asOf.date });
  const tier = yes.every(isToday) ? 'today' : 'now';
  const needed = limits['painHigh.clearCheckIns'];
  const clearAt = painLimit(view, 'painHigh.clearAt', limits);
  const gone = tier === 'today' ? ', gone within a minute, for the first time' : '';
  const said = times === 1 ? '' : `, ${times} times since ${dayInWords(since)}`;
  return findingOf(
    {
      kind: KIND,
      subject,
      level: 'act',
      tier,
      sentence: `${asSentence(subject.label)} on **${dayInWords(latest.date)}**${gone}${said}.`,
      short: subject.label,
      since,
      step: {
        kind: 'send-to-clinician',
        text:
          tier === 'today'
            ? 'Ask what brought it on and whether it came back; stop that position until then'
            : 'Stop the work that brings it on; to a licensed clinician before it goes on',
      },
      clears: `${counted(needed, 'check-in')} running without it and with pain of ${clearAt} or less, or a clinician's word recorded`,
      evidence: {
        date: latest.date,
        times,
        lowCheckIns: lows,
        goneWithinMinute: tier === 'today',
        severity: times,
      },
      inputs: [
        { name: 'said yes on', value: latest.date, unit: '' },
        { name: 'check-ins with it', value: times, unit: 'check-ins' },
        { name: `check-ins without it and of ${clearAt} or less since`, value: lows, unit: 'check-ins' },
      ],
      formula:
        'any yes to a danger sign counts; tingling gone within a minute, the first time in 14 days, is today',
      thresholds: ['dangerSign.twiceDays', 'painHigh.clearAt', 'painHigh.clearCheckIns'],
      doubt: PAIN_DOUBT,
    },
    limits,
  );
}

function subjectOf({ sign, region, side, key }: Told): Subject {
  const words = DANGER_SIGN_LABELS[sign];
  const place = region === null ? '' : `, ${placeInWords(region, side)}`;
  return { key, label: `${words}${place}`, ...(region && { region }), ...(side && { side }) };
}

function episodeOf(view: ClientView, checkIns: readonly HistoryCheckIn[], told: Told, limits: Limits) {
  const needed = limits['painHigh.clearCheckIns'];
  const clearAt = painLimit(view, 'painHigh.clearAt', limits);
  let yes: HistoryCheckIn[] = [];
  let since = view.asOf.date;
  let lows = 0;
  for (const checkIn of checkIns) {
    if (checkIn.dangerSigns.some((each) => keyOf(each) === told.key)) {
      if (yes.length === 0 || lows >= needed) [since, yes] = [checkIn.date, []];
      yes.push(checkIn);
      lows = 0;
    } else if (lows < needed) {
      const low = isLow(checkIn, told, clearAt);
      if (low !== undefined) lows = low ? lows + 1 : 0;
    }
  }
  const latest = yes.at(-1);
  const word =
    latest &&
    (hasClinicianWord(view, told, { from: latest.date, to: view.asOf.date }) ||
      (latest.id === START_ID && isSpokenOf(view, told)));
  const calm = lows >= needed ? `${counted(needed, 'check-in')} of ${clearAt} or less` : undefined;
  return { since, yes, times: yes.length, lows, over: word ? "a clinician's word" : calm };
}

/** A word of a clinician about this sign of the start: it says nothing about the same sign in a check-in after it. */
function isSpokenOf({ history, asOf }: ClientView, told: Told): boolean {
  const { signs = [] } = history.client.intakeSigns ?? {};
  return signs.some(({ sign, wordOn }) => sign === told.sign && wordOn !== null && wordOn <= asOf.date);
}

/** Undefined when the check-in says nothing about the place. */
function isLow(checkIn: HistoryCheckIn, { region, side }: Place, clearAt: number): boolean | undefined {
  if (checkIn.dangerSigns.length > 0) return false;
  const said = checkIn.pain.filter(
    (pain) =>
      pain.kind === 'joint' &&
      (region === null || pain.region === region) &&
      (side === null || pain.side === side),
  );
  if (said.length === 0) return checkIn.nothingHurts ? true : undefined;
  return said.every((pain) => pain.value <= clearAt);
}

/** Tingling gone within a minute and not told in another check-in of the 14 days before. Any doubt counts as lasting. */
function isPassing(
  checkIns: readonly HistoryCheckIn[],
  said: HistoryCheckIn,
  told: Told,
  limits: Limits,
): boolean {
  const tingling = (checkIn: HistoryCheckIn) => checkIn.dangerSigns.filter((each) => each.sign === TINGLING);
  if (told.sign !== TINGLING || !tingling(said).every((each) => each.goneWithinMinute)) return false;
  return !checkIns.some(
    (checkIn) =>
      checkIn.id !== said.id &&
      tingling(checkIn).length > 0 &&
      Math.abs(daysBetween(checkIn.date, said.date)) <= limits['dangerSign.twiceDays'],
  );
}
