/** One clock for everything that plays: drawings, trace, sentence. */
export interface PlaybackState {
  readonly isPlaying: boolean;
  readonly tempo: number;
  readonly durationS: number;
  /** Counts jumps: pausing, stepping, scrubbing; what is said aloud follows it, not the frames. */
  readonly jumps: number;
}

export class Playback {
  timeS = 0;
  private state: PlaybackState = { isPlaying: false, tempo: 1, durationS: 0, jumps: 0 };
  private readonly frames = new Set<(timeS: number, nowMs: number, isResting: boolean) => void>();
  private readonly changes = new Set<() => void>();
  private request: number | undefined;
  private lastMs: number | undefined;

  readonly get = (): PlaybackState => this.state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.changes.add(listener);
    return () => this.changes.delete(listener);
  };

  /** Calls back at every frame while playing, and once when something changes. */
  onFrame(listener: (timeS: number, nowMs: number, isResting: boolean) => void): () => void {
    this.frames.add(listener);
    this.invalidate();
    return () => this.frames.delete(listener);
  }

  private set(change: Partial<PlaybackState>): void {
    this.state = { ...this.state, ...change };
    for (const listener of this.changes) listener();
    this.invalidate();
  }

  setDuration(durationS: number): void {
    if (durationS === this.state.durationS) return;
    this.timeS = Math.min(this.timeS, durationS);
    this.set({ durationS });
  }

  setTempo(tempo: number): void {
    this.set({ tempo });
  }

  play(): void {
    if (this.timeS >= this.state.durationS) this.timeS = 0;
    this.lastMs = undefined;
    this.set({ isPlaying: true });
  }

  pause(): void {
    this.set({ isPlaying: false, jumps: this.state.jumps + 1 });
  }

  /** Goes to a time; says so once the hand rests when `isRough`. */
  goTo(timeS: number, isRough = false): void {
    this.timeS = Math.min(Math.max(0, timeS), this.state.durationS);
    if (isRough) this.invalidate();
    else this.set({ jumps: this.state.jumps + 1 });
  }

  invalidate(): void {
    if (this.request !== undefined || this.frames.size === 0) return;
    this.request = requestAnimationFrame((nowMs) => this.frame(nowMs));
  }

  stop(): void {
    if (this.request !== undefined) cancelAnimationFrame(this.request);
    this.request = undefined;
  }

  private frame(nowMs: number): void {
    this.request = undefined;
    const { isPlaying, tempo, durationS } = this.state;
    if (isPlaying) {
      // A page that was in the background goes on where it was.
      const elapsed = this.lastMs === undefined ? 0 : Math.min(100, nowMs - this.lastMs);
      this.lastMs = nowMs;
      this.timeS = Math.min(durationS, this.timeS + (elapsed / 1000) * tempo);
    }
    for (const listener of this.frames) listener(this.timeS, nowMs, !isPlaying);
    if (!isPlaying) return;
    if (this.timeS >= durationS) this.pause();
    else this.invalidate();
  }
}
