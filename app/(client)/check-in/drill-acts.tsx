'use client';
import type { PhoneDrill } from '#lib/views/phone-session.ts';
import { type SetDraft, setKey } from '../_phone/draft.ts';
import { type PlannedSet, sameAsLast } from '../_phone/set-acts.ts';

type Sides = {
  drill: PhoneDrill;
  sets: Readonly<Record<string, SetDraft[]>>;
  asked: ReadonlyMap<string, readonly PlannedSet[]>;
};

/** "Same as last set", under the sets of each side: one tap fills in the next one. */
export function SameAsLast({
  drill,
  sets,
  asked,
  onSet,
}: Sides & { onSet: (key: string, at: number, set: SetDraft) => void }) {
  const copies = drill.sides.map(({ rungId, side }) => {
    const key = setKey(rungId, side);
    return { key, side, copy: sameAsLast(sets[key] ?? [], asked.get(key)) };
  });
  if (copies.every(({ copy }) => copy === null)) return null;
  return (
    <div className={drill.sides.length > 1 ? 'same same-sides' : 'same'}>
      {copies.map(({ key, side, copy }) =>
        copy ? (
          <button
            key={key}
            type="button"
            className="cell"
            onClick={() => onSet(key, copy.at, copy.set)}
            aria-label={`${drill.title}, ${side === 'both' ? '' : `${side}, `}set ${copy.at + 1}, same as last: ${amountOf(copy.set, drill)}`}
          >
            same as last: {amountOf(copy.set, drill)}
          </button>
        ) : (
          <span key={key} />
        ),
      )}
    </div>
  );
}

function amountOf({ value, tried }: SetDraft, { unit }: PhoneDrill): string {
  if (tried !== null) return `${value}/${tried}`;
  return unit ? `${value} ${unit}` : String(value);
}

type ActProps = {
  title: string;
  hasOpen: boolean;
  onMore: () => void;
  onRestNotDone: () => void;
  /** Null: a planned drill cannot be taken out, it is not done. */
  onDrop: (() => void) | null;
};

/** What else can have happened to a drill: more sets than planned, stopped early, a slip of the finger. */
export function DrillActs({ title, hasOpen, onMore, onRestNotDone, onDrop }: ActProps) {
  return (
    <fieldset className="word-acts bare" aria-label={`${title}: more`}>
      <button type="button" className="word-act" onClick={onMore}>
        One more set
      </button>
      {hasOpen && !onDrop ? (
        <button type="button" className="word-act" onClick={onRestNotDone}>
          The rest not done
        </button>
      ) : null}
      {onDrop ? (
        <button type="button" className="word-act" onClick={onDrop}>
          Take this drill out
        </button>
      ) : null}
    </fieldset>
  );
}
