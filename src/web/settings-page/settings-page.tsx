import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { Settings } from '../../server/contract/settings.ts';
import { readSettings, writeSettings } from '../api/shop.ts';
import { DisplayChoices } from '../frame/display-dialog.tsx';
import { Frame, useSession } from '../frame/frame.tsx';
import { TextField } from '../kit/fields.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { Section } from '../kit/section.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { withKey } from '../kit/with-key.ts';
import { useText } from '../text/language.ts';
import { AccountsPart } from './accounts-part.tsx';
import { BackupPart } from './backup-part.tsx';
import { LimitsPart } from './limits-part.tsx';
import { RulesPart } from './rules-part.tsx';

export function SettingsPage(): ReactNode {
  const text = useText();
  const words = text.shop.settings;
  const session = useSession();
  const [loaded, again] = useLoaded('settings', readSettings);
  const isOwner = session?.role === 'owner';
  return (
    <Frame current="settings" title={words.title}>
      <main className="paper" id="sheet" tabIndex={-1}>
        <div className="sheet">
          <header>
            <h1>{words.title}</h1>
          </header>
          <Section id="device" name={words.display}>
            <p className="quiet">{text.display.words}</p>
            <DisplayChoices />
          </Section>
          {loaded.state === 'loading' && <p className="quiet">{text.common.loading}</p>}
          {loaded.state === 'failed' && <ErrorMessage error={loaded.error} onRetry={again} />}
          {loaded.state === 'there' && <ShopParts first={loaded.value} isReadOnly={!isOwner} />}
          {isOwner && (
            <>
              <Section id="backup" name={words.backup}>
                <BackupPart />
              </Section>
              <Section id="accounts" name={words.accounts}>
                <AccountsPart />
              </Section>
            </>
          )}
        </div>
      </main>
    </Frame>
  );
}

const PAUSE_MS = 600;

function ShopParts({ first, isReadOnly }: { readonly first: Settings; readonly isReadOnly: boolean }): ReactNode {
  const text = useText();
  const words = text.shop.settings;
  const [settings, setSettings] = useState(first);
  const [state, setState] = useState<'saved' | 'unsaved'>('saved');
  const [error, setError] = useState<unknown>(null);
  const waiting = useRef<Settings | null>(null);
  const save = useRef(async (): Promise<void> => {
    const next = waiting.current;
    if (next === null) return;
    waiting.current = null;
    try {
      await writeSettings(next);
      setError(null);
      if (waiting.current === null) setState('saved');
    } catch (problem) {
      waiting.current ??= next;
      setError(problem);
    }
  }).current;
  const set = (next: Settings): void => {
    setSettings(next);
    setState('unsaved');
    waiting.current = next;
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: every change starts the pause anew.
  useEffect(() => {
    if (waiting.current === null) return;
    const timer = setTimeout(() => void save(), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [settings, save]);
  // Left before the pause was over.
  useEffect(() => () => void save(), [save]);
  const shop = settings.shop;
  return (
    <>
      <Section id="shop" name={words.shop}>
        <p className="quiet">{words.shopWords}</p>
        <div className="fields">
          <TextField
            label={words.name}
            value={shop.name}
            maxLength={120}
            readOnly={isReadOnly}
            onChange={(name) => set({ ...settings, shop: { ...shop, name } })}
          />
          <TextField
            label={words.telephone}
            value={shop.telephone ?? ''}
            maxLength={40}
            readOnly={isReadOnly}
            onChange={(value) => set({ ...settings, shop: withKey(shop, 'telephone', value) })}
          />
          <TextField
            label={words.email}
            value={shop.email ?? ''}
            maxLength={120}
            readOnly={isReadOnly}
            onChange={(value) => set({ ...settings, shop: withKey(shop, 'email', value) })}
          />
          <TextField
            label={words.address}
            lines={2}
            value={shop.address}
            maxLength={400}
            readOnly={isReadOnly}
            onChange={(address) => set({ ...settings, shop: { ...shop, address } })}
          />
          <TextField
            label={words.technician}
            hint={words.technicianHint}
            value={settings.technician ?? ''}
            maxLength={120}
            readOnly={isReadOnly}
            onChange={(value) => set(withKey(settings, 'technician', value))}
          />
        </div>
        {!isReadOnly && (
          <p className="small quiet" role="status">
            {text.job.state[state]}
          </p>
        )}
        {error !== null && <ErrorMessage error={error} onRetry={() => void save()} />}
      </Section>
      <Section id="limits" name={words.limits}>
        <LimitsPart
          limits={settings.limits}
          isReadOnly={isReadOnly}
          onChange={(limits) => set({ ...settings, limits: [...limits] })}
        />
      </Section>
      <Section id="rules" name={text.monitor.rules.title}>
        <RulesPart
          kept={settings}
          isReadOnly={isReadOnly}
          onChange={(kept) => {
            const { inspectionRules: _, inspectionRule: __, ...others } = settings;
            set({ ...others, ...kept });
          }}
        />
      </Section>
    </>
  );
}
