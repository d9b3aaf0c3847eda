import type { z } from 'zod';

type Body = {
  id: string;
  kind: 'training' | 'rest';
  effort: number | null;
  minutes: number | null;
  nothingHurts: boolean;
  correctsId: string | null;
  confirmed: string[];
  sets: {
    rungId: string;
    side: string;
    index: number;
    planned: number | null;
    value: number | null;
    tried: number | null;
    how: string;
    addedKg: number | null;
  }[];
  pain: { region: string; side: string; moment: string; value: number }[];
  dangerSigns: { sign: string }[];
};
type Say = (path: (string | number)[], message: string) => void;

/** Rules that need more than one field, but no database. */
export function checkWholeBody(body: Body, context: z.RefinementCtx): void {
  const say: Say = (path, message) => context.addIssue({ code: 'custom', path, message });
  checkKind(body, say);
  checkSets(body, say);
  checkPain(body, say);
  if (body.correctsId === body.id)
    say(['correctsId'], 'is the check-in itself: a correction has an id of its own');
}

function checkKind(body: Body, say: Say): void {
  if (body.kind === 'training') return;
  if (body.sets.length > 0) say(['sets'], 'must be empty on a day without training');
  if (body.effort !== null) say(['effort'], 'must be left out on a day without training');
  if (body.minutes !== null) say(['minutes'], 'must be left out on a day without training');
}

function checkSets(body: Body, say: Say): void {
  const seen = new Set<string>();
  body.sets.forEach((set, at) => {
    const key = `${set.rungId} ${set.side} ${set.index}`;
    if (seen.has(key))
      say(['sets', at, 'index'], 'is there twice for this drill and side: number the sets 1, 2, 3');
    seen.add(key);
    if (set.how === 'not-done' && set.value !== null)
      say(['sets', at, 'value'], 'must be null for a set not done');
    if (set.how !== 'not-done' && set.value === null) {
      say(['sets', at, 'value'], 'is missing: give what was done, or how: "not-done"');
    }
    if (set.how === 'as-planned' && set.value !== set.planned) {
      say(['sets', at, 'how'], 'cannot be as-planned when the value is not the planned one: use typed');
    }
    if (set.tried !== null && set.value !== null && set.tried < set.value) {
      say(['sets', at, 'tried'], 'must be at least the tries made good');
    }
    if (set.addedKg !== null && set.addedKg >= 300 && !body.confirmed.includes('heavy')) {
      say(['sets', at, 'addedKg'], `is ${set.addedKg} kg: correct it, or confirm "heavy"`);
    }
  });
}

function checkPain(body: Body, say: Say): void {
  const seen = new Set<string>();
  body.pain.forEach((pain, at) => {
    const key = `${pain.region} ${pain.side} ${pain.moment}`;
    if (seen.has(key)) say(['pain', at], 'is there twice for this place and moment: send one score');
    seen.add(key);
    if (body.kind === 'rest' && pain.moment === 'during') {
      say(['pain', at, 'moment'], 'cannot be "during" on a day without training: use "today"');
    }
    if (body.nothingHurts && pain.value > 0) {
      say(['nothingHurts'], 'says nothing hurts, but a pain score is told: take one of them out');
    }
  });
  if (body.nothingHurts && body.dangerSigns.length > 0) {
    say(['nothingHurts'], 'says nothing hurts, but a danger sign is told: take one of them out');
  }
  const signs = body.dangerSigns.map((told) => told.sign);
  signs.forEach((sign, at) => {
    if (signs.indexOf(sign) !== at) say(['dangerSigns', at, 'sign'], 'is there twice: send it once');
  });
}
