/** Rows of a backup into the tables of a schema. */
import pg from 'pg';
import { columnsOf } from './columns.ts';

/** `text`: a row of JSON a line. Returns how many rows there were. */
export async function insertRows(client: pg.ClientBase, schema: string, table: string, text: string): Promise<number> {
  const columns = await columnsOf(client, schema, table);
  const names = columns.map(({ name }) => pg.escapeIdentifier(name));
  const values = columns.map(({ name, isJson }) => `r.${pg.escapeIdentifier(name)}${isJson ? '::json' : ''}`);
  const into = `${pg.escapeIdentifier(schema)}.${pg.escapeIdentifier(table)}`;
  // The row's own type tells how to read each column; JSON comes as text and is taken over to the letter.
  const types = await client.query<{ list: string }>(
    `select string_agg(quote_ident(attname) || ' ' || case when atttypid = 'json'::regtype then 'text'
       else format_type(atttypid, atttypmod) end, ', ' order by attnum) as list
     from pg_attribute where attrelid = $1::regclass and attnum > 0 and not attisdropped`,
    [into],
  );
  const { rowCount } = await client.query(
    `insert into ${into} (${names.join(', ')})
     select ${values.join(', ')} from json_to_recordset($1::json) as r(${types.rows[0]!.list})`,
    [`[${text.trimEnd().split('\n').join(',')}]`],
  );
  return rowCount ?? 0;
}
