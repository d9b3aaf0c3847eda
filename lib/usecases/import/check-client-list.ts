import { z } from 'zod';
import { isLocalDate } from '#lib/domain/local-date.ts';
import type { ListColumn } from '#lib/views/client-list-columns.ts';
import type { ListRow } from './read-client-list.ts';

export type TeamFacts = {
  /** Coaches and leads. */
  coaches: { id: string; name: string; email: string }[];
  clients: { name: string; email: string | null }[];
  /** Whose clients these become, and where, when the list does not say. */
  self: { id: string; zone: string };
  today: string;
};
export type RowDouble = { by: 'e-mail' | 'name'; of: string };
export type CheckedRow = {
  line: number;
  name: string;
  email: string | null;
  zone: string;
  coachId: string;
  coach: string;
  goal: string;
  under18: boolean;
  started: string | null;
  /** Why this row cannot be taken, each with its column. */
  problems: { column: ListColumn; message: string }[];
  /** Somebody with this e-mail address or this name is there already, in the team or further up in the list. */
  double: RowDouble | null;
};

const email = z.email().max(200);
const YES = ['yes', 'y', 'true', '1', 'x'];
const NO = ['', 'no', 'n', 'false', '0', '-'];

/** Each row as it would be taken, with what is wrong with it. Cells are text: one that begins with = is a name like any. */
export function checkClientList(rows: readonly ListRow[], team: TeamFacts): CheckedRow[] {
  const zones = zonesByWord();
  const seen: { name: string; email: string | null; of: string }[] = team.clients.map((client) => ({
    ...client,
    of: 'your team',
  }));
  return rows.map((row) => {
    const checked = checkRow(row, team, zones);
    const double = doubleOf(checked, seen);
    seen.push({ name: checked.name, email: checked.email, of: `line ${row.line}` });
    return { ...checked, double };
  });
}

function checkRow(
  { line, cells }: ListRow,
  team: TeamFacts,
  zones: ReadonlyMap<string, string>,
): Omit<CheckedRow, 'double'> {
  const problems: CheckedRow['problems'] = [];
  const say = (column: ListColumn, message: string) => void problems.push({ column, message });
  const cell = (column: ListColumn) => (cells[column] ?? '').normalize('NFC');
  for (const column of ['name', 'goal'] as const) {
    const most = column === 'name' ? 120 : 500;
    if (cell(column).length > most) say(column, `is longer than ${most} letters`);
    const text = column === 'goal' ? cell(column).replaceAll(/[\r\n\t]/g, ' ') : cell(column);
    if (/\p{Cc}/u.test(text) || !text.isWellFormed()) say(column, 'has a sign that cannot be kept');
  }
  if (cell('name') === '') say('name', 'is empty');
  if (cell('email') !== '' && !email.safeParse(cell('email')).success)
    say('email', `“${cell('email')}” is not an e-mail address`);
  const zone = cell('zone') === '' ? team.self.zone : zones.get(zoneWord(cell('zone')));
  if (zone === undefined) say('zone', `“${cell('zone')}” is no zone such as Europe/Lisbon`);
  const coach = coachOf(cell('coach'), team);
  if (!coach) say('coach', `nobody called “${cell('coach')}” coaches in your team`);
  const under18 = YES.includes(cell('under18').toLowerCase());
  if (!under18 && !NO.includes(cell('under18').toLowerCase()))
    say('under18', `“${cell('under18')}” is neither yes nor no`);
  const started = dateOf(cell('started'));
  if (started === undefined) say('started', `“${cell('started')}” is no date such as 2024-03-31`);
  if (started && started > team.today) say('started', 'lies ahead');
  return {
    line,
    name: cell('name'),
    email: cell('email') === '' ? null : cell('email').toLowerCase(),
    zone: zone ?? '',
    coachId: coach?.id ?? '',
    coach: coach?.name ?? cell('coach'),
    goal: cell('goal'),
    under18,
    started: started ?? null,
    problems,
  };
}

/** A coach by name or e-mail address; an empty cell is the one who imports. */
function coachOf(text: string, { coaches, self }: TeamFacts): TeamFacts['coaches'][number] | undefined {
  if (text === '') return coaches.find(({ id }) => id === self.id);
  const found = coaches.filter(
    (coach) => folded(coach.name) === folded(text) || coach.email.toLowerCase() === text.toLowerCase(),
  );
  return found.length === 1 ? found[0] : undefined;
}

function doubleOf(
  row: { name: string; email: string | null },
  seen: readonly { name: string; email: string | null; of: string }[],
): RowDouble | null {
  const sameMail = seen.find((one) => row.email !== null && one.email?.toLowerCase() === row.email);
  if (sameMail) return { by: 'e-mail', of: sameMail.of };
  const sameName = seen.find((one) => row.name !== '' && folded(one.name) === folded(row.name));
  return sameName ? { by: 'name', of: sameName.of } : null;
}

/** `undefined`: not a date; null: none given. Days before months, as in 31.03.2024, are read where the dots say so. */
function dateOf(text: string): string | null | undefined {
  if (text === '') return null;
  const dotted = text.match(/^(\d{1,2})\.(\d{1,2})\.(\d{4})$/);
  const date = dotted ? `${dotted[3]}-${dotted[2]?.padStart(2, '0')}-${dotted[1]?.padStart(2, '0')}` : text;
  return isLocalDate(date) ? date : undefined;
}

function zonesByWord(): ReadonlyMap<string, string> {
  return new Map(['UTC', ...Intl.supportedValuesOf('timeZone')].map((zone) => [zoneWord(zone), zone]));
}

function zoneWord(zone: string): string {
  return zone.toLowerCase().replaceAll(/[\s_]+/g, '_');
}

function folded(text: string): string {
  return text.normalize('NFD').replaceAll(/\p{M}/gu, '').replaceAll(/\s+/g, ' ').trim().toLowerCase();
}
