import { useEffect, useState } from 'react';
import type { RuleSettings } from '../../jobs/record/monitor-of-job.ts';
import { useSheet } from '../sheet/sheet-context.ts';

/** The shop's inspection rules; those that ship stand without the settings too. */
export function useRules(): RuleSettings {
  const { readRules } = useSheet();
  const [rules, setRules] = useState<RuleSettings>({});
  useEffect(() => {
    let isCurrent = true;
    readRules().then(
      (read) => isCurrent && setRules(read),
      () => undefined,
    );
    return () => {
      isCurrent = false;
    };
  }, [readRules]);
  return rules;
}
