/** The content of the section "Monitor and inspection". */
import type { ReactNode } from 'react';
import { useSeen } from '../kit/use-seen.ts';
import { useText } from '../text/language.ts';
import { InspectionPart } from './inspection-part.tsx';
import './monitor.css';
import { PlanPart } from './plan-part.tsx';
import { SaidPart } from './said-part.tsx';
import { useMonitorClient, WhyPart } from './why-part.tsx';

export function MonitorSection(): ReactNode {
  const { monitor: text } = useText();
  const client = useMonitorClient();
  // Recordings are not fetched for a section that nobody reads.
  const [watch, isSeen] = useSeen();
  return (
    <>
      <p>{text.lead}</p>
      <SaidPart />
      <InspectionPart />
      <div className="part why" ref={watch}>
        <h3>{text.why.title}</h3>
        {isSeen && <WhyPart client={client} />}
      </div>
      <PlanPart client={client} />
    </>
  );
}
