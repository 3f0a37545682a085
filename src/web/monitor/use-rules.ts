import { useEffect, useState } from 'react';
import type { RuleSettings } from '../../jobs/record/monitor-of-job.ts';
import { readSettings } from '../api/shop.ts';

/** The shop's inspection rules; those that ship stand without the settings too. */
export function useRules(): RuleSettings {
  const [rules, setRules] = useState<RuleSettings>({});
  useEffect(() => {
    let isCurrent = true;
    readSettings().then(
      ({ inspectionRules, inspectionRule }) =>
        isCurrent &&
        setRules({
          ...(inspectionRules === undefined ? {} : { inspectionRules }),
          ...(inspectionRule === undefined ? {} : { inspectionRule }),
        }),
      () => undefined,
    );
    return () => {
      isCurrent = false;
    };
  }, []);
  return rules;
}
