import type { ReactNode } from 'react';
import type { JobSummary } from '../../jobs/record/job.ts';
import { Link } from '../router/link.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';

/** One line per job: what it is, what was found, what it waits for. */
export function JobsTable({ jobs }: { readonly jobs: readonly JobSummary[] }): ReactNode {
  const { columns } = useText().jobs;
  return (
    <table className="jobs-table">
      <thead>
        <tr>
          <th scope="col">{columns.job}</th>
          <th scope="col">{columns.car}</th>
          <th scope="col">{columns.complaint}</th>
          <th scope="col">{columns.finding}</th>
          <th scope="col">{columns.waitsFor}</th>
          <th scope="col">{columns.changed}</th>
        </tr>
      </thead>
      <tbody>
        {jobs.map((job) => (
          <Row key={job.id} job={job} />
        ))}
      </tbody>
    </table>
  );
}

function Row({ job }: { readonly job: JobSummary }): ReactNode {
  const text = useText();
  const numbers = useNumbers();
  const words = text.jobs;
  const { finding } = job;
  const car = job.vehicle === '' ? words.noCar : job.vehicle;
  return (
    <tr>
      <td>
        <span className="quiet">{job.number}</span>
        {job.demo && (
          <>
            {' '}
            <span className="demo-mark small">{words.demo}</span>
          </>
        )}
      </td>
      <th scope="row">
        <Link className="open" href={`/jobs/${job.id}`}>
          <span>
            {car}
            <span className="visually-hidden">, {words.number(job.number)}</span>
          </span>
        </Link>
        {job.registration !== undefined && <span className="small quiet"> {job.registration}</span>}
      </th>
      <td data-name={job.complaint === '' && job.codes.length === 0 ? undefined : words.columns.complaint}>
        {job.complaint}
        {job.complaint !== '' && job.codes.length > 0 && ' '}
        {job.codes.length > 0 && <span className="code small">{[...new Set(job.codes)].join(' ')}</span>}
      </td>
      <td data-name={words.columns.finding}>
        {finding === null ? (
          <span className="quiet">{words.noFinding}</span>
        ) : finding.verdict === 'fault' ? (
          <>
            {text.trade.causes[finding.cause]}{' '}
            <span className="quiet nowrap">{numbers.percent(finding.probability)}</span>
          </>
        ) : (
          text.trade.verdicts[finding.verdict]
        )}
      </td>
      <td data-name={words.columns.waitsFor} className="nowrap">
        {job.closed ? words.isClosed : text.trade.waitsFor[job.waitsFor]}
      </td>
      <td data-name={words.columns.changed} className="small quiet nowrap">
        {numbers.date(job.changedAt)}
      </td>
    </tr>
  );
}
