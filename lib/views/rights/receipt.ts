import { exactDate } from '../say-date.ts';

type Receipt = {
  askedAt: Date;
  dueAt: Date | null;
  takenBackAt: Date | null;
  erasedAt: Date | null;
  rows: Record<string, number> | null;
  files: number | null;
  filesLeft: number | null;
};

/** Kinds of rows that a person knows, in words; the others are counted together. */
const KINDS: readonly (readonly [table: string, one: string, many: string])[] = [
  ['check_in', 'check-in', 'check-ins'],
  ['check_in_set', 'set', 'sets'],
  ['pain_score', 'pain score', 'pain scores'],
  ['question', 'question', 'questions'],
  ['answer', 'answer', 'answers'],
  ['coach_word', 'message of a coach', 'messages of coaches'],
  ['plan', 'version of the plan', 'versions of the plan'],
  ['reason', 'reason', 'reasons'],
  ['private_note', 'note of coaches', 'notes of coaches'],
  ['outbox', 'mail or notice', 'mails and notices'],
];

/** What a receipt says, in sentences: asked, taken back or done, with what went. No name. */
export function receiptLines(receipt: Receipt): string[] {
  const day = (at: Date) => exactDate(at.toISOString().slice(0, 10));
  const asked = `Deletion was asked for on ${day(receipt.askedAt)}.`;
  if (receipt.takenBackAt)
    return [asked, `It was taken back on ${day(receipt.takenBackAt)}. Nothing was deleted.`];
  if (!receipt.erasedAt)
    return [
      asked,
      `It will be done on ${receipt.dueAt ? day(receipt.dueAt) : 'a day that is not set'}, unless it is taken back before.`,
    ];
  return [asked, `It was done on ${day(receipt.erasedAt)}.`, gone(receipt), BACKUPS];
}

const BACKUPS =
  'Copies made for emergencies (backups) may hold it until they are thrown away. If one is ever brought back, the same is deleted again before anybody works with it.';

function gone({ rows, files, filesLeft }: Receipt): string {
  const told = new Set(KINDS.map(([table]) => table));
  const known = KINDS.flatMap(([table, one, many]) => {
    const count = rows?.[table] ?? 0;
    return count === 0 ? [] : [`${count.toLocaleString('en-GB')} ${count === 1 ? one : many}`];
  });
  const others = Object.entries(rows ?? {}).reduce(
    (sum, [table, count]) => (told.has(table) ? sum : sum + count),
    0,
  );
  const left = filesLeft ? ` (${filesLeft} still to be removed; it is tried every quarter of an hour)` : '';
  const pictures = files === 1 ? '1 picture' : `${files ?? 0} pictures`;
  return `Deleted: ${[...known, `${others.toLocaleString('en-GB')} other rows`].join(', ')}, and ${pictures}${left}.`;
}

/** The receipt as a text to keep. */
export function receiptText(number: string, receipt: Receipt, address: string): string {
  return [
    'Receipt for the deletion of a training record',
    '',
    `Number: ${number}`,
    ...receiptLines(receipt),
    '',
    'No name stands here. Whoever has the number can see what became of it:',
    address,
    '',
  ].join('\n');
}
