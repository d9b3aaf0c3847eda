import type { RefusedPlace } from '../ladders/refused-places.ts';
import type { FormPart } from './gap-form.ts';

const FIELDS: Record<string, [suffix: string, name: string]> = {
  film: ['film', 'film shows'],
  rungId: ['rung', 'last result on'],
  sets: ['sets', 'sets'],
  value: ['value', 'result'],
  clean: ['clean', 'clean'],
  pain: ['pain', 'pain, 0-10'],
};

/** The refused fields in the words of the form, in the order they were refused: "Top, left, pain, 0-10". */
export function refusedParts(
  fields: Readonly<Record<string, string>>,
  parts: readonly FormPart[],
): RefusedPlace[] {
  return Object.entries(fields).map(([path, message]) => ({
    ...(placeOf(path, parts) ?? { id: null, name: '' }),
    message,
  }));
}

function placeOf(path: string, parts: readonly FormPart[]): { id: string; name: string } | undefined {
  if (path === 'aimRungId') return { id: 'aim', name: 'Aim' };
  if (path === 'skillId') return { id: 'skill', name: 'Skill' };
  if (path === 'sessions') return { id: 'session-A', name: 'Sessions to put drills in' };
  const [list, at, inPart, sideAt, field = ''] = path.split('.');
  const part = list === 'parts' ? parts[Number(at)] : undefined;
  if (!part) return undefined;
  if (inPart === 'askedRungId') return { id: `${part.ladderId}-asked`, name: `${part.part}, asked` };
  const [side, known] = [part.sides[Number(sideAt)], FIELDS[field]];
  if (inPart !== 'sides' || !side || !known) return undefined;
  const which = side.side === 'both' ? '' : `, ${side.side}`;
  return { id: `${part.ladderId}-${side.side}-${known[0]}`, name: `${part.part}${which}, ${known[1]}` };
}
