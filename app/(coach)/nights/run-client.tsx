'use client';
import type { FormEvent } from 'react';
import styles from './nights.module.css';
import { useRun } from './run-nights.tsx';

/** One client, checked again at once. */
export function RunClient({ clients }: { clients: { id: string; name: string }[] }) {
  const { said, run } = useRun('One client');
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const clientId = new FormData(event.currentTarget).get('clientId');
    if (typeof clientId === 'string') void run({ clientId });
  };
  return (
    <form className={styles.run} onSubmit={send}>
      <select name="clientId" aria-label="Client to check again">
        {clients.map((client) => (
          <option key={client.id} value={client.id}>
            {client.name}
          </option>
        ))}
      </select>
      <button type="submit" data-outlined>
        Check this client again
      </button>
      <span role="status">{said}</span>
    </form>
  );
}
