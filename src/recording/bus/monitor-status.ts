/** Monitors of a spark-ignition car as service $01 items $01 and $41 report them. Bits from memory (SAE J1979). */
export const MONITORS = [
  'misfire',
  'fuel system',
  'components',
  'catalyst',
  'heated catalyst',
  'evaporative system',
  'secondary air',
  'later filter',
  'oxygen sensor',
  'oxygen sensor heater',
  'recirculation or valve timing',
] as const;
export type MonitorName = (typeof MONITORS)[number];

/** The first three run all the time and are normally reported complete. */
export const CONTINUOUS_MONITORS: readonly MonitorName[] = ['misfire', 'fuel system', 'components'];

export interface MonitorState {
  readonly name: MonitorName;
  readonly supported: boolean;
  /** It has run; this does not say that it has passed. */
  readonly complete: boolean;
}

export interface MonitorStatus {
  /** $01: since codes were cleared, with lamp and codes; $41: this drive cycle only, whose first byte says nothing. */
  readonly scope: 'since-clear' | 'this-drive-cycle';
  readonly lampOn?: boolean;
  readonly codeCount?: number;
  readonly ignition: 'spark' | 'compression';
  /** Empty for compression ignition, whose bits mean other monitors. */
  readonly monitors: readonly MonitorState[];
}

/** Reads the four bytes of item $01 or $41. */
export function readMonitorStatus(data: Uint8Array, at: number, scope: MonitorStatus['scope']): MonitorStatus {
  const [a, b, c, d] = [data[at]!, data[at + 1]!, data[at + 2]!, data[at + 3]!];
  const isSpark = (b & 0x08) === 0;
  const continuous = [0, 1, 2].map((bit) => ({ supported: (b >> bit) & 1, incomplete: (b >> (bit + 4)) & 1 }));
  const others = [0, 1, 2, 3, 4, 5, 6, 7].map((bit) => ({ supported: (c >> bit) & 1, incomplete: (d >> bit) & 1 }));
  return {
    scope,
    ...(scope === 'since-clear' ? { lampOn: (a & 0x80) !== 0, codeCount: a & 0x7f } : {}),
    ignition: isSpark ? 'spark' : 'compression',
    monitors: isSpark
      ? [...continuous, ...others].map(({ supported, incomplete }, i) => ({
          name: MONITORS[i]!,
          supported: supported === 1,
          complete: incomplete === 0,
        }))
      : [],
  };
}
