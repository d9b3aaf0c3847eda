import { describe, expect, it } from 'vitest';
import { guardianMail, isForGuardians } from '#lib/domain/intake/guardian-mail.ts';
import { guardianState, guardiansAgree, guardianText } from '#lib/domain/intake/guardian-text.ts';
import { DANGER_SIGNS, PAIN_KINDS } from '#lib/domain/vocabulary.ts';

const NAMES = { client: 'Zofia', coach: 'Ines', link: 'https://example.test/guardian' };
const pain = (value: number, kind: (typeof PAIN_KINDS)[number] = 'joint') => ({
  pain: [{ value, kind }],
  dangerSigns: [],
});
const AT = new Date('2026-11-25T10:00:00.000Z');
const guardian = (over: object = {}) => ({
  name: 'Marta',
  agreedAt: null,
  declinedAt: null,
  withdrawnAt: null,
  ...over,
});

describe('what a parent or guardian is told of', () => {
  it('is joint pain from 4 on and every danger sign, nothing below and no sore muscle', () => {
    expect([0, 3, 4, 10].map((value) => isForGuardians(pain(value)))).toEqual([false, false, true, true]);
    for (const kind of PAIN_KINDS) expect(isForGuardians(pain(9, kind)), kind).toBe(kind === 'joint');
    for (const sign of DANGER_SIGNS)
      expect(isForGuardians({ pain: [], dangerSigns: [{ sign }] }), sign).toBe(true);
    expect(guardianMail(pain(3), NAMES)).toBeUndefined();
  });

  it('says what to do and defers to a clinician, and names no place, score or sign', () => {
    const sore = guardianMail(pain(9), NAMES);
    expect(sore?.subject).toBe('Zofia told their coach of pain of 4 or more of 10');
    expect(sore?.text).toMatch(/licensed clinician/);
    expect(sore?.text).toMatch(/no diagnosis/);
    expect(sore?.text).not.toMatch(/9/);
    const urgent = guardianMail({ pain: [], dangerSigns: [{ sign: 'worst-headache' }] }, NAMES);
    expect(urgent?.text).toMatch(/medical help at once/);
    expect(urgent?.text).not.toMatch(/head/);
    const other = guardianMail({ pain: [], dangerSigns: [{ sign: 'swelling' }] }, NAMES);
    expect(other?.text).not.toMatch(/at once|swell/);
  });
});

describe('whether training under 18 may begin', () => {
  it('needs one yes and no standing no', () => {
    const yes = guardian({ agreedAt: AT });
    const no = guardian({ declinedAt: AT });
    const back = guardian({ agreedAt: AT, withdrawnAt: AT });
    expect(guardiansAgree([])).toBe(false);
    expect(guardiansAgree([guardian()])).toBe(false);
    expect(guardiansAgree([yes])).toBe(true);
    expect(guardiansAgree([yes, guardian()])).toBe(true);
    expect(guardiansAgree([yes, no])).toBe(false);
    expect(guardiansAgree([back])).toBe(false);
    expect([guardian(), yes, no, back].map(guardianState)).toEqual([
      'asked',
      'agreed',
      'declined',
      'withdrawn',
    ]);
  });

  it('is read with the names in it', () => {
    const text = guardianText({ client: 'Zofia', coach: 'Ines', team: 'Low Wall' }).join(' ');
    expect(text).toContain('Zofia is under 18 and wants to train with Ines of Low Wall');
    expect(text).not.toMatch(/[{}]/);
  });
});
