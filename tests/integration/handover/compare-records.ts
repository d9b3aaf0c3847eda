import type { PackRecord } from '#lib/schemas/pack-record.ts';

const UUID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/gi;

/** A JSON value with lists in an order that ids do not decide, and every id named after the place where it first stands. */
export function sameButForIds(value: unknown): unknown {
  const names = new Map<string, string>();
  const named = (text: string) =>
    text.replace(UUID, (id) => {
      const name = names.get(id) ?? `id ${names.size + 1}`;
      names.set(id, name);
      return name;
    });
  const text = JSON.stringify(sorted(value));
  return JSON.parse(named(text));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) {
    const keyed = value.map(sorted).map((one) => [JSON.stringify(one).replace(UUID, '#'), one] as const);
    return keyed.sort(([one], [other]) => (one < other ? -1 : one > other ? 1 : 0)).map(([, one]) => one);
  }
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, one]): [string, unknown] => [key, sorted(one)]);
  return Object.fromEntries(entries.sort(([one], [other]) => (one < other ? -1 : 1)));
}

/** Without what a team says of a client itself: who has them, since when they are here, how its own versions count. */
export function withoutTimesOfItsOwn(record: PackRecord): unknown {
  const coach = record.client[0]?.coach_id;
  const wrote = new Set(
    [record.plan, record.answer, record.coach_word, record.step_taken].flat().map(({ by_id }) => by_id),
  );
  return {
    ...record,
    client: record.client.map((row) => ({ ...row, coach_id: null, created_at: null })),
    member: record.member.filter(({ id }) => id !== coach || wrote.has(id)),
    team_settings: record.team_settings.map((row) => ({ ...row, version: null })),
    drill: record.drill.map((row) => ({ ...row, created_at: null })),
    question_still: record.question_still.map((row) => ({ ...row, bytes: null })),
  };
}
