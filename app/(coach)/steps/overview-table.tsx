import Link from 'next/link';
import type { CountsSaid } from '#lib/views/steps/count-outcomes.ts';
import type { OverviewRow } from '#lib/views/steps/steps-overview.ts';
import styles from './steps.module.css';

type Props = { title: string; explain: string; rows: OverviewRow[] };

/** Counts of steps beside counts of reasons left alone; a row opens to the people. Below 760 px each row is a block. */
export function OverviewTable({ title, explain, rows }: Props) {
  const id = title.toLowerCase().replaceAll(' ', '-');
  return (
    <section className={styles.section} aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <p className={styles.explain}>{explain}</p>
      <table className={styles.table} aria-labelledby={id}>
        <thead>
          <tr>
            <th scope="col" rowSpan={2}>
              What
            </th>
            <th scope="colgroup" colSpan={6}>
              A step was taken
            </th>
            <th scope="colgroup" colSpan={4} className={styles.apart}>
              Nothing was done
            </th>
          </tr>
          <tr>
            {['n', 'better', 'the same', 'worse', 'not known', 'not yet'].map((word) => (
              <th key={word} scope="col">
                {word}
              </th>
            ))}
            {['n', 'better', 'the same', 'worse'].map((word) => (
              <th key={word} scope="col" className={word === 'n' ? styles.apart : undefined}>
                {word}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={row.key} row={row} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({ row }: { row: OverviewRow }) {
  return (
    <tr>
      <th scope="row">
        {row.title}
        {row.who.length > 0 ? <People who={row.who} /> : null}
      </th>
      <Counts counts={row.taken} said="Step taken" all />
      <Counts counts={row.alone} said="Nothing done" />
    </tr>
  );
}

function Counts({ counts, said, all = false }: { counts: CountsSaid; said: string; all?: boolean }) {
  return (
    <>
      <td className={all ? undefined : styles.apart} data-group={said}>
        {counts.n}
      </td>
      <td data-label="better">{counts.better}</td>
      <td data-label="the same">{counts.same}</td>
      <td data-label="worse">{counts.worse}</td>
      {all ? (
        <>
          <td data-label="not known">{counts['not-known']}</td>
          <td data-label="not yet">{counts['not-yet']}</td>
        </>
      ) : null}
    </>
  );
}

function People({ who }: { who: OverviewRow['who'] }) {
  return (
    <details className={styles.who}>
      <summary>Who</summary>
      {who.map((group) => (
        <p key={group.words}>
          {group.words}:{' '}
          {group.people.map((person, index) => (
            <span key={person.key}>
              {index > 0 ? ', ' : ''}
              <Link href={`/clients/${person.clientId}#steps-tried`}>{person.name}</Link> ({person.when}
              {person.besides ? ', two changes' : ''})
            </span>
          ))}
        </p>
      ))}
    </details>
  );
}
