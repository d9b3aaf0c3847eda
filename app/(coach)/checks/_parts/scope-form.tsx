import styles from './checks.module.css';

type Props = { clients: readonly { id: string; name: string }[]; clientId: string };

/** Whose numbers stand below. Works without scripts: the choice is in the address. */
export function ScopeForm({ clients, clientId }: Props) {
  return (
    <form action="/checks" className={styles.scope}>
      <label htmlFor="client">Numbers for</label>
      <select id="client" name="client" defaultValue={clientId}>
        <option value="">the whole team</option>
        {clients.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
      <button type="submit" data-outlined>
        Show
      </button>
    </form>
  );
}
