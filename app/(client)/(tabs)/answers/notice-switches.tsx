'use client';
import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import { type PhoneNotices, phoneNotices, turnOff, turnOn } from '../../_phone/notices.ts';
import { postJson } from '../../_phone/post-json.ts';

type Props = { coach: string; email: string | null; mail: boolean; endpoints: string[]; pushKey: string };

/** On this phone where its browser can, else by mail. Both stand off until they are tapped. */
export function NoticeSwitches({ coach, email, mail, endpoints, pushKey }: Props) {
  const router = useRouter();
  const [phone, setPhone] = useState<PhoneNotices | null>(null);
  const [state, setState] = useState({ busy: false, said: '' });
  const held = endpoints.join(' ');
  useEffect(() => {
    phoneNotices(held.split(' ')).then(setPhone, () => setPhone('impossible'));
  }, [held]);
  const change = async (work: () => Promise<string | null>) => {
    setState({ busy: true, said: '' });
    const problem = await work();
    setState({ busy: false, said: problem ?? '' });
    router.refresh();
    return problem;
  };
  const togglePhone = async () => {
    const problem = await change(() => (phone === 'on' ? turnOff() : turnOn(pushKey)));
    if (problem === null) setPhone(phone === 'on' ? 'off' : 'on');
    else setPhone(await phoneNotices(held.split(' ')));
  };
  if (phone === null) return null;
  const canPush = phone === 'on' || phone === 'off';
  const mailsToo = email !== null && (mail || !canPush);
  return (
    <section className="notice-switches" aria-labelledby="notices">
      <h2 id="notices">A notice when {coach} answers</h2>
      {canPush ? (
        <Switch
          label="On this phone"
          on={phone === 'on'}
          busy={state.busy}
          toggle={() => void togglePhone()}
        />
      ) : (
        <p className="quiet">{whyNot(phone)}</p>
      )}
      {mailsToo ? (
        <Switch
          label={`By mail to ${email}`}
          on={mail}
          busy={state.busy}
          toggle={() => void change(() => postJson('/api/notices/mail', { on: !mail }))}
        />
      ) : null}
      {!canPush && email === null ? (
        <p className="quiet">By mail once {coach} has your e-mail address.</p>
      ) : null}
      <p role="status" className="quiet">
        {state.said}
      </p>
    </section>
  );
}

type SwitchProps = { label: string; on: boolean; busy: boolean; toggle: () => void };

/** Stays focusable while it works: a keyboard must not lose its place. */
function Switch({ label, on, busy, toggle }: SwitchProps) {
  return (
    <button
      type="button"
      role="switch"
      aria-checked={on}
      aria-disabled={busy}
      className="notice-switch"
      onClick={() => (busy ? undefined : toggle())}
    >
      <span>{label}</span>
      <b aria-hidden="true">{on ? 'on' : 'off'}</b>
    </button>
  );
}

function whyNot(phone: 'impossible' | 'refused'): string {
  return phone === 'refused'
    ? 'Not on this phone: its browser was told not to show notices of this page. Its settings change that.'
    : 'Not in this browser. Some show notices only after this page was added to the home screen.';
}
