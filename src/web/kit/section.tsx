import { type ReactNode, useId } from 'react';

interface Props {
  /** Address of the section within the page. */
  readonly id: string;
  readonly name: string;
  /** The section that the job now turns on: its name stands in the accent. */
  readonly isFirst?: boolean;
  readonly children: ReactNode;
}

/** A part of the sheet with its name in the left margin. */
export function Section({ id, name, isFirst = false, children }: Props): ReactNode {
  const heading = useId();
  return (
    <section id={id} className={isFirst ? 'section first' : 'section'} aria-labelledby={heading}>
      <h2 id={heading}>{name}</h2>
      <div className="content">{children}</div>
    </section>
  );
}
