'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import type { Limits } from '#lib/checks/thresholds.ts';
import { postJson } from '../../clients/_parts/post-json.ts';
import { RefusedPlaces } from '../../clients/_parts/refused-places.tsx';
import styles from './checks.module.css';
import type { Numbers } from './use-numbers.ts';

type Props = {
  client: { id: string; name: string } | null;
  version: number;
  inForce: Partial<Limits>;
  numbers: Numbers;
};
/** Kept as one value: a list made anew at every key would take the focus each time. */
type Refused = { message: string; places: { id: string; name: string; message: string }[] };

/** What would be saved, why, and the save itself: a new version, the earlier ones stay. */
export function SavePanel({ client, version, inForce, numbers }: Props) {
  const router = useRouter();
  const [why, setWhy] = useState('');
  const [busy, setBusy] = useState(false);
  const [refused, setRefused] = useState<Refused | null>(null);
  const differs = JSON.stringify(sorted(numbers.values)) !== JSON.stringify(sorted(inForce));

  async function save(event: FormEvent) {
    event.preventDefault();
    setBusy(true);
    const url = client ? `/api/clients/${client.id}/checks` : '/api/checks';
    const answer = await postJson(url, { values: numbers.values, why, baseVersion: version });
    setBusy(false);
    if (!answer.ok) {
      numbers.refuse(answer.fields);
      setRefused({ message: answer.message, places: placesOf(answer.fields, numbers) });
      return;
    }
    const { version: saved } = answer.value as { version: number };
    router.replace(`/checks?${client ? `client=${client.id}&` : ''}saved=${saved}`);
    router.refresh();
  }

  return (
    <form onSubmit={save}>
      <h3>Save {client ? `for ${client.name}` : 'for the whole team'}</h3>
      {numbers.changes.length === 0 ? (
        <p className={styles.hint}>
          {differs
            ? `Saving takes back every change: ${client ? 'the numbers of the team' : 'the defaults'} hold again.`
            : 'Nothing differs. Change a number above, try it, and save it here.'}
        </p>
      ) : (
        <>
          {!differs && <p className={styles.hint}>In force, nothing to save:</p>}
          <ul className={styles.changes}>
            {numbers.changes.map((change) => (
              <li key={change}>{change}</li>
            ))}
          </ul>
        </>
      )}
      {numbers.unreadable.map(({ id, name }) => (
        <p key={id} role="alert">
          {name}: type a number such as 7 or 1.5.
        </p>
      ))}
      <label htmlFor="why">Why</label>
      <input id="why" value={why} maxLength={500} onChange={(event) => setWhy(event.target.value)} />
      {refused && <RefusedPlaces message={refused.message} places={refused.places} />}
      <p className={styles.acts}>
        <button type="submit" data-filled disabled={busy || !differs || numbers.unreadable.length > 0}>
          Save
        </button>
        <span className={styles.hint}>
          The next night goes by it, and what a check-in raises at once. Reasons keep the version that raised
          them.
        </span>
      </p>
    </form>
  );
}

function sorted(values: object): [string, unknown][] {
  return Object.entries(values).sort(([a], [b]) => (a < b ? -1 : 1));
}

function placesOf(fields: Record<string, string>, numbers: Numbers): Refused['places'] {
  return Object.entries(fields).map(([path, message]) => {
    const id = path.replace(/^values\./, '');
    return path === 'why'
      ? { id, name: 'Why', message }
      : { id: `number-${id}`, name: numbers.nameOf(id), message };
  });
}
