import { GENERAL_CAUTION_DE, SEALED_TANK_CAUTION_DE, STANDING_CAUTIONS_DE } from '../../report/cautions-de.ts';
import {
  CAUSE_WORDS_DE,
  CODE_STATUS_DE,
  COMPLAINT_WORDS_DE,
  certaintyInGerman,
  LAYOUT_NAMES_DE,
  PHASE_WORDS_DE,
  PLACE_WORDS_DE,
  PROCEDURE_WORDS_DE,
} from '../../report/words-de.ts';
import type { TRADE_EN } from './trade.en.ts';

export const TRADE_DE: typeof TRADE_EN = {
  causes: Object.fromEntries(
    Object.entries(CAUSE_WORDS_DE).map(([id, { name }]) => [id, name]),
  ) as typeof TRADE_EN.causes,
  places: PLACE_WORDS_DE,
  layouts: {
    'engine-vacuum': {
      name: LAYOUT_NAMES_DE['engine-vacuum'],
      words:
        'Der laufende Motor zieht bei geschlossenem Belüftungsventil über das Tankentlüftungsventil Unterdruck, dann wird beobachtet, ob er hält. Die häufigste Bauart.',
    },
    'engine-off': {
      name: LAYOUT_NAMES_DE['engine-off'],
      words:
        'Nach der Fahrt schließt das Belüftungsventil, und der abkühlende Tank erzeugt selbst einen kleinen Unterdruck; bleibt er aus, ist ein Leck da. Prüft bei abgezogenem Schlüssel.',
    },
    'pump-reference': {
      name: LAYOUT_NAMES_DE['pump-reference'],
      words:
        'Eine kleine elektrische Pumpe am Belüftungsanschluss saugt erst durch eine Messblende, dann am Tank, und vergleicht beides. Stunden nach der Fahrt.',
    },
    'sealed-tank': {
      name: LAYOUT_NAMES_DE['sealed-tank'],
      words:
        'Ein Absperrventil hält den Tank geschlossen, er darf unter Druck stehen und öffnet zum Tanken auf Anforderung. Üblich bei Plug-in-Hybriden.',
    },
    'saddle-tank': {
      name: LAYOUT_NAMES_DE['saddle-tank'],
      words:
        'Zwei Kammern über der Gelenkwelle, unten durch eine Saugstrahlpumpe, oben durch eine Entlüftung verbunden. Sonst wie Unterdruck vom Motor.',
    },
    'two-path-purge': {
      name: LAYOUT_NAMES_DE['two-path-purge'],
      words:
        'Aufgeladener Motor: Im Leerlauf saugt das Saugrohr, bei Ladedruck eine Strahlpumpe, dazwischen Rückschlagventile. Sonst wie Unterdruck vom Motor.',
    },
  },
  complaints: COMPLAINT_WORDS_DE,
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
  phases: PHASE_WORDS_DE,
  procedures: PROCEDURE_WORDS_DE,
  verdicts: {
    fault: 'Fehler gefunden',
    'no-fault-seen': 'kein Fehler zu sehen',
    'cannot-tell': 'noch nicht zu sagen',
  },
  codeStatus: CODE_STATUS_DE,
  strengths: {
    weak: 'schwacher Hinweis',
    clear: 'spricht deutlich',
    strong: 'so gut wie ein Beweis',
  },
  cautions: { general: GENERAL_CAUTION_DE, sealedTank: SEALED_TANK_CAUTION_DE, standing: [...STANDING_CAUTIONS_DE] },
  cautionsShow: 'Alle Vorsichtshinweise vor Arbeiten am Fahrzeug',
  certainty: certaintyInGerman,
};
