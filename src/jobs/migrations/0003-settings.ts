/** Settings of the shop. */
export const settings = `
create table settings (
  name text primary key,
  value json not null,
  changed_at timestamptz(3) not null,
  changed_by text not null
);
`;
