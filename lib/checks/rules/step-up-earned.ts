import type { Outcome } from '#lib/domain/finding.ts';
import { FAULT_LABELS } from '#lib/domain/labels.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { reaches } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { loadedTissues } from '../limits-on-rung.ts';
import { daysHere } from '../new-start.ts';
import { painLimit } from '../pain-place.ts';
import { painSeries } from '../pain-series.ts';
import { type RungDay, rungDays } from '../rung-days.ts';
import { scoreOf } from '../score.ts';
import { type FilmSeen, seenOnFilm } from '../seen-on-film.ts';
import { type Standing, standingsOf, subjectOf } from '../standings.ts';
import type { Limits } from '../thresholds.ts';
import { tissuesOfRegion } from '../tissues.ts';
import type { Check, ClientView } from '../types.ts';
import { counted, dayInWords, passInWords } from '../words.ts';

const KIND = 'step-up-earned';
const HOUR_MS = 3_600_000;

export const stepUpEarned: Check = {
  kind: KIND,
  title: 'Step up earned',
  question: 'Was the pass mark of a rung met, cleanly and without pain, on the days it asks?',
  evaluate: (view, limits) => standingsOf(view).map((standing) => judge(view, standing, limits)),
};

/** The rung is in the key: when it changes, the good news of the old rung is over at once. */
function judge(view: ClientView, standing: Standing, limits: Limits): Outcome {
  const { rung } = standing;
  const subject = { ...subjectOf(standing), key: `${standing.key}:${rung.id}` };
  const days = rungDays(view, rung.id).filter((day) => day.counts && day.date >= standing.from);
  if (days.length < rung.pass.days) {
    const missing = `${days.length} of ${counted(rung.pass.days, 'training day')} on this rung`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  const looked = days.slice(-(rung.pass.days + limits['stepUpEarned.extraDays']));
  const met = hoursApart(
    looked.filter((day) => isMet(day, standing, limits)),
    limits,
  );
  const pain = worstPain(view, standing, met, limits);
  const tooSore = pain.worst > painLimit(view, 'stepUpEarned.maxPain', limits);
  if (met.length < rung.pass.days || tooSore) return { status: 'clear', kind: KIND, subject };
  const first = met[0]?.date ?? view.asOf.date;
  const early = daysHere(view) <= limits['stepUpEarned.startDays'];
  const words = `${subject.label}: ${passInWords(rung)} met on **${met.length} of the last ${looked.length}** training days, clean, pain ${pain.worst} of 10 at most`;
  const film = rung.needsFilm ? seenOnFilm(view, standing, looked[0]?.date ?? first) : undefined;
  const toSee = rung.needsFilm && film?.verdict !== 'clean';
  const after = early ? ' Placed too low?' : rung.needsFilm ? filmInWords(film) : '';
  return findingOf(
    {
      kind: KIND,
      subject,
      level: 'watch',
      sentence: `${words}.${after}`,
      short: toSee ? `${subject.label}: numbers earned, film to see` : `${subject.label}: step earned`,
      since: met.at(-1)?.date ?? view.asOf.date,
      step: stepFor(view, standing, { early, film, toSee }),
      clears: 'the next rung, or two nights on which the pass mark is no longer met',
      evidence: {
        met: met.length,
        of: looked.length,
        worstPain: pain.worst,
        morningsKnown: pain.morningsKnown,
        days: met.map((day) => day.date).join(' '),
        placedTooLow: early,
        needsFilm: rung.needsFilm,
        ...(film && { onFilm: film.verdict, filmedOn: film.date }),
      },
      inputs: [
        ...met.map((day) => ({
          name: `pass mark met on ${dayInWords(day.date)}`,
          value: passInWords(rung),
          unit: '',
        })),
        { name: 'worst pain where the rung loads', value: pain.worst, unit: 'of 10' },
        { name: 'mornings after known', value: `${pain.morningsKnown} of ${met.length}`, unit: '' },
      ],
      formula: `pass mark met on ${counted(rung.pass.days, 'day')} of the last ${rung.pass.days + limits['stepUpEarned.extraDays']} training days of the rung, 20 h apart, worst pain 2 or less where it loads; easy days, soft ground and days only tapped as planned do not count`,
      thresholds: [
        'stepUpEarned.extraDays',
        'stepUpEarned.hoursApart',
        'stepUpEarned.maxPain',
        'stepUpEarned.startDays',
        'tissue.loaded',
      ],
      doubt: film
        ? 'Clean was looked at on the film alone; of the other sets it is what the client says. Unknown mornings do not block and are counted above.'
        : 'Clean is what the client says; unknown mornings do not block and are counted above.',
    },
    limits,
  );
}

function isMet(day: RungDay, { rung, side }: Standing, limits: Limits): boolean {
  return reaches(scoreOf(rung, day.sets, side, limits) ?? 0, 1);
}

/** Of days that follow each other within 20 h the later one is left out. Sent late says nothing about the hour. */
function hoursApart(days: readonly RungDay[], limits: Limits): RungDay[] {
  const kept: RungDay[] = [];
  for (const day of days) {
    const before = kept.at(-1);
    const near = before && day.at - before.at === 1 && isOnTime(day) && isOnTime(before);
    const apart = near ? (Date.parse(day.sentAt) - Date.parse(before.sentAt)) / HOUR_MS : undefined;
    if (apart === undefined || apart >= limits['stepUpEarned.hoursApart']) kept.push(day);
  }
  return kept;
}

/** Sent on its own date, as far as dates in UTC can tell. */
function isOnTime(day: RungDay): boolean {
  return day.sentAt.slice(0, 10) === day.date;
}

/** Worst known pain on the days, or on the mornings after them, in places of the tissues that the rung loads. */
function worstPain(view: ClientView, standing: Standing, days: readonly RungDay[], limits: Limits) {
  const loaded = loadedTissues(standing.rung, limits);
  const dates = new Set(days.map((day) => day.date));
  const mornings = days.map((day) => addDays(day.date, 1));
  let worst = 0;
  for (const series of painSeries(view)) {
    const apart = standing.side !== 'both' && series.side !== 'middle' && series.side !== standing.side;
    if (apart || !tissuesOfRegion(series.region).some((tissue) => loaded.includes(tissue))) continue;
    for (const point of series.points) {
      if (dates.has(point.date)) worst = Math.max(worst, point.worst ?? 0);
      if (mornings.includes(point.date)) worst = Math.max(worst, point.morning ?? 0);
    }
  }
  return { worst, morningsKnown: mornings.filter((date) => isMorningKnown(view, date)).length };
}

/** Whether a check-in of this date tells of the morning: a value, or that nothing hurts. */
function isMorningKnown(view: ClientView, date: string): boolean {
  return (view.days[view.indexOf(date)]?.checkIns ?? []).some(
    (checkIn) => checkIn.nothingHurts || checkIn.pain.some((pain) => pain.moment === 'morning'),
  );
}

function filmInWords(film: FilmSeen | undefined): string {
  if (!film) return ' Numbers earned, film to see.';
  const on = dayInWords(film.date);
  if (film.verdict === 'clean') return ` Seen clean on film of ${on}.`;
  return ` Numbers earned; not clean on film of ${on}${faultsSaid(film)}.`;
}

function faultsSaid({ faults }: FilmSeen): string {
  return faults.length > 0 ? `: ${faults.map((fault) => FAULT_LABELS[fault]).join(', ')}` : '';
}

type Asked = { early: boolean; film: FilmSeen | undefined; toSee: boolean };

function stepFor(view: ClientView, { rung }: Standing, { early, film, toSee }: Asked) {
  const next = view.history.rungs.find(
    (each) => each.ladderId === rung.ladderId && each.position === rung.position + 1,
  );
  const up = next ? `${next.name}, ${passInWords(next)}` : 'the next rung';
  if (toSee && film)
    return { kind: 'ask-film' as const, text: `Say what to change, ask for a film again, then ${up}` };
  if (toSee) return { kind: 'ask-film' as const, text: `Ask for a film, then step up to ${up}` };
  const beside = early ? 'or further up: look where the start test fits' : 'with this rung beside it';
  return { kind: 'step-up' as const, text: `Step up to ${up}, ${beside}` };
}
