'use client';

import type { Limits } from '#lib/checks/thresholds.ts';
import type { CheckGroup } from '#lib/views/checks-page.ts';
import { CheckBlock } from './check-block.tsx';
import styles from './checks.module.css';
import { ReplayPanel } from './replay-panel.tsx';
import { SavePanel } from './save-panel.tsx';
import { useNumbers } from './use-numbers.ts';

type Props = {
  client: { id: string; name: string } | null;
  groups: readonly CheckGroup[];
  version: number;
  /** What this scope changes now: to take a save back. */
  inForce: Partial<Limits>;
  mayEdit: boolean;
  mayReplay: boolean;
};

export function ChecksForm({ client, groups, version, inForce, mayEdit, mayReplay }: Props) {
  const numbers = useNumbers(groups);
  return (
    <div className={styles.form}>
      {groups.map((group) => (
        <section key={group.title} className={styles.group}>
          <h2>{group.title}</h2>
          <div>
            {group.checks.map((check) => (
              <CheckBlock key={check.key} check={check} numbers={numbers} mayEdit={mayEdit} />
            ))}
          </div>
        </section>
      ))}
      {numbers.typed.size > 0 && (
        <p className={styles.bar} role="status">
          {numbers.changes.length === 1 ? '1 number differs' : `${numbers.changes.length} numbers differ`}:{' '}
          <a href="#try">try and save</a>
        </p>
      )}
      {(mayEdit || mayReplay) && (
        <section className={styles.group} aria-labelledby="try">
          <h2 id="try">Try and save</h2>
          <div className={styles.panels}>
            {mayReplay && <ReplayPanel clientId={client?.id ?? null} numbers={numbers} />}
            {mayEdit && <SavePanel client={client} version={version} inForce={inForce} numbers={numbers} />}
          </div>
        </section>
      )}
    </div>
  );
}
