/** README.txt of an export, in plain words. `made` is an ISO instant. */
export function readmeText(input: {
  made: string;
  zone: string;
  from: string | null;
  until: string | null;
}): string {
  const period = input.from && input.until ? `${input.from} to ${input.until}` : 'no check-ins yet';
  return [
    "A client's whole record",
    '',
    `Made ${input.made} (UTC). Check-ins: ${period}. Dates are local dates; the zone stands beside them`,
    `(this client: ${input.zone}). Instants end in Z and are UTC.`,
    '',
    'check_ins.csv      one line a check-in. A corrected one is kept: replaced_at_utc says when it was replaced;',
    '                   so is one that the client deleted: deleted_at_utc.',
    'sets.csv           one line a set and side: planned, done, clean, faults. Seconds for holds, else the unit named.',
    'pain.csv           pain scores, whole numbers 0-10, by region, side and moment. Only kind "joint" feeds the checks.',
    'danger_signs.csv   danger signs the client told.',
    'load_by_day.csv    session load (effort 0-10 x minutes, arbitrary units) and load of each tissue and side',
    '                   (body-weight seconds). An empty cell is an unknown day: never read it as zero.',
    'reasons.csv        what the checks said, since when, and how it ended. reason_events.csv: each change of it.',
    'steps_taken.csv    what the coach did about it, and whether it was better since.',
    'reasons_left_alone.csv  the same of reasons about which nothing was done.',
    'plans.csv          every version of the plan. placements.csv: which rung from which day. goals.csv: skills in focus.',
    'assessments.csv    what a coach saw and measured of the parts of a skill, a line a part and side.',
    'questions.csv      questions and answers, with the names of the pictures sent with them (folder stills).',
    'coach_words.csv    what coaches wrote to the client, on a day or on one of its sets.',
    'absences.csv       days away. limits.csv: what was ruled out or reduced.',
    'history.json       the same in one file for programs, check-ins as corrected; history.schema.json says how to',
    '                   read it (JSON Schema 2020-12, format version 1).',
    '',
    'Lines whose check_in_replaced is yes belong to a check-in that was corrected or deleted: leave them out of',
    'sums, like check-ins with replaced_at_utc or deleted_at_utc. Text that begins',
    "like a formula has one ' in front so that no spreadsheet runs it. Not in here: notes private to coaches.",
    '',
    'CAUTION',
    'This record informs a coach or a clinician. It does not diagnose and does not estimate the chance of injury; no',
    'number in it is a promise of safety. With pain of 6 or more, or any danger sign: stop that work and see a licensed',
    'clinician. Local rules on who may advise come first.',
    '',
  ].join('\r\n');
}
