import type { DangerNow } from '#lib/views/dangers-now.ts';
import forms from './forms.module.css';

/** Said before anything is planned; nothing when no danger sign is open. */
export function DangersNow({ dangers }: { dangers: DangerNow[] }) {
  if (dangers.length === 0) return null;
  return (
    <ul className={`${forms.warnings} ${forms.first}`} aria-label="Danger signs not cleared">
      {dangers.map(({ label, sentence, step }) => (
        <li key={label}>
          {sentence} <b>{step}.</b>
        </li>
      ))}
    </ul>
  );
}
