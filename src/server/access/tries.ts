/** Counts failed tries by name, so that nobody guesses on from many addresses. */
import { Refusal } from '../refusal.ts';

const WINDOW_MS = 15 * 60_000;
/** Judgement. */
const MOST_TRIES = 8;
/** Names of nobody fill the memory up to here; then the oldest are forgotten. */
const MOST_NAMES = 10_000;

export class Tries {
  readonly #failed = new Map<string, { count: number; until: number }>();
  readonly #now: () => number;

  constructor(now: () => number = Date.now) {
    this.#now = now;
  }

  /** @throws Refusal while the name has to wait */
  check(name: string): void {
    const entry = this.#failed.get(keyOf(name));
    if (entry === undefined || this.#now() >= entry.until || entry.count < MOST_TRIES) return;
    const minutes = Math.ceil((entry.until - this.#now()) / 60_000);
    throw new Refusal('too-many', 'Too many tries for this name.', { advice: `Wait ${minutes} min, then try again.` });
  }

  failed(name: string): void {
    const key = keyOf(name);
    const before = this.#failed.get(key);
    const isOpen = before !== undefined && this.#now() < before.until;
    this.#failed.delete(key);
    this.#failed.set(
      key,
      isOpen ? { ...before, count: before.count + 1 } : { count: 1, until: this.#now() + WINDOW_MS },
    );
    for (const oldest of this.#failed.keys()) {
      if (this.#failed.size <= MOST_NAMES) break;
      this.#failed.delete(oldest);
    }
  }

  succeeded(name: string): void {
    this.#failed.delete(keyOf(name));
  }
}

const keyOf = (name: string): string => name.normalize('NFKC').trim().toLowerCase();
