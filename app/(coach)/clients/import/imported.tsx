'use client';

import Link from 'next/link';
import { useEffect, useRef, useState } from 'react';
import type { ListImported } from '#lib/usecases/import/import-clients.ts';
import forms from '../_parts/forms.module.css';
import styles from './import.module.css';

/** Who was added, with the links to pass on: they are shown this once. */
export function Imported({ imported }: { imported: ListImported }) {
  const { clients } = imported;
  const [said, setSaid] = useState('');
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  const links = clients.filter(({ url }) => url !== null);
  async function copy() {
    try {
      await navigator.clipboard.writeText(links.map(({ name, url }) => `${name}\t${url}`).join('\n'));
      setSaid('Copied: a name and a link on each line.');
    } catch {
      setSaid('The browser does not let us copy. Select the links and copy them yourself.');
    }
  }
  return (
    <section aria-labelledby="added">
      <h2 id="added" ref={head} tabIndex={-1}>
        {clients.length === 1 ? '1 client is added' : `${clients.length} clients are added`}
      </h2>
      {links.length > 0 && (
        <div className={forms.acts}>
          <p>Each link signs that client in, once, within 7 days. They are shown only now.</p>
          <button type="button" className={forms.other} onClick={copy}>
            Copy all {links.length}
          </button>
          <span role="status">{said}</span>
        </div>
      )}
      <ul className={styles.added}>
        {clients.map(({ clientId, name, url, mailedTo }) => (
          <li key={clientId}>
            <Link href={`/clients/${clientId}`}>{name}</Link>{' '}
            <span>
              {mailedTo ? `link mailed to ${mailedTo}` : (url ?? 'link to be made on the client’s page')}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
