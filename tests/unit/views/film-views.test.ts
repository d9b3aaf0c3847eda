import { describe, expect, it } from 'vitest';
import { cameraPlan } from '#lib/views/film/camera-plan.ts';
import { filmLine } from '#lib/views/film/film-lines.ts';
import { phoneForm } from '#lib/views/phone-form.ts';
import { aPhoneSession } from '#tests/fixtures/phone-session.ts';

describe('where the camera stands', () => {
  it('goes by the angle that is asked for, then by the drill, else from the side at hip height', () => {
    expect(cameraPlan('from behind, so that hips show', 'From the side, at floor height.')).toMatchObject({
      from: 'behind',
      metres: 3,
      height: { words: 'at floor height' },
    });
    expect(cameraPlan('as last time', 'From the front, close, both wrists in the picture.')).toMatchObject({
      from: 'front',
      metres: 1.5,
      height: { words: 'at hip height' },
    });
    expect(cameraPlan('', '').words).toBe(
      'Put the phone to your side, about three metres away, at hip height. Lean it on something, so that it stands still.',
    );
  });
});

const CLIP = {
  id: 'a',
  rung: 'Tuck planche',
  side: 'left' as const,
  filmedOn: '2026-11-20',
  state: 'ready' as const,
  refusedWhy: null,
  seconds: 12.4,
  lookedAt: null,
  lookedBy: null,
  keepUntil: null,
  pinned: false,
  words: [],
};
const said = (over: object) => filmLine({ ...CLIP, ...over }, '2026-11-24').said;

describe('a film in a line on the phone', () => {
  it('says what became of it', () => {
    expect(filmLine(CLIP, '2026-11-24').title).toBe('Tuck planche, left');
    expect(said({})).toBe('12 s. Waits to be looked at.');
    expect(said({ state: 'checking' })).toMatch(/^It is here/);
    expect(said({ state: 'refused', refusedWhy: 'It is cut off.' })).toBe('Not taken. It is cut off.');
    expect(said({ lookedAt: new Date(), lookedBy: 'Ines', keepUntil: '2027-05-20' })).toMatch(
      /^12 s\. Ines has looked at it\. Kept until .*20 May/,
    );
    expect(
      said({ lookedAt: new Date(), lookedBy: 'Ines', keepUntil: '2027-05-20', pinned: true }),
    ).not.toMatch(/until/);
    expect(said({ state: 'gone' })).toMatch(/No longer kept/);
  });
});

it('stands beside the set in the check-in, also without signal', () => {
  const sides = [{ side: 'both', rungId: 'r', rung: 'Tuck planche', dose: '' }] as never;
  const form = phoneForm({
    clientId: 'c',
    client: { coachName: 'Ines', usualMinutes: null },
    date: '2026-11-24',
    planVersion: 1,
    sessions: [aPhoneSession({ sides, note: 'Slowly.' })],
    otherDrills: [],
    films: [{ rungId: 'r', angle: 'from behind' }],
  });
  expect(form.sessions[0]?.drills[0]?.note).toBe('Slowly. A film is asked for: from behind.');
});
