/** What was commanded while a recording ran: from its channels, and where it has none from what its phases mean. */
import type { ChannelName, Phase, PhaseKind, ProcedureKind } from '../../recording/recording.ts';
import type { CommandPlan } from '../../simulation/procedure.ts';
import { PURGE_DRIVE } from '../../simulation/procedures/purge-drive.ts';
import { VACUUM_DRAW } from '../../simulation/procedures/vacuum-draw.ts';
import type { CommandId } from '../../system/network.ts';

type Values = ArrayLike<number>;
export interface RecordedChannels {
  readonly timeS: Values;
  readonly channels: Readonly<Partial<Record<ChannelName, Values>>>;
}

export type Commands = Readonly<Partial<Record<CommandId, CommandPlan>>>;

const OPEN: Commands = { purgeDuty: 0, ventClosed: 0 };
const SHUT: Commands = { purgeDuty: 0, ventClosed: 1 };
const PURGE: Commands = { purgeDuty: PURGE_DRIVE.duty, ventClosed: 0 };

/** What the phases of a procedure mean for the valves; the sealing procedures seal while they draw, settle and hold. */
function meant(procedure: ProcedureKind, phase: PhaseKind, hasRecovery: boolean): Commands {
  switch (procedure) {
    case 'vacuum-draw':
    case 'engine-off':
    case 'purge-drive': {
      const pump = procedure === 'purge-drive' ? { enginePumpOn: 1 } : {};
      if (phase === 'draw') return { purgeDuty: VACUUM_DRAW.drawDuty, ventClosed: 1 };
      if (phase === 'settle' || phase === 'hold' || phase === 'sealed') return SHUT;
      return { ...(phase === 'purge' ? PURGE : OPEN), ...pump };
    }
    case 'refuelling': {
      const isOn = phase === 'filling';
      return { ...OPEN, nozzleOn: Number(isOn), fillerOpen: Number(!isOn || !hasRecovery), isolationOpen: 1 };
    }
    case 'pump-run':
      return {
        purgeDuty: Number(phase === 'release'),
        pumpOn: Number(phase === 'reference' || phase === 'tank-pump' || phase === 'release'),
        changeoverToTank: Number(phase === 'tank-pump' || phase === 'release'),
      };
    case 'sealed-hold':
      return { ...OPEN, isolationOpen: Number(phase === 'release') };
  }
}

const CHANNEL_COMMANDS = [
  'purgeDuty',
  'ventClosed',
  'isolationOpen',
  'pumpOn',
  'changeoverToTank',
] as const satisfies readonly (CommandId & ChannelName)[];

/** Steps of a duty that are followed [-]; twice as coarse until there are few enough. Judgement. */
const DUTY_STEP = 0.02;
const MOST_CHANGES = 200;

interface Change {
  readonly timeS: number;
  readonly value: number;
}

/** The values that a command had, each from the middle of the gap in which it changed. */
function changesOf(timeS: Values, values: Values, phases: readonly Phase[], step: number): readonly Change[] {
  const fromS = phases[0]!.fromS;
  const toS = phases.at(-1)!.toS;
  const out: Change[] = [];
  let lastS = fromS;
  for (let i = 0; i < values.length && timeS[i]! <= toS; i++) {
    const value = values[i]!;
    if (timeS[i]! < fromS || !Number.isFinite(value)) continue;
    const before = out.at(-1);
    const set = step === 1 ? Number(value > 0.5) : Math.min(1, Math.max(0, value));
    // Off is off: a small duty that ends is a change however coarse the steps.
    const isOther =
      before === undefined || Math.abs(set - before.value) >= step || (set === 0) !== (before.value === 0);
    if (isOther) out.push({ timeS: before === undefined ? fromS : 0.5 * (lastS + timeS[i]!), value: set });
    lastS = timeS[i]!;
  }
  if (step === 1 || out.length <= MOST_CHANGES) return out;
  return step > 0.3 ? out.slice(0, MOST_CHANGES) : changesOf(timeS, values, phases, 2 * step);
}

/**
 * Commands of each phase of a recording.
 *
 * @param recording its channels
 * @param procedure what was recorded
 * @param phases its phases in order, without gaps
 * @param hasRecovery whether the filler seals while fuel goes in
 * @returns for each phase what is commanded from its beginning on
 */
export function recordedCommands(
  { timeS, channels }: RecordedChannels,
  procedure: ProcedureKind,
  phases: readonly Phase[],
  hasRecovery: boolean,
): readonly Commands[] {
  const known = CHANNEL_COMMANDS.flatMap((id) => {
    const values = channels[id];
    if (values === undefined || phases.length === 0) return [];
    const changes = changesOf(timeS, values, phases, id === 'purgeDuty' ? DUTY_STEP : 1);
    return changes.length === 0 ? [] : [{ id, changes }];
  });
  return phases.map(({ kind, fromS, toS }) => ({
    ...meant(procedure, kind, hasRecovery),
    ...Object.fromEntries(
      known.map(({ id, changes }) => {
        const first = changes.findLast((change) => change.timeS <= fromS) ?? changes[0]!;
        const later = changes.filter((change) => change.timeS > fromS && change.timeS < toS);
        const plan = [{ atS: 0, value: first.value }, ...later.map((c) => ({ atS: c.timeS - fromS, value: c.value }))];
        return [id, later.length === 0 ? first.value : plan];
      }),
    ),
  }));
}
