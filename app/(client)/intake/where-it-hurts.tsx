'use client';
import type { DraftPlace } from '#lib/domain/intake/draft.ts';
import { groupOfRegion, type PainGroup } from '#lib/domain/pain-groups.ts';
import type { PainSide } from '#lib/domain/vocabulary.ts';

type Props = {
  groups: readonly PainGroup[];
  places: readonly DraftPlace[];
  onPress: (group: PainGroup, side: PainSide) => void;
};

/** Places as in a handstand, hands at the bottom; left and right beside the word. */
export function WhereItHurts({ groups, places, onPress }: Props) {
  const isTold = (group: PainGroup, side: PainSide) =>
    places.some(
      (place) => groupOfRegion(place.region) === group.key && (!group.paired || place.side === side),
    );
  const cell = (group: PainGroup, side: PainSide) => (
    <button
      type="button"
      className={`cell ${side === 'middle' ? 'middle' : ''}`}
      aria-pressed={isTold(group, side)}
      aria-label={side === 'middle' ? group.label : `${side} ${group.label}`}
      onClick={() => onPress(group, side)}
    >
      {side === 'middle' ? group.label : side}
    </button>
  );
  return (
    <div className="body-rows intake-body">
      {groups.map((group) => (
        <Row key={group.key} group={group} cell={cell} />
      ))}
    </div>
  );
}

type RowProps = { group: PainGroup; cell: (group: PainGroup, side: PainSide) => React.ReactNode };

function Row({ group, cell }: RowProps) {
  if (!group.paired) return cell(group, 'middle');
  return (
    <>
      {cell(group, 'left')}
      <div className="where" aria-hidden="true">
        {group.label}
      </div>
      {cell(group, 'right')}
    </>
  );
}
