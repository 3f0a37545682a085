import type { ReactNode } from 'react';
import { readSecurityLog } from '../api/shop.ts';
import { ErrorMessage } from '../kit/message.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { useSeen } from '../kit/use-seen.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';

/** What happened to accounts, sessions and links, newest first; asked for when somebody looks. */
export function SecurityLogPart(): ReactNode {
  const [watch, isSeen] = useSeen();
  return <div ref={watch}>{isSeen && <Events />}</div>;
}

function Events(): ReactNode {
  const text = useText();
  const words = text.shop.securityLog;
  const { dateTime } = useNumbers();
  const [log, again] = useLoaded('security log', readSecurityLog);
  if (log.state === 'loading') return <p className="quiet">{text.common.loading}</p>;
  if (log.state === 'failed') return <ErrorMessage error={log.error} onRetry={again} />;
  const kinds: Readonly<Record<string, string>> = words.kinds;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard.
    <section className="table-scroll" tabIndex={0} aria-label={words.title}>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.at}</th>
            <th scope="col">{words.what}</th>
            <th scope="col">{words.who}</th>
            <th scope="col">{words.from}</th>
          </tr>
        </thead>
        <tbody>
          {log.value.map(({ at, what, who, from }, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the log only grows, and is read once.
            <tr key={k}>
              <td>{dateTime(at)}</td>
              <td>{kinds[what] ?? what}</td>
              <td>{who ?? words.nobody}</td>
              <td>{from}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
