/** The parts of a vapour system by the trade's names: what each does. Codes C.. are the catalogue's own order. */
export interface Part {
  readonly code: string;
  readonly words: string;
  readonly function: string;
}

export const PARTS = {
  cap: { code: 'C01', words: 'fuel cap and seal', function: 'closes the neck; relieves pressure and vacuum' },
  fillerFlap: { code: 'C02', words: 'capless filler flap', function: 'spring flaps with seals in place of a cap' },
  fillerNeck: { code: 'C03', words: 'filler neck', function: 'carries fuel, seals the cap' },
  fillerHose: { code: 'C04', words: 'filler hose and recirculation tube', function: 'flexible joint to the tank' },
  fillLimitValve: {
    code: 'C06',
    words: 'fill-limit vent valve',
    function: 'main vapour exit of the tank; its float shuts at full',
  },
  rolloverValve: { code: 'C07', words: 'rollover valve', function: 'small vent that shuts on a tilt' },
  vapourLine: { code: 'C08', words: 'vapour line', function: 'tank to canister' },
  canister: { code: 'C09', words: 'canister shell and ports', function: 'holds the carbon' },
  carbonBed: { code: 'C10', words: 'carbon bed', function: 'takes up and gives off fuel vapour' },
  purgeLine: { code: 'C11', words: 'purge line', function: 'canister to purge valve and engine' },
  purgeValve: { code: 'C12', words: 'canister purge valve', function: 'metered flow to the engine; shut at rest' },
  ventValve: { code: 'C13', words: 'canister vent valve', function: 'seals for a test; open at rest' },
  ventFilter: { code: 'C14', words: 'vent filter', function: 'keeps dust and insects out of the vent' },
  pressureSensor: { code: 'C15', words: 'fuel tank pressure sensor', function: 'reads gauge pressure' },
  levelSender: { code: 'C16', words: 'fuel level sender', function: 'enables the monitor, gives the vapour space' },
  temperatureSensor: { code: 'C17', words: 'temperature sensors', function: 'enable and compensate the monitor' },
  senderSeal: { code: 'C18', words: 'sender and pump flange seal', function: 'closes the largest tank opening' },
  tankShell: { code: 'C19', words: 'fuel tank', function: 'holds the fuel' },
  pumpModule: { code: 'C21', words: 'leak-check pump module', function: 'draws through an orifice and on the tank' },
  changeoverValve: { code: 'C21', words: 'change-over valve', function: 'turns the pump from orifice to tank' },
  referenceOrifice: { code: 'C21', words: 'reference orifice', function: 'the known hole of the pump module' },
  isolationValve: { code: 'C22', words: 'tank isolation valve', function: 'seals the tank; shut at rest' },
  manifoldCheckValve: { code: 'C23', words: 'manifold check valve', function: 'shuts the low-load path under boost' },
  ejectorCheckValve: { code: 'C23', words: 'ejector check valve', function: 'shuts the boost path at low load' },
  ejector: { code: 'C24', words: 'ejector', function: 'sucks vapour while the engine is under boost' },
  crossover: { code: 'C07', words: 'crossover vent', function: 'joins the gas of two lobes' },
  transferPump: { code: 'C16', words: 'transfer jet pump', function: 'lifts fuel from the passive lobe' },
} as const satisfies Record<string, Part>;

export type PartId = keyof typeof PARTS;
