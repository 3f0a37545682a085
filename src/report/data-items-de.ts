/** Datenwerte der Norm (SAE J1979) auf Deutsch, nach ihrem englischen Namen in `recording/bus/data-items.ts`. */
const DATA_ITEMS_DE: Readonly<Record<string, string>> = {
  'fuel system status': 'Zustand der Gemischregelung',
  'calculated load': 'berechnete Last',
  'coolant temperature': 'Kühlmitteltemperatur',
  'short-term fuel trim, bank 1': 'Gemischkorrektur, kurzfristig, Bank 1',
  'long-term fuel trim, bank 1': 'Gemischkorrektur, langfristig, Bank 1',
  'manifold pressure, absolute': 'Saugrohrdruck, absolut',
  'engine speed': 'Motordrehzahl',
  'vehicle speed': 'Geschwindigkeit',
  'intake air temperature': 'Ansauglufttemperatur',
  'air mass flow': 'Luftmassenstrom',
  throttle: 'Drosselklappe',
  'run time since start': 'Laufzeit seit dem Start',
  'distance with the lamp on': 'Strecke mit leuchtender Lampe',
  'commanded purge': 'angeforderte Spülung',
  'fuel level': 'Füllstand',
  'warm-ups since codes were cleared': 'Warmläufe seit dem Löschen der Codes',
  'distance since codes were cleared': 'Strecke seit dem Löschen der Codes',
  'tank pressure, gauge': 'Tankdruck gegen Umgebung',
  'barometric pressure': 'Luftdruck',
  'catalyst temperature, bank 1, sensor 1': 'Katalysatortemperatur, Bank 1, Sensor 1',
  'module voltage': 'Spannung am Steuergerät',
  'commanded air-fuel equivalence ratio': 'angefordertes Luftverhältnis',
  'ambient temperature': 'Außentemperatur',
  'run time with the lamp on': 'Laufzeit mit leuchtender Lampe',
  'run time since codes were cleared': 'Laufzeit seit dem Löschen der Codes',
  'ethanol in the fuel': 'Ethanol im Kraftstoff',
  'tank pressure, absolute': 'Tankdruck, absolut',
  'tank pressure, gauge, wide range': 'Tankdruck gegen Umgebung, weiter Bereich',
};

/** Was jemand selbst eintrug, bleibt stehen. */
export const dataItemInGerman = (name: string): string => DATA_ITEMS_DE[name] ?? name;
