import { plainSetName } from '#lib/schemas/plain-check-in.ts';
import type { PhoneDrill, PhoneSession } from '#lib/views/phone-session.ts';

/** Every planned set as a field that is empty: the number, and whether it was clean. */
export function PlainSets({ session }: { session: PhoneSession }) {
  const drills = session.drills.filter((drill) => !drill.limit?.out);
  const ruledOut = session.drills.filter((drill) => drill.limit?.out);
  return (
    <fieldset>
      <legend>Session {session.label}</legend>
      <p className="quiet">Write what was done; a dash is a set not done; empty says nothing.</p>
      <label className="plain-tick">
        <input type="checkbox" name="rest" value="as-planned" /> What is left empty went as planned
      </label>
      {drills.map((drill) => (
        <PlainDrill key={drill.key} drill={drill} />
      ))}
      {ruledOut.map((drill) => (
        <p key={drill.key} className="quiet">
          <s>{drill.title}</s> {drill.limit?.words}
        </p>
      ))}
    </fieldset>
  );
}

function PlainDrill({ drill }: { drill: PhoneDrill }) {
  // Two lines of one rung and side, as in a pyramid, number their sets on.
  let before = new Map<string, number>();
  return (
    <fieldset>
      <legend>{drill.title}</legend>
      {drill.sides.flatMap((side) => {
        const start = before.get(`${side.rungId} ${side.side}`) ?? 0;
        before = new Map(before).set(`${side.rungId} ${side.side}`, start + side.sets);
        return Array.from({ length: side.sets }, (_, at) => {
          const name = plainSetName(side.rungId, side.side, start + at + 1);
          const where = side.side === 'both' ? '' : `${side.side}, `;
          const label = `${drill.title}, ${where}set ${at + 1}`;
          return (
            <div key={name} className="plain-set">
              <label>
                {where}set {at + 1}
                <input
                  name={`value ${name}`}
                  inputMode="decimal"
                  autoComplete="off"
                  placeholder={`${side.target} ${drill.unit}`}
                  aria-label={`${label}, planned ${side.target} ${drill.unit}`}
                />
              </label>
              {side.tries === null ? null : (
                <label>
                  tries
                  <input
                    name={`tried ${name}`}
                    inputMode="numeric"
                    autoComplete="off"
                    placeholder={String(side.tries)}
                    aria-label={`${label}, tries`}
                  />
                </label>
              )}
              <label className="plain-tick">
                <input
                  type="checkbox"
                  name={`broken ${name}`}
                  value="yes"
                  aria-label={`${label}, not clean`}
                />
                not clean
              </label>
              <input type="hidden" name={`planned ${name}`} value={side.target} />
              {side.tries === null ? null : (
                <input type="hidden" name={`plannedTries ${name}`} value={side.tries} />
              )}
              <input type="hidden" name={`label ${name}`} value={label} />
            </div>
          );
        });
      })}
    </fieldset>
  );
}
