/** Deutsche Namen. */
import { saysNothing } from '../../words.ts';
import type { Names } from './words.ts';

function certainty(probability: number): string {
  if (probability >= 0.95) return 'fast sicher';
  if (probability >= 0.8) return 'sehr wahrscheinlich';
  if (probability >= 0.6) return 'wahrscheinlich';
  if (probability >= 0.4) return 'so gut möglich wie nicht';
  if (probability >= 0.15) return 'möglich';
  if (probability >= 0.03) return 'unwahrscheinlich';
  return 'sehr unwahrscheinlich';
}

function evidence(logEvidence: number): string {
  if (saysNothing(logEvidence)) return 'sagt nichts dazu';
  const side = logEvidence > 0 ? 'dafür' : 'dagegen';
  const strength = Math.abs(logEvidence);
  return strength < 2 ? `schwach ${side}` : strength < 5 ? `deutlich ${side}` : `stark ${side}`;
}

export const NAMES_DE: Names = {
  numbers: { decimalSign: ',', to: 'bis', under: 'unter', over: 'über' },
  or: 'oder',
  and: 'und',
  causes: {
    none: { name: 'kein Fehler zu sehen', plain: 'nichts, was diese Aufzeichnung zeigen könnte, ist fehlerhaft' },
    leak: {
      name: 'Leck ins Freie',
      plain: 'ein kleines Loch oder eine schlechte Dichtung im Kraftstoffdampf-System',
    },
    gross_leak: {
      name: 'große Öffnung (Deckel oder Schlauch ab)',
      plain: 'eine große Öffnung im Kraftstoffdampf-System, etwa ein fehlender Deckel oder ein abgegangener Schlauch',
    },
    purge_leak: {
      name: 'Spülventil undicht, wenn geschlossen',
      plain: 'das Ventil, das Kraftstoffdampf zum Motor leitet, schließt nicht ganz',
    },
    purge_stuck_closed: {
      name: 'Spülventil öffnet nicht',
      plain: 'das Ventil, das Kraftstoffdampf zum Motor leitet, öffnet nicht',
    },
    purge_stuck_open: {
      name: 'Spülventil bleibt offen',
      plain: 'das Ventil, das Kraftstoffdampf zum Motor leitet, bleibt offen',
    },
    vent_leak: {
      name: 'Belüftungsventil dichtet nicht',
      plain: 'das Ventil, das das Kraftstoffdampf-System für den Selbsttest verschließen soll, dichtet nicht',
    },
    vent_stuck_closed: {
      name: 'Belüftungsventil bleibt zu',
      plain: 'das Frischluftventil des Kraftstoffdampf-Systems bleibt geschlossen',
    },
    vent_restricted: {
      name: 'Belüftungsweg verengt',
      plain: 'der Frischluftweg des Kraftstoffdampf-Systems ist teilweise verstopft',
    },
    path_blocked: {
      name: 'Dampfweg vom Tank verschlossen',
      plain: 'der Weg, auf dem Dampf den Tank verlässt, ist verschlossen',
    },
    fill_valve_stuck_open: {
      name: 'Füllbegrenzungsventil bleibt offen',
      plain: 'das Ventil im Tank, das das Betanken beendet, bleibt offen',
    },
    sensor_bias: {
      name: 'Tankdrucksensor: Nullpunkt verschoben',
      plain: 'der Tankdrucksensor zeigt um einen festen Betrag falsch an',
    },
    sensor_gain: {
      name: 'Tankdrucksensor: Empfindlichkeit falsch',
      plain: 'der Tankdrucksensor zeigt zu viel oder zu wenig an',
    },
    sensor_stuck: { name: 'Tankdrucksensor steht still', plain: 'der Tankdrucksensor bewegt sich nicht' },
    sensor_noisy: {
      name: 'Tankdrucksensor unruhig',
      plain: 'der Tankdrucksensor oder seine Leitung liefert ein unruhiges Signal',
    },
    canister_saturated: {
      name: 'Aktivkohlefilter voll Kraftstoffdampf',
      plain: 'der Aktivkohlefilter enthält mehr Kraftstoffdampf, als er sollte',
    },
    pump_weak: {
      name: 'Leckprüfpumpe schwach',
      plain: 'die kleine Pumpe, die das System auf Lecks prüft, ist zu schwach',
    },
    pump_dead: {
      name: 'Leckprüfpumpe läuft nicht',
      plain: 'die kleine Pumpe, die das System auf Lecks prüft, läuft nicht',
    },
    orifice_dirty: {
      name: 'Vergleichsblende verschmutzt',
      plain: 'die Messblende der Leckprüfpumpe ist teilweise verstopft, ihr Vergleich stimmt nicht',
    },
    changeover_leak: {
      name: 'Umschaltventil undicht',
      plain: 'das Ventil, das die Leckprüfpumpe auf den Tank schaltet, dichtet nicht',
    },
    changeover_stuck: {
      name: 'Umschaltventil bewegt sich nicht',
      plain: 'das Ventil, das die Leckprüfpumpe auf den Tank schaltet, bewegt sich nicht',
    },
    isolation_leak: {
      name: 'Tankabsperrventil undicht',
      plain: 'das Ventil, das den Tank verschlossen hält, dichtet nicht',
    },
    isolation_stuck_shut: {
      name: 'Tankabsperrventil öffnet nicht',
      plain: 'das Ventil, das den Tank verschlossen hält, öffnet nicht',
    },
  },
  places: {
    'cap and neck': 'Deckel und Einfüllstutzen',
    'tank top': 'Tankoberseite',
    'vapour line': 'Dampfleitung',
    canister: 'Aktivkohlefilter',
    'vent side': 'Belüftungsseite',
    'purge line': 'Spülleitung',
    'purge valve': 'Spülventil',
    'vent valve': 'Belüftungsventil',
    'tank to canister': 'zwischen Tank und Filter',
    'fill-limit valve': 'Füllbegrenzungsventil',
    'pressure sensor': 'Drucksensor',
    'pump module': 'Pumpenmodul',
    'isolation valve': 'Tankabsperrventil',
  },
  phases: {
    baseline: 'davor',
    draw: 'Absaugen',
    settle: 'Beruhigen',
    hold: 'Halten',
    release: 'Belüften',
    sealed: 'verschlossen',
    vented: 'belüftet',
    purge: 'Spülen',
    idle: 'ohne Spülen',
    filling: 'Betanken',
    filled: 'abgeschaltet',
    reference: 'Vergleich',
    'tank-pump': 'Pumpe am Tank',
    rest: 'Sonstiges',
  },
  procedures: {
    'vacuum-draw': 'Leck-Selbsttest bei laufendem Motor (Unterdruck)',
    'engine-off': 'Unterdrucktest bei stehendem Motor',
    'purge-drive': 'Fahrt mit Spülen',
    refuelling: 'Betanken',
    'pump-run': 'Pumpentest mit Vergleichsblende',
    'sealed-hold': 'Haltetest des verschlossenen Tanks',
    unknown: 'Ablauf nicht erkannt',
  },
  layouts: {
    'engine-vacuum': 'Absaugen mit Motorunterdruck',
    'engine-off': 'natürlicher Unterdruck bei stehendem Motor',
    'pump-reference': 'Pumpe mit Vergleichsblende',
    'sealed-tank': 'verschlossener Tank',
    'saddle-tank': 'Satteltank',
    'two-path-purge': 'Spülen auf zwei Wegen (aufgeladener Motor)',
  },
  complaints: {
    'slow fill': 'Tanken geht langsam, Zapfpistole schaltet ab',
    'rough after fill': 'springt nach dem Tanken schlecht an oder läuft unrund',
    smell: 'Kraftstoffgeruch',
    'not ready': 'Selbsttest nicht gelaufen',
    'hiss or collapse': 'Tank zischt oder zieht sich zusammen',
  },
  codeStatus: { stored: 'gespeichert', pending: 'vorläufig', permanent: 'permanent' },
  strength: { weak: 'schwach', clear: 'deutlich', strong: 'stark' },
  filler: { capped: 'mit Deckel', capless: 'ohne Deckel (Klappe)' },
  codeMeanings: {
    P0440: 'Kraftstoffdampf-System: Fehler, nicht näher bestimmt',
    P0441: 'Spülfluss nicht wie erwartet',
    P0442: 'kleines Leck im Selbsttest',
    P0443: 'Spülventil, Stromkreis',
    P0446: 'Belüftung nicht wie erwartet',
    P0449: 'Belüftungsventil, Stromkreis',
    P0451: 'Tankdrucksensor: Wert unglaubwürdig',
    P0452: 'Tankdrucksensor: Signal zu niedrig',
    P0453: 'Tankdrucksensor: Signal zu hoch',
    P0454: 'Tankdrucksensor: Signal setzt aus',
    P0455: 'großes Leck im Selbsttest',
    P0456: 'sehr kleines Leck im Selbsttest',
    P0457: 'Leck, Tankdeckel lose oder ab',
    P0461: 'Füllstandsensor: Wert unglaubwürdig',
    P0496: 'Spülfluss, wo keiner sein sollte',
    P0497: 'Spülfluss zu gering',
    P0498: 'Belüftungsventil: Stromkreis niedrig',
    P0499: 'Belüftungsventil: Stromkreis hoch',
    P2422: 'Belüftungsventil bleibt geschlossen',
    P2450: 'Umschaltventil: Leistung oder bleibt offen',
    P2451: 'Umschaltventil: bleibt geschlossen',
  },
  otherCode: 'siehe Herstellerunterlagen',
  certainty,
  evidence,
};
