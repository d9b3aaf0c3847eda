'use client';
import type { DrillSide, PhoneDrill } from '#lib/views/phone-session.ts';
import { type Draft, type SetDraft, setKey } from '../_phone/draft.ts';
import { Bob, Tick } from '../_phone/icons.tsx';
import { SetEditor } from './set-editor.tsx';

/** Which set the stepper shows. */
export type OpenSet = { key: string; at: number } | null;

type Props = {
  drill: PhoneDrill;
  sets: Draft['sets'];
  open: OpenSet;
  onOpen: (open: OpenSet) => void;
  onSet: (key: string, at: number, set: SetDraft) => void;
  onConfirm: () => void;
};

/** One drill: its sets as cells, left and right beside each other with the numbers of the sets on the line. */
export function DrillSets({ drill, sets, open, onOpen, onSet, onConfirm }: Props) {
  const ours = drill.sides.map((side) => sets[setKey(side.rungId, side.side)] ?? []);
  const isOpen = ours.flat().some((set) => set.how === 'open');
  const edited = drill.sides.find((side) => open?.key === setKey(side.rungId, side.side));
  const editedSet = edited && open ? sets[open.key]?.[open.at] : undefined;
  const cell = (side: DrillSide, at: number) => {
    const key = setKey(side.rungId, side.side);
    const set = sets[key]?.[at];
    const isThis = open?.key === key && open.at === at;
    return set ? (
      <SetCell
        drill={drill}
        side={side}
        at={at}
        set={set}
        isOpen={isThis}
        onPress={() => onOpen(isThis ? null : { key, at })}
      />
    ) : (
      <span />
    );
  };
  return (
    <section className="drill" aria-label={drill.title}>
      <div className="drill-one">
        <div>
          <h2>{drill.title}</h2>
          <span className="quiet">{doseOf(drill)}</span>
          {drill.note ? <div className="quiet small">{drill.note}</div> : null}
        </div>
        <button
          type="button"
          className={`cell set-cell ${isOpen ? 'planned' : ''}`}
          style={{ width: 84 }}
          onClick={onConfirm}
          disabled={!isOpen}
          aria-label={isOpen ? `${drill.title}: as planned` : `${drill.title}: filled in`}
        >
          {isOpen ? <small>as planned</small> : <Tick />}
        </button>
      </div>
      {drill.sides.length > 1 ? (
        <SideBySide drill={drill} counts={ours.map((side) => side.length)} cell={cell} />
      ) : (
        <div className="drill-sets">
          {drill.sides.flatMap((side) =>
            numbersOf(ours[0] ?? []).map((number) => (
              <div key={`${side.side} ${number}`}>{cell(side, number - 1)}</div>
            )),
          )}
        </div>
      )}
      {edited && editedSet && open ? (
        <SetEditor
          drill={drill}
          side={edited}
          at={open.at}
          set={editedSet}
          onSet={(set) => onSet(open.key, open.at, set)}
        />
      ) : null}
    </section>
  );
}

/** 1, 2, 3: the numbers of the sets, which are their names. */
function numbersOf(sets: SetDraft[]): number[] {
  return Array.from(sets, (_, at) => at + 1);
}

function doseOf(drill: PhoneDrill): string {
  const [first] = drill.sides;
  const isSame = drill.sides.every((side) => side.dose === first?.dose);
  const side = drill.sides.length === 1 && first && first.side !== 'both' ? `${first.side} ` : '';
  const dose =
    isSame && first ? `${side}${first.dose}` : drill.sides.map((one) => `${one.side} ${one.dose}`).join(', ');
  return dose;
}

type SideProps = {
  drill: PhoneDrill;
  counts: number[];
  cell: (side: DrillSide, at: number) => React.ReactNode;
};

function SideBySide({ drill, counts, cell }: SideProps) {
  const rows = Array.from({ length: Math.max(...counts) }, (_, at) => at);
  const [left, right] = drill.sides;
  if (!left || !right) return null;
  return (
    <div className="sides">
      <SideHead side={left} isNamed={drill.rungsDiffer} />
      <div className="line-cell" aria-hidden="true" />
      <SideHead side={right} isNamed={drill.rungsDiffer} />
      {rows.map((at) => (
        <div key={at} style={{ display: 'contents' }}>
          {cell(left, at)}
          <div className="line-cell" aria-hidden="true">
            {at + 1}
          </div>
          {cell(right, at)}
        </div>
      ))}
      <span />
      <div className="line-cell end" aria-hidden="true" style={{ marginTop: -10 }}>
        <Bob size={26} />
      </div>
      <span />
    </div>
  );
}

function SideHead({ side, isNamed }: { side: DrillSide; isNamed: boolean }) {
  return (
    <div className="side-head">
      {side.side === 'left' ? 'Left' : 'Right'}
      {isNamed ? <small>{side.rung}</small> : null}
    </div>
  );
}

type CellProps = {
  drill: PhoneDrill;
  side: DrillSide;
  at: number;
  set: SetDraft;
  isOpen: boolean;
  onPress: () => void;
};

function SetCell({ drill, side, at, set, isOpen, onPress }: CellProps) {
  const look =
    set.how === 'open' ? 'planned' : set.how === 'as-planned' && set.faults.length === 0 ? '' : 'changed';
  const where = side.side === 'both' ? '' : `${side.side}, `;
  return (
    <button
      type="button"
      className={`cell set-cell ${look} ${isOpen ? 'open-now' : ''}`}
      aria-expanded={isOpen}
      onClick={onPress}
      aria-label={`${drill.title}, ${where}set ${at + 1}: ${spoken(drill, side, set)}`}
    >
      {set.how === 'as-planned' ? <Tick size={15} /> : null}
      {set.how === 'not-done' ? '–' : (set.value ?? side.target)}
      {look === 'changed' && set.value !== side.target ? <small>of {side.target}</small> : null}
    </button>
  );
}

function spoken(drill: PhoneDrill, side: DrillSide, set: SetDraft): string {
  if (set.how === 'open') return `planned ${side.target} ${drill.unit}, not filled in`;
  if (set.how === 'not-done') return 'not done';
  if (set.how === 'as-planned') return `${side.target} ${drill.unit}, as planned`;
  return `${set.value} ${drill.unit}, planned ${side.target}`;
}
