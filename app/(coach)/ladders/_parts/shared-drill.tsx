'use client';

import forms from '../../clients/_parts/forms.module.css';
import styles from './rung.module.css';

type Props = { others: string[]; drillFor: 'all' | 'this'; onChange: (drillFor: 'all' | 'this') => void };

/** Asks how far a change of a shared drill goes. */
export function SharedDrill({ others, drillFor, onChange }: Props) {
  const choice = (value: 'all' | 'this', words: string) => (
    <label className={forms.tick}>
      <input type="radio" name="drill-for" checked={drillFor === value} onChange={() => onChange(value)} />
      {words}
    </label>
  );
  return (
    <section aria-labelledby="shared" className={styles.section}>
      <h2 id="shared">Shared drill</h2>
      <fieldset className={styles.fields}>
        <legend className="heard-only">How far a change of the drill or its stress goes</legend>
        <p>The same drill is also rung {others.join(', ')}. A change of drill or stress goes</p>
        {choice('all', 'to all rungs of this drill')}
        {choice('this', 'to this rung only, which then has a drill of its own')}
      </fieldset>
    </section>
  );
}
