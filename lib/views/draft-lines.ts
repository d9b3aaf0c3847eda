import { SUPPORT_LABELS } from '#lib/domain/labels.ts';
import type { DraftSource, PlanDraft, PlanDraftLine } from './plan-draft.ts';
import type { FormLadder, FormRung } from './plan-form.ts';
import { emptyRow, type FormRow, nextKey, sidesApart, tidyPairs } from './plan-rows.ts';
import { datedDay } from './say-date.ts';

export type DraftLineView = { key: string; line: PlanDraftLine; said: string; why: string };
export type DraftView = {
  id: string;
  title: string;
  why: string;
  notes: string;
  lines: DraftLineView[];
  dropSkills: { id: string; name: string }[];
  /** Weeks proposed as easy ones, counted from 1. */
  easyWeeks: number[];
  /** What the step would bring that is not among the lines; empty: nothing. */
  later: string;
  /** Said when a version came of it already. */
  used: string;
};

const SOURCE_WORDS: Record<DraftSource, string> = {
  'gap-finder': 'Proposed from the gaps',
  reason: 'Proposed from a reason',
  copy: 'Copied',
  start: 'Start plan',
};

/** A kept draft as the editor lists it. */
export function draftView(
  stored: { id: string; by: string | null; createdAt: Date; usedVersion: number | null; draft: PlanDraft },
  about: { ladders: readonly FormLadder[]; skills: { id: string; name: string }[]; today: string },
): DraftView {
  const { draft } = stored;
  const when = datedDay(stored.createdAt.toISOString().slice(0, 10), about.today);
  return {
    id: stored.id,
    title: `${SOURCE_WORDS[draft.source]}, ${when}${stored.by ? `, for ${stored.by}` : ''}`,
    why: draft.why,
    notes: draft.notes,
    lines: draft.lines.map((line, index) => ({
      key: `${index} ${line.rungId}`,
      line,
      said: lineInWords(line, about.ladders),
      why: line.why === draft.why ? '' : line.why,
    })),
    dropSkills: about.skills.filter(({ name }) => draft.dropSkills.includes(name)),
    easyWeeks: draft.easyWeeks,
    later: (draft.later ?? []).join('; '),
    used:
      stored.usedVersion === null
        ? ''
        : `Version ${stored.usedVersion} was already made of this draft. Taking lines again changes the plan again.`,
  };
}

function lineInWords(line: PlanDraftLine, ladders: readonly FormLadder[]): string {
  const rung = findRung(ladders, line.rungId)?.rung;
  const side = line.side === 'both' ? '' : `, ${line.side}`;
  const name = `${rung?.name ?? 'A rung no longer in the ladders'}${side}`;
  const session = line.session === 'short' ? 'the short session' : `session ${line.session}`;
  if (line.act === 'drop') return `Take out of ${session}: ${name}`;
  const unit = rung && rung.unit !== 'reps' ? ` ${rung.unit}` : '';
  const dose = line.target === null ? `${line.minutes ?? 0} min` : `${line.sets} × ${line.target}${unit}`;
  const on = line.support ? `, ${SUPPORT_LABELS[line.support]}` : '';
  return `${name}: ${dose}, ${line.timesPerWeek} a week${on}, in ${session}${besideInWords(line, ladders)}`;
}

/** ", in place of One finger; a pyramid with Two fingers" */
function besideInWords(
  { rungId, replaces, pairedWith }: PlanDraftLine,
  ladders: readonly FormLadder[],
): string {
  const named = (id: string | null | undefined) => (id ? findRung(ladders, id)?.rung.name : undefined);
  const [old, half] = [named(replaces), named(pairedWith)];
  return `${old && old !== named(rungId) ? `, in place of ${old}` : ''}${half ? `; a pyramid with ${half}` : ''}`;
}

/** Where a rung stands in the ladders. */
export function findRung(
  ladders: readonly FormLadder[],
  rungId: string,
): { ladder: FormLadder; rung: FormRung } | undefined {
  for (const ladder of ladders) {
    const rung = ladder.rungs.find((one) => one.id === rungId);
    if (rung) return { ladder, rung };
  }
  return undefined;
}

/**
 * The rows with one line of a draft taken, and the key of the row it is in (undefined: it went). A row of both sides is
 * parted when only one side changes; what is new stands after the other half of its pyramid, else last. A rung that is
 * no longer in the ladders changes nothing.
 */
export function takeLine(
  rows: readonly FormRow[],
  line: PlanDraftLine,
  ladders: readonly FormLadder[],
): { rows: FormRow[]; key: number | undefined } {
  const found = findRung(ladders, line.rungId);
  if (!found) return { rows: [...rows], key: undefined };
  const { ladder } = found;
  const target = rowFor(rows, line, ladder.id);
  if (line.act === 'drop') {
    if (!target) return { rows: [...rows], key: undefined };
    const parted = partedFor(rows, target, line);
    return { rows: tidyPairs(parted.rows.filter((row) => row.key !== parted.key)), key: undefined };
  }
  if (!target) {
    const blank = rows.find((row) => row.rungId === '' && row.ladderId === '' && row.sets === '');
    const key = blank?.key ?? nextKey(rows);
    const row = { ...emptyRow(key, line.session), ...likeHalf(rows, line), ...doseOf(line, ladder.id) };
    return {
      rows: paired(
        blank ? rows.map((one) => (one === blank ? row : one)) : added(rows, row, line),
        key,
        line,
      ),
      key,
    };
  }
  const { rows: parted, key } = partedFor(rows, target, line);
  const other = target.side === 'both' || line.side !== 'both' ? undefined : otherSide(parted, target);
  const put = parted
    .filter((row) => row !== other)
    .map((row) => (row.key === key ? { ...row, ...doseOf(line, ladder.id) } : row));
  return { rows: paired(put, key, line), key };
}

/** The row a line is about: of its rung, else of the rung it takes the place of, else of its ladder. */
function rowFor(rows: readonly FormRow[], line: PlanDraftLine, ladderId: string): FormRow | undefined {
  const here = rows.filter((row) => row.session === line.session && meets(row, line));
  const same = here.find((row) => row.rungId === line.rungId);
  if (same || line.act === 'drop' || line.replaces === null) return same;
  const ofLadder = here.filter((row) => row.ladderId === ladderId && row.rungId !== (line.pairedWith ?? ''));
  return ofLadder.find((row) => row.rungId === line.replaces) ?? ofLadder[0];
}

/** What a new half of a pyramid takes over from the other. */
function likeHalf(rows: readonly FormRow[], { session, pairedWith }: PlanDraftLine): Partial<FormRow> {
  const half = rows.find((one) => one.session === session && one.rungId === pairedWith);
  if (!half) return {};
  const { support, stopRule, notTwoDaysRunning } = half;
  return { support, stopRule, notTwoDaysRunning };
}

function added(rows: readonly FormRow[], row: FormRow, { session, pairedWith }: PlanDraftLine): FormRow[] {
  const half = rows.findLastIndex((one) => one.session === session && one.rungId === pairedWith);
  return half < 0 ? [...rows, row] : [...rows.slice(0, half + 1), row, ...rows.slice(half + 1)];
}

/** The two halves of a pyramid name each other, whichever was taken first. */
function paired(rows: readonly FormRow[], key: number, line: PlanDraftLine): FormRow[] {
  if (line.pairedWith === undefined) return tidyPairs(rows);
  const isHalf = (row: FormRow) =>
    row.session === line.session && row.rungId === line.pairedWith && meets(row, line);
  const isThere = rows.some(isHalf);
  return tidyPairs(
    rows.map((row) => {
      if (row.key === key) return { ...row, pairedWith: (isThere && line.pairedWith) || '' };
      return isHalf(row) ? { ...row, pairedWith: line.rungId } : row;
    }),
  );
}

function meets(row: FormRow, line: PlanDraftLine): boolean {
  return row.side === line.side || row.side === 'both' || line.side === 'both';
}

/** The rows with a row of both sides parted when the line is of one; the key of the row of that side. */
function partedFor(rows: readonly FormRow[], target: FormRow, line: PlanDraftLine) {
  if (target.side !== 'both' || line.side === 'both') return { rows: [...rows], key: target.key };
  const parted = sidesApart(rows, target.key);
  const key = line.side === 'left' ? target.key : nextKey(rows);
  return { rows: parted, key };
}

/** The row of the other side that a line for both takes the place of too. */
function otherSide(rows: readonly FormRow[], target: FormRow): FormRow | undefined {
  return rows.find(
    (row) =>
      row.key !== target.key &&
      row.session === target.session &&
      row.ladderId === target.ladderId &&
      row.side !== 'both' &&
      row.side !== target.side,
  );
}

function doseOf(line: PlanDraftLine, ladderId: string): Partial<FormRow> {
  const text = (value: number | null) => (value === null ? '' : String(value));
  return {
    ladderId,
    rungId: line.rungId,
    side: line.side,
    sets: String(line.sets),
    target: text(line.target),
    minutes: text(line.minutes),
    timesPerWeek: String(line.timesPerWeek),
    ...(line.support && { support: line.support }),
  };
}
