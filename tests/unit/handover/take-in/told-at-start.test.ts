import { expect, it } from 'vitest';
import { RECORD_RULES } from '#lib/handover/take-in/record-rules.ts';
import { rowsToKeep } from '#lib/handover/take-in/rows-to-keep.ts';
import type { PackRecord } from '#lib/schemas/pack-record.ts';

const id = (n: number) => `00000000-0000-4000-8000-00000000000${n}`;

it('a hold whose cause nobody knows is refused: no word could end it', () => {
  for (const table of ['limit_rule', 'clinician_word']) {
    const rule = RECORD_RULES[table]?.told;
    expect(rule?.safeParse('eyes').success, table).toBe(true);
    expect(rule?.safeParse('sign:chest-pain').success, table).toBe(true);
    expect(rule?.safeParse(null).success, table).toBe(true);
    expect(rule?.safeParse('sign:made-up').success, table).toBe(false);
  }
});

it('a parent or guardian who agreed to another team is asked anew', () => {
  const at = '2026-05-01T10:00:00.000Z';
  const guardian = {
    id: id(2),
    client_id: id(1),
    name: 'Marta',
    email: null,
    agreed_at: at,
    text_version: '1',
    declined_at: null,
    withdrawn_at: null,
    created_at: at,
  };
  const none = new Proxy({} as PackRecord, {
    get: (_, table) => (table === 'guardian' ? [guardian] : table === 'client' ? [{ id: id(1) }] : []),
  });
  let next = 3;
  const { tables } = rowsToKeep(none, new Map([[id(1), id(9)]]), () => id(next++));
  expect(tables.find(({ table }) => table === 'guardian')?.rows).toEqual([
    { ...guardian, id: id(3), client_id: id(9), agreed_at: null, text_version: null },
  ]);
});
