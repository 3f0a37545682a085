import type { TRADE_EN } from './trade.en.ts';

export const TRADE_DE: typeof TRADE_EN = {
  causes: {
    none: 'kein Fehler zu sehen',
    leak: 'Leck ins Freie',
    gross_leak: 'große Öffnung (Deckel oder Schlauch ab)',
    purge_leak: 'Regenerierventil schließt nicht dicht',
    purge_stuck_closed: 'Regenerierventil öffnet nicht',
    purge_stuck_open: 'Regenerierventil klemmt offen',
    vent_leak: 'Belüftungsventil dichtet nicht',
    vent_stuck_closed: 'Belüftungsventil klemmt geschlossen',
    vent_restricted: 'Belüftungsweg verengt',
    path_blocked: 'Dampfweg aus dem Tank verstopft',
    fill_valve_stuck_open: 'Füllbegrenzungsventil klemmt offen',
    sensor_bias: 'Tankdrucksensor: Nullpunkt verschoben',
    sensor_gain: 'Tankdrucksensor: Kennlinie falsch',
    sensor_stuck: 'Tankdrucksensor hängt',
    sensor_noisy: 'Tankdrucksensor rauscht',
    canister_saturated: 'Aktivkohlebehälter voll Kraftstoffdampf',
    pump_weak: 'Leckprüfpumpe zu schwach',
    pump_dead: 'Leckprüfpumpe läuft nicht',
    orifice_dirty: 'Referenzblende verschmutzt',
    changeover_leak: 'Umschaltventil undicht',
    changeover_stuck: 'Umschaltventil schaltet nicht',
    isolation_leak: 'Tankabsperrventil undicht',
    isolation_stuck_shut: 'Tankabsperrventil öffnet nicht',
  },
  places: {
    'cap and neck': 'Tankdeckel und Einfüllstutzen',
    'tank top': 'Tankoberseite',
    'vapour line': 'Dampfleitung',
    canister: 'Aktivkohlebehälter',
    'vent side': 'Belüftungsseite',
    'purge line': 'Regenerierleitung',
    'purge valve': 'Regenerierventil',
    'vent valve': 'Belüftungsventil',
    'tank to canister': 'Tank bis Aktivkohlebehälter',
    'fill-limit valve': 'Füllbegrenzungsventil',
    'pressure sensor': 'Drucksensor',
    'pump module': 'Pumpenmodul',
    'isolation valve': 'Absperrventil',
  },
  layouts: {
    'engine-vacuum': {
      name: 'Unterdruck vom Motor',
      words:
        'Der laufende Motor zieht bei geschlossenem Belüftungsventil über das Regenerierventil Unterdruck, dann wird beobachtet, ob er hält. Die häufigste Bauart.',
    },
    'engine-off': {
      name: 'Unterdruck bei stehendem Motor',
      words:
        'Nach der Fahrt schließt das Belüftungsventil, und der abkühlende Tank erzeugt selbst einen kleinen Unterdruck; bleibt er aus, ist ein Leck da. Prüft bei abgezogenem Schlüssel.',
    },
    'pump-reference': {
      name: 'Pumpe mit Referenzblende',
      words:
        'Eine kleine elektrische Pumpe am Belüftungsanschluss saugt erst durch eine Messblende, dann am Tank, und vergleicht beides. Stunden nach der Fahrt.',
    },
    'sealed-tank': {
      name: 'Abgeschlossener Drucktank',
      words:
        'Ein Absperrventil hält den Tank geschlossen, er darf unter Druck stehen und öffnet zum Tanken auf Anforderung. Üblich bei Plug-in-Hybriden.',
    },
    'saddle-tank': {
      name: 'Satteltank',
      words:
        'Zwei Kammern über der Gelenkwelle, unten durch eine Saugstrahlpumpe, oben durch eine Entlüftung verbunden. Sonst wie Unterdruck vom Motor.',
    },
    'two-path-purge': {
      name: 'Zwei Regenerierwege',
      words:
        'Aufgeladener Motor: Im Leerlauf saugt das Saugrohr, bei Ladedruck eine Strahlpumpe, dazwischen Rückschlagventile. Sonst wie Unterdruck vom Motor.',
    },
  },
  complaints: {
    'slow fill': 'Zapfpistole schaltet ab, tankt langsam',
    'rough after fill': 'Läuft rau oder startet schlecht nach dem Tanken',
    smell: 'Kraftstoffgeruch',
    'not ready': 'Prüfbereitschaft Tankentlüftung nicht gesetzt',
    'hiss or collapse': 'Tank zischt stark, beult ein oder macht Geräusche',
  },
  waitsFor: {
    complaint: 'Beanstandung',
    car: 'Fahrzeug',
    recording: 'Aufzeichnung',
    finding: 'Befund',
    check: 'nächste Prüfung',
    repair: 'Reparatur',
    proof: 'Nachweis',
    'hand-over': 'Übergabe',
    nothing: 'nichts mehr',
  },
  phases: {
    baseline: 'vorher',
    draw: 'Absaugen',
    settle: 'Beruhigen',
    hold: 'Halten',
    release: 'Belüften',
    sealed: 'geschlossen',
    vented: 'belüftet',
    purge: 'Regenerieren',
    idle: 'ohne Regenerieren',
    filling: 'Tanken',
    filled: 'Abschalten',
    reference: 'Referenz',
    'tank-pump': 'Pumpe am Tank',
    rest: 'Sonstiges',
  },
  procedures: {
    'vacuum-draw': 'Leckselbsttest bei laufendem Motor (Absaugen)',
    'engine-off': 'Unterdrucktest bei stehendem Motor',
    'purge-drive': 'Fahrt mit Regenerierung',
    refuelling: 'Tanken',
    'pump-run': 'Pumpentest mit Referenzblende',
    'sealed-hold': 'Halten des abgeschlossenen Tanks',
    unknown: 'Ablauf nicht erkannt',
  },
  verdicts: {
    fault: 'Fehler gefunden',
    'no-fault-seen': 'kein Fehler zu sehen',
    'cannot-tell': 'noch nicht zu sagen',
  },
  codeStatus: { stored: 'gespeichert', pending: 'vorläufig', permanent: 'permanent' },
  strengths: {
    weak: 'schwacher Hinweis',
    clear: 'spricht deutlich',
    strong: 'so gut wie ein Beweis',
  },
  cautions: {
    general:
      'Nur übliche Werte. Die Herstellerunterlagen dieses Fahrzeugs, die Regeln Ihres Betriebs und das Brandschutz-, Umwelt- und Straßenverkehrsrecht an Ihrem Ort gehen überall vor, wo sie von diesem Blatt abweichen; Arbeiten, die einen Befähigungsnachweis verlangen, gehören in die Hände derer, die ihn haben.',
    sealedTank:
      'Dieses Fahrzeug hat einen abgeschlossenen Tank, der unter Druck stehen darf: vor dem Öffnen einer Leitung über die Betankungsanforderung des Fahrzeugs entlasten und die Hochvoltanlage nach Herstellerangabe freischalten.',
    standing: [
      'Tritt flüssiger Kraftstoff aus oder riecht es stark nach Kraftstoff: aufhören, lüften, Zündquellen fernhalten. Das ist zuerst eine Brandgefahr und erst dann ein Abgasfehler.',
      'Tankverschluss langsam öffnen und das Zischen abwarten, bevor eine Leitung gelöst wird. Heiße Abgasanlage abkühlen lassen.',
      'Niemals Druckluft aus der Werkstatt oder Sauerstoff in die Kraftstoffanlage geben: Tankdampf kann explosionsfähig werden. Geregeltes Inertgas und dafür gebautes Gerät verwenden.',
      'Prüfdruck und Unterdruck, die das Fahrzeug nennt, nicht überschreiten; 3,5 kPa (14 inH₂O) gelten als übliche Obergrenze (übliche Praxis, ohne Quelle), Kunststofftanks beulen schon bei weniger Unterdruck ein.',
      'In bewegter Luft arbeiten, geeigneten Feuerlöscher in Reichweite, Handschuhe und Augenschutz. Tank vor dem Absenken entleeren und abstützen; zu zweit.',
    ],
  },
  cautionsShow: 'Alle Vorsichtshinweise vor Arbeiten am Fahrzeug',
  certainty: (probability) => {
    if (probability >= 0.95) return 'so gut wie sicher';
    if (probability >= 0.8) return 'sehr wahrscheinlich';
    if (probability >= 0.6) return 'wahrscheinlich';
    if (probability >= 0.4) return 'etwa so wahrscheinlich wie nicht';
    if (probability >= 0.15) return 'möglich';
    if (probability >= 0.03) return 'unwahrscheinlich';
    return 'sehr unwahrscheinlich';
  },
};
