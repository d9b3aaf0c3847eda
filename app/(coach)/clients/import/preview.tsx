'use client';

import { type FormEvent, useState } from 'react';
import type { CheckedRow } from '#lib/usecases/import/check-client-list.ts';
import type { ListPreview } from '#lib/usecases/import/import-clients.ts';
import { COLUMN_LABELS } from '#lib/views/client-list-columns.ts';
import forms from '../_parts/forms.module.css';
import styles from './import.module.css';

type Props = {
  preview: ListPreview;
  busy: boolean;
  take: (rows: { line: number; sameName: boolean }[], links: string) => void;
};

/** Every row with what is wrong with it; those without a fault are ticked, doubles are not. */
export function Preview({ preview, busy, take }: Props) {
  const { rows, notRead } = preview;
  const [ticked, setTicked] = useState(() => new Set(rows.filter(isPlain).map(({ line }) => line)));
  const wrong = rows.filter((row) => row.problems.length > 0).length;
  const doubles = rows.filter((row) => row.problems.length === 0 && row.double).length;

  function toggle(line: number) {
    const next = new Set(ticked);
    if (!next.delete(line)) next.add(line);
    setTicked(next);
  }
  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const links = String(new FormData(event.currentTarget).get('links'));
    const chosen = rows.filter(({ line }) => ticked.has(line));
    take(
      chosen.map(({ line, double }) => ({ line, sameName: double?.by === 'name' })),
      links,
    );
  }
  return (
    <form onSubmit={send} aria-labelledby="found">
      <h2 id="found">
        {rows.length === 1 ? '1 row' : `${rows.length} rows`}: {rows.length - wrong - doubles} can be taken
        {wrong > 0 ? `, ${wrong} with a fault` : ''}
        {doubles > 0 ? `, ${doubles} there already` : ''}
      </h2>
      {notRead.length > 0 && <p>Columns that are not read: {notRead.join(', ')}.</p>}
      <table className={`${forms.rows} ${styles.preview}`}>
        <thead>
          <tr>
            <th scope="col">Take</th>
            <th scope="col">Line</th>
            <th scope="col">Name</th>
            <th scope="col">E-mail</th>
            <th scope="col">Zone</th>
            <th scope="col">Coach</th>
            <th scope="col">Goal</th>
            <th scope="col">More</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={row.line} row={row} ticked={ticked.has(row.line)} toggle={() => toggle(row.line)} />
          ))}
        </tbody>
      </table>
      <fieldset className={`${forms.fieldset} ${styles.links}`}>
        <legend>The link that signs each client in</legend>
        <label className={`${forms.tick} ${forms.choice}`}>
          <input type="radio" name="links" value="mail" defaultChecked /> Mail it to those with an e-mail
          address, show me the others
        </label>
        <label className={`${forms.tick} ${forms.choice}`}>
          <input type="radio" name="links" value="show" /> Show me all of them, mail none
        </label>
        <label className={`${forms.tick} ${forms.choice}`}>
          <input type="radio" name="links" value="later" /> Later, one by one on the client’s page
        </label>
      </fieldset>
      <div className={forms.acts} style={{ marginTop: 16 }}>
        <button type="submit" className={forms.main} disabled={busy || ticked.size === 0}>
          {ticked.size === 1 ? 'Take 1 client' : `Take ${ticked.size} clients`}
        </button>
      </div>
    </form>
  );
}

function isPlain({ problems, double }: CheckedRow): boolean {
  return problems.length === 0 && double === null;
}

function Row({ row, ticked, toggle }: { row: CheckedRow; ticked: boolean; toggle: () => void }) {
  const { line, name, problems, double } = row;
  const mayTake = problems.length === 0 && double?.by !== 'e-mail';
  const faults = [
    ...problems.map(({ column, message }) => `${COLUMN_LABELS[column]} ${message}`),
    ...(double ? [doubled(double)] : []),
  ];
  return (
    <>
      <tr data-faulty={faults.length > 0 || undefined}>
        <td>
          <input
            type="checkbox"
            aria-label={`Take line ${line}, ${name || 'without a name'}`}
            aria-describedby={faults.length > 0 ? `fault-${line}` : undefined}
            disabled={!mayTake}
            checked={ticked}
            onChange={toggle}
          />
        </td>
        <td>
          <span className={styles.short}>Line </span>
          {line}
        </td>
        <td className={forms.name}>{name || 'no name'}</td>
        <td>{row.email ?? 'no address'}</td>
        <td>{row.zone || 'no zone'}</td>
        <td>{row.coach}</td>
        <td>{row.goal}</td>
        <td>
          {[row.under18 ? 'under 18' : '', row.started ? `since ${row.started}` : '']
            .filter(Boolean)
            .join(', ')}
        </td>
      </tr>
      {faults.length > 0 && (
        <tr className={styles.faults}>
          <td />
          <td colSpan={7} id={`fault-${line}`}>
            {faults.join('; ')}
          </td>
        </tr>
      )}
    </>
  );
}

function doubled({ by, of }: { by: string; of: string }): string {
  const what = by === 'e-mail' ? 'This e-mail address' : 'A client of this name';
  return `${what} is in ${of} already${by === 'name' ? ': tick it if this is somebody else' : ''}`;
}
