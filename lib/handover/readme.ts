import type { PackPart } from './pack-content.ts';

type Input = {
  /** ISO instant. */
  made: string;
  zone: string;
  period: { from: string; to: string };
  parts: readonly PackPart[];
};

const TABLES = [
  'tables                 The same as tables (CSV, UTF-8). csv-metadata.json says what each column means and its unit.',
  '  check_ins.csv        One line a check-in. A corrected one is kept: replaced_at_utc says when it was replaced; so is',
  '                       one that the client took back: deleted_at_utc. Leave both out of sums.',
  '  sets.csv             One line a set and side: planned, done, clean, faults. The unit stands in the line.',
  '  pain.csv             Pain scores, whole numbers 0-10, by region, side and moment. danger_signs.csv: signs told.',
  '  load_by_day.csv      Session load (effort x minutes) and load of each tissue and side. An empty cell is an unknown',
  '                       day: never read it as zero. load_by_week.csv, tissue_by_week.csv, pain_by_week.csv: in weeks.',
  '  reasons.csv          What the checks said, since when, and how it ended; reason_events.csv, verdicts.csv.',
  '  steps_taken.csv      What the coach did, and whether it was better since; reasons_left_alone.csv: nothing was done.',
  '  plans.csv            Every version of the plan; placements.csv, goals.csv, rungs.csv, assessments.csv,',
  '                       start_tests.csv.',
  '  questions.csv        Questions and answers; coach_words.csv, films.csv, seen.csv.',
  '  limits.csv           What was ruled out or reduced; clinician_words.csv, absences.csv, consents.csv,',
  '                       told_at_the_start.csv.',
  "                       Text that begins like a formula has one ' in front, so that no spreadsheet runs it.",
];
const PARTS: Partial<Record<PackPart, readonly string[]>> = {
  tables: TABLES,
  history: [
    'history.json           The same for programs; history.schema.json says how to read it (JSON Schema 2020-12).',
    'record.json            Every row with its ids, to take the client in elsewhere; record.schema.json.',
  ],
  calendar: ['plan.ics               The plan for a calendar. The days are an even spread.'],
  stills: [
    'stills                 Pictures that the client sent, as questions.csv names them, and stills taken from films.',
  ],
  films: [
    'films                  Films of the client, by the day they were filmed and the id of clip in record.json.',
  ],
  fhir: ['fhir-bundle.json       Pain scores for clinical systems (FHIR R4, LOINC 72514-3).'],
  notes: ['private_notes.csv      Notes that were private to coaches: somebody ticked that they come along.'],
};

/** README.txt of a pack, in plain words. */
export function readmeText({ made, zone, period, parts }: Input): string {
  return [
    "A client's training record, to hand over",
    '',
    `Made ${made} (UTC). Period: ${period.from} to ${period.to}. Dates are the client's own; the zone stands beside them`,
    `(this client: ${zone}). Instants end in Z and are UTC.`,
    '',
    'Begin with report.pdf; its first page says who, why, what is open, what hurts and what was tried.',
    '',
    'report.pdf             The report, to read and print. report.html: the same for a screen.',
    'consent.txt            Who agreed to what, when, and in which words.',
    ...parts.flatMap((part) => PARTS[part] ?? []),
    ...(parts.includes('notes') ? [] : ['Not in here: notes private to coaches.']),
    '',
    'TO SEE THAT NOTHING WAS CHANGED',
    'The files lie in a bag (BagIt, RFC 8493). In its folder: sha256sum -c manifest-sha256.txt names a file that was changed.',
    '',
    'CAUTION',
    'This record informs a coach or a clinician. It does not diagnose and does not estimate the chance of injury; no',
    'number in it is a promise of safety. With pain of 6 or more, or any danger sign: stop that work and see a licensed',
    'clinician. Local rules on who may advise come first.',
    '',
  ].join('\r\n');
}
