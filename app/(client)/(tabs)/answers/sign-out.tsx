'use client';
import { useState } from 'react';
import { leavePhone } from '../../_phone/notices.ts';
import { postJson } from '../../_phone/post-json.ts';
import { clearEverythingKept } from '../../_phone/storage.ts';
import { useKept } from '../../_phone/use-kept.ts';

/** Leaves nothing on the phone; asks first when something was not sent yet. */
export function SignOut({ clientId }: { clientId: string }) {
  const { unsent } = useKept(clientId);
  const [asks, setAsks] = useState(false);
  const [problem, setProblem] = useState('');
  const leave = async () => {
    await leavePhone();
    const failed = await postJson('/api/sign-out', {});
    if (failed) return setProblem(failed);
    clearEverythingKept();
    window.location.assign('/sign-in');
  };
  return (
    <div style={{ marginTop: 24 }}>
      {asks ? (
        <p className="problem" role="alert">
          {unsent.length === 1 ? 'One check-in is' : `${unsent.length} check-ins are`} not sent yet. Signing
          out removes {unsent.length === 1 ? 'it' : 'them'} from this phone for good.
        </p>
      ) : null}
      {problem ? (
        <p className="problem" role="alert">
          {problem}
        </p>
      ) : null}
      <button
        type="button"
        className="word-act"
        onClick={() => (unsent.length > 0 && !asks ? setAsks(true) : void leave())}
      >
        {asks ? 'Sign out and remove' : 'Sign out on this phone'}
      </button>
    </div>
  );
}
