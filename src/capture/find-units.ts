/** Who is there and what it can tell; codes and readiness before anything else is done. */
import { isSupportItem, supportedItems } from '../recording/bus/data-items.ts';
import { EVAP_MONITOR_IDS } from '../recording/bus/test-results.ts';
import type { ObdClient, UnitAddress } from './obd-client.ts';

export interface FoundUnit {
  readonly address: UnitAddress;
  /** Items of service $01. */
  readonly items: ReadonlySet<number>;
  /** Items that it answers in one request. */
  readonly perRequest: number;
}

const MOST_PER_REQUEST = 6;
const LAST_SUPPORT_ITEM = 0x60;

async function readItems(client: ObdClient, address: UnitAddress): Promise<Set<number>> {
  const items = new Set<number>();
  for (let base = 0; base <= LAST_SUPPORT_ITEM; base += 0x20) {
    const [reply] = await client.ask(address, [0x01, base]);
    const message = reply?.message;
    if (message === undefined || message.length !== 6 || message[1] !== base) break;
    for (const item of supportedItems(base, message, 2)) items.add(item);
    if (!items.has(base + 0x20)) break;
  }
  return items;
}

/** Asks for two items at once: some units answer the first only, or not at all. */
async function answersSeveral(client: ObdClient, address: UnitAddress, items: ReadonlySet<number>): Promise<boolean> {
  const pair = [0x0c, 0x0d, 0x05, 0x0f, 0x33, 0x2f].filter((item) => items.has(item)).slice(0, 2);
  if (pair.length < 2) return false;
  const [reply] = await client.ask(address, [0x01, ...pair]);
  return reply !== undefined && reply.message[0] === 0x41 && reply.message.length > 4;
}

export async function findUnits(client: ObdClient): Promise<FoundUnit[]> {
  const asked = await client.ask('all', [0x01, 0x00]);
  const replies = asked.length > 0 ? asked : await client.ask('all-extended', [0x01, 0x00]);
  const units: FoundUnit[] = [];
  for (const { unit } of replies) {
    const items = await readItems(client, unit);
    if (items.size === 0) continue;
    units.push({
      address: unit,
      items,
      perRequest: (await answersSeveral(client, unit, items)) ? MOST_PER_REQUEST : 1,
    });
  }
  return units;
}

const STATUS_ITEMS = [0x01, 0x41, 0x21, 0x30, 0x31, 0x4d, 0x4e];

/** Codes, readiness, counts since clear, counters, test results, freeze frame. The answers go into the log by themselves. */
export async function readStatus(client: ObdClient, units: readonly FoundUnit[]): Promise<void> {
  for (const { address, items } of units) {
    for (const item of STATUS_ITEMS) if (items.has(item)) await client.ask(address, [0x01, item]);
    for (const service of [0x03, 0x07, 0x0a]) await client.ask(address, [service]);
    const frozen = await client.ask(address, [0x02, 0x02, 0x00]);
    if (frozen[0]?.message[0] === 0x42)
      for (const item of [0x05, 0x0c, 0x0d, 0x0f, 0x2e, 0x2f, 0x32])
        if (items.has(item)) await client.ask(address, [0x02, item, 0x00]);
    for (const type of [0x00, 0x02, 0x08]) await client.ask(address, [0x09, type]);
    const monitors = await client.ask(address, [0x06, 0x20]);
    const message = monitors[0]?.message;
    const known = message?.length === 6 && isSupportItem(message[1]!) ? supportedItems(0x20, message, 2) : [];
    for (const id of Object.keys(EVAP_MONITOR_IDS).map(Number))
      if (known.includes(id)) await client.ask(address, [0x06, id]);
  }
}
