/** Findings never change once written: their sheets, the bulk of a job, are read from the database once. */
import type { StoredSheet } from '../../report/sheet.ts';
import type { Queries } from './queries.ts';

const KEPT = 128;

export class SheetCache {
  readonly #kept = new Map<string, StoredSheet>();

  async read(db: Queries, ids: readonly string[]): Promise<ReadonlyMap<string, StoredSheet>> {
    const sheets = new Map<string, StoredSheet>();
    const absent: string[] = [];
    for (const id of ids) {
      const sheet = this.#kept.get(id);
      if (sheet === undefined) absent.push(id);
      else {
        sheets.set(id, sheet);
        this.#keep(id, sheet);
      }
    }
    if (absent.length === 0) return sheets;
    const rows = await db.selectFrom('findings').select(['id', 'sheet']).where('id', 'in', absent).execute();
    for (const { id, sheet } of rows) {
      sheets.set(id, sheet as StoredSheet);
      this.#keep(id, sheet as StoredSheet);
    }
    return sheets;
  }

  #keep(id: string, sheet: StoredSheet): void {
    this.#kept.delete(id);
    this.#kept.set(id, sheet);
    if (this.#kept.size > KEPT) this.#kept.delete(this.#kept.keys().next().value!);
  }
}
