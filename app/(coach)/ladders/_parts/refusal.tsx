import forms from '../../clients/_parts/forms.module.css';
import styles from './ladders.module.css';

type Props = { message: string; seeHref?: string | undefined; onOver?: (() => void) | undefined };

/** What was not kept and why; after a change by somebody else, both ways on. */
export function Refusal({ message, seeHref, onOver }: Props) {
  return (
    <div role="alert" className={`${forms.refusal} ${styles.told}`}>
      <p>{message}</p>
      {seeHref || onOver ? (
        <div className={forms.acts}>
          {seeHref ? (
            <a className={forms.other} href={seeHref} target="_blank" rel="noreferrer">
              See it as it is now, in another tab
            </a>
          ) : null}
          {onOver ? (
            <button type="button" className={forms.other} onClick={onOver}>
              Save mine over it
            </button>
          ) : null}
        </div>
      ) : null}
    </div>
  );
}
