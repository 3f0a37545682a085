/**
 * Monitor and inspection, a further section of every job. The number also keeps a program that does not know the section from
 * opening jobs that have it.
 */
export const monitor = `
insert into job_sections (job_id, section, value)
select id, 'monitor', '{"readings":[],"conditions":null,"parkedBeforeS":{},"plan":{"routine":[]}}' from jobs
on conflict do nothing;
`;
