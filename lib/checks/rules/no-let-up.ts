import type { Fact, Outcome, Subject } from '#lib/domain/finding.ts';
import { coldStart } from '../cold-start.ts';
import { reaches } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { daysWithoutRest, hardDayPairs, lastKnownDay, monotonous } from '../no-let-up-causes.ts';
import type { LimitId, Limits } from '../thresholds.ts';
import { TISSUE_LABELS } from '../tissues.ts';
import type { Check, ClientView } from '../types.ts';
import { counted, dayInWords, plainNumber } from '../words.ts';

const SUBJECT: Subject = { key: 'rest', label: '' };

/**
 * No let-up in three forms: no rest day in 14 known days (7 under 18), hard days following each other twice in 14 days,
 * or days all alike (monotony, Foster 1998) with more load than usual. One reason a client. Own rule.
 */
export const noLetUp: Check = {
  kind: 'no-let-up',
  title: 'No let-up',
  question: 'Has this client had no rest day, hard days back to back, or days that are all alike?',
  evaluate: (view, limits) => [judge(view, limits)],
};

type Cause = {
  words: string;
  short: string;
  from: number;
  facts: Fact[];
  evidence: Record<string, number | string>;
  ids: LimitId[];
};

function judge(view: ClientView, limits: Limits): Outcome {
  const { under18 } = view.history.client;
  const early = coldStart(view, 'no-let-up', SUBJECT, limits);
  if (early && !under18) return early;
  const rest = withoutRest(view, limits);
  const causes = [rest, ...(early ? [] : [hardDays(view, limits), alike(view, limits)])].filter(
    (cause) => cause !== undefined,
  );
  if (causes.length > 0) return raised(view, causes, limits);
  if (early) return early;
  return { status: 'clear', kind: 'no-let-up', subject: SUBJECT, lowerBound: !isAllKnown(view, limits) };
}

/** An effort that was not told, and days after the last check-in, may hide hard days: they clear nothing. */
function isAllKnown(view: ClientView, limits: Limits): boolean {
  const fortnight = view.days.slice(-limits['noLetUp.hardDays']);
  const told = fortnight.every((day) => day.state !== 'trained' || day.sessionLoad !== undefined);
  return told && fortnight.at(-1)?.state !== 'unknown';
}

function withoutRest(view: ClientView, limits: Limits): Cause | undefined {
  const id: LimitId = view.history.client.under18 ? 'noLetUp.restDaysUnder18' : 'noLetUp.restDays';
  const days = daysWithoutRest(view, limits);
  if (!reaches(days, limits[id])) return undefined;
  return {
    words: `**${counted(days, 'training day')} in a row** without one of rest`,
    short: `${days} days without rest`,
    from: lastKnownDay(view) - days + 1,
    facts: [{ name: 'training days in a row, all known', value: days, unit: 'days' }],
    evidence: { daysWithoutRest: days },
    ids: [id, 'noLetUp.lightShare'],
  };
}

function hardDays(view: ClientView, limits: Limits): Cause | undefined {
  const found = hardDayPairs(view, limits);
  if (!found || !reaches(found.pairs, limits['noLetUp.hardPairs'])) return undefined;
  const place = TISSUE_LABELS[found.tissue];
  return {
    words: `**hard days back to back ${found.pairs} times** in 14 days, for ${place}`,
    short: 'hard days back to back',
    from: found.from,
    facts: [{ name: `pairs of hard days, ${place}`, value: found.pairs, unit: 'pairs' }],
    evidence: { hardPairs: found.pairs, tissues: found.tissue },
    ids: ['noLetUp.hardTissue', 'noLetUp.hardSession', 'noLetUp.hardPairs', 'noLetUp.hardDays'],
  };
}

function alike(view: ClientView, limits: Limits): Cause | undefined {
  const value = monotonous(view, limits);
  if (value === undefined) return undefined;
  const days = limits['noLetUp.monotonyDays'];
  const shown = Number.isFinite(value) ? plainNumber(value) : 'every day the same';
  return {
    words: `**${days} days much alike** (monotony ${shown}) with more load than usual`,
    short: 'days all alike',
    from: lastKnownDay(view) - days + 1,
    facts: [{ name: `monotony over ${days} days`, value: shown, unit: '' }],
    evidence: { monotony: shown },
    ids: ['noLetUp.monotony', 'noLetUp.monotonyDays', 'noLetUp.monotonyLoad'],
  };
}

function raised(view: ClientView, causes: Cause[], limits: Limits): Outcome {
  const from = Math.min(...causes.map((cause) => cause.from));
  const since = view.days[Math.max(0, from)]?.date ?? view.asOf.date;
  const [first, ...others] = causes.map((cause) => cause.words);
  const words = [first, ...others.map((other) => other.replaceAll('**', ''))].join('; ');
  return findingOf(
    {
      kind: 'no-let-up',
      subject: SUBJECT,
      level: 'watch',
      sentence: `No let-up: ${words}; since ${dayInWords(since)}.`,
      short: causes[0]?.short ?? 'no let-up',
      since,
      step: { kind: 'cut-volume', text: 'Put in a rest day, and a light day between hard ones' },
      clears: 'A day of rest, hard days apart, days that differ.',
      evidence: Object.assign({}, ...causes.map((cause) => cause.evidence)),
      inputs: causes.flatMap((cause) => cause.facts),
      formula:
        'Training days over a third of the median one in a row; days with a tissue over 1.2 and the session over 1.25 times their medians of 8 weeks; mean over population standard deviation of daily load.',
      thresholds: causes.flatMap((cause) => cause.ids),
      doubt:
        'A session that was not written down looks like a rest day. Limits for monotony are often quoted; the study behind it found own limits for each athlete.',
    },
    limits,
  );
}
