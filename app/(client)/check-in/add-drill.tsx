'use client';
import { useState } from 'react';
import { dayAsSaid } from '#lib/views/phone-dates.ts';
import type { OtherDrill } from '#lib/views/phone-other-drills.ts';
import { Plus } from '../_phone/icons.tsx';

type Props = { others: readonly OtherDrill[]; today: string; onAdd: (other: OtherDrill) => void };

/** A list this long is looked through by typing a word of the name. */
const SEARCH_FROM = 9;

/** Something that was not planned: folded away, then one tap on its name. */
export function AddDrill({ others, today, onAdd }: Props) {
  const [isOpen, setOpen] = useState(false);
  const [words, setWords] = useState('');
  if (others.length === 0) return null;
  const found = others.filter((other) => hasWords(other, words));
  return (
    <section className="drill" aria-label="Add a drill">
      <button type="button" className="act act-quiet" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        <Plus /> A drill that was not planned
      </button>
      {isOpen && others.length >= SEARCH_FROM ? (
        <label className="field">
          Part of its name
          <input
            className="text"
            autoComplete="off"
            value={words}
            onChange={(event) => setWords(event.target.value)}
          />
        </label>
      ) : null}
      {isOpen ? (
        <ul className="to-add">
          {found.map((other) => (
            <li key={other.rungId}>
              <button
                type="button"
                onClick={() => {
                  setOpen(false);
                  setWords('');
                  onAdd(other);
                }}
              >
                <span>{other.rung}</span>
                <small>
                  {other.ladder}
                  {other.lastDone ? `, done ${dayAsSaid(other.lastDone, today)}` : ''}
                </small>
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {isOpen && found.length === 0 ? (
        <p className="quiet">No drill of your ladders has “{words}” in its name. Write it under words.</p>
      ) : null}
    </section>
  );
}

function hasWords({ rung, ladder }: OtherDrill, words: string): boolean {
  return `${rung} ${ladder}`.toLowerCase().includes(words.trim().toLowerCase());
}
