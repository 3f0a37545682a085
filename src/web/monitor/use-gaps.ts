import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';

/** What is missing: to who can fill it in with the way to, to a reader as it is. */
export function useGaps() {
  const { monitor: text } = useText();
  const { isReadOnly } = useSheet();
  if (isReadOnly) return text.readOnly;
  return {
    none: text.said.none,
    needsYear: text.inspection.needsYear,
    needsLayout: text.why.needsLayout,
    noRecording: text.why.noRecording,
    needsForecast: text.plan.needsForecast,
    needsPlan: text.engineOff.needsPlan,
  };
}
