import type { Tier } from '#lib/domain/vocabulary.ts';

const STRING = 'M8 .5V3';
const CAP = 'M6.2 2.8h3.6v1.9H6.2z';
const BODY = 'M4.9 5.5h6.2c0 3.4-1.3 6.6-3.1 9.9-1.8-3.3-3.1-6.5-3.1-9.9z';
const STEPS = 'M1 13.2h4.6V8.4h4.8V3.6H15';

const TIER_SAID: Record<Tier, string> = {
  now: 'answer now',
  today: 'answer today',
  'this-week': 'answer this week',
  'good-news': 'good news',
};

/** The urgency of a row or a reason: form first, in ink only. */
export function Mark({ tier }: { tier: Tier }) {
  return (
    <svg
      width="16"
      height="16"
      viewBox="0 0 16 16"
      fill="none"
      stroke="var(--ink)"
      role="img"
      aria-label={TIER_SAID[tier]}
    >
      <Shape tier={tier} />
    </svg>
  );
}

function Shape({ tier }: { tier: Tier }) {
  if (tier === 'good-news') return <path d={STEPS} strokeWidth="2" />;
  if (tier === 'this-week') {
    return (
      <>
        <path d={STRING} strokeWidth="1.4" />
        <path d={CAP} fill="var(--ink)" stroke="none" />
        <path d={BODY} strokeWidth="1.3" />
      </>
    );
  }
  const ink = tier === 'now' ? 'var(--paper)' : 'var(--ink)';
  return (
    <>
      {tier === 'now' && <path d="M0 0h16v16H0z" fill="var(--ink)" stroke="none" />}
      <g stroke="none" fill={ink} transform={tier === 'now' ? 'translate(1.6 1.4) scale(.8)' : undefined}>
        <path d={STRING} stroke={ink} strokeWidth="1.4" />
        <path d={CAP} />
        <path d={BODY} />
      </g>
    </>
  );
}
