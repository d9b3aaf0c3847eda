import { daysHere, isAwayAsNew, newStartAt } from '#lib/checks/new-start.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import { isTissue } from '#lib/checks/tissues.ts';
import type { ClientView } from '#lib/checks/types.ts';
import type { Flagged, Subject } from '#lib/domain/finding.ts';
import { asSentence, MEASURE_UNITS } from '#lib/domain/labels.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import type { Tissue } from '#lib/domain/vocabulary.ts';
import { type ClientAxis, clientAxis } from './client-axis.ts';
import { clientHeadline } from './client-headline.ts';
import { type LadderRung, type LaddersView, ladderPanels } from './client-ladders.ts';
import { type LoadView, loadView } from './client-load.ts';
import { type PainView, painView } from './client-pain.ts';
import { type PairPanel, pairPanels } from './client-pairs.ts';
import { clientReadings, type Readings } from './client-readings.ts';
import { type ReasonsView, reasonsView } from './client-reasons.ts';
import { type TimelineEntry, timeline } from './client-timeline.ts';
import { type WindowPanel, windowPanels } from './client-window.ts';
import { laddersInSentences, nowInPhrases } from './headline-facts.ts';
import { clockTime, monthAndYear, placeOfZone } from './local-time.ts';
import { saidDate, shortDate } from './say-date.ts';
import { STANDING_LABELS } from './standing-labels.ts';
import type { SeenBy } from './timeline-words.ts';

type Reason = Parameters<typeof reasonsView>[0][number] & {
  subject: Subject;
  /** Names the tissues of a load jump: these are drawn first. */
  evidence?: Flagged['evidence'];
};
export type ClientPageInput = {
  view: ClientView;
  limits: Limits;
  reasons: readonly Reason[];
  /** Of the ladders the client stands on. */
  ladderRungs: readonly LadderRung[];
  seen: readonly SeenBy[];
  /** Check-ins that the client took back. */
  deleted?: Parameters<typeof timeline>[0]['deleted'];
  /** Check-ins as they were sent before a correction. */
  corrected?: Parameters<typeof timeline>[0]['corrected'];
  /** What coaches wrote on check-ins. */
  words?: Parameters<typeof timeline>[0]['words'];
  goal: string;
  now: Date;
};
export type PlanSummary = { version: number; inForce: string; sessions: { name: string; lines: string[] }[] };
export type ClientPage = {
  id: string;
  name: string;
  /** The client's own date. */
  today: string;
  about: string;
  /** Away for twelve weeks and more, or back from it in the last four. */
  startsAnew: boolean;
  headline: [string, string];
  reasons: ReasonsView;
  axis: ClientAxis;
  ladders: LaddersView;
  load: LoadView;
  pain: PainView;
  pairs: PairPanel[];
  windows: WindowPanel[];
  /** What each chart says of each day, for the reading line. */
  readings: Readings;
  timeline: TimelineEntry[];
  plan: PlanSummary | null;
};

const KNOWN_OF_DAYS = 28;

/** Everything the client page shows, from one view of the history. */
export function clientPage(input: ClientPageInput): ClientPage {
  const { view, now } = input;
  const { client } = view.history;
  const today = localDateOf(now, client.zone);
  const axis = clientAxis(view);
  const subjects = input.reasons.map((reason) => reason.subject);
  const ladders = ladderPanels(view, axis, { allRungs: input.ladderRungs, limits: input.limits });
  const load = loadView(view, input.reasons.flatMap(tissuesNamed), input.limits);
  const pain = painView(view, axis);
  const pairs = pairPanels(
    view,
    axis,
    subjects.flatMap((subject) => (subject.rungId ? [subject.rungId] : [])),
  );
  const windows = windowPanels(view, axis, input.limits);
  const recent = view.days.filter((day) => day.date > addDays(view.asOf.date, -KNOWN_OF_DAYS));
  return {
    id: client.id,
    name: client.name,
    today,
    about: aboutLine(input, today),
    startsAnew: isAwayAsNew(view) || (newStartAt(view) > 0 && daysHere(view) <= KNOWN_OF_DAYS),
    headline: clientHeadline({
      name: client.name,
      reasons: input.reasons,
      daysKnown: recent.filter((day) => day.state !== 'unknown').length,
      checkIns: view.history.checkIns.length,
      standingAs: client.standing,
      now: nowInPhrases(view, load.panels[0]),
      ladders: laddersInSentences(view, input.limits),
    }),
    reasons: reasonsView(input.reasons, today),
    axis,
    ladders,
    load,
    pain,
    pairs,
    windows,
    readings: clientReadings(view, axis, {
      ladders: ladders.panels,
      load: load.panels,
      pain,
      pairs,
      windows,
    }),
    timeline: timeline({
      checkIns: view.history.checkIns,
      deleted: input.deleted,
      corrected: input.corrected,
      rungs: view.rungs,
      seen: input.seen,
      words: input.words,
      today,
    }),
    plan: planSummary(view, today),
  };
}

/** Tissues that a reason is about: its subject's, or those its evidence names ("wrist-back:left,neck:both"). */
function tissuesNamed({ subject, evidence }: Reason): Tissue[] {
  const named = String(evidence?.tissues ?? '').split(',');
  const ofEvidence = named.map((one) => one.split(':')[0]).filter(isTissue);
  return subject.tissue ? [subject.tissue, ...ofEvidence] : ofEvidence;
}

function aboutLine(input: ClientPageInput, today: string): string {
  const { client, checkIns } = input.view.history;
  const last = [...checkIns].sort((a, b) => a.sentAt.localeCompare(b.sentAt)).at(-1);
  const since = client.joinedAt ?? client.invitedAt;
  return [
    input.goal,
    client.standing === 'in-training' ? '' : asSentence(STANDING_LABELS[client.standing]),
    client.under18 ? 'Under 18' : '',
    since ? `With you since ${monthAndYear(localDateOf(new Date(since), client.zone))}` : '',
    `${placeOfZone(client.zone)}, ${clockTime(input.now, client.zone)} there`,
    last
      ? `Checked in ${saidDate(last.date, today)}, ${clockTime(last.sentAt, client.zone)}`
      : 'No check-in yet',
  ]
    .filter(Boolean)
    .map((part) => part.replace(/\.$/, ''))
    .join('. ')
    .concat('.');
}

function planSummary(view: ClientView, today: string): PlanSummary | null {
  const newest = [...view.history.plans].sort((a, b) => b.version - a.version)[0];
  const plan = view.planOn(today) ?? newest;
  if (!plan) return null;
  const names = [...new Set(plan.items.map((item) => item.session))];
  const until = plan.until === null ? ', open' : `, last day ${shortDate(plan.until)}`;
  return {
    version: plan.version,
    inForce: `${plan.from > today ? 'From' : 'In force since'} ${shortDate(plan.from)}${until}.`,
    sessions: names.map((name) => ({
      name,
      lines: plan.items
        .filter((item) => item.session === name)
        .map((item) => {
          const rung = view.rungs.get(item.rungId);
          const unit = rung ? MEASURE_UNITS[rung.measure] : '';
          const dose =
            item.target === null
              ? `${item.minutes ?? 0} min`
              : `${item.sets} x ${item.target}${unit ? ` ${unit}` : ''}`;
          return `${rung?.name ?? 'a drill'}${item.side === 'both' ? '' : `, ${item.side}`}: ${dose}, ${item.timesPerWeek} a week`;
        }),
    })),
  };
}

/** The last day the page shows: yesterday, or today once the client has checked in today. */
export function pageDate(checkInDates: readonly string[], today: string): string {
  const yesterday = addDays(today, -1);
  return checkInDates.some((date) => date === today) ? today : yesterday;
}
