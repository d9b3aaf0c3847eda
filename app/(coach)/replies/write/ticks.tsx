'use client';
import type { Recipient } from '#lib/views/replies/recipients.ts';
import styles from '../_parts/replies.module.css';

type Props = {
  clients: Recipient[];
  all: number;
  ticked: ReadonlySet<string>;
  tick: (next: ReadonlySet<string>) => void;
};

/** The clients that the filter leaves, each with a tick. Nobody is ticked until the coach does it. */
export function Ticks({ clients, all, ticked, tick }: Props) {
  const chosen = clients.filter((client) => ticked.has(client.id)).length;
  function turn(id: string, on: boolean) {
    const next = new Set(ticked);
    if (on) next.add(id);
    else next.delete(id);
    tick(next);
  }
  if (clients.length === 0)
    return (
      <p className={styles.empty}>
        {all === 0
          ? 'The people you coach will stand here.'
          : `None of the ${all} clients stands under this filter.`}
      </p>
    );
  return (
    <fieldset className={styles.whom}>
      <legend>
        {clients.length === all ? `${all} clients` : `${clients.length} of ${all} clients`}, {chosen} ticked
      </legend>
      <p className={styles.acted}>
        <button type="button" onClick={() => tick(new Set(clients.map((client) => client.id)))}>
          Tick all {clients.length}
        </button>
        <button type="button" onClick={() => tick(new Set())} disabled={chosen === 0}>
          Tick none
        </button>
      </p>
      <ul>
        {clients.map(({ id, name, about }) => (
          <li key={id}>
            <label className={styles.tick}>
              <input
                type="checkbox"
                checked={ticked.has(id)}
                onChange={(event) => turn(id, event.target.checked)}
              />
              <span>
                <b>{name}</b> {about}
              </span>
            </label>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}
