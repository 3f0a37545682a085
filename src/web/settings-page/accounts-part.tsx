import { type FormEvent, type ReactNode, useId, useState } from 'react';
import type { Account, Role } from '../../server/contract/accounts.ts';
import { changeAccount, createAccount, readAccounts } from '../api/shop.ts';
import { useSession } from '../frame/frame.tsx';
import { announce } from '../kit/announce.tsx';
import { Button } from '../kit/button.tsx';
import { SelectField, TextField } from '../kit/fields.tsx';
import { Fold } from '../kit/fold.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { useText } from '../text/language.ts';
import { SecurityLogPart } from './security-log-part.tsx';

const ROLES: readonly Role[] = ['owner', 'technician', 'reader'];
const SHORTEST = 10;

export function AccountsPart(): ReactNode {
  const text = useText();
  const session = useSession();
  // Accounts are asked for when somebody had to sign in; on a lone computer there are none.
  if (session === null || session.user === null) return <p>{text.shop.settings.noAccounts}</p>;
  return <Accounts myId={session.user.id} />;
}

function Accounts({ myId }: { readonly myId: string }): ReactNode {
  const text = useText();
  const words = text.shop.accounts;
  const [accounts, again] = useLoaded('accounts', readAccounts);
  const [error, setError] = useState<unknown>(null);
  const [name, setName] = useState('');
  const [role, setRole] = useState<Role>('technician');
  const [password, setPassword] = useState('');
  const [isTried, setIsTried] = useState(false);
  const heading = useId();
  const attempt = async (request: () => Promise<unknown>, said: string): Promise<void> => {
    setError(null);
    try {
      await request();
      announce(said);
      again();
    } catch (problem) {
      setError(problem);
    }
  };
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setIsTried(true);
    if (name.trim() === '' || password.length < SHORTEST) return;
    void attempt(async () => {
      await createAccount(name.trim(), role, password);
      setName('');
      setPassword('');
      setIsTried(false);
    }, words.created(name.trim()));
  };
  const roles = ROLES.map((value) => ({ value, name: words.roles[value] }));
  return (
    <>
      {accounts.state === 'failed' && <ErrorMessage error={accounts.error} onRetry={again} />}
      {accounts.state === 'there' && (
        <ul className="rows">
          {accounts.value.map((account) => (
            <AccountRow
              key={account.id}
              account={account}
              isMe={account.id === myId}
              roles={roles}
              onChange={(change) => void attempt(() => changeAccount(account.id, change), words.changed)}
            />
          ))}
        </ul>
      )}
      <form className="stack" onSubmit={submit} noValidate aria-labelledby={heading}>
        <h3 id={heading}>{words.add}</h3>
        <div className="fields">
          <TextField label={words.name} value={name} maxLength={80} onChange={setName} />
          <SelectField
            label={words.role}
            hint={words.roleWords[role]}
            value={role}
            options={roles}
            onChange={setRole}
          />
          <TextField
            label={words.password}
            type="password"
            autoComplete="new-password"
            value={password}
            hint={words.passwordHint}
            error={isTried && password.length < SHORTEST ? text.shop.signIn.tooShort : undefined}
            onChange={setPassword}
          />
        </div>
        <div className="buttons">
          <Button type="submit">{words.create}</Button>
        </div>
      </form>
      {error !== null && <ErrorMessage error={error} onClose={() => setError(null)} />}
      <Fold label={text.shop.securityLog.title} words={text.shop.securityLog.words} act={text.shop.securityLog.show}>
        <SecurityLogPart />
      </Fold>
    </>
  );
}

interface RowProps {
  readonly account: Account;
  readonly isMe: boolean;
  readonly roles: readonly { readonly value: Role; readonly name: string }[];
  readonly onChange: (change: { role?: Role; isActive?: boolean; password?: string }) => void;
}

function AccountRow({ account, isMe, roles, onChange }: RowProps): ReactNode {
  const words = useText().shop.accounts;
  const heading = useId();
  const [password, setPassword] = useState('');
  return (
    <li aria-labelledby={heading}>
      <h3 id={heading}>
        {account.name} {isMe && <span className="quiet">({words.you})</span>}
      </h3>
      <p className="small quiet">{account.isActive ? words.active : words.inactive}</p>
      <div className="fields">
        <SelectField
          label={words.role}
          hint={words.roleWords[account.role]}
          value={account.role}
          disabled={isMe}
          options={roles}
          onChange={(role) => onChange({ role })}
        />
        <TextField
          label={words.newPassword}
          type="password"
          autoComplete="new-password"
          hint={words.passwordHint}
          value={password}
          onChange={setPassword}
        />
        <div className="buttons beside-field">
          <Button
            disabled={password.length < SHORTEST}
            aria-label={words.setPasswordOf(account.name)}
            onClick={() => {
              onChange({ password });
              setPassword('');
            }}
          >
            {words.setPassword}
          </Button>
          {!isMe && (
            <Button
              kind="bare"
              aria-label={account.isActive ? words.shutOut(account.name) : words.letIn(account.name)}
              onClick={() => onChange({ isActive: !account.isActive })}
            >
              {account.isActive ? words.shutOut(account.name) : words.letIn(account.name)}
            </Button>
          )}
        </div>
      </div>
    </li>
  );
}
