import { BOUNDARIES, type Network } from '../system/network.ts';

/**
 * Where every quantity of a network sits in the state vector. Nodes are the spaces followed by the boundaries.
 *
 *   gas space  [air kg, vapour kg]
 *   tank       [air kg, vapour kg, gas energy J, fuel kg, fuel temperature K]
 *   bed cell   [air kg, vapour kg, adsorbed kg, temperature K]
 *   sensor     [lagged gauge pressure Pa]
 *   ledger     boundaries [air kg, vapour kg], then fuel dispensed and fuel burnt [kg], both negative when given
 */
export interface StateLayout {
  readonly size: number;
  readonly dynamicSize: number;
  readonly nodeCount: number;
  readonly spaceCount: number;
  readonly nodeIds: readonly string[];
  readonly nodeIndex: ReadonlyMap<string, number>;
  /** First row of each node; air at +0, vapour at +1. */
  readonly base: Int32Array;
  /** Row of the gas energy of a tank, -1 for others. */
  readonly energyRow: Int32Array;
  readonly sensorRow: Int32Array;
  readonly fuelDispensedRow: number;
  readonly fuelDrawnRow: number;
  /** What each component is, for messages. */
  readonly names: readonly string[];
  /** Node (or sensor's node) that a component belongs to, -1 for the fuel ledgers. */
  readonly nodeOfRow: Int32Array;
}

/**
 * Lays out the state vector of a network.
 *
 * @param network the network
 * @returns rows, names and nodes
 */
export function layOutState(network: Network): StateLayout {
  const names: string[] = [];
  const nodeOfRow: number[] = [];
  const nodeIds = [...network.spaces.map((s) => s.id), ...BOUNDARIES];
  const nodeIndex = new Map(nodeIds.map((id, i) => [id, i]));
  const base = new Int32Array(nodeIds.length);
  const energyRow = new Int32Array(nodeIds.length).fill(-1);
  const add = (node: number, ...quantities: string[]) => {
    const first = names.length;
    for (const quantity of quantities) {
      names.push(node < 0 ? quantity : `${quantity} of ${nodeIds[node]}`);
      nodeOfRow.push(node);
    }
    return first;
  };
  network.spaces.forEach((space, i) => {
    const quantities = ['air mass', 'vapour mass'];
    if (space.kind === 'tank') quantities.push('gas energy', 'fuel mass', 'fuel temperature');
    if (space.kind === 'bed') quantities.push('adsorbed mass', 'temperature');
    base[i] = add(i, ...quantities);
    if (space.kind === 'tank') energyRow[i] = base[i]! + 2;
  });
  const sensorRow = Int32Array.from(network.sensors, (sensor) => {
    const node = nodeIndex.get(sensor.space);
    if (node === undefined) throw new Error(`sensor ${sensor.id} is fitted to '${sensor.space}', which is no space`);
    return add(node, `sensor ${sensor.id}`);
  });
  const dynamicSize = names.length;
  BOUNDARIES.forEach((_, i) => {
    const node = network.spaces.length + i;
    base[node] = add(node, 'air from', 'vapour from');
  });
  const fuelDispensedRow = add(-1, 'fuel dispensed');
  const fuelDrawnRow = add(-1, 'fuel burnt');
  return {
    size: names.length,
    dynamicSize,
    nodeCount: nodeIds.length,
    spaceCount: network.spaces.length,
    nodeIds,
    nodeIndex,
    base,
    energyRow,
    sensorRow,
    fuelDispensedRow,
    fuelDrawnRow,
    names,
    nodeOfRow: Int32Array.from(nodeOfRow),
  };
}
