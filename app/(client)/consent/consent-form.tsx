import type { ConsentText } from '#lib/domain/consent.ts';

type Props = { text: ConsentText; share: boolean; asksGuardian: boolean };

/** A plain form: it works before scripts have come, and without them. */
export function ConsentForm({ text, share, asksGuardian }: Props) {
  return (
    <form action="/api/consent" method="post">
      <input type="hidden" name="version" value={text.version} />
      <label className="rights-tick">
        <input type="checkbox" name="share" defaultChecked={share} />
        <span>{text.share} You can leave this out.</span>
      </label>
      {asksGuardian ? (
        <label className="field">
          Parent or guardian who read this with you and agrees: their name
          <input className="text" name="guardian" required maxLength={200} autoComplete="off" dir="auto" />
        </label>
      ) : null}
      <p className="rights-act">
        <button type="submit" className="act act-filled">
          I agree
        </button>
      </p>
      <p className="quiet small">Text of version {text.version}. The time is kept with it.</p>
    </form>
  );
}
