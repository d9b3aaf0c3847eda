import { counted } from '#lib/checks/words.ts';
import { daysBetween } from '#lib/domain/local-date.ts';
import { isInForce } from '#lib/planning/limit-on-item.ts';
import { limitInWords, untilInWords } from '#lib/views/limit-lines.ts';
import { planItemInWords } from '#lib/views/plan-words.ts';
import { STANDING_LABELS } from '#lib/views/standing-labels.ts';
import type { Block } from './blocks.ts';
import { consentInWords } from './consent-words.ts';
import { draftSummary } from './draft.ts';
import type { ReportInput } from './input.ts';
import { loadBars } from './load-section.ts';
import { day, dayOf, heading, list, number, table, text } from './say.ts';
import { sorePlaces } from './sore-places.ts';
import { triedLines } from './tried.ts';

const OPEN_SHOWN = 5;
const PLACES_SHOWN = 4;
const TRIED_SHOWN = 4;

/** The first page: who, when, why, how they are, what is planned, open and sore, what was tried, and the cautions. */
export function firstPage(input: ReportInput): Block[] {
  const { history, about, words } = input;
  return [
    heading(1, `Handover of ${history.client.name}`),
    { kind: 'facts', facts: factsOf(input) },
    heading(2, "Coach's summary"),
    ...(words.summary
      ? [text(words.summary, 'own-words'), text(`Written by ${about.madeBy}.`, 'small')]
      : [
          text(draftSummary(input).join(' ')),
          text('Computed from the findings; no coach has written a summary.', 'small'),
        ]),
    heading(2, 'Open matters'),
    ...openMatters(input),
    heading(2, 'Current plan'),
    ...planLines(input),
    heading(2, 'Pain by region'),
    painTable(input),
    heading(2, 'Load'),
    loadBars(input),
    heading(2, 'What was tried, and whether it was better since'),
    ...triedShort(input),
    cautions(),
  ];
}

function factsOf(input: ReportInput): { name: string; text: string }[] {
  const { history, about, words, period, made, days } = input;
  const { client } = history;
  const length = daysBetween(period.from, period.to) + 1;
  const known = days.filter((one) => one.state === 'trained' || one.state === 'rest').length;
  const who = [
    about.birthYear === null ? '' : `born ${about.birthYear}`,
    client.under18 ? 'under 18' : '',
    STANDING_LABELS[client.standing],
    client.joinedAt
      ? `with ${about.team} since ${dayOf(client.joinedAt, client.zone)}`
      : `with ${about.team}`,
    `coach ${about.coach}`,
    `zone ${client.zone}`,
  ];
  return [
    { name: 'Who', text: `${client.name}; ${who.filter(Boolean).join(', ')}` },
    { name: 'Wants', text: about.goal || 'not written down' },
    {
      name: 'Period',
      text: `${day(period.from)} to ${day(period.to)}; check-ins on ${known} of ${length} days`,
    },
    {
      name: 'For',
      text: `${words.forWhom || 'nobody is named'}. Why: ${words.why || 'no reason is written'}`,
    },
    {
      name: 'Made',
      text: `${made.toISOString().slice(0, 16).replace('T', ' ')} UTC by ${about.madeBy}, ${about.team}`,
    },
    { name: 'Consent', text: consentInWords(input) },
  ];
}

function openMatters(input: ReportInput): Block[] {
  const { record, history, view, today } = input;
  const { zone } = history.client;
  const plan = view.planOn(today);
  const lines = [
    ...record.reasons
      .filter((one) => one.closedAt === null)
      .map(
        (one) =>
          `${one.sentence.replace(/[.\s]+$/, '')} (since ${day(one.since)}). Proposed: ${one.proposedStep || 'nothing'}.`,
      ),
    ...record.limits
      .filter((one) => isInForce(one, today) && one.endedAt === null)
      .map((one) => `Limit: ${limitInWords(one)} ${untilInWords(one, today)}, said by ${one.who}.`),
    ...record.questions
      .filter((one) => one.answeredAt === null)
      .map((one) => `Question without an answer, ${dayOf(one.askedAt, zone)}: “${one.text}”`),
    ...record.films
      .filter((one) => one.lookedAt === null)
      .map(
        (one) =>
          `Film ${one.receivedAt ? 'waits to be looked at' : 'asked for'}: ${one.rung}, ${one.angle}, ${dayOf(one.askedAt, zone)}.`,
      ),
    ...(plan?.until ? [`Plan version ${plan.version} ends ${day(plan.until)}.`] : []),
    ...record.absences
      .filter((one) => one.to === null || one.to >= today)
      .map((one) => `Away (${one.kind}) from ${day(one.from)}${one.to ? ` to ${day(one.to)}` : ''}.`),
  ];
  if (lines.length === 0) return [text('Nothing is open: no reason, question, film, limit or absence.')];
  const more = lines.length - OPEN_SHOWN;
  return list([
    ...lines.slice(0, OPEN_SHOWN),
    ...(more > 0 ? [`And ${more} more: see “Reasons”, “Limits” and “Questions”.`] : []),
  ]);
}

function planLines({ history, view, today }: ReportInput): Block[] {
  const plan = view.planOn(today) ?? [...history.plans].sort((a, b) => b.version - a.version)[0];
  if (!plan) return [text('No plan is written.')];
  const sessions = [...new Set(plan.items.map((item) => item.session))];
  const end = plan.until === null ? 'open' : `last day ${day(plan.until)}`;
  return [
    text(
      `Version ${plan.version}, from ${day(plan.from)}, ${end}, ${counted(plan.sessionsPerWeek, 'session')} a week. Why: ${plan.why || 'not written'}`,
    ),
    ...list(
      sessions.map((name) => {
        const items = plan.items.filter((item) => item.session === name);
        return `Session ${name}: ${items.map((item) => planItemInWords({ ...item, stopRule: '' }, view.rungs.get(item.rungId))).join('; ')}`;
      }),
    ),
  ];
}

function painTable(input: ReportInput): Block {
  const places = sorePlaces(input);
  if (places.length === 0) return text('No joint or tendon pain above 0 was told in the period.');
  const more = places.length - PLACES_SHOWN;
  return table(
    'Joint or tendon pain, 0-10',
    'pain.csv',
    ['Place', 'First told', 'Newest#', 'On', 'Highest in 28 days#', 'Highest#', 'On'],
    places
      .slice(0, PLACES_SHOWN)
      .map((place) => [
        place.name,
        day(place.since),
        number(place.last.value),
        day(place.last.date),
        place.recent === null ? 'not told' : number(place.recent),
        number(place.highest.value),
        day(place.highest.date),
      ]),
    more > 0 ? `And ${counted(more, 'more place')}, in “Pain”.` : undefined,
  );
}

function triedShort(input: ReportInput): Block[] {
  const lines = triedLines(input);
  if (lines.length === 0) return [text('No step is on record.')];
  const more = lines.length - TRIED_SHOWN;
  return list([
    ...lines.slice(0, TRIED_SHOWN),
    ...(more > 0 ? [`And ${more} earlier, in “Steps taken”.`] : []),
  ]);
}

/** What holds for every reader. */
export function cautions(): Block {
  return {
    kind: 'caution',
    lines: [
      'This report informs a coach or a clinician. It does not diagnose, and it does not estimate the chance of an injury; no number in it is a promise of safety.',
      'Pain of 6 or more, pain at rest or at night, numbness or tingling, weakness, swelling, a fall or a pop, dizziness or trouble seeing: stop that work and see a licensed clinician. Chest pain, fainting or breath out of proportion, a whole arm swollen, heavy or blue, a sudden worst headache, flashes or a curtain in the eye, a hot swollen joint with fever: at once. Local rules on who may advise come first.',
      'An empty cell is unknown, never zero.',
    ],
  };
}
