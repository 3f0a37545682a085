import { CHECKS_PAGE_DE } from './checks.de.ts';
import { DRAWING_DE } from './drawing.de.ts';
import type { Text } from './en.ts';
import { FIELDS_DE } from './fields.de.ts';
import { FINDING_DE } from './finding.de.ts';
import { JOB_DE } from './job.de.ts';
import { LIVE_DE } from './live.de.ts';
import { MONITOR_DE } from './monitor.de.ts';
import { RECORDING_DE } from './recording.de.ts';
import { serverSaidInGerman } from './server-said.de.ts';
import { SHOP_DE } from './shop.de.ts';
import { TRADE_DE } from './trade.de.ts';

export const DE: Text = {
  common: {
    under: 'unter',
    over: 'über',
    to: 'bis',
    and: 'und',
    notKnown: 'nicht bekannt',
    cancel: 'Abbrechen',
    close: 'Schließen',
    save: 'Speichern',
    add: 'Hinzufügen',
    remove: 'Entfernen',
    change: 'Ändern',
    done: 'Fertig',
    tryAgain: 'Noch einmal',
    loading: 'Wird geladen …',
    fromMemory: 'aus dem Gedächtnis',
    interval90: '90-%-Intervall',
    optional: 'falls bekannt',
    caution: 'Vorsicht',
    download: 'Herunterladen',
  },
  app: {
    name: 'Vaporwright',
    skip: 'Zum Blatt springen',
    navigation: 'Seiten',
    jobs: 'Aufträge',
    system: 'System',
    settings: 'Einstellungen',
    display: 'Einheiten und Anzeige',
    signIn: 'Anmelden',
    signOut: 'Abmelden',
    signedInAs: (name) => `Angemeldet als ${name}`,
    unknownPage: 'Unter dieser Adresse gibt es nichts',
    unknownPageWords: 'Der Verweis ist vielleicht alt, oder ein Buchstabe fehlt.',
    toJobs: 'Zur Liste der Aufträge',
    pageFailed: 'Diese Seite ließ sich nicht aufbauen',
    pageFailedWords:
      'Ihre Eingaben liegen auf dem Server. Laden Sie die Seite neu; tritt es wieder auf, heben Sie die Worte unten auf.',
    reload: 'Neu laden',
  },
  display: {
    title: 'Einheiten und Anzeige',
    words: 'Gilt auf diesem Gerät, auf allen Seiten zugleich.',
    pressure: 'Druck',
    length: 'Lochdurchmesser',
    temperature: 'Temperatur',
    volume: 'Volumen',
    language: 'Sprache',
    theme: 'Erscheinung',
    themes: { system: 'wie das System', light: 'hell', dark: 'dunkel' },
  },
  connection: {
    away: 'Keine Verbindung zum Server.',
    awayWords:
      'Was schon geöffnet war, lässt sich lesen. Ihre Änderungen bleiben auf diesem Gerät und gehen ab, sobald der Server wieder da ist.',
    awayShort: 'Lesen geht; für Neues wird der Server gebraucht.',
    back: 'Der Server ist wieder da.',
    cannotReach:
      'Der Server ist nicht zu erreichen. Läuft das Programm? Änderungen brauchen ihn; schon geöffnete Aufträge lassen sich lesen.',
    notKept: 'Das war auf diesem Gerät noch nicht geöffnet und lässt sich nur mit dem Server lesen.',
  },
  errors: {
    title: 'Das ging nicht',
    where: (file, line, column) =>
      [file, line === undefined ? '' : `Zeile ${line}`, column === undefined ? '' : `Spalte ${column}`]
        .filter((part) => part !== '')
        .join(', '),
    found: (what) => `Gefunden: ${what}`,
    expected: (what) => `Erwartet: ${what}`,
    signIn: 'Bitte anmelden.',
    said: serverSaidInGerman,
    codes: {
      'bad-request': 'Der Server konnte das so nicht annehmen.',
      'sign-in': 'Melden Sie sich an, um weiterzumachen.',
      'wrong-password': 'Name oder Passwort ist falsch.',
      'not-allowed': 'Ihre Rolle erlaubt das nicht.',
      'wrong-origin': 'Die Anfrage kam von einer Adresse, auf die dieser Server nicht antwortet.',
      'stale-page': 'Diese Seite ist veraltet. Laden Sie sie neu.',
      'not-found': 'Das gibt es nicht oder nicht mehr.',
      'changed-meanwhile': 'Jemand anderes hat diesen Auftrag inzwischen geändert.',
      'not-possible': 'Noch nicht möglich.',
      'too-large': 'Die Datei ist zu groß.',
      'not-a-recording': 'Das ist keine Aufzeichnung: gebraucht wird eine CSV-Datei, auch mit gzip gepackt.',
      unreadable: 'Die Datei lässt sich nicht lesen.',
      'too-many': 'Zu viele Versuche. Warten Sie ein wenig.',
      internal: 'Der Server ist daran gescheitert. Nichts wurde geändert.',
      'no-room': 'Der Datenträger des Servers ist voll. Nichts wurde geändert.',
      'store-away': 'Die Ablage der Aufträge antwortet nicht. Nichts wurde geändert.',
    },
  },
  jobs: {
    title: 'Aufträge',
    count: (count) => (count === 1 ? '1 Auftrag' : `${count} Aufträge`),
    search: 'Suchen',
    searchHint: 'Nummer, Fahrzeug, Kennzeichen, Worte, Code',
    waitsFor: 'Wartet auf',
    any: 'alles',
    closed: 'Abgeschlossene zeigen',
    newJob: 'Neuer Auftrag',
    importJob: 'Auftragsdatei einlesen',
    backup: 'Sicherung anlegen',
    drop: 'Legen Sie eine Aufzeichnung irgendwo hier ab, um damit einen Auftrag zu beginnen.',
    chooseRecording: 'Mit einer Aufzeichnung beginnen',
    empty: 'Noch keine Aufträge',
    emptyWords:
      'Beginnen Sie mit der Beanstandung oder mit einer Aufzeichnung: Fahrzeug und alles Weitere können folgen.',
    none: 'Kein Auftrag passt zu dieser Suche.',
    more: 'Mehr zeigen',
    demo: 'Demo',
    demoWords: (count) =>
      count === 1 ? 'Einer davon ist ein erfundener Demo-Auftrag.' : `${count} davon sind erfundene Demo-Aufträge.`,
    removeDemo: 'Demo entfernen',
    demoRemoved: (count) =>
      count === 1 ? 'Ein Demo-Auftrag wurde entfernt.' : `${count} Demo-Aufträge wurden entfernt.`,
    number: (number) => `Auftrag ${number}`,
    columns: {
      job: 'Auftrag',
      car: 'Fahrzeug',
      complaint: 'Beanstandung',
      finding: 'Befund',
      waitsFor: 'Wartet auf',
      changed: 'Geändert',
    },
    noFinding: 'noch keiner',
    isClosed: 'abgeschlossen',
    noCar: 'Fahrzeug ohne Namen',
    dialog: {
      title: 'Neuer Auftrag',
      words: 'Alles lässt sich später ausfüllen. Eingabetaste speichert.',
      car: 'So nennen Sie das Fahrzeug',
      carHint: 'zum Beispiel: grauer Kombi, Bühne 2',
      registration: 'Kennzeichen',
      complaint: 'In den Worten des Kunden',
      codes: 'Fehlercodes',
      codesHint: 'mit Leerzeichen dazwischen: P0456 P0442',
      kinds: 'Art der Beanstandung',
      create: 'Auftrag öffnen',
    },
    backupMade: 'Die Sicherung liegt bei den Downloads des Browsers.',
  },
  causes: TRADE_DE.causes,
  trade: TRADE_DE,
  job: JOB_DE,
  shop: SHOP_DE,
  recording: RECORDING_DE,
  monitor: MONITOR_DE,
  live: LIVE_DE,
  fields: FIELDS_DE,
  finding: FINDING_DE,
  checks: CHECKS_PAGE_DE,
  drawing: DRAWING_DE,
};
