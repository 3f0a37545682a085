/**
 * Every unit that the tool reads or prints: SI value = number * factor + offset.
 * To add a unit, add a row; spellings are compared without case, spaces, dots and underscores.
 */
import {
  CUBIC_METRE_PER_CUBIC_FOOT,
  CUBIC_METRE_PER_US_GALLON,
  KELVIN_AT_ZERO_CELSIUS,
  KELVIN_AT_ZERO_FAHRENHEIT,
  KELVIN_PER_FAHRENHEIT,
  KILOGRAM_PER_POUND,
  METRE_PER_FOOT,
  METRE_PER_INCH,
  METRE_PER_MILE,
  PASCAL_PER_ATMOSPHERE,
  PASCAL_PER_INH2O,
  PASCAL_PER_INH2O_4C,
  PASCAL_PER_INH2O_20C,
  PASCAL_PER_INH2O_60F,
  PASCAL_PER_INHG,
  PASCAL_PER_MMH2O,
  PASCAL_PER_MMHG,
  PASCAL_PER_PSI,
} from './exact-factors.ts';

/** What a unit measures. */
export type Quantity =
  | 'pressure'
  | 'temperature'
  | 'temperature difference'
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'time'
  | 'volume flow'
  | 'mass flow'
  | 'density'
  | 'speed'
  | 'rotational speed'
  | 'voltage'
  | 'resistance'
  | 'fraction';

/** One unit. */
export interface Unit {
  /** as the tool prints it */
  readonly symbol: string;
  readonly quantity: Quantity;
  /** SI units per unit */
  readonly factor: number;
  /** SI value at zero of the unit; 0 but for temperatures */
  readonly offset: number;
  /** decimals of a usual print */
  readonly decimals: number;
  /** further spellings */
  readonly spellings: readonly string[];
}

const row = (
  quantity: Quantity,
  symbol: string,
  factor: number,
  decimals: number,
  spellings: readonly string[] = [],
  offset = 0,
): Unit => ({ symbol, quantity, factor, offset, decimals, spellings });

const MINUTE = 60;
const HOUR = 3600;
const LITRE = 1e-3;

/** The table; the first unit of each quantity is the SI one, with factor 1. */
export const UNITS: readonly Unit[] = [
  row('pressure', 'Pa', 1, 0, ['pascal', 'pascals']),
  row('pressure', 'hPa', 100, 1),
  row('pressure', 'kPa', 1e3, 2, ['kilopascal', 'kilopascals']),
  row('pressure', 'MPa', 1e6, 4),
  row('pressure', 'mbar', 100, 1, ['millibar', 'mb']),
  row('pressure', 'bar', 1e5, 4),
  row('pressure', 'psi', PASCAL_PER_PSI, 3, ['lbf/in2', 'lb/in2']),
  row('pressure', 'inH2O', PASCAL_PER_INH2O, 2, [
    'in h2o',
    'inches h2o',
    'inch h2o',
    '"h2o',
    'in wc',
    'in wg',
    'inwater',
    'inches of water',
    'inch of water',
    'iwc',
    'inaq',
    '"wc',
    'wc',
  ]),
  row('pressure', 'inH2O (4 °C)', PASCAL_PER_INH2O_4C, 2, ['inh2o4c', 'inh2o(4c)', 'inh2o@4c', 'inh2o(39.2f)']),
  row('pressure', 'inH2O (60 °F)', PASCAL_PER_INH2O_60F, 2, ['inh2o60f', 'inh2o(60f)', 'inh2o@60f']),
  row('pressure', 'inH2O (20 °C)', PASCAL_PER_INH2O_20C, 2, ['inh2o20c', 'inh2o(20c)', 'inh2o@20c', 'inh2o(68f)']),
  row('pressure', 'mmH2O', PASCAL_PER_MMH2O, 1, ['mm h2o', 'mmwc', 'mmwg', 'mmaq']),
  row('pressure', 'mmHg', PASCAL_PER_MMHG, 2, ['mm hg', 'mm of mercury']),
  row('pressure', 'Torr', PASCAL_PER_ATMOSPHERE / 760, 2),
  row('pressure', 'inHg', PASCAL_PER_INHG, 3, ['in hg', 'inches hg', 'inch hg', '"hg', 'inches of mercury']),
  row('pressure', 'atm', PASCAL_PER_ATMOSPHERE, 5),
  row('temperature', 'K', 1, 1, ['kelvin', 'degk']),
  row('temperature', '°C', 1, 1, ['degc', 'c', 'celsius', 'deg celsius', 'degrees c', 'ºc'], KELVIN_AT_ZERO_CELSIUS),
  row(
    'temperature',
    '°F',
    KELVIN_PER_FAHRENHEIT,
    1,
    ['degf', 'f', 'fahrenheit', 'deg fahrenheit', 'degrees f', 'ºf'],
    KELVIN_AT_ZERO_FAHRENHEIT,
  ),
  row('temperature', '°R', KELVIN_PER_FAHRENHEIT, 1, ['degr', 'rankine']),
  row('temperature difference', 'ΔK', 1, 1, ['deltak', 'δk']),
  row('temperature difference', 'Δ°C', 1, 1, ['deltac', 'δdegc', 'δc']),
  row('temperature difference', 'Δ°F', KELVIN_PER_FAHRENHEIT, 1, ['deltaf', 'δdegf', 'δf']),
  row('length', 'm', 1, 3, ['metre', 'meter', 'metres', 'meters']),
  row('length', 'mm', 1e-3, 2, ['millimetre', 'millimeter', 'millimetres', 'millimeters']),
  row('length', 'cm', 1e-2, 1),
  row('length', 'µm', 1e-6, 0, ['um', 'micron']),
  row('length', 'km', 1e3, 1),
  row('length', 'in', METRE_PER_INCH, 3, ['inch', 'inches', '"']),
  row('length', 'ft', METRE_PER_FOOT, 0, ['foot', 'feet']),
  row('length', 'mi', METRE_PER_MILE, 1, ['mile', 'miles']),
  row('area', 'm2', 1, 6, ['m^2']),
  row('area', 'mm2', 1e-6, 3, ['mm^2']),
  row('volume', 'm3', 1, 4, ['m^3']),
  row('volume', 'L', LITRE, 1, ['litre', 'liter', 'litres', 'liters', 'dm3']),
  row('volume', 'mL', 1e-6, 0, ['cm3', 'cc', 'ccm', 'millilitre', 'milliliter']),
  row('volume', 'gal', CUBIC_METRE_PER_US_GALLON, 2, ['gallon', 'gallons', 'us gal', 'gal us']),
  row('volume', 'ft3', CUBIC_METRE_PER_CUBIC_FOOT, 3, ['ft^3', 'cuft', 'cu ft', 'cf']),
  row('mass', 'kg', 1, 3, ['kilogram', 'kilograms']),
  row('mass', 'g', 1e-3, 2, ['gram', 'grams']),
  row('mass', 'mg', 1e-6, 1),
  row('mass', 'lb', KILOGRAM_PER_POUND, 3, ['lbs', 'pound', 'pounds', 'lbm']),
  row('time', 's', 1, 1, ['sec', 'second', 'seconds']),
  row('time', 'ms', 1e-3, 0, ['millisecond', 'milliseconds', 'msec']),
  row('time', 'min', MINUTE, 1, ['minute', 'minutes']),
  row('time', 'h', HOUR, 2, ['hr', 'hour', 'hours']),
  row('volume flow', 'm3/s', 1, 7, ['m^3/s']),
  row('volume flow', 'm3/h', 1 / HOUR, 3, ['m^3/h', 'cmh']),
  row('volume flow', 'L/min', LITRE / MINUTE, 2, ['lpm', 'l per min', 'litres/min', 'liters/min', 'slpm']),
  row('volume flow', 'L/s', LITRE, 4),
  row('volume flow', 'cm3/min', 1e-6 / MINUTE, 0, ['cc/min', 'ccm/min', 'ml/min', 'sccm', 'cm^3/min']),
  row('volume flow', 'ft3/min', CUBIC_METRE_PER_CUBIC_FOOT / MINUTE, 3, ['cfm', 'ft^3/min', 'scfm']),
  row('volume flow', 'ft3/h', CUBIC_METRE_PER_CUBIC_FOOT / HOUR, 2, ['cfh', 'scfh', 'ft^3/h']),
  row('volume flow', 'gal/min', CUBIC_METRE_PER_US_GALLON / MINUTE, 2, ['gpm']),
  row('mass flow', 'kg/s', 1, 7),
  row('mass flow', 'g/s', 1e-3, 4),
  row('mass flow', 'g/min', 1e-3 / MINUTE, 3),
  row('mass flow', 'g/h', 1e-3 / HOUR, 1, ['g/hr']),
  row('mass flow', 'kg/h', 1 / HOUR, 3, ['kg/hr']),
  row('mass flow', 'lb/min', KILOGRAM_PER_POUND / MINUTE, 4),
  row('density', 'kg/m3', 1, 3, ['g/L', 'kg/m^3']),
  row('density', 'g/m3', 1e-3, 1, ['mg/L', 'g/m^3']),
  row('density', 'g/gal', 1e-3 / CUBIC_METRE_PER_US_GALLON, 3),
  row('density', 'lb/gal', KILOGRAM_PER_POUND / CUBIC_METRE_PER_US_GALLON, 2),
  row('speed', 'm/s', 1, 1, ['mps']),
  row('speed', 'km/h', 1 / 3.6, 0, ['kmh', 'kph', 'kmph']),
  row('speed', 'mph', METRE_PER_MILE / HOUR, 0, ['mi/h']),
  row('rotational speed', '1/s', 1, 1, ['hz', 's-1']),
  row('rotational speed', '1/min', 1 / MINUTE, 0, ['rpm', 'rev/min', 'r/min', 'min-1']),
  row('voltage', 'V', 1, 3, ['volt', 'volts']),
  row('voltage', 'mV', 1e-3, 0, ['millivolt', 'millivolts']),
  row('resistance', 'Ω', 1, 2, ['ohm', 'ohms']),
  row('resistance', 'kΩ', 1e3, 3, ['kohm', 'kohms']),
  row('fraction', '1', 1, 4, ['fraction', 'ratio']),
  row('fraction', '%', 0.01, 1, ['pct', 'percent', 'perc', '%v', 'vol%']),
  row('fraction', 'ppm', 1e-6, 0),
];
