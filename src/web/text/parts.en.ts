/**
 * What each part does, how it fails, how it is checked. Figures are typical and carry their mark; a car's own service
 * information comes first. Common practice, no source, unless marked otherwise.
 */
import type { PartCaution } from '../../system/part-notes.ts';
import type { PartId } from '../../system/parts.ts';

export interface PartWords {
  readonly does: string;
  readonly fails: string;
  readonly shows: string;
  readonly checked: string;
  /** What passes and what fails, with where the figure comes from. */
  readonly limits?: { readonly text: string; readonly mark: 'common' | 'memory' | 'judgement' | 'source' };
  readonly repair: string;
}

export interface PartsText {
  readonly parts: Readonly<Record<PartId, PartWords>>;
  readonly cautions: Readonly<Record<PartCaution, string>>;
}

export const PARTS_EN: PartsText = {
  parts: {
    cap: {
      does: 'Closes the filler neck gas-tight, and relieves the tank when pressure or vacuum grow too large.',
      fails: 'Loose, cross-threaded, seal cracked or swollen, wrong pattern, relief stuck open.',
      shows: 'Lamp a day or two after filling up, smell at the neck.',
      checked:
        'Look at seal and land. Try it on a cap tester, or fit a known good cap of the right pattern and repeat the hold.',
      limits: {
        text: 'The official cap test compares the flow at 7.5 kPa (30 inH2O) with a calibrated orifice within 15 s.',
        mark: 'source',
      },
      repair: 'Fit the right cap, clean the land.',
    },
    fillerFlap: {
      does: 'Spring flaps with seals close the neck without a cap; the nozzle pushes them open.',
      fails: 'Grit on the seal, weak spring, ice, damaged lip.',
      shows: 'As a loose cap: a leak code after filling up.',
      checked:
        'Push in and draw out the filling funnel, then repeat the hold; put a blanking cap over it and compare the number.',
      limits: { text: 'Same leak number with the blanking cap on: the flap is not it.', mark: 'common' },
      repair: 'Clean; otherwise replace the housing.',
    },
    fillerNeck: {
      does: 'Carries the fuel down to the tank and gives the cap its sealing land.',
      fails: 'Rusted through at a clamp or behind the shield, dented land, damage from body work.',
      shows: 'A leak that grows over salty winters.',
      checked: 'Take the shield off, use a mirror; smoke at the clamps; press with a finger and watch the flow.',
      limits: { text: 'No smoke, and flow below the 0.5 mm (0.020 in) reference.', mark: 'common' },
      repair: 'Replace pipe and clamps. Never weld.',
    },
    fillerHose: {
      does: 'Flexible joint between neck and tank; the thin tube beside it feeds vapour back to the neck while filling.',
      fails: 'Perished, clamp slipped, kinked.',
      shows: 'Smell when the tank is full; a nozzle that clicks off if it is kinked.',
      checked: 'Bend and squeeze it while the flow meter reads.',
      limits: { text: 'The number does not change when it is flexed.', mark: 'common' },
      repair: 'Replace hose and clamps.',
    },
    fillLimitValve: {
      does: 'Main way out for vapour. Its float shuts when the tank is full; the pressure that then builds shuts the nozzle off.',
      fails: 'Stuck shut: the nozzle clicks off at any level. Stuck open: overfill, liquid fuel in the canister.',
      shows: 'Slow fill, or a tank that takes too much and a wet canister.',
      checked:
        'Fill with the vent line off the canister (outdoors, bonded): if it still clicks off, the fault lies here or in the line. Low inert-gas flow through it at less than half full.',
      limits: { text: 'Passes freely upright; blocks when floated or tilted.', mark: 'common' },
      repair: 'Usually part of the tank’s top; tank down.',
    },
    rolloverValve: {
      does: 'A small second vent whose ball shuts it when the car tilts, so that no liquid runs out.',
      fails: 'Sticks shut: pressure builds on slopes. Sticks open: liquid carried to the canister.',
      shows: 'Hiss or smell on slopes.',
      checked: 'Low inert-gas flow upright and tilted, tank less than half full.',
      limits: { text: 'Passes upright, blocks when tilted.', mark: 'common' },
      repair: 'Usually part of the tank’s top; tank down.',
    },
    vapourLine: {
      does: 'Takes vapour from the tank to the canister.',
      fails: 'Rubbed through, pinched, a low spot that holds liquid.',
      shows: 'Slow fill, pressure that builds in the tank; a leak code when holed.',
      checked: 'Free flow both ways with low-pressure inert gas or little vacuum; look along it for low spots.',
      limits: { text: 'Free both ways at no more than 7 kPa (1 psi).', mark: 'common' },
      repair: 'Re-route or replace.',
    },
    canister: {
      does: 'Holds the carbon; ports to tank, engine and fresh air.',
      fails: 'Cracked by an impact, a port snapped off.',
      shows: 'Smell at the rear; a leak code.',
      checked: 'Close its ports and hold 2.5 kPa (10 inH2O).',
      limits: { text: 'Loses less than 0.12 kPa (0.5 inH2O) in 2 min.', mark: 'judgement' },
      repair: 'Replace.',
    },
    carbonBed: {
      does: 'Takes up fuel vapour while parked and while filling, and gives it back to the engine when fresh air is drawn through. Taking up warms it, giving off cools it.',
      fails: 'Flooded with liquid fuel or water, grains crumbled, aged.',
      shows: 'Rich running while purging, black dust in the valves, slow fill, smell at the vent.',
      checked:
        'Weigh it against its dry weight if that is known; listen for liquid; look for black dust downstream; smell at the vent.',
      limits: { text: '100 g above dry is well loaded; liquid slosh means replace.', mark: 'common' },
      repair: 'Replace the canister and clean every line and valve after it; find out why it was flooded.',
    },
    purgeLine: {
      does: 'Canister to purge valve and on to the engine.',
      fails: 'Perished elbow, cracked tee, cut o-ring in a quick connector.',
      shows: 'A large leak code; a leak that shows only on the engine’s side.',
      checked: 'Plug both ends and hold 1.2 to 2 kPa (5 to 8 inH2O) of vacuum.',
      limits: { text: 'Loses less than 10 % in 1 min.', mark: 'judgement' },
      repair: 'Replace hose or connector.',
    },
    purgeValve: {
      does: 'Meters vapour to the engine in pulses. Shut without current.',
      fails: 'Seeps, stuck open by dust, stuck shut, coil open or shorted.',
      shows: 'Rough idle or hard start after filling up; no purge; a vacuum that keeps growing after the draw.',
      checked:
        'Without current it must hold vacuum; with a command it clicks and flow follows duty; no suction on the canister’s side at idle with its plug off.',
      limits: {
        text: 'Loses less than 5 % in 30 s at 34 to 51 kPa of vacuum (10 to 15 inHg); coil about 20 to 40 Ω (from memory). Repeat warm.',
        mark: 'common',
      },
      repair: 'Replace; with carbon in it, clean the pipes and look at the canister.',
    },
    ventValve: {
      does: 'Lets fresh air to the canister; shuts only for a self-test. Open without current.',
      fails: 'Corroded, dust, water or insects on the seat; coil open or shorted. Does not seal, or does not open.',
      shows: 'A leak code if it does not seal; slow fill and growing vacuum if it does not open.',
      checked:
        'Give it current and hold 1.2 to 2.5 kPa (5 to 10 inH2O); without current it must breathe freely. No longer than 2 min under current.',
      limits: {
        text: 'Sealed: loses less than 0.12 kPa (0.5 inH2O) a minute. Coil about 20 to 60 Ω (from memory).',
        mark: 'common',
      },
      repair: 'Replace; raise its air inlet if water or dust come back.',
    },
    ventFilter: {
      does: 'Keeps dust and insects out of the fresh-air side.',
      fails: 'Choked with dust, mud, webs or water.',
      shows: 'Slow fill; vacuum in the tank while purging.',
      checked: 'Flow at 10 L/min with the vent open.',
      limits: { text: 'Drop of less than 0.25 to 0.5 kPa (1 to 2 inH2O).', mark: 'judgement' },
      repair: 'Clean or replace.',
    },
    pressureSensor: {
      does: 'Reads the pressure in the tank against the air outside; the self-test lives on it.',
      fails: 'Offset, wrong slope, slow or blocked snout, water in the reference port, hose off.',
      shows: 'A leak that is not there, a pass that is none, a test that never runs.',
      checked:
        'Cap off and vent open: read it at true atmosphere. Then apply two known pressures with a hand pump, and watch it come back. Do not leave its range.',
      limits: { text: 'Within 0.12 kPa (0.5 inH2O) at atmosphere; follows to 5 % and returns.', mark: 'common' },
      repair: 'Replace; clear the reference port.',
    },
    levelSender: {
      does: 'Tells how full the tank is: the module only tests between levels, and works out the vapour space from it.',
      fails: 'Dead spot, noise from slosh, lobes that disagree.',
      shows: 'The monitor never runs.',
      checked: 'Watch the per cent for five minutes of driving; add a measured 5 L.',
      limits: { text: 'Smooth, and right to 10 %.', mark: 'common' },
      repair: 'Replace the sender.',
    },
    temperatureSensor: {
      does: 'Ambient and fuel temperature let the monitor run and correct it.',
      fails: 'Reads wrong without setting a code.',
      shows: 'The monitor does not run, or judges wrongly.',
      checked: 'Compare all temperatures after eight hours of standing.',
      limits: { text: 'All within 3 to 5 K when cold.', mark: 'common' },
      repair: 'Replace.',
    },
    senderSeal: {
      does: 'Closes the largest opening of the tank, over pump and sender.',
      fails: 'O-ring swollen or rolled, lock ring not home, rust on the land.',
      shows: 'A leak after pump work; smell above three quarters full.',
      checked:
        'Compare the leak at a quarter and at three quarters; smoke; soap around the flange where it can be reached.',
      limits: { text: 'No change of flow after re-seating: it is not this one.', mark: 'common' },
      repair: 'New seal and ring, clean land.',
    },
    tankShell: {
      does: 'Holds fuel and vapour; part of the sealed boundary.',
      fails: 'Rusted seam, stone damage, pinhole in a weld, shrunken grommet.',
      shows: 'A leak that depends on level; a stain.',
      checked: 'Section test of the tank alone; UV dye.',
      limits: { text: 'Holds like a sound tank of the same volume.', mark: 'common' },
      repair: 'Replace the tank. Never weld in place.',
    },
    pumpModule: {
      does: 'A small pump draws air through a known orifice first, then on canister and tank, and compares the two.',
      fails: 'Weak or stuck pump, filter choked.',
      shows: 'No reference reached; always passes or always fails.',
      checked: 'Commanded run with all phases logged; an orifice of known size in place of the car’s.',
      limits: {
        text: 'Both references agree to about 10 %; a sound tank passes beyond the reference.',
        mark: 'common',
      },
      repair: 'Replace the module.',
    },
    changeoverValve: {
      does: 'Turns the pump from orifice to tank; at rest it is the open vent.',
      fails: 'Sticks, or lets gas pass beside the orifice.',
      shows: 'Reference and tank trace are one and the same.',
      checked: 'Commanded run: the trace must change when it turns.',
      limits: { text: 'Reference and tank phases differ in a sound car.', mark: 'common' },
      repair: 'Replace the module.',
    },
    referenceOrifice: {
      does: 'The known hole that the tank is compared with, often 0.5 mm (from memory).',
      fails: 'Dirty: it passes less, so the reference stands too high.',
      shows: 'A sound tank fails.',
      checked: 'Compare the reference with that of a sound car or with an external orifice.',
      limits: { text: 'Reference about 1 to 4 kPa (4 to 16 inH2O).', mark: 'memory' },
      repair: 'Replace the module.',
    },
    isolationValve: {
      does: 'Keeps a sealed tank shut; opens for refuelling on request and for tests.',
      fails: 'Stuck shut: the tank cannot be relieved or filled. Leaks: the tank never holds.',
      shows: 'Filler door stays locked; tank pressure always near zero.',
      checked: 'Ask for refuelling and log the decay; watch the hold over night.',
      limits: { text: 'Tank below 1 kPa about 20 s after the request; holds when shut.', mark: 'common' },
      repair: 'Replace the valve.',
    },
    manifoldCheckValve: {
      does: 'Lets purge flow go to the intake at low load and shuts when boost would push back.',
      fails: 'Fitted the wrong way round, torn, stuck.',
      shows: 'Boost in canister and tank: pressure rises with the vent shut.',
      checked: 'Flow one way only; log the tank’s pressure under boost.',
      limits: { text: 'Flow one way; no boost at the tank.', mark: 'common' },
      repair: 'Replace; mind the arrow.',
    },
    ejectorCheckValve: {
      does: 'Opens towards the ejector under boost, shuts at low load.',
      fails: 'Stuck shut, leaks back, hose off.',
      shows: 'No purge under boost; a small air leak at idle.',
      checked: 'Flow one way only; purge pulses must show in the tank under boost.',
      limits: { text: 'Flow one way.', mark: 'common' },
      repair: 'Replace; mind the arrow.',
    },
    ejector: {
      does: 'Boost air blows through a nozzle and sucks vapour along while the intake itself is under pressure.',
      fails: 'Nozzle cracked, feed hose off.',
      shows: 'No purge under boost.',
      checked: 'Road log under steady boost: the tank must fall gently with the vent shut.',
      limits: { text: 'Some 2 to 10 kPa of suction under boost.', mark: 'memory' },
      repair: 'Replace ejector or hose.',
    },
    crossover: {
      does: 'Joins the gas of the two lobes, so that both are at one pressure.',
      fails: 'Blocked or kinked.',
      shows: 'Fills to a half; lobes that disagree.',
      checked: 'Compare both levels while filling.',
      repair: 'Clear or replace; usually tank down.',
    },
    transferPump: {
      does: 'A jet of returning fuel lifts fuel from the passive lobe to the one with the pump.',
      fails: 'Jet blocked, line off.',
      shows: 'Stalls with fuel left; levels of the lobes drift apart.',
      checked: 'Compare both senders over a drive.',
      limits: { text: 'Lobes within 5 to 15 % of each other.', mark: 'memory' },
      repair: 'Replace the unit.',
    },
  },
  cautions: {
    vapour:
      'Fuel vapour burns and sinks: moving air, no ignition source, extinguisher in reach. Liquid fuel is a fire hazard first.',
    noShopAir: 'Never shop air or oxygen into a fuel system: vapour can become explosive. Regulated inert gas only.',
    pressure:
      'Usual ceiling 3.5 kPa (14 inH2O) unless the car’s information says less (common practice); fit a relief.',
    vacuum: 'No more than 2.5 to 3 kPa (10 to 12 inH2O) of vacuum, slowly: plastic tanks buckle (judgement).',
    openSlowly: 'Open the filler slowly and wait until the hiss stops.',
    sealedTank:
      'This tank may stand at up to 40 kPa (from memory): release it through the car’s refuelling request before any line is opened.',
    loweringTank:
      'Drain first; support the tank; two people; leftover fuel shifts. Closed, approved container, bonded.',
    hotParts: 'Hot engine and exhaust: let them cool; unplug what could start by itself.',
    poweringValves:
      'Power valves with a tool or fused leads, battery end last, no spark near the vent; not for long, they heat.',
    selfTest: 'The module may test by itself up to hours after key-off: keep hands away from what moves.',
    carbonDust: 'Carbon dust: mask, wet sweep, no blow gun. Carbon full of petrol is fuel.',
    highVoltage: 'Isolate high voltage as the car’s information says before work under the rear.',
    noHotWork: 'No hot work on tank or neck, empty or not.',
  },
};
