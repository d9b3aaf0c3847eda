import { describe, expect, it } from 'vitest';
import { questionWaiting } from '#lib/checks/rules/question-waiting.ts';
import type { HistoryQuestion } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aHistory, day } from '#tests/fixtures/history-builders.ts';

// The night of day 10 runs on day 11 at 02:00 UTC.
const NIGHT = 10;
const hoursBefore = (hours: number) =>
  new Date(Date.parse(`${day(NIGHT + 1)}T02:00:00.000Z`) - hours * 3_600_000).toISOString();
const asked = (hours: number, over: Partial<HistoryQuestion> = {}): HistoryQuestion => ({
  id: `q-${hours}`,
  askedAt: hoursBefore(hours),
  text: 'Straps or no straps?',
  answeredAt: null,
  answer: null,
  ...over,
});
const sayOf = (questions: HistoryQuestion[], over: Parameters<typeof aHistory>[0] = {}) =>
  said(theOutcome(judge(questionWaiting, aHistory({ questions, ...over }), NIGHT)));

describe('question-waiting', () => {
  // 24 h watch, 48 h act: common practice.
  it.each([
    [23, 'clear'],
    [24, 'flagged watch'],
    [47, 'flagged watch'],
    [48, 'flagged act'],
  ])('%i hours give %s', (hours, expected) => {
    expect(sayOf([asked(hours)])).toBe(expected);
  });
  it('is cleared by an answer, but not by one given later than tonight', () => {
    expect(sayOf([asked(60, { answeredAt: hoursBefore(1), answer: 'No.' })])).toBe('clear');
    expect(sayOf([asked(60, { answeredAt: hoursBefore(-1), answer: 'No.' })])).toBe('flagged act');
  });
  it('is one reason a client, by the longest wait, and names how many more are open', () => {
    const finding = theFinding(
      judge(questionWaiting, aHistory({ questions: [asked(10), asked(50)] }), NIGHT),
    );
    expect(finding.sentence).toContain('**50 h of answering hours**');
    expect(finding.sentence).toContain('1 more question open');
    expect(finding.tier).toBe('today');
  });
  it('says nothing of others when there is one', () => {
    const finding = theFinding(judge(questionWaiting, aHistory({ questions: [asked(30)] }), NIGHT));
    expect(finding.sentence).toBe(
      'A question has waited **30 h of answering hours**: “Straps or no straps?”.',
    );
    expect(finding.evidence).toMatchObject({ question: 'q-30', open: 1 });
  });
  it('counts a question asked at the instant of the night, not one of a second later', () => {
    const openOf = (hours: number) =>
      theFinding(judge(questionWaiting, aHistory({ questions: [asked(30), asked(hours)] }), NIGHT)).evidence
        .open;
    expect(openOf(0)).toBe(2);
    expect(openOf(-1 / 3600)).toBe(1);
  });
  it('takes an answer given at the instant of the night, not one of a second later', () => {
    const answeredAfter = (hours: number) => asked(60, { answeredAt: hoursBefore(hours), answer: 'No.' });
    expect(sayOf([answeredAfter(0)])).toBe('clear');
    expect(sayOf([answeredAfter(-1 / 3600)])).toBe('flagged act');
  });
  it('quotes the same one of two asked in the same minute, in whatever order they come', () => {
    const [one, two] = [asked(30, { id: 'q-a', text: 'Which tape?' }), asked(30, { id: 'q-b' })];
    for (const questions of [
      [one, two],
      [two, one],
    ]) {
      const finding = theFinding(judge(questionWaiting, aHistory({ questions }), NIGHT));
      expect(finding.sentence).toBe(
        'A question has waited **30 h of answering hours**: “Which tape?”, and 1 more question open.',
      );
    }
  });
  it('quotes up to 80 letters whole, a longer question with 79 and an ellipsis', () => {
    const quoted = (text: string) =>
      theFinding(judge(questionWaiting, aHistory({ questions: [asked(30, { text })] }), NIGHT)).sentence;
    const eighty = 'é'.repeat(80);
    expect(quoted(eighty)).toContain(`“${eighty}”`);
    expect(quoted(`${eighty}b`)).toContain(`“${'é'.repeat(79)}…”`);
    expect(quoted('Twice\n  a week?')).toContain('“Twice a week?”');
  });
  it('counts answering hours only, except where the words speak of a danger sign', () => {
    // Day 10 is a Thursday; nobody answers on Wednesdays and Thursdays.
    const answering = { zone: 'UTC', days: [1, 2, 5], from: '00:00', to: '24:00' };
    expect(sayOf([asked(48)], { answering })).toBe('clear');
    expect(sayOf([asked(48, { text: 'My hand is numb since Monday' })], { answering })).toBe('flagged act');
  });
  it('is quiet for somebody paused, unless the words speak of a danger sign', () => {
    expect(sayOf([asked(60)], { client: { standing: 'paused' } })).toBe('clear');
    expect(sayOf([asked(60, { text: 'I fainted' })], { client: { standing: 'paused' } })).toBe('flagged act');
  });
});
