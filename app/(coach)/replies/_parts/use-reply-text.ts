'use client';
import { type RefObject, useRef, useState } from 'react';
import { replyFields, unfilledInWords, withName } from '#lib/domain/reply-fields.ts';

export type KeptChoice = { id: string; name: string; text: string };
export type ReplyText = {
  field: RefObject<HTMLTextAreaElement | null>;
  text: string;
  write: (text: string) => void;
  keptReplyId: string | undefined;
  /** Says which fields of the kept reply are still open; empty when none is. */
  open: string;
  startFromKept: (reply: KeptChoice) => void;
  startFrom: (text: string) => void;
  /** Goes to the next open field, so that typing writes over it. */
  nextField: () => void;
};

/** The text of a reply in the making. A start is put below what is there: nothing typed is lost. */
export function useReplyText(name: string | null): ReplyText {
  const field = useRef<HTMLTextAreaElement>(null);
  const [text, setText] = useState('');
  const [keptReplyId, setKept] = useState<string>();
  const filled = (value: string) => (name === null ? value : withName(value, name));
  /** Words to several clients have each name filled in when they are sent. */
  const toFill = (value: string) => (name === null ? withName(value, '') : value);
  function write(next: string) {
    setText(next);
    if (next.trim() === '') setKept(undefined);
  }
  function start(added: string) {
    const before = text.trim() === '' ? '' : `${text.trimEnd()}\n\n`;
    setText(before + added);
    requestAnimationFrame(() => selectField(field.current, name === null));
  }
  return {
    field,
    text,
    write,
    keptReplyId,
    open: keptReplyId === undefined ? '' : unfilledInWords(toFill(text)),
    startFromKept(reply) {
      start(filled(reply.text));
      setKept(reply.id);
    },
    startFrom: start,
    nextField: () => selectField(field.current, name === null),
  };
}

function selectField(area: HTMLTextAreaElement | null, skipName: boolean): void {
  if (!area) return;
  area.focus();
  const next = replyFields(area.value).find((name) => !(skipName && name.toLowerCase() === 'name'));
  const found = next === undefined ? null : new RegExp(`\\[\\s*${escaped(next)}\\s*\\]`).exec(area.value);
  const end = area.value.length;
  if (found) area.setSelectionRange(found.index, found.index + found[0].length);
  else area.setSelectionRange(end, end);
}

function escaped(text: string): string {
  return text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
