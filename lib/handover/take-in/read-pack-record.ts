import { parseJson } from '#lib/edge/parse-json.ts';
import { AppError } from '#lib/errors.ts';
import { type PackRecord, packRecordSchema } from '#lib/schemas/pack-record.ts';
import { refused } from './open-zip.ts';
import { type ReadBag, utf8 } from './read-bag.ts';
import { RECORD_RULES } from './record-rules.ts';

const NAME = 'data/record.json';
const SHOWN = 20;

/** The record that a pack carries. Refuses with the path of each value that cannot be kept (first 20), and why. */
export function readPackRecord({ files }: ReadBag): PackRecord {
  const bytes = files.get('record.json');
  if (!bytes) throw refused('was made without the lossless record: ask for one with that part ticked');
  const parsed = packRecordSchema.safeParse(jsonOf(utf8(bytes, NAME)));
  if (!parsed.success)
    throw wrong(parsed.error.issues.map(({ path, message }) => [path.map(String).join('.'), message]));
  const problems = problemsOf(parsed.data);
  if (problems.length > 0) throw wrong(problems);
  return parsed.data;
}

function jsonOf(text: string): unknown {
  try {
    return parseJson(text);
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    throw refused(`: ${NAME} is not as packs are. ${error.message.replace(/^The body/, 'It')}`, error);
  }
}

type Problem = readonly [path: string, message: string];

function problemsOf(record: PackRecord): Problem[] {
  const problems: Problem[] = [];
  if (record.client.length !== 1)
    problems.push(['client', `must be one client, and is ${record.client.length}`]);
  for (const [table, columns] of Object.entries(RECORD_RULES)) {
    const rows = record[table as keyof PackRecord] as readonly Record<string, unknown>[] | undefined;
    for (const [at, row] of (rows ?? []).entries()) {
      for (const [column, rule] of Object.entries(columns)) {
        const checked = rule.safeParse(row[column]);
        if (checked.success) continue;
        const [issue] = checked.error.issues;
        const path = [table, at, column, ...(issue?.path ?? [])].map(String).join('.');
        problems.push([path, issue?.message ?? 'is not as expected']);
        if (problems.length > SHOWN) return problems;
      }
    }
  }
  return problems;
}

function wrong(problems: readonly Problem[]): AppError {
  const fields = Object.fromEntries(
    problems.slice(0, SHOWN).map(([path, message]) => [`record.json ${path || '(the whole file)'}`, message]),
  );
  const [first = ['record.json', 'is not as expected']] = Object.entries(fields);
  const more =
    problems.length > 1 ? ` (and ${problems.length > SHOWN ? 'more' : problems.length - 1} more)` : '';
  return new AppError(
    'invalid',
    `This pack cannot be taken in: ${first[0]}: ${first[1]}${more}. Nothing of it was kept.`,
    {
      fields,
    },
  );
}
