import type { FailedClient, NightLine } from '#lib/views/nights.ts';
import styles from './nights.module.css';
import { RunNights } from './run-nights.tsx';

export function Runs({ lines, canRun }: { lines: NightLine[]; canRun: boolean }) {
  return (
    <table className={styles.runs}>
      <thead>
        <tr>
          <th scope="col">Night of</th>
          <th scope="col">Started, your time</th>
          <th scope="col">Took</th>
          <th scope="col">Clients checked</th>
          <th scope="col">New rows, not urgent</th>
          <th scope="col">Went by</th>
        </tr>
      </thead>
      {lines.map((line) =>
        line.kind === 'gap' ? (
          <tbody key={line.from}>
            <tr>
              <td colSpan={6}>{line.words}</td>
            </tr>
          </tbody>
        ) : (
          <tbody key={line.localDate}>
            <Run line={line} />
            {line.failed.map((client) => (
              <Failed key={client.clientId} client={client} canRun={canRun} />
            ))}
          </tbody>
        ),
      )}
    </table>
  );
}

function Run({ line }: { line: NightLine & { kind: 'run' } }) {
  const { count, most, over } = line.newRows;
  return (
    <tr>
      <th scope="row" title={line.exact}>
        {line.said}
      </th>
      <td data-head="Started">{line.started}</td>
      <td data-head="Took">{line.took}</td>
      <td data-head="Clients checked">
        {line.checked}
        {line.failed.length > 0 && `, ${line.failed.length} failed`}
      </td>
      <td data-head="New rows, not urgent">
        {over ? (
          <b>
            {count}, more than {most}: too many
          </b>
        ) : (
          `${count} (up to ${most})`
        )}
      </td>
      <td data-head="Went by">{line.versions}</td>
    </tr>
  );
}

function Failed({ client, canRun }: { client: FailedClient; canRun: boolean }) {
  return (
    <tr className={styles.failed}>
      <td />
      <td colSpan={5}>
        <b>{client.name}</b> was not checked: {client.said}. Every check-in is kept; {client.tries}.
        <details>
          <summary>For whoever mends it</summary>
          <code>{client.place}</code>
        </details>
        {canRun && (
          <RunNights
            label={`Run ${client.name} again`}
            about={client.name}
            ask={{ clientId: client.clientId }}
          />
        )}
      </td>
    </tr>
  );
}
