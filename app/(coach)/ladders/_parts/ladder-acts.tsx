'use client';

import Link from 'next/link';
import { useRef, useState } from 'react';
import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';
import forms from '../../clients/_parts/forms.module.css';
import { AboutFields } from './about-fields.tsx';
import styles from './ladder.module.css';
import { OrderList } from './order-list.tsx';
import { useLadderEdit } from './use-ladder-edit.tsx';

type Props = {
  ladder: LadderState;
  base: string;
  parts: { id: string; label: string }[];
  /** In use, hardest first. */
  rungs: { id: string; name: string }[];
};

/** What can be done to the ladder as a whole. */
export function LadderActs({ ladder, base, parts, rungs }: Props) {
  const [open, setOpen] = useState<'about' | 'order' | null>(null);
  const [about, setAbout] = useState(aboutOf(ladder));
  const opener = useRef<HTMLButtonElement>(null);
  const close = () => {
    setOpen(null);
    opener.current?.focus();
  };
  const { send, busy, error, told } = useLadderEdit({ ladderId: ladder.id, base }, close);
  const toggle = (what: 'about' | 'order', button: HTMLButtonElement) => {
    opener.current = button;
    setAbout(aboutOf(ladder));
    setOpen((one) => (one === what ? null : what));
  };
  return (
    <div className={styles.acts}>
      {told}
      <div className={forms.acts}>
        <Link href={`/ladders/${ladder.id}/rungs/new`} className={forms.main}>
          Add a rung
        </Link>
        {rungs.length > 0 ? (
          <Link href={`/ladders/${ladder.id}/openings`} className={forms.other}>
            Openings
          </Link>
        ) : null}
        {rungs.length > 1 ? (
          <button
            type="button"
            className={forms.other}
            aria-expanded={open === 'order'}
            onClick={(event) => toggle('order', event.currentTarget)}
          >
            Put rungs in order
          </button>
        ) : null}
        <button
          type="button"
          className={forms.other}
          aria-expanded={open === 'about'}
          onClick={(event) => toggle('about', event.currentTarget)}
        >
          Name, part, clean, faults
        </button>
        <button
          type="button"
          className={forms.plain}
          disabled={busy}
          onClick={() => send({ act: ladder.retired ? 'put-back-ladder' : 'retire-ladder' })}
        >
          {ladder.retired ? 'Put this ladder back' : 'Retire this ladder'}
        </button>
      </div>
      {open === 'order' ? (
        <OrderList
          label="Rungs, hardest on top"
          items={rungs}
          busy={busy}
          onSave={(ids) => send({ act: 'order', rungIds: ids.toReversed() })}
          onLeave={close}
        />
      ) : null}
      {open === 'about' ? (
        <form
          className={forms.form}
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            send({ act: 'about', ...about });
          }}
        >
          <AboutFields
            about={about}
            parts={parts}
            error={error}
            onChange={(patch) => setAbout((all) => ({ ...all, ...patch }))}
          />
          <div className={forms.acts}>
            <button type="submit" className={forms.main} disabled={busy}>
              Save
            </button>
            <button type="button" className={forms.other} onClick={close}>
              Leave it as it was
            </button>
          </div>
        </form>
      ) : null}
    </div>
  );
}

function aboutOf({ name, partId, family, clean, faults }: LadderState) {
  return { name, partId, family, clean, faults };
}
