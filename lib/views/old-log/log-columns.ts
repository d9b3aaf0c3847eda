/** What a column of an old training log may hold; `leave`: it is not read. */
export const LOG_COLUMNS = [
  'leave',
  'date',
  'drill',
  'side',
  'sets',
  'value',
  'left',
  'right',
  'added',
  'effort',
  'minutes',
  'pain',
  'words',
] as const;
export type LogColumn = (typeof LOG_COLUMNS)[number];

export const LOG_COLUMN_LABELS: Record<LogColumn, string> = {
  leave: 'not read',
  date: 'the day',
  drill: 'the drill',
  side: 'the side: left, right or both',
  sets: 'how many sets',
  value: 'reps, seconds or degrees of the sets',
  left: 'the same, of the left side',
  right: 'the same, of the right side',
  added: 'added weight, kg',
  effort: 'how hard the session was, 0-10',
  minutes: 'how long the session was, minutes',
  pain: 'pain, 0-10',
  words: 'words of the client',
};

/** Columns that may be there once only: two of them would say two things of one set. */
export const ONCE: readonly LogColumn[] = LOG_COLUMNS.filter(
  (column) => column !== 'leave' && column !== 'words',
);

const WORDS: Partial<Record<LogColumn, readonly string[]>> = {
  date: ['date', 'day', 'when', 'datum', 'tag', 'fecha', 'data', 'jour'],
  drill: ['drill', 'exercise', 'movement', 'skill', 'rung', 'what', 'ubung'],
  side: ['side', 'leftright', 'lr', 'hand', 'arm', 'seite'],
  sets: ['sets', 'set', 'series', 'rounds'],
  value: [
    'reps',
    'repetitions',
    'seconds',
    'sec',
    'secs',
    'hold',
    'value',
    'result',
    'done',
    'time',
    'setsxreps',
  ],
  left: ['left', 'leftside', 'l'],
  right: ['right', 'rightside', 'r'],
  added: ['kg', 'weight', 'added', 'addedkg', 'load', 'addedweight'],
  effort: ['effort', 'rpe', 'hard', 'howhard', 'sessionrpe'],
  minutes: ['minutes', 'min', 'mins', 'duration', 'length', 'howlong'],
  pain: ['pain', 'ache', 'hurts', 'painscore'],
  words: ['notes', 'note', 'comment', 'comments', 'remarks', 'words'],
};

/** What each word in the head most likely means; of two for the same thing the first. */
export function guessLogColumns(head: readonly string[]): LogColumn[] {
  const taken = new Set<LogColumn>();
  return head.map((word) => {
    const plain = word
      .normalize('NFD')
      .toLowerCase()
      .replaceAll(/[^a-z]/g, '');
    const found = LOG_COLUMNS.find((column) => WORDS[column]?.includes(plain)) ?? 'leave';
    if (found === 'leave' || (taken.has(found) && ONCE.includes(found))) return 'leave';
    taken.add(found);
    return found;
  });
}
