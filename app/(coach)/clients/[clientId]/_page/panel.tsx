import type { ReactNode } from 'react';
import styles from './charts.module.css';

export type Table = { columns: string[]; rows: { key: string; cells: string[] }[] };

/** One panel on the shared axis: side-head, one line of explanation, the charts, and the same as a table. */
export function Panel({
  title,
  explain,
  summary,
  table,
  children,
}: {
  title: string;
  explain: string;
  /** What the charts say, in one sentence. */
  summary?: string | undefined;
  table: Table;
  children: ReactNode;
}) {
  const id = `panel-${title.toLowerCase().replaceAll(' ', '-')}`;
  return (
    <section className={styles.panel} aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <p className={styles.explain}>{explain}</p>
      {table.rows.length > 0 ? (
        <details className={styles.table}>
          <summary>As a table</summary>
          <table aria-labelledby={id}>
            <thead>
              <tr>
                {table.columns.map((column) => (
                  <th key={column} scope="col">
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row) => (
                <tr key={row.key}>
                  {row.cells.map((cell, index) => (
                    <td key={`${row.key} ${table.columns[index]}`}>{cell}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      ) : null}
      {summary ? <p className={styles.summary}>{summary}</p> : null}
      {children}
    </section>
  );
}
