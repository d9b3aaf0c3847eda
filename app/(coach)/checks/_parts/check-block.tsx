import type { CheckLines, NumberLine } from '#lib/views/checks-page.ts';
import styles from './checks.module.css';
import type { Numbers } from './use-numbers.ts';

type Props = { check: CheckLines; numbers: Numbers; mayEdit: boolean };

/** One check: what it asks, how often it was right to tell, and its numbers behind a fold. */
export function CheckBlock({ check, numbers, mayEdit }: Props) {
  const changed = check.numbers.filter(
    ({ id, value, without }) => (numbers.typed.get(id) ?? value) !== without,
  );
  const refused = check.numbers.some(({ id }) => numbers.refused.has(id));
  return (
    <details className={styles.check} open={refused || undefined}>
      <summary>
        <span className={styles.title}>{check.title}</span>
        <span className={styles.question}>{check.question}</span>
        <span className={styles.said}>
          {changed.length > 0 && <b>{changed.length} changed</b>}
          {check.verdicts !== '' && <span>{check.verdicts}</span>}
        </span>
      </summary>
      {check.look && (
        <p className={styles.look}>
          Fewer than one in three were right to tell. A look at these numbers may be worth it.
        </p>
      )}
      {check.numbers.length === 0 ? (
        <p className={styles.look}>No number of its own.</p>
      ) : (
        <table className={styles.numbers}>
          <thead>
            <tr>
              <th scope="col">What it means</th>
              <th scope="col">In force</th>
              <th scope="col">Without a change</th>
              <th scope="col">Where it comes from</th>
            </tr>
          </thead>
          <tbody>
            {check.numbers.map((line) => (
              <NumberRow key={line.id} line={line} title={check.title} numbers={numbers} mayEdit={mayEdit} />
            ))}
          </tbody>
        </table>
      )}
    </details>
  );
}

function NumberRow(props: { line: NumberLine; title: string; numbers: Numbers; mayEdit: boolean }) {
  const { line, title, numbers, mayEdit } = props;
  const text = numbers.typed.get(line.id) ?? line.value;
  const refused = numbers.refused.get(line.id);
  const field = `number-${line.id}`;
  return (
    <tr data-changed={text !== line.without || undefined}>
      <th scope="row">{line.meaning}</th>
      <td>
        {line.kept === null && mayEdit ? (
          <>
            <input
              id={field}
              inputMode="decimal"
              aria-label={`${title}, ${line.meaning}, ${line.unit}`}
              aria-describedby={`${field}-bounds`}
              aria-invalid={refused !== undefined}
              value={text}
              onChange={(event) => numbers.type(line.id, event.target.value)}
            />{' '}
            {line.unit}
            <span id={`${field}-bounds`} className={styles.bounds}>
              {refused ?? line.bounds}
            </span>
          </>
        ) : (
          <>
            {line.value} {line.unit}
            {line.kept !== null && <span className={styles.bounds}>the same for everybody: {line.kept}</span>}
          </>
        )}
      </td>
      <td>{line.without}</td>
      <td className={styles.source}>{line.source}</td>
    </tr>
  );
}
