/** Heat between the gas of a space and its walls: why a quick draw cools the gas and its pressure then rebounds. */

/**
 * Heat transfer coefficient of still gas against a tank wall [W/(m2 K)].
 * Source: textbook range of natural convection of gases, 2 to 10; judgement within it.
 */
export const STILL_GAS_HEAT_TRANSFER_COEFFICIENT = 5;

/**
 * Heat flow from wall to gas.
 *
 * Valid: wall at one temperature, gas well mixed.
 * Source: Newton's law of cooling.
 * @param heatTransferCoefficient of the gas side [W/(m2 K)]
 * @param areaM2 wetted wall area [m2]
 * @param wallTemperatureK wall temperature [K]
 * @param gasTemperatureK gas temperature [K]
 * @returns heat flow into the gas [W]
 */
export function wallHeatFlow(
  heatTransferCoefficient: number,
  areaM2: number,
  wallTemperatureK: number,
  gasTemperatureK: number,
): number {
  return heatTransferCoefficient * areaM2 * (wallTemperatureK - gasTemperatureK);
}

/**
 * Time constant with which a closed gas takes up the wall's temperature.
 *
 * Valid: constant volume, gas well mixed, heavy wall.
 * Source: energy balance of a closed gas with Newton's law of cooling.
 * @param gasMassKg mass of gas [kg]
 * @param heatCapacityCv heat capacity at constant volume [J/(kg K)]
 * @param heatTransferCoefficient of the gas side [W/(m2 K)]
 * @param areaM2 wetted wall area [m2]
 * @returns time constant [s]
 */
export function wallTimeConstant(
  gasMassKg: number,
  heatCapacityCv: number,
  heatTransferCoefficient: number,
  areaM2: number,
): number {
  return (gasMassKg * heatCapacityCv) / (heatTransferCoefficient * areaM2);
}

/**
 * Rate of change of gas temperature in a space that exchanges gas and heat.
 *
 * Valid: ideal gas, constant volume over the step, constant heat capacities.
 * Source: first law for an open system, dT/dt = (Q + cp Tin min - cp T mout - cv T (min - mout)) / (m cv).
 * @param gasMassKg mass of gas in the space [kg]
 * @param gasTemperatureK gas temperature [K]
 * @param heatCapacityCv of the gas [J/(kg K)]
 * @param gasConstant specific gas constant of the gas [J/(kg K)]
 * @param inflowKgPerS mass flow in, not negative [kg/s]
 * @param inflowTemperatureK temperature of the inflow [K]
 * @param outflowKgPerS mass flow out, not negative [kg/s]
 * @param heatFlowW heat into the gas [W]
 * @returns rate of temperature change [K/s]
 */
export function gasTemperatureRate(
  gasMassKg: number,
  gasTemperatureK: number,
  heatCapacityCv: number,
  gasConstant: number,
  inflowKgPerS: number,
  inflowTemperatureK: number,
  outflowKgPerS: number,
  heatFlowW: number,
): number {
  const cp = heatCapacityCv + gasConstant;
  return (
    (heatFlowW +
      inflowKgPerS * (cp * inflowTemperatureK - heatCapacityCv * gasTemperatureK) -
      outflowKgPerS * gasConstant * gasTemperatureK) /
    (gasMassKg * heatCapacityCv)
  );
}
