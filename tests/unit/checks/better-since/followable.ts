import type { Followed } from '#lib/checks/better-since/types.ts';
import type { ClientHistory } from '#lib/domain/history.ts';

/** Something to follow of each kind, about the first places, ladders and signs of a history, from a day on. */
export function followable(history: ClientHistory, from: string): Followed[] {
  const pains = history.checkIns.flatMap((checkIn) => checkIn.pain).filter((pain) => pain.kind === 'joint');
  const [place = { region: 'elbow-inner', side: 'right' } as const] = pains;
  const [sign] = history.checkIns.flatMap((checkIn) => checkIn.dangerSigns);
  const each = history.rungs.find((rung) => rung.eachSide && rung.faults.length > 0);
  const plain = history.rungs.find((rung) => !rung.eachSide && rung.position === 1);
  const of = (rung: typeof each) => ({
    key: rung?.ladderId ?? '',
    ladderId: rung?.ladderId ?? '',
    rungId: rung?.id ?? '',
  });
  const follow = (
    kind: Followed['kind'],
    subject: Followed['subject'],
    evidence: Followed['evidence'] = {},
  ) => ({
    kind,
    subject,
    evidence,
    from,
  });
  const whole = { key: 'client' };
  return [
    follow('pain-rising', { key: 'place', region: place.region, side: place.side }),
    follow('danger-sign', {
      key: sign ? `${sign.sign}:${sign.region ?? 'any'}:${sign.side ?? 'any'}` : 'swelling:any:any',
    }),
    follow('load-jump', whole, { ratio: 1.6, tissues: '' }),
    follow('load-jump', whole, { ratio: 1.1, tissues: 'elbow-bending:both' }),
    follow('new-hardest', whole, { tissues: 'wrist-back:left' }),
    follow('no-let-up', whole),
    follow('too-hard', of(plain)),
    follow('stalled', { ...of(plain), side: 'both' }),
    follow('stalled', { ...of(each), side: 'left' }),
    follow('too-little-time', { ...of(plain), side: 'both' }),
    follow('side-gap', { ...of(each), side: 'right' }),
    follow('one-side-fault', { ...of(each), side: 'left' }, { fault: each?.faults[0] ?? null, side: 'left' }),
    follow('window-gap', { key: 'window:short' }),
    follow('gone-quiet', whole),
  ];
}
