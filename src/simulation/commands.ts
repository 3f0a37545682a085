import { COMMANDS, type CommandId } from '../system/network.ts';

/** Place of every command in the vector of commands. */
export const COMMAND_INDEX: Readonly<Record<CommandId, number>> = Object.fromEntries(
  COMMANDS.map((id, i) => [id, i]),
) as Record<CommandId, number>;
