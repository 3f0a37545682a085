/** T01 to T38 in English. Figures in the words are common practice, no source, unless another mark stands beside. */
import type { CheckText } from './text.ts';

const text = (name: string, steps: readonly string[], note: string): CheckText => ({ name, steps, note });

export const CHECKS_EN: Readonly<Record<string, CheckText>> = {
  T01: text(
    'Read codes, freeze frame and readiness',
    [
      'Connect the reader with the ignition on. Do not erase anything.',
      'Write down stored, pending and permanent codes, the freeze frame and which monitors are ready.',
      'Choose what the codes speak for: a circuit, flow, or a leak.',
    ],
    'A code family is broad and its size grade coarse; erasing loses the freeze frame.',
  ),
  T02: text(
    'Ask the customer',
    [
      'Ask when fuel was last added, whether the cap was off or the engine running, and whether the tank is topped off.',
      'Ask for tank, pump or body work, for a new cap, and whether the lamp follows the weather.',
      'Choose what stands out.',
    ],
    'Memory is patchy, but a clear yes says much.',
  ),
  T03: text(
    'Look at cap and neck',
    [
      'Note how tight the cap sits before touching it.',
      'Open it slowly; look at the seal all round, at the sealing land of the neck and for rust below it.',
      'Photograph what you find; put the cap back as found.',
    ],
    'Only what can be seen; rust hides under the shield.',
  ),
  T04: text(
    'Test the cap on a bench tester',
    [
      'Fit the cap to the tester with the adapter for its pattern.',
      'Run the tester’s cap test (official programmes test at 30 inH2O for up to 15 s).',
      'Repeat once with the cap re-seated.',
    ],
    'The wrong adapter looks like a leaking cap.',
  ),
  T05: text(
    'Known good cap, flow measured again',
    [
      'With the flow rig still connected, note the size measured with the car’s own cap.',
      'Fit a cap of the correct pattern that is known to seal.',
      'Measure again at the same pressure and enter both sizes.',
    ],
    'Does not see a bad sealing land of the neck.',
  ),
  T06: text(
    'Look at vent inlet and canister',
    [
      'Lift the car.',
      'Look into the vent inlet for dust, webs, mud or water; look at the canister for cracks, wet spots and black dust.',
      'Photograph what you find.',
    ],
    'A blockage inside is not seen.',
  ),
  T07: text(
    'Tank pressure sensor at atmosphere',
    [
      'Open the cap slowly and leave it off; the vent valve must be open (ignition on, engine off, no self-test running).',
      'Wait ten seconds, then read the tank pressure.',
      'Enter it with its unit and sign.',
    ],
    'Finds a wrong zero, not a wrong slope or a blocked port.',
  ),
  T08: text(
    'Tank pressure sensor at two pressures',
    [
      'Connect hand pump and reference gauge to the sensor’s port or the sealed system.',
      'Apply about 5 inH2O; note gauge and sensor. Then about 10 inH2O (or −10 inH2O), note both.',
      'Let the pressure off and see that the sensor returns. Stay inside the sensor’s range.',
    ],
    'Finds slope and hysteresis; the gauge must be right.',
  ),
  T09: text(
    'Level and temperature sensors plausible',
    [
      'After a soak of eight hours compare coolant, intake air, fuel and ambient temperature: within 3 to 5 K.',
      'Watch the fuel level for five minutes of driving or add a measured 5 L.',
      'Choose whether they are plausible.',
    ],
    'A dead spot of the level sender needs a drive.',
  ),
  T10: text(
    'Coil resistance of purge and vent valve',
    [
      'Unplug each valve with the ignition off.',
      'Measure across its two pins; note the temperature of the valve (ambient after a soak).',
      'Enter both resistances and the temperature; an open coil is entered as the meter shows it: OL.',
    ],
    'Blind to dirt and worn seats.',
  ),
  T11: text(
    'Circuits under load, wiggled',
    [
      'Put a lamp load in place of each valve and command it.',
      'Measure the drop on ground (below 0.1 V) and on supply.',
      'Move harness and plugs for two minutes each while watching.',
    ],
    'What comes and goes may not show.',
  ),
  T12: text(
    'Purge valve holds vacuum, unpowered',
    [
      'Engine off, valve unplugged. Take the hose off on the engine side.',
      'Pull 10 to 15 inHg with the hand pump on the valve and stop pumping.',
      'Read again after 30 seconds and enter both readings as vacuum (negative).',
    ],
    'A seat that leaks only when hot is missed: repeat warm if the complaint is.',
  ),
  T13: text(
    'Suction at the purge hose at idle',
    [
      'Warm engine at idle; unplug the purge valve so that the module cannot open it.',
      'Take the hose off on the canister side and hold a finger or paper to the valve.',
      'Choose whether there is suction.',
    ],
    'Hot and moving parts; with the valve plugged in the module may purge.',
  ),
  T14: text(
    'Clamp the purge hose after filling',
    [
      'The symptom must be there now, after filling.',
      'Pinch the purge hose with a soft clamp.',
      'Choose whether the engine runs well with the hose clamped.',
    ],
    'A clamp cracks an old hose; without the symptom it says nothing.',
  ),
  T15: text(
    'Command purge, watch trim and pressure',
    [
      'Warm engine in closed loop. Command the purge valve in steps.',
      'Watch short and long trim and the tank pressure for a minute.',
      'Choose what moved.',
    ],
    'An empty canister leans the mixture; that is not a fault.',
  ),
  T16: text(
    'Vent valve seals and opens',
    [
      'Command the vent valve shut; apply 5 to 10 inH2O on the canister side and watch for one minute (less than 0.5 inH2O lost).',
      'Release the command: air must pass freely.',
      'Do not hold the valve for more than two minutes.',
    ],
    'Make sure that the valve is really energised: feel or hear it click.',
  ),
  T17: text(
    'Fill with the vent hose off the canister',
    [
      'Outdoors, level below 70 %, container and car bonded.',
      'Fill some litres as usual and note the click-offs; then take the vent hose off the canister and fill again.',
      'Choose what changed. Put the hose back.',
    ],
    'Vapour is released: outdoors only, no ignition source near.',
  ),
  T18: text(
    'Flow through the vent path',
    [
      'Vent valve open. Send 10 L/min of air or inert gas through the vent path from the canister side, tank disconnected.',
      'Read the pressure that it takes.',
      'Enter flow and pressure drop.',
    ],
    'Wet carbon can pass a low flow.',
  ),
  T19: text(
    'Whole system holds pressure',
    [
      'Seal the system: adapter at the filler or service port, vent valve shut, purge valve unplugged.',
      'Bring it to 10 to 14 inH2O with inert gas and let it settle for three minutes.',
      'Note pressure, wait, note it again. Enter both, the time and the vapour volume.',
      'Note fuel and ambient temperature and the fuel level as well: the proof compares them with those after the repair.',
    ],
    'Drifting temperature is the usual false call.',
  ),
  T20: text(
    'Flow into the whole system',
    [
      'Zero the rig against a blank and note what still flows.',
      'Connect it, vent valve shut, purge valve unplugged; inert gas at 10 to 14 inH2O.',
      'Wait until the flow is steady; enter flow, pressure and the blank’s flow.',
      'Note fuel and ambient temperature and the fuel level as well: the proof compares them with those after the repair.',
    ],
    'Does not depend on the volume; leaks of the adapter count.',
  ),
  T21: text(
    'Split the system in three',
    [
      'Clamp or plug so that only the purge side is fed; measure.',
      'The same for canister and vent, and for tank and neck.',
      'Enter the three sizes, and the whole if it was measured: areas must add up.',
      'Note fuel and ambient temperature and the fuel level as well: the proof compares them with those after the repair.',
    ],
    'Only as good as the clamps: sections that flow more than the whole tell on them.',
  ),
  T22: text(
    'The same flow at two fuel levels',
    [
      'Measure the flow at about a quarter of a tank.',
      'Add fuel to about three quarters, let it settle, measure again at the same temperature.',
      'Enter both sizes.',
    ],
    'Liquid covers holes; cooling confounds. Not before the split.',
  ),
  T23: text(
    'Smoke under pressure',
    [
      'Both valves proven to seal. Feed smoke with inert gas at 10 to 14 inH2O or less.',
      'Still air, strong lamp; look at filler, hoses, valves, canister, lines, tank top.',
      'Choose where smoke came out; photograph it.',
    ],
    'At 0.010 in it shows only about every second leak.',
  ),
  T24: text(
    'Leak under vacuum',
    [
      'Pull the sealed system slowly to −8 inH2O, not beyond −10 inH2O.',
      'Listen and trace with smoke outside at cap, purge and vent valve.',
      'Choose where it is drawn in.',
    ],
    'Shows seats that pressure pushes shut.',
  ),
  T25: text(
    'Ultraviolet tracer, looked at next day',
    [
      'Feed the tracer as with smoke.',
      'Leave the car overnight.',
      'Look with the lamp in the dark and choose where it glows.',
    ],
    'Old dye gives false sites.',
  ),
  T26: text(
    'Sweep with a hydrocarbon meter',
    [
      'Still air; let the meter settle away from the car.',
      'Sweep slowly at filler, hoses, canister and tank top from below.',
      'Choose where it rises and stays.',
    ],
    'The canister’s own breath and old spills mislead.',
  ),
  T27: text(
    'Listen with ultrasound',
    ['Bring the system to 10 to 14 inH2O with inert gas.', 'Sweep with the listener.', 'Choose where it is loudest.'],
    'Low pressure makes little sound; from 1 mm (0.040 in) upward.',
  ),
  T28: text(
    'Soap solution on reachable joints',
    [
      'Bring the system to 10 to 14 inH2O with inert gas.',
      'Wet every joint that can be reached.',
      'Choose where bubbles grow.',
    ],
    'Cannot reach the tank top.',
  ),
  T29: text(
    'Weigh the canister',
    [
      'Take the canister out, ports plugged; tilt it and listen for liquid, look for black dust.',
      'Weigh it.',
      'Enter the weight and the dry weight (from the part or a new one).',
    ],
    'The dry weight is often not known.',
  ),
  T30: text(
    'Log a filling',
    [
      'Log tank pressure and vent command while filling, where the site’s rules allow it.',
      'Note pressure peak and click-offs.',
      'Choose which side holds back.',
    ],
    'The car’s data must stay awake while filling.',
  ),
  T31: text(
    'Command the car’s own leak test',
    [
      'See that level, temperature and battery allow the test.',
      'Command it and record the tank pressure from before to after.',
      'Choose how it ended; the recording can be added to the job.',
    ],
    'The same boundary as the car uses; not offered on every car.',
  ),
  T32: text(
    'Overnight log of natural vacuum',
    [
      'Warm the tank by a drive; park outdoors, seal the system as the car does, start the log.',
      'Leave it overnight.',
      'Choose whether pressure or vacuum stood away from zero.',
    ],
    'The weather can void it.',
  ),
  T33: text(
    'Run the pump module',
    [
      'Command the module’s run.',
      'Note the reference, the tank’s end value and the reference again.',
      'Enter the three.',
    ],
    'The ratio takes out barometer and battery.',
  ),
  T34: text(
    'Sealed tank: hold and release',
    [
      'Log the tank overnight through a swing of at least 5 K.',
      'Request refuelling and log how the pressure falls.',
      'Choose what it did.',
    ],
    'High voltage and tank pressure: follow the vehicle’s information.',
  ),
  T35: text(
    'Log a drive under boost',
    [
      'Two people. Warm engine, safe road.',
      'Steady boost for 5 to 10 s with the vent shut by the test.',
      'Choose what the tank did.',
    ],
    'Traffic limits how steady it can be.',
  ),
  T36: text(
    'Is the fuel volatile for the season?',
    [
      'Ask where and when fuel was bought; read the ethanol share where the car gives it.',
      'Compare with the weather.',
      'Choose.',
    ],
    'Indirect.',
  ),
  T37: text(
    'The same flow again after the repair',
    [
      'Same rig, same pressure, within 3 K of the first measurement.',
      'Zero against the blank again.',
      'Enter flow, pressure and the blank’s flow.',
      'Note fuel and ambient temperature and the fuel level again.',
    ],
    'The same rig takes out its own bias.',
  ),
  R01: text(
    'Record a deeper draw',
    [
      'Command the draw with a deeper target (about −2.4 kPa), vent valve shut; not beyond what the vehicle allows.',
      'Hold for a minute, then open the vent; record all of it.',
      'Add the recording to the job: the finding takes it in.',
    ],
    'More pressure tells a leak from vapour and a weak purge better.',
  ),
  R02: text(
    'Record the test at another fuel level',
    [
      'Bring the level to about four fifths.',
      'Let it settle, then run the same test and record it.',
      'Add the recording to the job.',
    ],
    'Parts a size from a wrong vapour volume.',
  ),
  R03: text(
    'Record a longer hold',
    [
      'Run the same test, but hold for four minutes.',
      'Open the vent and record the release too.',
      'Add the recording to the job.',
    ],
    'Parts small leaks from rising vapour.',
  ),
  R04: text(
    'Record a hold with the vapour line clamped',
    [
      'Draw down as usual, then pinch the vapour line near the tank with a soft clamp.',
      'Hold for a minute and a half, open the vent, take the clamp off; record all of it.',
      'Add the recording to the job with a note on the clamp.',
    ],
    'Parts the tank side from the canister side; an old line may crack under a clamp.',
  ),
  T38: text(
    'Drive and soak until the self-test has run',
    [
      'Bring about the conditions that the car needs.',
      'Drive and park as its information says.',
      'Read the monitor’s state and result.',
    ],
    'The only proof that an inspector accepts.',
  ),
};
