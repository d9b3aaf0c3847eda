'use client';
import { asSentence, DANGER_SIGN_LABELS } from '#lib/domain/labels.ts';
import { DANGER_SIGNS, type DangerSign } from '#lib/domain/vocabulary.ts';
import type { Draft, PlaceDraft } from '../_phone/draft.ts';
import { Choice } from './choice.tsx';
import type { Change } from './use-draft.ts';

type Props = { draft: Draft; place: PlaceDraft; change: Change };
const GONE_OPTIONS = [
  { value: true, label: 'Gone within a minute' },
  { value: false, label: 'Lasted longer' },
];
const TINGLING: DangerSign = 'numb-or-tingling';

/** Asked only when pain is told; each is its own yes. */
export function DangerSigns({ draft, place, change }: Props) {
  const toggle = (sign: DangerSign) => {
    const others = draft.signs.filter((told) => told.sign !== sign);
    const isNew = others.length === draft.signs.length;
    const { region, side } = place;
    change({
      signs: isNew ? [...others, { sign, gone: false, region, side: region ? side : null }] : others,
    });
  };
  const tingling = draft.signs.find((told) => told.sign === TINGLING);
  return (
    <>
      <div className="between">
        <h2>Any of these?</h2>
        <span className="quiet">{draft.signs.length === 0 ? 'none told' : `${draft.signs.length} told`}</span>
      </div>
      <fieldset className="cells cells-2" aria-label="Danger signs">
        {DANGER_SIGNS.map((sign) => (
          <button
            key={sign}
            type="button"
            className="cell"
            aria-pressed={draft.signs.some((told) => told.sign === sign)}
            onClick={() => toggle(sign)}
          >
            {asSentence(DANGER_SIGN_LABELS[sign])}
          </button>
        ))}
      </fieldset>
      {tingling ? (
        <Choice
          name="Numb or tingling: how long"
          options={GONE_OPTIONS}
          value={tingling.gone}
          columns={2}
          onChange={(gone) =>
            change({
              signs: draft.signs.map((told) =>
                told.sign === TINGLING ? { ...told, gone: gone === true } : told,
              ),
            })
          }
        />
      ) : null}
    </>
  );
}
