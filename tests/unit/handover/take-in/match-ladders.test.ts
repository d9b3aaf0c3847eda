import { describe, expect, it } from 'vitest';
import { matchLadders, type OwnLibrary } from '#lib/handover/take-in/match-ladders.ts';

type Change = {
  key?: string | null;
  name?: string;
  measure?: string;
  retired?: boolean;
  target?: number;
  rung?: string;
};

/** A skill with one part, one ladder and two rungs; ids begin with `id`. */
function library(id: string, change: Change = {}): OwnLibrary {
  const key = change.key === undefined ? 'H3' : change.key;
  const retired_at = change.retired ? '2026-01-01T00:00:00Z' : null;
  const drill = (at: number) => ({
    id: `${id}-drill-${at}`,
    ladder_id: `${id}-ladder`,
    name: `Drill ${at}`,
    family: null,
    measure: change.measure ?? 'hold',
    each_side: false,
    each_is_leg: false,
    seconds_per_rep: null,
    share: 1,
    helping_share: null,
    share_source: '',
    weights: {},
    equipment: [],
    upside_down: false,
    camera: '',
    created_at: '2026-01-01T00:00:00Z',
  });
  const rung = (at: number) => ({
    id: `${id}-rung-${at}`,
    ladder_id: `${id}-ladder`,
    drill_id: `${id}-drill-${at}`,
    key: key && `${key}.${at}`,
    position: at,
    name: at === 1 ? (change.rung ?? 'Rung 1') : `Rung ${at}`,
    pass_sets: 3,
    pass_target: change.target ?? 20,
    pass_days: 3,
    pass_tries: null,
    usual_weeks: 4,
    needs_film: false,
    note: '',
    retired_at: null,
  });
  return {
    skill: [{ id: `${id}-skill`, key: 'handstand', name: 'Handstand', position: 0, retired_at: null }],
    part: [{ id: `${id}-part`, skill_id: `${id}-skill`, name: 'Line', position: 0, retired_at: null }],
    ladder: [
      {
        id: `${id}-ladder`,
        part_id: `${id}-part`,
        key,
        name: change.name ?? 'Heel pulls',
        family: 'balance',
        clean: '',
        faults: [],
        openings: [],
        position: 0,
        retired_at,
      },
    ],
    drill: [drill(1), drill(2)],
    rung: [rung(1), rung(2)],
  };
}
const match = (pack: Change, own: Change, used = ['p-rung-1']) =>
  matchLadders(library('p', pack), library('o', own), new Set(used));

describe('matchLadders', () => {
  it('goes by the key of the library, whatever the ladder is called, and maps every rung', () => {
    const { ladders, ids } = match({}, { name: 'Wall heel pulls' });
    expect(ladders[0]?.own).toEqual({ id: 'o-ladder', name: 'Wall heel pulls' });
    expect(ids.get('p-rung-2')).toBe('o-rung-2');
    expect(ids.get('p-drill-1')).toBe('o-drill-1');
    expect(ids.get('p-skill')).toBe('o-skill');
  });

  it('goes by name and part where one of the two has no key', () => {
    expect(match({ key: null }, {}).ladders[0]?.own?.id).toBe('o-ladder');
    expect(match({ key: null }, { key: null }).ladders[0]?.own?.id).toBe('o-ladder');
    expect(match({ key: null }, { key: null, name: 'Other' }).ladders[0]?.own).toBeNull();
  });

  it('never takes another key or a retired ladder for the same', () => {
    expect(match({}, { key: 'H4' }).ladders[0]?.own).toBeNull();
    expect(match({}, { retired: true }).ladders[0]?.own).toBeNull();
  });

  it('wants every rung in use counted alike; one that nobody used may differ', () => {
    const other = match({ key: null }, { key: null, rung: 'Renamed' });
    expect(other.ladders[0]).toMatchObject({ own: null, why: expect.stringContaining('“Rung 1” is not in') });
    expect(other.ids.has('p-ladder')).toBe(false);
    expect(other.ids.has('p-rung-2')).toBe(false);
    expect(match({ key: null }, { key: null, rung: 'Renamed' }, ['p-rung-2']).ladders[0]?.own?.id).toBe(
      'o-ladder',
    );
    const counted = match({}, { measure: 'reps' }).ladders[0];
    expect(counted).toMatchObject({ own: null, why: expect.stringContaining('counted in another way') });
  });

  it('names rungs in use whose pass mark is another', () => {
    expect(match({}, { target: 30 }).ladders[0]?.otherMarks).toEqual(['Rung 1']);
    expect(match({}, {}).ladders[0]?.otherMarks).toEqual([]);
  });
});
