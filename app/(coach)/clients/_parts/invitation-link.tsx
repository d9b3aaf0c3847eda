'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import styles from './forms.module.css';
import { postJson, textIn } from './post-json.ts';

/** Makes the link that signs the client in, shows it, copies it. A new link ends the one before. */
export function InvitationLink({ clientId, atOnce = false }: { clientId: string; atOnce?: boolean }) {
  const [url, setUrl] = useState('');
  const [said, setSaid] = useState('');
  const asked = useRef(false);

  const make = useCallback(async () => {
    const answer = await postJson(`/api/clients/${clientId}/link`, {});
    if (answer.ok) setUrl(textIn(answer.value, 'url'));
    setSaid(answer.ok ? '' : answer.message);
  }, [clientId]);

  useEffect(() => {
    if (atOnce && !asked.current) {
      asked.current = true;
      void make();
    }
  }, [atOnce, make]);

  async function copy() {
    try {
      await navigator.clipboard.writeText(url);
      setSaid('Copied.');
    } catch {
      setSaid('The browser does not let us copy. Select the link and copy it yourself.');
    }
  }

  return (
    <div className={styles.wide} style={{ maxWidth: 640 }}>
      {url ? (
        <>
          <p className={styles.lead} style={{ margin: 0 }}>
            This link signs the client in, once. Send it to nobody else.
          </p>
          <output className={styles.link} aria-label="Invitation link">
            {url}
          </output>
        </>
      ) : null}
      <div className={styles.acts}>
        {url ? (
          <button type="button" className={styles.other} onClick={copy}>
            Copy the link
          </button>
        ) : (
          <button type="button" className={styles.other} onClick={make}>
            Make a sign-in link
          </button>
        )}
        <span role="status">{said}</span>
      </div>
    </div>
  );
}
