import { z } from 'zod';
import { parseAmount } from '#lib/domain/parse-amount.ts';
import { type CheckInBody, type CheckInInput, checkInSchema } from './check-in.ts';

type Fields = Record<string, string | string[]>;

/** The name of a set's fields in the form: `value`, `tried`, `planned`, `label` and `broken`, each before its set. */
export function plainSetName(rungId: string, side: string, index: number): string {
  return `${rungId} ${side} ${index}`;
}

/**
 * A check-in from the form that works without scripts: fields of a form become what POST /api/check-ins takes. Sets left
 * empty are unknown, unless "the rest as planned" is ticked; a dash is a set not done. A refusal names the field of the
 * form, so that the answer can ask for that field again.
 */
export const plainCheckInSchema = z
  .record(z.string(), z.union([z.string(), z.array(z.string())]))
  .transform((fields, context) => {
    const { input, sets, pain } = toInput(fields);
    const parsed = checkInSchema.safeParse(input);
    if (parsed.success) return parsed.data;
    for (const { path, message } of parsed.error.issues) {
      const [first, at, ...rest] = path;
      const set = first === 'sets' ? sets[Number(at)] : undefined;
      const place = first === 'pain' ? pain[Number(at)] : undefined;
      const name = place ? painField(String(rest[0] ?? 'value'), place.moment) : String(first);
      context.addIssue({ code: 'custom', path: [set ? `value ${set.name}` : name], message });
    }
    return z.NEVER;
  });

/** Fields that were refused after the form was read, named as the form names them. */
export function plainFields(
  fields: Readonly<Record<string, string>>,
  { sets }: Pick<CheckInBody, 'sets'>,
): Record<string, string> {
  return Object.fromEntries(
    Object.entries(fields).map(([name, why]) => {
      const set = sets[Number(/^sets\.(\d+)\./.exec(name)?.[1] ?? Number.NaN)];
      return [set ? `value ${plainSetName(set.rungId, set.side, set.index)}` : name, why];
    }),
  );
}

/** The field of the form that a part of a pain score was written in. */
function painField(part: string, moment: string): string {
  if (part === 'side') return 'painSide';
  if (part === 'kind') return 'painKind';
  return part === 'region' ? 'region' : `pain ${moment}`;
}

function toInput(fields: Fields): { input: unknown; sets: Named[]; pain: { moment: string }[] } {
  const one = (name: string) => {
    const value = fields[name];
    return (Array.isArray(value) ? value[0] : value)?.trim() ?? '';
  };
  const number = (name: string) => (one(name) === '' ? null : (parseAmount(one(name), 'count') ?? one(name)));
  const isRest = one('kind') === 'rest';
  const sets = isRest ? [] : setsOf(fields, one);
  const pain = painOf(one);
  return {
    sets,
    pain,
    input: {
      id: one('id'),
      date: one('date'),
      zone: one('zone'),
      kind: one('kind'),
      session: isRest ? null : one('session') || null,
      planVersion: isRest ? null : number('planVersion'),
      effort: isRest ? null : number('effort'),
      minutes: isRest ? null : number('minutes'),
      nothingHurts: one('nothingHurts') === 'yes',
      sets: sets.map(({ set }) => set),
      pain,
      words: one('words'),
      question: one('question') || null,
    },
  };
}

type SetInput = NonNullable<CheckInInput['sets']>[number];
type Named = { name: string; set: SetInput };

function setsOf(fields: Fields, one: (name: string) => string): Named[] {
  const restAsPlanned = one('rest') === 'as-planned';
  return Object.keys(fields).flatMap((name): Named[] => {
    if (!name.startsWith('value ')) return [];
    const key = name.slice('value '.length);
    const [rungId = '', side = '', index = ''] = key.split(' ');
    const [written, planned, tried] = [one(name), one(`planned ${key}`), one(`tried ${key}`)];
    const plannedTries = one(`plannedTries ${key}`);
    if (written === '' && !restAsPlanned) return [];
    const isNotDone = /^[-–—]$/.test(written);
    const isAsPlanned = written === '';
    const value = isNotDone ? null : isAsPlanned ? planned : written;
    const set = {
      rungId,
      side: side as SetInput['side'],
      index: Number(index),
      planned: planned === '' ? null : planned,
      value,
      tried: isNotDone || (tried === '' && plannedTries === '') ? null : Number(tried || plannedTries),
      how: isNotDone ? 'not-done' : isAsPlanned ? 'as-planned' : 'typed',
      clean: !isNotDone && one(`broken ${key}`) !== 'yes',
    } as const;
    return [{ name: key, set }];
  });
}

const MOMENTS = ['during', 'after', 'today', 'morning'];

/** One place. Whatever of it is told is passed on, so that what is missing is asked for and nothing is dropped. */
function painOf(one: (name: string) => string): { moment: string }[] {
  const told = MOMENTS.filter((moment) => one(`pain ${moment}`) !== '');
  const isTold =
    told.length > 0 || ['region', 'painSide', 'painKind', 'usual'].some((name) => one(name) !== '');
  if (!isTold) return [];
  const moments = told.length > 0 ? told : ['after'];
  return moments.map((moment) => ({
    region: one('region'),
    side: one('painSide'),
    kind: one('painKind'),
    moment,
    value: parseAmount(one(`pain ${moment}`), 'count') ?? one(`pain ${moment}`),
    usual: one('usual') === '' ? null : one('usual') === 'yes',
  }));
}
