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
      <Cell label="better" count={counts.better} />
      <Cell label="the same" count={counts.same} />
      <Cell label="worse" count={counts.worse} />
      {all ? (
        <>
          <Cell label="not known" count={counts['not-known']} />
          <Cell label="not yet" count={counts['not-yet']} />
        </>
      ) : null}
    </>
  );
}

function Cell({ label, count }: { label: string; count: string }) {
  return (
    <td data-label={label} data-none={count === '0' || undefined}>
      {count}
    </td>
  );
}

/** A few names stand in the open. */
const NAMED = 3;

function People({ who }: { who: OverviewRow['who'] }) {
  const people = who.map((group) => <Group key={group.words} group={group} />);
  const count = who.reduce((sum, group) => sum + group.people.length, 0);
  if (count <= NAMED) return <div className={styles.who}>{people}</div>;
  return (
    <details className={styles.who}>
      <summary>Who</summary>
      {people}
    </details>
  );
}

function Group({ group }: { group: OverviewRow['who'][number] }) {
  return (
    <p>
      {group.words}:{' '}
      {group.people.map((person, index) => (
        <span key={person.key}>
          {index > 0 ? ', ' : ''}
          <Link href={`/clients/${person.clientId}#steps-tried`}>{person.name}</Link> ({person.when}
          {person.besides ? ', two changes' : ''})
        </span>
      ))}
    </p>
  );
}
