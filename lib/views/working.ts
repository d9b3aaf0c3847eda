import type { Working } from '#lib/domain/finding.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { KIND_WORDS } from './board-words.ts';
import { exactDate, saidDate } from './say-date.ts';

export type WorkingView = {
  title: string;
  since: string;
  inputs: { name: string; said: string }[];
  formula: string;
  thresholds: { id: string; meaning: string; said: string; source: string }[];
  days: string;
  doubt: string;
};

type Told = {
  kind: CheckKind;
  since: string;
  closedAt: string | null;
  closedWhy: string | null;
  subject: { label: string };
  working: Working;
};

/** A reason opened to its working: every number that went in, the formula in words, each threshold and its source. */
export function workingView(reason: Told, about: { today: Date; zone: string }): WorkingView {
  const { working } = reason;
  const today = localDateOf(about.today, about.zone);
  const { daysKnown } = working;
  return {
    title: [asSentence(KIND_WORDS[reason.kind]), reason.subject.label].filter(Boolean).join(', '),
    since: `since ${saidDate(reason.since, today)} (${exactDate(reason.since)})${closedInWords(reason)}`,
    inputs: working.inputs.map(({ name, value, unit }) => ({
      name: asSentence(name),
      said: withUnit(value, unit),
    })),
    formula: asSentence(working.formula),
    thresholds: working.thresholds.map(({ id, value, unit, meaning, source }) => ({
      id,
      meaning: asSentence(meaning),
      said: withUnit(value, unit),
      source,
    })),
    days: daysKnown ? `${daysKnown.known} of ${daysKnown.of} days are known.` : 'It does not count days.',
    doubt: working.doubt,
  };
}

function withUnit(value: number | string, unit: string): string {
  const said = typeof value === 'number' ? String(Math.round(value * 1000) / 1000) : value;
  return unit === '' || unit === 'no unit' ? said : `${said} ${unit}`;
}

function closedInWords(reason: Told): string {
  if (reason.closedAt === null) return '';
  return `, closed${reason.closedWhy ? `: ${reason.closedWhy}` : ''}`;
}
