import { AUDIT_KINDS } from '#lib/domain/kept-record.ts';
import type { AuditFilter } from '#lib/schemas/rights.ts';
import { AUDIT_KIND_LABELS } from '#lib/views/rights/audit-words.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './audit.module.css';

type Person = { id: string; name: string };
type Props = { filter: AuditFilter; clients: Person[]; members: Person[] };

/** The filter lives in the address: a plain form. */
export function AuditFilters({ filter, clients, members }: Props) {
  return (
    <form action="/team/audit" method="get" className={styles.filters}>
      <div className={forms.field}>
        <label htmlFor="kind">What</label>
        <select id="kind" name="kind" defaultValue={filter.kind}>
          {AUDIT_KINDS.map((kind) => (
            <option key={kind} value={kind}>
              {AUDIT_KIND_LABELS[kind]}
            </option>
          ))}
        </select>
      </div>
      <People name="client" label="About" everybody="every client" chosen={filter.client} people={clients} />
      <People name="who" label="By" everybody="everybody" chosen={filter.who} people={members} />
      <button type="submit" className={forms.other}>
        Show
      </button>
    </form>
  );
}

type PeopleProps = {
  name: string;
  label: string;
  everybody: string;
  chosen: string | undefined;
  people: Person[];
};

function People({ name, label, everybody, chosen, people }: PeopleProps) {
  return (
    <div className={forms.field}>
      <label htmlFor={name}>{label}</label>
      <select id={name} name={name} defaultValue={chosen ?? ''}>
        <option value="">{everybody}</option>
        {people.map((person) => (
          <option key={person.id} value={person.id}>
            {person.name}
          </option>
        ))}
      </select>
    </div>
  );
}
