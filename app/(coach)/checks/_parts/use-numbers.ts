import { useMemo, useState } from 'react';
import type { LimitId } from '#lib/checks/thresholds.ts';
import type { CheckGroup } from '#lib/views/checks-page.ts';

export type Numbers = {
  /** What is typed, where it is not what stood there. */
  typed: ReadonlyMap<LimitId, string>;
  type: (id: LimitId, text: string) => void;
  /** Numbers that differ from what holds without this scope, as they would be saved. */
  values: Record<string, number>;
  /** In words: "Stalled, on the rung at least: 35 days". */
  changes: string[];
  /** Fields whose text is no number. */
  unreadable: { id: LimitId; name: string }[];
  refused: ReadonlyMap<string, string>;
  refuse: (fields: Record<string, string>) => void;
  nameOf: (id: string) => string;
};

/** The numbers of the page while somebody types: what differs, what cannot be read, what was refused. */
export function useNumbers(groups: readonly CheckGroup[]): Numbers {
  const [typed, setTyped] = useState<ReadonlyMap<LimitId, string>>(new Map());
  const [refused, setRefused] = useState<ReadonlyMap<string, string>>(new Map());
  const lines = useMemo(
    () =>
      groups.flatMap(({ checks }) =>
        checks.flatMap(({ title, numbers }) => numbers.map((line) => ({ ...line, title }))),
      ),
    [groups],
  );
  const values: Record<string, number> = {};
  const changes: string[] = [];
  const unreadable: Numbers['unreadable'] = [];
  for (const { id, title, meaning, unit, value, without } of lines) {
    const text = typed.get(id) ?? value;
    if (text.trim() === '' || sameNumber(text, without)) continue; // an empty field is the number without a change
    const number = readNumber(text);
    if (number === undefined) unreadable.push({ id, name: `${title}, ${meaning}` });
    else values[id] = number;
    changes.push(`${title}, ${meaning}: ${without} to ${text.trim()} ${unit}`);
  }
  return {
    typed,
    type: (id, text) => {
      setTyped((before) => new Map(before).set(id, text));
      setRefused((before) => new Map([...before].filter(([key]) => key !== id)));
    },
    values,
    changes,
    unreadable,
    refused,
    refuse: (fields) =>
      setRefused(new Map(Object.entries(fields).map(([path, why]) => [path.replace(/^values\./, ''), why]))),
    nameOf: (id) => {
      const line = lines.find((one) => one.id === id);
      return line ? `${line.title}, ${line.meaning}` : id;
    },
  };
}

function readNumber(text: string): number | undefined {
  const plain = text.trim().replace(',', '.');
  return /^\d{1,6}(\.\d{1,6})?$/.test(plain) ? Number(plain) : undefined;
}

function sameNumber(a: string, b: string): boolean {
  return a.trim() === b || readNumber(a) === Number(b);
}
