'use client';
import type { DrillSide, PhoneDrill } from '#lib/views/phone-session.ts';
import { type Draft, type SetDraft, setKey } from '../_phone/draft.ts';
import { Bob, Tick } from '../_phone/icons.tsx';
import type { PlannedSet } from '../_phone/set-acts.ts';
import { DrillActs, SameAsLast } from './drill-acts.tsx';
import { SetEditor } from './set-editor.tsx';

/** Which set the stepper shows. */
export type OpenSet = { key: string; at: number } | null;

type Props = {
  drill: PhoneDrill;
  sets: Draft['sets'];
  open: OpenSet;
  onOpen: (open: OpenSet) => void;
  onSet: (key: string, at: number, set: SetDraft) => void;
  /** What the plan asks of each set of each side. */
  asked: ReadonlyMap<string, readonly PlannedSet[]>;
  onConfirm: () => void;
  onMore: () => void;
  onRestNotDone: () => void;
  onDropLast: (key: string) => void;
  onDrop: (() => void) | null;
};

/** One drill: its sets as cells, left and right beside each other with the numbers of the sets on the line. */
export function DrillSets({ drill, sets, open, onOpen, onSet, asked, ...acts }: Props) {
  const keys = drill.sides.map((side) => setKey(side.rungId, side.side));
  const ours = keys.map((key) => sets[key] ?? []);
  const isPlanned = (key: string, at: number) => at < (asked.get(key)?.length ?? 0);
  const isOpen = keys.some((key) => sets[key]?.some((set, at) => set.how === 'open' && isPlanned(key, at)));
  const hasPlan = keys.some((key) => isPlanned(key, 0));
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
        isPlanned={isPlanned(key, at)}
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
        {hasPlan ? (
          <button
            type="button"
            className={`cell set-cell ${isOpen ? 'planned' : ''}`}
            style={{ width: 'min-content', minWidth: 84 }}
            onClick={acts.onConfirm}
            disabled={!isOpen}
            aria-label={isOpen ? `${drill.title}: as planned` : `${drill.title}: filled in`}
          >
            {isOpen ? <small>as planned</small> : <Tick />}
          </button>
        ) : null}
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
          key={`${open.key} ${open.at}`}
          drill={drill}
          side={edited}
          at={open.at}
          set={editedSet}
          isPlanned={isPlanned(open.key, open.at)}
          onSet={(set) => onSet(open.key, open.at, set)}
          onDrop={
            !isPlanned(open.key, open.at) && open.at > 0 && open.at === (sets[open.key]?.length ?? 0) - 1
              ? () => acts.onDropLast(open.key)
              : null
          }
        />
      ) : null}
      {/* Below the stepper: what comes in must not slide under a thumb that taps on. */}
      <SameAsLast drill={drill} sets={sets} asked={asked} onSet={onSet} />
      {edited || acts.onDrop ? <DrillActs title={drill.title} hasOpen={isOpen} {...acts} /> : null}
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
  isPlanned: boolean;
  isOpen: boolean;
  onPress: () => void;
};

function SetCell({ drill, side, at, set, isPlanned, isOpen, onPress }: CellProps) {
  const look =
    set.how === 'open' ? 'planned' : set.how === 'as-planned' && set.faults.length === 0 ? '' : 'changed';
  const where = side.side === 'both' ? '' : `${side.side}, `;
  return (
    <button
      type="button"
      className={`cell set-cell ${look} ${isOpen ? 'open-now' : ''}`}
      aria-expanded={isOpen}
      onClick={onPress}
      aria-label={`${drill.title}, ${where}set ${at + 1}: ${spoken(drill, isPlanned ? side.target : null, set)}`}
    >
      {set.how === 'as-planned' ? <Tick size={15} /> : null}
      {set.how === 'not-done' ? '–' : (set.value ?? (isPlanned ? side.target : <small>extra</small>))}
      {look === 'changed' && isPlanned && set.value !== side.target ? <small> of {side.target}</small> : null}
    </button>
  );
}

/** Holds the words that are seen, in their order, so that a voice can call the cell by them. */
function spoken({ unit }: PhoneDrill, target: number | null, set: SetDraft): string {
  const amount = unit ? `${set.value ?? target} ${unit}` : `${set.value ?? target}`;
  if (set.how === 'not-done') return 'not done';
  if (set.how === 'open') return `${target === null ? 'extra' : `planned ${amount}`}, not filled in`;
  if (set.how === 'as-planned') return `${amount}, as planned`;
  if (target === null) return `${amount}, not planned`;
  return set.value === target ? `${amount}, planned ${target}` : `${set.value} of ${target} ${unit}`.trim();
}
