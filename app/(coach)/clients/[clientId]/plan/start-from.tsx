import forms from '../../_parts/forms.module.css';
import { KeptPlans } from './kept-plans.tsx';
import styles from './plan.module.css';

type Named = { id: string; name: string };
type Props = { clientId: string; clients: Named[]; templates: Named[]; copied: string };

/** Fills the form with the plan of another client or a kept one. Nothing is saved by it. */
export function StartFrom({ clientId, clients, templates, copied }: Props) {
  const address = `/clients/${clientId}/plan`;
  return (
    <>
      {copied ? (
        <p role="status" className={styles.notice}>
          The form holds a copy of {copied}. Look at every rung and dose: they were another’s. Nothing is
          saved yet. <a href={address}>Back to the plan as it was</a>
        </p>
      ) : null}
      {clients.length + templates.length > 0 ? (
        <details className={styles.startFrom}>
          <summary>Copy from another client or a kept plan</summary>
          <p className={styles.quiet}>The copy takes the place of all that is in the form.</p>
          {clients.length > 0 ? (
            <Choice address={address} name="client" label="Client" from={clients} />
          ) : null}
          {templates.length > 0 ? (
            <Choice address={address} name="template" label="Kept plan" from={templates} />
          ) : null}
          {templates.length > 0 ? <KeptPlans templates={templates} /> : null}
        </details>
      ) : null}
    </>
  );
}

function Choice({
  address,
  name,
  label,
  from,
}: {
  address: string;
  name: string;
  label: string;
  from: Named[];
}) {
  return (
    <form action={address} className={styles.choice}>
      <label htmlFor={`copy-${name}`}>{label}</label>
      <select id={`copy-${name}`} name={name} defaultValue="">
        <option value="">choose</option>
        {from.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </select>
      <button type="submit" className={forms.other}>
        Copy
      </button>
    </form>
  );
}
