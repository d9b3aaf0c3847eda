import { asPercent, counted } from '#lib/checks/words.ts';
import { GROUND_LABELS } from '#lib/domain/labels.ts';
import { daysBetween, localDateOf } from '#lib/domain/local-date.ts';
import { median } from '#lib/stats/median.ts';
import { answeringInWords } from '#lib/views/replies/answering-words.ts';
import type { Block } from './blocks.ts';
import type { ReportInput } from './input.ts';
import { day, dayOf, heading, number, table, tableOr, text } from './say.ts';

const LATE_DAYS = 2;
const HEALTH =
  'What is not in this list was not told: ask about other sports and work, past injuries and surgery, medicines, and the health questions of upside-down work (eye pressure or retina, blood pressure not under control, heart or vessels, recent surgery or concussion, stroke or aneurysm, neck, seizures, blood thinners, brittle bones, hiatal hernia, pregnancy).';

/** How to speak with the client, kit and days, health and life as told, and how far the log can be trusted. */
export function lifeSection(input: ReportInput): Block[] {
  return [
    heading(2, 'Speaking with the client'),
    ...(input.words.manner
      ? [text(input.words.manner, 'own-words'), text(`Written by ${input.about.madeBy}.`, 'small')]
      : [
          text(
            'Nobody wrote how they like to be spoken to, in what language, or what was promised: ask the coach.',
          ),
        ]),
    text(contact(input)),
    heading(2, 'Life, health and kit, as told at the start'),
    intakeTable(input),
    text(HEALTH, 'small'),
    absences(input),
    heading(2, 'How far the log can be trusted'),
    logTable(input),
    heading(2, 'Consents'),
    consents(input),
  ];
}

function contact({ record, history, about }: ReportInput): string {
  const { zone } = history.client;
  const hours = record.questions
    .filter((one) => one.answeredAt !== null)
    .map((one) => (Date.parse(one.answeredAt ?? '') - Date.parse(one.askedAt)) / 3_600_000);
  const middle = median(hours);
  return [
    `Zone ${zone}.`,
    `${about.team}: ${answeringInWords(history.answering)}`.replace(/([^.])$/, '$1.'),
    `${counted(record.questions.length, 'question')} in the period${middle === undefined ? '' : `, answered after ${Math.round(middle)} hours in the median`}.`,
    about.usualSessionMinutes === null ? '' : `A usual session takes ${about.usualSessionMinutes} minutes.`,
  ]
    .filter(Boolean)
    .join(' ');
}

function intakeTable({ record, history }: ReportInput): Block {
  const grounds = new Map<string, number>();
  for (const { ground } of history.checkIns) {
    if (ground) grounds.set(GROUND_LABELS[ground], (grounds.get(GROUND_LABELS[ground]) ?? 0) + 1);
  }
  const trained = [...grounds].sort(([, a], [, b]) => b - a).map(([ground, count]) => `${ground} ${count}`);
  return tableOr(
    'nothing was written down.',
    table(
      'Told at the start',
      'told_at_the_start.csv',
      ['About', 'Told'],
      record.intake.map((row) => [
        row.about.replaceAll(/([a-z])([A-Z])/g, '$1 $2'),
        row.told === '[]' ? 'none' : row.told,
      ]),
      trained.length > 0 ? `Ground in check-ins, with counts: ${trained.join(', ')}.` : undefined,
    ),
  );
}

function absences({ record }: ReportInput): Block {
  return tableOr(
    'none was told in the period.',
    table(
      'Days away',
      'absences.csv',
      ['Kind', 'From', 'Last day'],
      record.absences.map((one) => [one.kind, day(one.from), one.to === null ? 'open' : day(one.to)]),
    ),
  );
}

function logTable({ record, history, days, period }: ReportInput): Block {
  const length = daysBetween(period.from, period.to) + 1;
  const known = days.filter((one) => one.state === 'trained' || one.state === 'rest').length;
  const taken = days.filter((one) => one.state === 'taken-as-rest').length;
  const sets = history.checkIns.flatMap((one) => one.sets);
  const asPlanned = sets.filter((set) => set.how === 'as-planned').length;
  const { zone } = history.client;
  const late = record.checkIns.filter(
    (one) => daysBetween(one.date, localDateOf(new Date(one.receivedAt), zone)) >= LATE_DAYS,
  ).length;
  const corrected = record.checkIns.filter((one) => one.replacedAt !== null).length;
  const deleted = record.checkIns.filter((one) => one.deletedAt !== null).length;
  return table(
    'The log',
    'check_ins.csv',
    ['What', 'Count#', 'Of#', 'Share'],
    [
      ['Days with a check-in', number(known), number(length), share(known, length)],
      ['Days between two near check-ins, taken as rest', number(taken), number(length), share(taken, length)],
      [
        'Days unknown or away',
        number(length - known - taken),
        number(length),
        share(length - known - taken, length),
      ],
      [
        'Sets kept as planned with one tap',
        number(asPlanned),
        number(sets.length),
        share(asPlanned, sets.length),
      ],
      [
        `Check-ins that came ${LATE_DAYS} days late or more`,
        number(late),
        number(record.checkIns.length),
        share(late, record.checkIns.length),
      ],
      [
        'Check-ins corrected later',
        number(corrected),
        number(record.checkIns.length),
        share(corrected, record.checkIns.length),
      ],
      [
        'Check-ins taken back',
        number(deleted),
        number(record.checkIns.length),
        share(deleted, record.checkIns.length),
      ],
    ],
    'A set kept as planned says that it went as planned, not that anybody measured it.',
  );
}

function share(part: number, of: number): string {
  return of === 0 ? '' : asPercent(part / of);
}

function consents({ record, history }: ReportInput): Block {
  const { zone } = history.client;
  return tableOr(
    'none is recorded.',
    table(
      'Consents',
      'consents.csv',
      ['To what', 'Text version', 'Given', 'By', 'Not in force since'],
      record.consents.map((one) => [
        one.kind.replaceAll('-', ' '),
        one.textVersion,
        dayOf(one.givenAt, zone),
        one.givenBy,
        dayOf(one.withdrawnAt, zone),
      ]),
      'The words of each version stand in consent.txt.',
    ),
  );
}
