import { describe, expect, it } from 'vitest';
import {
  CONSENT_TEXTS,
  CONSENT_VERSION,
  consentState,
  consentText,
  type GivenConsent,
} from '#lib/domain/consent.ts';
import { receiptLines } from '#lib/views/rights/receipt.ts';

const at = (day: number) => new Date(Date.UTC(2026, 10, day));
const row = (over: Partial<GivenConsent>): GivenConsent => ({
  kind: 'health-data',
  textVersion: '1',
  givenAt: at(1),
  givenBy: 'Anahit',
  withdrawnAt: null,
  withdrawnBy: null,
  ...over,
});

describe('how a consent stands', () => {
  it('never given, given, to an earlier text, taken back, given again', () => {
    expect(consentState([], 'health-data', '1')).toEqual({ state: 'none' });
    expect(consentState([row({})], 'health-data', '1')).toMatchObject({ state: 'given', textVersion: '1' });
    expect(consentState([row({})], 'health-data', '2')).toMatchObject({ state: 'older', textVersion: '1' });
    const taken = row({ withdrawnAt: at(2), withdrawnBy: 'Anahit' });
    expect(consentState([taken], 'health-data', '1')).toEqual({
      state: 'withdrawn',
      at: at(2),
      by: 'Anahit',
    });
    expect(consentState([row({ givenAt: at(3) }), taken], 'health-data', '1')).toMatchObject({
      state: 'given',
      givenAt: at(3),
    });
  });

  it('an earlier text that a newer one replaced was not taken back', () => {
    expect(consentState([row({ withdrawnAt: at(2) })], 'health-data', '2')).toEqual({ state: 'none' });
  });

  it('of one kind says nothing about the other', () => {
    expect(consentState([row({})], 'share-with-next-coach', '1')).toEqual({ state: 'none' });
  });

  it('the texts have versions of their own, and the last one is in force with the name of the team in it', () => {
    const versions = CONSENT_TEXTS.map(({ version }) => version);
    expect(new Set(versions).size).toBe(versions.length);
    expect(CONSENT_VERSION).toBe(versions.at(-1));
    const text = consentText(CONSENT_VERSION, 'Low Wall')?.health.join(' ') ?? '';
    expect(text).toContain('Low Wall keeps what you tell it');
    expect(text).not.toContain('{team}');
    expect(consentText('none', 'Low Wall')).toBeUndefined();
  });
});

describe('a receipt', () => {
  const asked = {
    askedAt: at(24),
    dueAt: null,
    takenBackAt: null,
    erasedAt: null,
    rows: null,
    files: null,
    filesLeft: null,
  };

  it('says what went in words, the rest as a number, and what is still to be removed', () => {
    const done = {
      ...asked,
      erasedAt: at(30),
      rows: { check_in: 1, pain_score: 1200, day_rollup: 3, client: 1 },
    };
    expect(receiptLines({ ...done, files: 2, filesLeft: 1 })[2]).toBe(
      'Deleted: 1 check-in, 1,200 pain scores, 4 other rows, and 2 pictures (1 still to be removed; it is tried every quarter of an hour).',
    );
  });

  it('of a wish says when it will be done', () => {
    expect(receiptLines({ ...asked, dueAt: at(30) })[1]).toBe(
      'It will be done on Monday 30 November 2026, unless it is taken back before.',
    );
  });
});
