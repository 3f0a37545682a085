import { HEAT_CAPACITY_CP_AIR, HEAT_CAPACITY_CP_FUEL_VAPOUR } from '../physics/constants.ts';
import { COLUMNS, type NodeGas } from './node-gas.ts';

/**
 * Chain rule from a flow's local slopes to the states of its two nodes; rows of both get opposite signs.
 *
 * @param rowBase first row of each node
 * @param energyRow row of the gas energy of each node, -1 = none
 * @param gas gas of the nodes with its gradients
 * @param jacobian receives the sums, row-major [kg/s, W per unit of the column]
 * @param size width of the Jacobian
 * @param i node that the flow leaves
 * @param j node that it enters
 * @param up the node of the two whose gas flows
 * @param m mass flow from i to j [kg/s]
 * @param byPressureI slope of the flow by the pressure of i [kg/(s Pa)]
 * @param byPressureJ slope by the pressure of j [kg/(s Pa)]
 * @param byTemperatureUp slope by the upstream temperature [kg/(s K)]
 * @param byFractionUp slope by the upstream vapour mass fraction [kg/s]
 */
export function coupleFlow(
  rowBase: Int32Array,
  energyRow: Int32Array,
  gas: NodeGas,
  jacobian: Float64Array,
  size: number,
  i: number,
  j: number,
  up: number,
  m: number,
  byPressureI: number,
  byPressureJ: number,
  byTemperatureUp: number,
  byFractionUp: number,
): void {
  const { columnCount, column, pressureBy, temperatureBy, massFractionBy } = gas;
  const w = gas.massFraction[up]!;
  const t = gas.temperature[up]!;
  const cp = (1 - w) * HEAT_CAPACITY_CP_AIR + w * HEAT_CAPACITY_CP_FUEL_VAPOUR;
  const rowI = rowBase[i]! * size;
  const rowJ = rowBase[j]! * size;
  const heatI = energyRow[i]!;
  const heatJ = energyRow[j]!;
  for (let side = 0; side < 2; side++) {
    const node = side === 0 ? i : j;
    const byPressure = side === 0 ? byPressureI : byPressureJ;
    const isUp = node === up;
    const columns = columnCount[node]!;
    for (let c = 0; c < columns; c++) {
      const at = node * COLUMNS + c;
      const col = column[at]!;
      let dm = byPressure * pressureBy[at]!;
      let dVapour = w * dm;
      let dEnthalpy = 0;
      if (isUp) {
        const dw = massFractionBy[at]!;
        dm += byTemperatureUp * temperatureBy[at]! + byFractionUp * dw;
        dVapour = w * dm + m * dw;
        dEnthalpy = m * (HEAT_CAPACITY_CP_FUEL_VAPOUR - HEAT_CAPACITY_CP_AIR) * dw * t + m * cp * temperatureBy[at]!;
      }
      dEnthalpy += cp * t * dm;
      const dAir = dm - dVapour;
      jacobian[rowI + col] = jacobian[rowI + col]! - dAir;
      jacobian[rowI + size + col] = jacobian[rowI + size + col]! - dVapour;
      jacobian[rowJ + col] = jacobian[rowJ + col]! + dAir;
      jacobian[rowJ + size + col] = jacobian[rowJ + size + col]! + dVapour;
      if (heatI >= 0) jacobian[heatI * size + col] = jacobian[heatI * size + col]! - dEnthalpy;
      if (heatJ >= 0) jacobian[heatJ * size + col] = jacobian[heatJ * size + col]! + dEnthalpy;
    }
  }
}
