import { type MemberLine, ROLE_LABELS } from '#lib/views/team-page.ts';
import forms from '../../clients/_parts/forms.module.css';
import { ChangeMember } from './change-member.tsx';
import styles from './team.module.css';

type Props = { members: MemberLine[]; mayChange: boolean };

/** Everybody of the team; for a lead each with what can be changed. */
export function MemberRows({ members, mayChange }: Props) {
  return (
    <table className={`${forms.rows} ${styles.members}`}>
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col">Role</th>
          <th scope="col">Clients</th>
          <th scope="col">Since</th>
          <th scope="col">Zone</th>
          <th scope="col">Cover now</th>
        </tr>
      </thead>
      <tbody>
        {members.map((member) => (
          <Rows key={member.id} member={member} all={members} mayChange={mayChange} />
        ))}
      </tbody>
    </table>
  );
}

function Rows({ member, all, mayChange }: { member: MemberLine; all: MemberLine[]; mayChange: boolean }) {
  const others = all.filter(({ id, role }) => id !== member.id && role !== 'assistant');
  return (
    <>
      <tr>
        <td>
          <span className={forms.name}>
            {member.name}
            {member.self ? ' (you)' : ''}
          </span>
          <br />
          <span className={styles.email}>{member.email}</span>
        </td>
        <td>{ROLE_LABELS[member.role]}</td>
        <td>
          {member.clients === 0 ? (
            'no clients'
          ) : (
            <a href={`/?coach=${member.id}`}>
              {member.clients === 1 ? '1 client' : `${member.clients} clients`}
            </a>
          )}
        </td>
        <td title={member.since.exact}>since {member.since.said}</td>
        <td>{member.zone}</td>
        <td>{member.cover || 'no cover now'}</td>
      </tr>
      {mayChange && (
        <tr className={styles.change}>
          <td colSpan={6}>
            <ChangeMember member={member} others={others} />
          </td>
        </tr>
      )}
    </>
  );
}
