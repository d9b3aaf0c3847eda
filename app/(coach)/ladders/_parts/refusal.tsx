import type { RefusedPlace } from '#lib/views/ladders/refused-places.ts';
import forms from '../../clients/_parts/forms.module.css';
import { RefusedPlaces } from '../../clients/_parts/refused-places.tsx';

type Props = {
  message: string;
  places: readonly RefusedPlace[];
  seeHref?: string | undefined;
  onOver?: (() => void) | undefined;
};

/** What was not kept and why; after a change by somebody else, both ways on. */
export function Refusal({ message, places, seeHref, onOver }: Props) {
  return (
    <RefusedPlaces message={message} places={places}>
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
    </RefusedPlaces>
  );
}
