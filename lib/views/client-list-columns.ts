/** The columns that a list of clients may have, in the order in which they are shown. */
export const LIST_COLUMNS = ['name', 'email', 'zone', 'coach', 'goal', 'under18', 'started'] as const;
export type ListColumn = (typeof LIST_COLUMNS)[number];

export const COLUMN_LABELS: Record<ListColumn, string> = {
  name: 'Name',
  email: 'E-mail',
  zone: 'Zone',
  coach: 'Coach',
  goal: 'Goal',
  under18: 'Under 18',
  started: 'Started',
};

const WORDS: Record<ListColumn, readonly string[]> = {
  name: ['name', 'client', 'clientname', 'fullname', 'names'],
  email: ['email', 'mail', 'emailaddress', 'mailaddress'],
  zone: ['zone', 'timezone', 'tz', 'clientzone'],
  coach: ['coach', 'trainer', 'teacher', 'coachname'],
  goal: ['goal', 'goals', 'aim', 'aims', 'wants'],
  under18: ['under18', 'u18', 'minor', 'isminor', 'below18', 'youngerthan18'],
  started: ['started', 'start', 'since', 'startdate', 'began', 'startedon', 'with us since', 'withussince'],
};

/** The column that a word in the head of a list means, capitals, signs and spaces aside; undefined: none. */
export function columnOf(word: string): ListColumn | undefined {
  const plain = word
    .normalize('NFD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]/g, '');
  return LIST_COLUMNS.find((column) => WORDS[column].includes(plain));
}
