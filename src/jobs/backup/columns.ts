/** Which columns a table has, as the database knows them: a backup of an older version holds the columns of its time. */
import type pg from 'pg';

export interface Column {
  readonly name: string;
  readonly isJson: boolean;
}

export async function columnsOf(client: pg.ClientBase, schema: string, table: string): Promise<readonly Column[]> {
  const { rows } = await client.query<{ name: string; type: string }>(
    `select column_name as name, data_type as type from information_schema.columns
     where table_schema = $1 and table_name = $2 order by ordinal_position`,
    [schema, table],
  );
  return rows.map(({ name, type }) => ({ name, isJson: type === 'json' }));
}
