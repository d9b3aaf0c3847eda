import type { Fact, Flagged, Working } from '#lib/domain/finding.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { KIND_WORDS } from '../board-words.ts';
import { datedDay, exactDate, saidDate } from '../say-date.ts';
import { daysInWords } from './days-said.ts';
import { isOfLoad, LOAD_CRITICISM } from './load-criticism.ts';
import { type Ruler, rulerOf } from './ruler.ts';

export type WorkingView = {
  title: string;
  since: string;
  ruler: Ruler | undefined;
  /** What would clear it, as a sentence. */
  clears: string;
  inputs: { name: string; said: string }[];
  /** What loaded the place, largest first; empty: nothing did, or it is not about a place. */
  loaded: { name: string; said: string }[];
  formula: string;
  thresholds: { id: string; meaning: string; said: string; source: string }[];
  days: string;
  doubt: string;
  /** Under which numbers and rules it was raised or last changed. */
  under: string;
  /** On reasons of load: the published criticism of its ratios. */
  criticism: typeof LOAD_CRITICISM | undefined;
};

type Told = {
  kind: CheckKind;
  since: string;
  closedAt: string | null;
  closedWhy: string | null;
  clears: string;
  subject: { label: string };
  evidence: Flagged['evidence'];
  working: Working;
  settingsVersion: number;
  rulesVersion: string;
};

const DATE = /^\d{4}-\d{2}-\d{2}$/;

/** A reason opened to its working: every number that went in, the formula in words, each threshold and its source. */
export function workingView(reason: Told, about: { today: Date; zone: string }): WorkingView {
  const { working, kind } = reason;
  const today = localDateOf(about.today, about.zone);
  const said = ({ name, value, unit }: Fact) => ({
    name: asSentence(name),
    said: inWords(value, unit, today),
  });
  return {
    title: [asSentence(KIND_WORDS[kind]), reason.subject.label].filter(Boolean).join(', '),
    since: `since ${saidDate(reason.since, today)} (${exactDate(reason.since)})${closedInWords(reason)}`,
    clears: asSentence(reason.clears.replace(/\.?$/, '.')),
    ruler: rulerOf(kind, reason.evidence, working.thresholds),
    inputs: working.inputs.filter((fact) => !isOfDrills(fact)).map(said),
    loaded: working.inputs.filter(isOfDrills).map(againstUsual).map(said),
    formula: asSentence(working.formula),
    thresholds: working.thresholds.map(({ id, value, unit, meaning, source }) => ({
      id,
      meaning: asSentence(meaning),
      said: inWords(value, unit, today),
      source,
    })),
    days: daysInWords(kind, working.daysKnown),
    doubt: working.doubt,
    under: `${reason.settingsVersion === 0 ? 'By the defaults' : `By version ${reason.settingsVersion} of the team’s numbers`}, rules of ${reason.rulesVersion}.`,
    criticism: isOfLoad(kind) ? LOAD_CRITICISM : undefined,
  };
}

/** What drills loaded: named by the pain checks with the days they were counted over, by load jumps against usual. */
function isOfDrills({ unit, name }: Fact): boolean {
  return (
    /^BW s( in \d+ days)?$/.test(unit) && (unit !== 'BW s' || / against usual |usual fortnight/.test(name))
  );
}

/** "Neck, 7 days against usual 120" and 300 as "Neck" and "300 BW s in 7 days, usual 120". */
function againstUsual(fact: Fact): Fact {
  const found = /^(.+), (\d+ days) against usual (\S+)$/.exec(fact.name);
  return found
    ? { ...fact, name: found[1] ?? '', unit: `${fact.unit} in ${found[2]}, usual ${found[3]}` }
    : fact;
}

function inWords(value: number | string, unit: string, today: string): string {
  if (typeof value === 'string' && DATE.test(value)) return datedDay(value, today);
  const said = typeof value === 'number' ? inFigures(value) : value;
  return unit === '' || unit === 'no unit' ? said : `${said} ${unit}`;
}

/** At most three decimals, a comma between thousands: 1,872. */
function inFigures(value: number): string {
  const [before = '', after] = String(Math.round(value * 1000) / 1000).split('.');
  const grouped = before.replace(/\B(?=(\d{3})+$)/g, ',');
  return after === undefined ? grouped : `${grouped}.${after}`;
}

function closedInWords(reason: Told): string {
  if (reason.closedAt === null) return '';
  return `, closed${reason.closedWhy ? `: ${reason.closedWhy}` : ''}`;
}
