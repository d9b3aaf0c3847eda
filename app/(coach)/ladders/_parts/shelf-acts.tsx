'use client';

import { useRef, useState } from 'react';
import forms from '../../clients/_parts/forms.module.css';
import styles from './list.module.css';
import { NameForm } from './name-form.tsx';
import { OrderList } from './order-list.tsx';
import { useOutline } from './use-outline.ts';

type Row = { id: string; name: string };
type Props = {
  shelf: 'team' | 'skill' | 'part';
  /** The skill or part itself; null: the team. */
  row: Row | null;
  below: Row[];
  belowIs: 'skill' | 'part' | 'ladder';
  canRetire: boolean;
};
type Open = 'rename' | 'order' | 'add' | null;

/** What can be done to a skill or a part and to what stands in it. One thing is open at a time. */
export function ShelfActs({ shelf, row, below, belowIs, canRetire }: Props) {
  const [open, setOpen] = useState<Open>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const close = () => {
    setOpen(null);
    opener.current?.focus();
  };
  const { send, busy, refused } = useOutline(close);
  const of = row ? ` of ${row.name}` : '';
  const act = (what: Exclude<Open, null>, word: string, about: string) => (
    <button
      type="button"
      className={forms.plain}
      aria-expanded={open === what}
      aria-label={about}
      onClick={(event) => {
        opener.current = event.currentTarget;
        setOpen((one) => (one === what ? null : what));
      }}
    >
      {word}
    </button>
  );
  const add =
    belowIs === 'part'
      ? (name: string) => send({ act: 'add-part', skillId: row?.id, name })
      : (name: string) => send({ act: 'add-skill', name });
  return (
    <div className={styles.shelfActs}>
      <div className={forms.acts}>
        {row ? act('rename', 'Rename', `Rename ${row.name}`) : null}
        {belowIs === 'ladder'
          ? null
          : act('add', `Add a ${belowIs}`, `Add a ${belowIs}${row ? ` to ${row.name}` : ''}`)}
        {below.length > 1 ? act('order', `Put ${belowIs}s in order`, `Put ${belowIs}s in order${of}`) : null}
        {row && canRetire ? (
          <button
            type="button"
            className={forms.plain}
            aria-label={`Retire ${row.name}`}
            disabled={busy}
            onClick={() => send({ act: 'retire', shelf, id: row.id })}
          >
            Retire
          </button>
        ) : null}
      </div>
      {refused ? (
        <p role="alert" className={forms.refusal}>
          {refused}
        </p>
      ) : null}
      {open === 'rename' && row ? (
        <NameForm
          label={`New name of ${row.name}`}
          first={row.name}
          word="Save the name"
          busy={busy}
          onSave={(name) => send({ act: 'rename', shelf, id: row.id, was: row.name, name })}
          onLeave={close}
        />
      ) : null}
      {open === 'add' ? (
        <NameForm
          label={`Name of the new ${belowIs}`}
          first=""
          word={`Add the ${belowIs}`}
          busy={busy}
          onSave={add}
          onLeave={close}
        />
      ) : null}
      {open === 'order' ? (
        <OrderList
          label={`Order of ${belowIs}s${of}`}
          items={below}
          busy={busy}
          onSave={(order) => send({ act: 'order', shelf: belowIs, was: below.map((one) => one.id), order })}
          onLeave={close}
        />
      ) : null}
    </div>
  );
}
