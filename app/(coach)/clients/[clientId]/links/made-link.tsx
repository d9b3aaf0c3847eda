'use client';

import { useEffect, useRef, useState } from 'react';
import forms from '../../_parts/forms.module.css';
import styles from './links.module.css';

/** The link and its code, which are shown this once. */
export function MadeLink({ url, code, forWhom }: { url: string; code: string; forWhom: string }) {
  const [said, setSaid] = useState('');
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  async function copy() {
    try {
      await navigator.clipboard.writeText(url);
      setSaid('Copied.');
    } catch {
      setSaid('The browser does not let us copy. Select the link and copy it yourself.');
    }
  }
  return (
    <section className={styles.made} aria-labelledby="made">
      <h3 id="made" ref={head} tabIndex={-1}>
        For {forWhom}
      </h3>
      <p>Both are shown only now. Send the link one way, by mail say, and the code another, by phone say.</p>
      <output className={forms.link} aria-label="Link">
        {url}
      </output>
      <p>
        Code <output className={styles.code}>{`${code.slice(0, 3)} ${code.slice(3)}`}</output>
      </p>
      <div className={forms.acts}>
        <button type="button" className={forms.other} onClick={copy}>
          Copy the link
        </button>
        <a className={forms.other} href="?">
          Done
        </a>
        <span role="status">{said}</span>
      </div>
    </section>
  );
}
