import type { MonitorName } from '../../recording/bus/monitor-status.ts';
import { LEAST_RATIO_SMALL_LEAK } from '../in-use-ratio.ts';
import { EVAP_ONLY_RULE, FEDERAL_RULE } from '../inspection-rules.ts';
import type { InspectionWords } from './readiness-words.ts';

const MONITORS_DE: Readonly<Record<MonitorName, string>> = {
  misfire: 'Verbrennungsaussetzer',
  'fuel system': 'Gemischbildung',
  components: 'Bauteile',
  catalyst: 'Katalysator',
  'heated catalyst': 'beheizter Katalysator',
  'evaporative system': 'Tankentlüftung',
  'secondary air': 'Sekundärluft',
  'later filter': 'Partikelfilter',
  'oxygen sensor': 'Lambdasonde',
  'oxygen sensor heater': 'Heizung der Lambdasonde',
  'recirculation or valve timing': 'Abgasrückführung oder Ventilsteuerung',
};

const TESTS_DE: Readonly<Record<number, string>> = {
  57: 'Leck, Deckel ab oder 3,8 mm (0,150 in)',
  58: 'Leck, 2,3 mm (0,090 in)',
  59: 'Leck, 1,0 mm (0,040 in)',
  60: 'Leck, 0,5 mm (0,020 in)',
  61: 'Spülstrom',
};

const RULES_DE: Readonly<Record<string, { readonly name: string; readonly source: string }>> = {
  [FEDERAL_RULE.id]: {
    name: 'USA, Prüfung der On-Board-Diagnose nach Bundesrecht',
    source:
      '40 CFR 85.2207 und 85.2222(c), geändert durch 66 FR 18156; zugelassene Zahl, wie ein Programm eines Bundesstaats sie wiedergibt',
  },
  [EVAP_ONLY_RULE.id]: {
    name: 'Kalifornien, Benzin',
    source:
      '16 CCR 3340.42.2(c) und Seiten von Prüfstellen; zugelassene Zahl sowie 15 Warmläufe und 200 Meilen sind nicht bestätigt',
  },
};

const names = (monitors: readonly MonitorName[]): string => monitors.map((name) => MONITORS_DE[name]).join(', ');
const notRun = (monitors: readonly MonitorName[]): string =>
  `${monitors.length} ${monitors.length === 1 ? 'Eigendiagnose ist' : 'Eigendiagnosen sind'} nicht gelaufen (${names(monitors)})`;

export const INSPECTION_DE: InspectionWords = {
  monitors: MONITORS_DE,
  testMonitor: (id) => TESTS_DE[id],
  verdict: {
    pass: 'würde nach dieser Regel bestehen',
    fail: 'würde nach dieser Regel durchfallen',
    reject: 'würde abgewiesen: Eigendiagnosen sind nicht gelaufen',
    'no-test': 'nach dieser Regel keine Prüfung der On-Board-Diagnose',
    'cannot-tell': 'nicht zu sagen: etwas wurde nicht gelesen',
  },
  reason: (reason) => {
    switch (reason.kind) {
      case 'too-old':
        return `Modelljahr ${reason.modelYear} liegt vor ${reason.firstModelYear}: nach dieser Regel keine Prüfung der On-Board-Diagnose`;
      case 'lamp':
        return reason.codeCount === undefined
          ? 'die Lampe ist angefordert'
          : `die Lampe ist wegen ${reason.codeCount} ${reason.codeCount === 1 ? 'Code' : 'Codes'} angefordert`;
      case 'permanent-waived':
        return `permanent ${reason.codes.join(', ')} zählt nicht mehr: genug Warmläufe und Strecke seit dem Löschen`;
      case 'permanent':
        return `permanent ${reason.codes.join(', ')} ist gespeichert und geht erst, wenn die Eigendiagnose gelaufen und bestanden ist`;
      case 'not-run':
        return `${notRun(reason.monitors)}, erlaubt: ${reason.allowed}`;
      case 'wrong-one-open':
        return `${notRun(reason.monitors)}, offen sein darf nur ${names(reason.only)}`;
      case 'within-allowance':
        return `${names(reason.monitors)} nicht gelaufen, im Rahmen der erlaubten ${reason.allowed}`;
      case 'all-run':
        return 'jede unterstützte Eigendiagnose ist gelaufen';
    }
  },
  gap: (gap) => {
    switch (gap.kind) {
      case 'monitor-status':
        return 'Stand der Eigendiagnosen (Service $01, Wert $01)';
      case 'permanent-codes':
        return 'permanente Codes (Service $0A)';
      case 'counts-since-clear':
        return 'Warmläufe und Strecke seit dem Löschen (Werte $30, $31)';
      case 'spark-ignition':
        return 'Eigendiagnosen eines Fahrzeugs mit Fremdzündung: dieses meldet Selbstzündung';
      case 'allowance':
        return `in der Regel die erlaubte Zahl für Modelljahr ${gap.modelYear}`;
    }
  },
  missing: (what) => `es fehlt: ${what}`,
  ratio: ({ completed, eligible, ratio }, f) =>
    ratio === undefined
      ? `keine Daten: ${completed} abgeschlossen, und noch keine Fahrt, die zählt`
      : `${completed} von ${eligible} Fahrten, die zählen: ${f.number(ratio, 3)} (verlangt sind ${f.number(LEAST_RATIO_SMALL_LEAK, 3)} für die Prüfung auf 0,5 mm (0,020 in), aus dem Gedächtnis); auch gesunde Fahrzeuge prüfen nicht bei jeder Fahrt`,
  counted: {
    EVAP: 'Tankentlüftung',
    CAT1: 'Katalysator, Bank 1',
    CAT2: 'Katalysator, Bank 2',
    O2S1: 'Lambdasonde, Bank 1',
    O2S2: 'Lambdasonde, Bank 2',
    SO2S1: 'zweite Lambdasonde, Bank 1',
    SO2S2: 'zweite Lambdasonde, Bank 2',
    EGR: 'Abgasrückführung oder Ventilsteuerung',
    AIR: 'Sekundärluft',
  },
  noData: 'keine Daten',
  rule: ({ id, name, source, mark }) =>
    mark === 'given by the user' ? { name, source } : (RULES_DE[id] ?? { name, source }),
  ruleMark: {
    confirmed: 'bestätigt',
    'secondary source': 'aus zweiter Hand',
    'from memory': 'aus dem Gedächtnis',
    'given by the user': 'von der Werkstatt angegeben',
  },
  ruleLine: (name, asOf, mark, source) => `${name}, Stand ${asOf.split('-').reverse().join('.')} (${mark}: ${source})`,
  slip: {
    confirmed: 'Bestätigte Codes',
    pending: 'Vorläufige Codes',
    permanent: 'Permanente Codes',
    lamp: 'Lampe',
    run: 'Gelaufene Eigendiagnosen',
    notRun: 'Nicht gelaufene Eigendiagnosen',
    warmUps: 'Warmläufe seit dem Löschen',
    distance: 'Strecke seit dem Löschen',
    time: 'Motorlaufzeit seit dem Löschen',
    distanceWithLamp: 'Strecke mit leuchtender Lampe',
    timeWithLamp: 'Motorlaufzeit mit leuchtender Lampe',
    thisDrive: 'Tankentlüftung, in diesem Fahrzyklus',
    inUse: 'Tankentlüftung im Betrieb geprüft',
    rule: 'Regel',
    byRule: 'Nach dieser Regel',
  },
  notRead: 'nicht gelesen',
  none: 'keine',
  orMore: (count) => `${count} oder mehr`,
  lampOn: 'angefordert',
  lampOff: 'nicht angefordert',
  thisDrive: { run: 'gelaufen', 'not-run': 'nicht gelaufen', 'not-enabled': 'nicht freigegeben' },
  caution:
    'Nur übliche Werte und Regeln. Die Herstellerunterlagen des Fahrzeugs und die Prüfregeln des Ortes, an dem es zugelassen ist, gehen vor, wo sie abweichen: sehen Sie dort nach, bevor Sie sich darauf verlassen.',
};
