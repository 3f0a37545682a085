/**
 * What the server's errors say in English, in German: what was found, what was expected, what to do. A sentence of another
 * shape stays as it is, so nothing is ever lost; a test holds the rows to every sentence that the server's source has.
 */
import { recordingSaidInGerman } from '../../report/recording-said-de.ts';
import { type SaidRow, sayWith } from './said.ts';

const PARTS: Readonly<Record<string, string>> = {
  body: 'Der Inhalt der Anfrage',
  querystring: 'Die Adresse der Anfrage',
  params: 'Die Adresse der Anfrage',
  headers: 'Der Kopf der Anfrage',
};
const ROLES: Readonly<Record<string, string>> = { owner: 'Inhaber', technician: 'Techniker', reader: 'Leser' };
const THINGS: Readonly<Record<string, string>> = {
  'recording of that kind': 'keine solche Aufzeichnung',
  'file of that kind': 'keine solche Datei',
  'hand-over document of that kind': 'kein solches Übergabe-Dokument',
  'link of that kind': 'keinen solchen Link',
  'work of that kind': 'keine solche Arbeit',
};
const FILES: Readonly<Record<string, string>> = { 'The file': 'Die Datei' };
const wait = (time: string): string =>
  time
    .replace(/\bminutes?\b/, 'min')
    .replace(/\bseconds?\b/, 's')
    .replace(/\bhours?\b/, 'h');

/** Requests, sessions, roles, links. */
const ACCESS: readonly SaidRow[] = [
  [/^Too many tries\.$/, () => 'Zu viele Versuche.'],
  [/^Too many tries for this name\.$/, () => 'Zu viele Versuche mit diesem Namen.'],
  [/^Wait (.+), then try again\.$/, (_, time) => `Warten Sie ${wait(time)}, dann versuchen Sie es noch einmal.`],
  [
    /^The (\S+) does not fit what is expected here\.$/,
    (_, part) => `${PARTS[part] ?? `Der Teil „${part}“ der Anfrage`} passt nicht zu dem, was hier erwartet wird.`,
  ],
  [
    /^The formats are described at (\S+)\.(?: (\d+) more to put right after this one\.)?$/,
    (_, where, more) =>
      `Die Formate stehen unter ${where}.${more === '' ? '' : ` Danach sind noch ${more} Stellen zu berichtigen.`}`,
  ],
  [
    /^The form of the request is not one that is understood here\.$/,
    () => 'Die Form der Anfrage wird hier nicht verstanden.',
  ],
  [/^application\/json, or multipart\/form-data for files$/, () => 'application/json, bei Dateien multipart/form-data'],
  [/^This request names another host than this server\.$/, () => 'Die Anfrage nennt einen anderen Rechner.'],
  [/^no Host header$/, () => 'keine Zeile „Host“'],
  [
    /^localhost or the address that the server printed$/,
    () => 'localhost oder die Adresse, die der Server genannt hat',
  ],
  [
    /^Open the address that the server printed when it started\.$/,
    () => 'Öffnen Sie die Adresse, die der Server beim Start genannt hat.',
  ],
  [
    /^This request comes from the page of another program or site\.$/,
    () => 'Die Anfrage kommt von der Seite eines anderen Programms.',
  ],
  [/^a page of this server$/, () => 'eine Seite dieses Servers'],
  [/^This page is older than its session\.$/, () => 'Die Seite ist älter als ihre Sitzung.'],
  [/^the token of GET \/session in the header (.+)$/, (_, name) => `das Zeichen von GET /session im Kopf ${name}`],
  [/^Load the page again\.$/, () => 'Laden Sie die Seite neu.'],
  [/^This link has been used or is too old\.$/, () => 'Der Link ist verbraucht oder zu alt.'],
  [
    /^While there is no account, the server prints a new link each time it starts\.$/,
    () => 'Solange es kein Konto gibt, nennt der Server bei jedem Start einen neuen Link.',
  ],
  [/^There is an account named "(.+)" already\.$/, (_, name) => `Ein Konto namens „${name}“ gibt es schon.`],
  [/^Take another name\.$/, () => 'Nehmen Sie einen anderen Namen.'],
  [
    /^This is the last active owner: it stays an active owner until there is another one\.$/,
    () => 'Das ist der letzte aktive Inhaber: Er bleibt es, bis es einen anderen gibt.',
  ],
  [
    /^There are accounts already: the first one has been made\.$/,
    () => 'Es gibt schon Konten: Das erste ist angelegt.',
  ],
  [/^Make somebody else an owner first\.$/, () => 'Machen Sie zuerst jemand anderen zum Inhaber.'],
  [
    /^The first account must be an owner’s: somebody has to be able to add others\.$/,
    () => 'Das erste Konto muss das eines Inhabers sein: Jemand muss weitere anlegen können.',
  ],
  [/^There is no such account\.$/, () => 'Ein solches Konto gibt es nicht.'],
  [/^Nobody is signed in here\.$/, () => 'Hier ist niemand angemeldet.'],
  [/^Sign in, then do it again\.$/, () => 'Melden Sie sich an, dann tun Sie es noch einmal.'],
  [
    /^This needs the role "(.+)"; yours is "(.+)"\.$/,
    (_, needs, has) => `Dafür braucht es die Rolle „${ROLES[needs] ?? needs}“; Ihre ist „${ROLES[has] ?? has}“.`,
  ],
  [/^Ask the owner of this workbench\.$/, () => 'Fragen Sie den Inhaber.'],
  [/^Name or password is wrong\.$/, () => 'Name oder Kennwort ist falsch.'],
  [/^Check both, also capital letters\.$/, () => 'Prüfen Sie beide, auch Groß- und Kleinbuchstaben.'],
  [/^This link does not open anything \(any more\)\.$/, () => 'Dieser Link öffnet nichts (mehr).'],
  [/^Ask the shop for a new one\.$/, () => 'Bitten Sie die Werkstatt um einen neuen.'],
];

/** Jobs, their parts, work on them. */
const JOBS: readonly SaidRow[] = [
  [/^There is no job (.+)\.$/, () => 'Diesen Auftrag gibt es nicht.'],
  [/^There is no (.+) here\.$/, (_, thing) => `Hier gibt es ${THINGS[thing] ?? `nichts unter ${thing}`}.`],
  [
    /^It may have been removed; go back to the list\.$/,
    () => 'Vielleicht wurde es entfernt; gehen Sie zurück zur Liste.',
  ],
  [
    /^Job (.+) has changed since it was opened \(it is now at version (.+)\)\.$/,
    (_, number, version) => `Auftrag ${number} hat sich geändert, seit er geöffnet wurde (jetzt Fassung ${version}).`,
  ],
  [
    /^Look at what stands now, then make the change again where it is still wanted\.$/,
    () => 'Sehen Sie nach, was jetzt dort steht, und ändern Sie es noch einmal, wo es noch nötig ist.',
  ],
  [
    /^Job (.+) has no change left that could be taken back\.$/,
    (_, number) => `In Auftrag ${number} gibt es nichts mehr zurückzunehmen.`,
  ],
  [/^Everything stands as it was first written\.$/, () => 'Alles steht, wie es zuerst geschrieben wurde.'],
  [/^Nothing is known of the car yet\.$/, () => 'Über das Fahrzeug ist noch nichts bekannt.'],
  [/^at least the layout of its vapour system$/, () => 'wenigstens die Bauart der Tankentlüftung'],
  [/^Fill in the part "car" first\.$/, () => 'Füllen Sie zuerst den Teil „Fahrzeug“ aus.'],
  [
    /^There is no recording to make a finding from\.$/,
    () => 'Es gibt keine Aufzeichnung, aus der ein Befund werden könnte.',
  ],
  [
    /^Drop a recording on the sheet, or mark one of those there for use in the finding\.$/,
    () => 'Ziehen Sie eine Aufzeichnung auf das Blatt, oder lassen Sie eine der vorhandenen für den Befund zählen.',
  ],
  [/^There is enough work waiting for this job already\.$/, () => 'Für diesen Auftrag wartet schon genug Arbeit.'],
  [/^Wait for it, or cancel some of it\.$/, () => 'Warten Sie ab, oder brechen Sie etwas davon ab.'],
  [
    /^(.+): there is no such entry in this job\.$/,
    (_, place) => `${place}: Einen solchen Eintrag hat dieser Auftrag nicht.`,
  ],
  [/^an entry that was added by sending its file$/, () => 'ein Eintrag, der mit seiner Datei kam'],
  [/^Send the file to (.+)\.$/, (_, where) => `Senden Sie die Datei an ${where}.`],
  [
    /^(.+): "(.+)" came with the file and cannot be changed\.$/,
    (_, place, what) => `${place}: „${what}“ kam mit der Datei und lässt sich nicht ändern.`,
  ],
  [/^(.+): an entry stands there twice\.$/, (_, place) => `${place}: Ein Eintrag steht dort zweimal.`],
  [/^(.+) has no pressure of the vapour system$/, (_, label) => `${label} enthält keinen Druck der Tankentlüftung`],
  [/^columns (.+)$/, (_, columns) => `die Spalten ${columns}`],
  [
    /^a column with the pressure of tank, canister or pump module, or sensor volts and a car with the sensor’s range$/,
    () =>
      'eine Spalte mit dem Druck von Tank, Aktivkohlebehälter oder Pumpe, oder die Sensorspannung und beim Fahrzeug der Messbereich des Sensors',
  ],
  [
    /^Say in its mapping which column holds the pressure, or leave this recording out of the finding\.$/,
    () => 'Sagen Sie in ihrer Zuordnung, welche Spalte den Druck enthält, oder lassen Sie sie für den Befund weg.',
  ],
];

/** Files that are sent: recordings, photos, jobs, backups. */
const SENT: readonly SaidRow[] = [
  [/^This needs more memory than this machine gives\.$/, () => 'Dafür reicht der Speicher dieses Rechners nicht.'],
  [/^Cut the recording to the event in question\.$/, () => 'Kürzen Sie die Aufzeichnung auf das Ereignis.'],
  [/^That is larger than what is taken in here\.$/, () => 'Das ist größer, als hier aufgenommen wird.'],
  [
    /^(.+) is larger than what is taken in here\.$/,
    (_, file) => `${FILES[file] ?? file} ist größer, als hier aufgenommen wird.`,
  ],
  [/^at most (.+)$/, (_, most) => `höchstens ${most}`],
  [
    /^Cut the recording to the event, or pack it with gzip\.$/,
    () => 'Kürzen Sie die Aufzeichnung auf das Ereignis, oder packen Sie sie mit gzip.',
  ],
  [
    /^Cut it to the event in question, or pack it with gzip\.$/,
    () => 'Kürzen Sie sie auf das Ereignis, oder packen Sie sie mit gzip.',
  ],
  [/^A file is expected here, sent as a form\.$/, () => 'Hier wird eine Datei erwartet, als Formular gesendet.'],
  [/^no content type$/, () => 'keine Angabe der Art'],
  [/^multipart\/form-data with a field "file"$/, () => 'multipart/form-data mit einem Feld „file“'],
  [/^There is no file in this request\.$/, () => 'In dieser Anfrage ist keine Datei.'],
  [/^a field "file" with the file$/, () => 'ein Feld „file“ mit der Datei'],
  [/^Choose a file and send it again\.$/, () => 'Wählen Sie eine Datei und senden Sie noch einmal.'],
  [
    /^(.+) is no recording that can be read here\.$/,
    (_, file) => `${file} ist keine Aufzeichnung, die sich lesen lässt.`,
  ],
  [
    /^a recording as CSV text, plain or packed with gzip$/,
    () => 'eine Aufzeichnung als CSV-Text, auch mit gzip gepackt',
  ],
  [
    /^Export the recording as CSV from the program that made it, and send that\.$/,
    () => 'Geben Sie die Aufzeichnung aus dem Programm, das sie gemacht hat, als CSV aus, und senden Sie diese.',
  ],
  [/^A field beside the file does not fit\.$/, () => 'Ein Feld neben der Datei passt nicht.'],
  [
    /^The mapping that came with the file does not fit its format\.$/,
    () => 'Die Zuordnung, die mit der Datei kam, hat nicht die erwartete Form.',
  ],
  [/^(.+) cannot be read as a recording$/, (_, file) => `${file} lässt sich nicht als Aufzeichnung lesen`],
  [/^(.+) \(column "(.+)"\)$/, (_, found, column) => `${serverSaidInGerman(found)} (Spalte „${column}“)`],
  [
    /^(.+) is a damaged or incomplete gzip file$/,
    (_, file) => `${file} ist eine beschädigte oder unvollständige gzip-Datei`,
  ],
  // Words of the unpacking library.
  [/^unexpected end of file$/, () => 'Ende der Datei mitten im Inhalt'],
  [/^incorrect (?:header|data|length) check$/, () => 'Inhalt, der nicht zu seiner Prüfsumme passt'],
  [/^invalid .+$/, () => 'Inhalt, der sich nicht entpacken lässt'],
  [/^a complete gzip file$/, () => 'eine vollständige gzip-Datei'],
  [
    /^Copy the file again, or unpack it and read the plain CSV\.$/,
    () => 'Kopieren Sie die Datei noch einmal, oder entpacken Sie sie und lesen Sie das CSV.',
  ],
  [/^(.+) unfolds to more than can be read$/, (_, file) => `${file} wird entpackt größer, als sich lesen lässt`],
  [/^more than (.+) of text in a packed file$/, (_, size) => `mehr als ${size} Text in einer gepackten Datei`],
  [/^a recording of one event$/, () => 'die Aufzeichnung eines einzelnen Ereignisses'],
  [
    /^Cut the recording to the event and send that\.$/,
    () => 'Kürzen Sie die Aufzeichnung auf das Ereignis und senden Sie diese.',
  ],
  [/^(.+) is a bus capture that holds no recording$/, (_, file) => `${file} ist ein Mitschnitt ohne Aufzeichnung`],
  [
    /^(\S+) diagnostic frames of (\S+), without samples of a channel over time$/,
    (_, some, all) => `${some} Diagnosebotschaften von ${all}, ohne Messwerte über die Zeit`,
  ],
  [
    /^time stamps, and answers to service \$01 with items such as (.+)$/,
    (_, items) => `Zeitstempel und Antworten auf Dienst $01 mit Werten wie ${items}`,
  ],
  [
    /^Record with candump -L while a tester asks for these items, or record with: (.+)$/,
    (_, command) =>
      `Zeichnen Sie mit candump -L auf, während ein Diagnosegerät diese Werte abfragt, oder mit: ${command}`,
  ],
  [/^This file is not JSON\.$/, () => 'Diese Datei ist kein JSON.'],
  [/^a job as it was exported$/, () => 'ein Auftrag, wie er ausgegeben wurde'],
  [
    /^Export the job again, and import that file\.$/,
    () => 'Geben Sie den Auftrag noch einmal aus, und nehmen Sie diese Datei.',
  ],
  [
    /^This is not a job file that this program can read: at "(.*)": (.+?)(?: \(and (\d+) more\))?\.$/,
    (_, where, what, more) =>
      `Das ist keine Auftragsdatei, die dieses Programm lesen kann: bei „${where}“: ${what}${more === '' ? '' : ` (und ${more} weitere)`}.`,
  ],
  [
    /^A raw file in the job file has changed: expected SHA-256 (.+) of (.+) bytes, found (.+) of (.+)\.$/,
    (_, hash, size, other, otherSize) =>
      `Eine Rohdatei in der Auftragsdatei hat sich geändert: erwartet SHA-256 ${hash} mit ${size} Bytes, gefunden ${other} mit ${otherSize}.`,
  ],
  [
    /^Export the job again; a job file is not to be edited by hand where raw files are\.$/,
    () => 'Geben Sie den Auftrag noch einmal aus; wo Rohdateien stehen, darf niemand von Hand ändern.',
  ],
  [
    /^The job file does not hold the raw file of its (.+) \(SHA-256 (.+)\)\.$/,
    (_, what, hash) => `In der Auftragsdatei fehlt eine Rohdatei (${what}, SHA-256 ${hash}).`,
  ],
  [
    /^The backup cannot be used: (.+)\. Nothing was changed\.$/,
    (_, what) => `Die Sicherung lässt sich nicht verwenden: ${what}. Nichts wurde geändert.`,
  ],
  [
    /^Take another backup, or copy this one again from where it was kept\.$/,
    () => 'Nehmen Sie eine andere Sicherung, oder kopieren Sie diese noch einmal.',
  ],
  [
    /^Jobs here already: (\d+); accounts: (\d+)\. Nothing was changed\.$/,
    (_, jobs, accounts) => `Aufträge, die es hier schon gibt: ${jobs}; Konten: ${accounts}. Nichts wurde geändert.`,
  ],
  [
    /^Restore into a new data folder, or confirm that what is here shall be replaced\.$/,
    () => 'Stellen Sie in einem neuen Datenordner wieder her, oder bestätigen Sie, dass ersetzt wird, was hier steht.',
  ],
];

/** Store and disk. */
const STORE: readonly SaidRow[] = [
  [
    /^The program made a mistake; nothing was changed by this request that was not confirmed\.$/,
    () => 'Das Programm hat einen Fehler gemacht; geändert ist nur, was bestätigt wurde.',
  ],
  [
    /^Try again\. If it happens again, report it with what you did; the server has printed the details\.$/,
    () =>
      'Versuchen Sie es noch einmal. Geschieht es wieder, melden Sie es mit dem, was Sie taten; der Server hat Einzelheiten ausgegeben.',
  ],
  [
    /^The disk is full: (.+) failed at (.+)\. Nothing was changed\.$/,
    (_, __, where) => `Die Platte ist voll: ${where}. Nichts wurde geändert.`,
  ],
  [/^Make room on this disk, then do it again\.$/, () => 'Schaffen Sie dort Platz, dann tun Sie es noch einmal.'],
  [
    /^The disk of the database is full\. Nothing was changed\.$/,
    () => 'Die Platte der Datenbank ist voll. Nichts wurde geändert.',
  ],
  [/^Make room on it, then do it again\.$/, () => 'Schaffen Sie dort Platz, dann tun Sie es noch einmal.'],
  [
    /^The disk is read-only: (.+) failed at (.+)\.$/,
    (_, __, where) => `Die Platte lässt sich nicht beschreiben: ${where}.`,
  ],
  [
    /^Choose a folder on a disk that can be written, with --data\.$/,
    () => 'Wählen Sie mit --data einen Ordner, der sich beschreiben lässt.',
  ],
  [/^No permission: (.+) failed at (.+)\.$/, (_, __, where) => `Keine Berechtigung: ${where}.`],
  [
    /^Give this user the right to write there, or choose another folder with --data\.$/,
    () => 'Geben Sie diesem Benutzer dort Schreibrecht, oder wählen Sie mit --data einen anderen Ordner.',
  ],
  [
    /^A folder was expected at (.+), a file was found: (.+) failed\.$/,
    (_, where) => `Bei ${where} wurde ein Ordner erwartet und eine Datei gefunden.`,
  ],
  [/^Choose another folder with --data\.$/, () => 'Wählen Sie mit --data einen anderen Ordner.'],
  [
    /^The setting "(.+)" does not have the expected form: (.+)$/,
    (_, name, what) => `Die Einstellung „${name}“ hat nicht die erwartete Form: ${what}`,
  ],
  [/^Set it again on the settings page\.$/, () => 'Setzen Sie sie auf der Seite Einstellungen neu.'],
  [
    /^A raw file is to be named that has not been kept: (.+)\.$/,
    (_, hash) => `Eine Rohdatei fehlt im Ordner: ${hash}.`,
  ],
  [/^Keep the file first, then name it\.$/, () => 'Legen Sie zuerst die Datei ab.'],
  [
    /^A raw file has changed since it was kept: (.+)$/,
    (_, path) => `Eine Rohdatei hat sich geändert, seit sie abgelegt wurde: ${path}`,
  ],
  [/^A raw file of a job is missing: (.+)$/, (_, path) => `Die Rohdatei eines Auftrags fehlt: ${path}`],
  [
    /^Put it back from a backup; its name is its SHA-256\.$/,
    () => 'Holen Sie sie aus einer Sicherung zurück; ihr Name ist ihr SHA-256.',
  ],
];

/** Recording live. */
const LIVE: readonly SaidRow[] = [
  [
    /^The car is not connected, so nothing was cleared\.$/,
    () => 'Das Fahrzeug ist nicht verbunden, also wurde nichts gelöscht.',
  ],
  [/^the state (.+)$/, (_, state) => `der Stand „${state}“`],
  [
    /^a car that answers, with codes and readiness read$/,
    () => 'ein Fahrzeug, das antwortet, mit gelesenen Codes und Prüfbereitschaft',
  ],
  [/^Wait until it records again\.$/, () => 'Warten Sie, bis wieder aufgezeichnet wird.'],
  [
    /^The car went away; nothing was cleared as far as is known\.$/,
    () => 'Das Fahrzeug ist weg; soweit bekannt, wurde nichts gelöscht.',
  ],
  [
    /^What it had said is in the job\. Read the codes again when it is back\.$/,
    () => 'Was es gesagt hatte, steht im Auftrag. Lesen Sie die Codes noch einmal, wenn es wieder da ist.',
  ],
  [/^A recording of this job is running already\.$/, () => 'Eine Aufzeichnung dieses Auftrags läuft schon.'],
  [/^Stop it first, and keep or discard it\.$/, () => 'Halten Sie sie zuerst an, und behalten oder verwerfen Sie sie.'],
  [/^No recording of this job is running\.$/, () => 'Von diesem Auftrag läuft keine Aufzeichnung.'],
  [
    /^It may have been ended on another page; load this one anew\.$/,
    () => 'Vielleicht wurde sie auf einer anderen Seite beendet; laden Sie diese neu.',
  ],
  [
    /^This recording is being taken in or thrown away already\.$/,
    () => 'Diese Aufzeichnung wird schon übernommen oder verworfen.',
  ],
  [/^(\d+) recordings run already\.$/, (_, count) => `Es laufen schon ${count} Aufzeichnungen.`],
  [/^End one of them first\.$/, () => 'Beenden Sie zuerst eine davon.'],
  [/^That is no address of an adapter\.$/, () => 'Das ist keine Adresse eines Adapters.'],
  [
    /^a serial device such as (.+), a CAN network such as (.+), or (.+)$/,
    (_, serial, can, tcp) =>
      `ein serielles Gerät wie ${serial.replace(' or ', ' oder ')}, ein CAN-Netz wie ${can}, oder ${tcp}`,
  ],
  [
    /^The adapter (.+) is in use by another recording\.$/,
    (_, address) => `Der Adapter ${address} wird von einer anderen Aufzeichnung benutzt.`,
  ],
  [
    /^End that one first, or use another adapter\.$/,
    () => 'Beenden Sie zuerst jene, oder nehmen Sie einen anderen Adapter.',
  ],
  [
    /^A car of this layout cannot have this fault\.$/,
    () => 'Ein Fahrzeug dieser Bauart kann diesen Fehler nicht haben.',
  ],
  [/^No codes have been read yet\.$/, () => 'Es wurden noch keine Codes gelesen.'],
];

/** Readers of recordings. */
const READERS: readonly SaidRow[] = [
  [/^no text$/, () => 'kein Text'],
  [/^an empty file$/, () => 'eine leere Datei'],
  [/^a gzip file that was not unpacked$/, () => 'eine gzip-Datei, die nicht entpackt wurde'],
  [/^a zip archive or spreadsheet workbook$/, () => 'ein zip-Archiv oder eine Tabellen-Arbeitsmappe'],
  [/^a PDF document$/, () => 'ein PDF-Dokument'],
  [/^a JSON file$/, () => 'eine JSON-Datei'],
  [/^an XML or HTML document$/, () => 'ein XML- oder HTML-Dokument'],
  [/^binary data \(a zero byte\)$/, () => 'Binärdaten (ein Nullbyte)'],
  [/^binary data \(control characters\)$/, () => 'Binärdaten (Steuerzeichen)'],
  [
    /^a table of numbers with a time column and at least one more, cells parted by comma, semicolon, tab or \|$/,
    () =>
      'eine Zahlentabelle mit einer Zeitspalte und wenigstens einer weiteren, die Zellen durch Komma, Semikolon, Tabulator oder | getrennt',
  ],
  [
    /^Check that this is the recording, exported as CSV with a header line$/,
    () => 'Prüfen Sie, ob das die Aufzeichnung ist, als CSV mit Kopfzeile ausgegeben',
  ],
  [/^"(.+)" with no header above it$/, (_, cells) => `„${cells}“ ohne Kopfzeile darüber`],
  [/^a header line that names the (.+) columns$/, (_, count) => `eine Kopfzeile, die die ${count} Spalten nennt`],
  [
    /^Add a header line, or give a mapping with "headerLine": 0, .+$/,
    () =>
      'Fügen Sie eine Kopfzeile ein, oder geben Sie eine Zuordnung mit "headerLine": 0, in der die Spalten "column 1", "column 2" und so weiter heißen',
  ],
  [/^the columns (.+)$/, (_, names) => `die Spalten ${names}`],
  [/^a column "(.+)", which the mapping names$/, (_, name) => `eine Spalte „${name}“, die die Zuordnung nennt`],
  [
    /^Correct the column in the mapping, or use the mapping that belongs to this file$/,
    () => 'Berichtigen Sie die Spalte in der Zuordnung, oder nehmen Sie die Zuordnung, die zu dieser Datei gehört',
  ],
  [
    /^one that holds the time: numbers that rise, clock times or date-times, under a header such as time_s$/,
    () => 'eine mit der Zeit: steigende Zahlen, Uhrzeiten oder Datum mit Uhrzeit, unter einer Überschrift wie time_s',
  ],
  [
    /^Add a time column, or name it under "time" in a mapping file$/,
    () => 'Fügen Sie eine Zeitspalte ein, oder nennen Sie sie unter "time" in einer Zuordnung',
  ],
  [
    /^the channel (.+) twice in the mapping$/,
    (_, channel) => `den Kanal „${recordingSaidInGerman(channel)}“ zweimal in der Zuordnung`,
  ],
  [/^one column for each channel$/, () => 'eine Spalte je Kanal'],
  [/^Set the channel of the others to null$/, () => 'Lassen Sie die anderen in der Zuordnung weg'],
  [
    /^at least one channel of a vapour system recording, as tank pressure$/,
    () => 'wenigstens ein Kanal einer Tankentlüftung, etwa der Tankdruck',
  ],
  [/^Name the columns in a mapping file$/, () => 'Nennen Sie die Spalten in einer Zuordnung'],
  [/^a text table with a header line and a time column$/, () => 'eine Tabelle als Text mit Kopfzeile und Zeitspalte'],
  [/^Export the recording as CSV and read that$/, () => 'Geben Sie die Aufzeichnung als CSV aus, und lesen Sie diese'],
  [/^cells with both quotes or none$/, () => 'Zellen mit beiden Anführungszeichen oder keinem'],
  [
    /^Correct the quotes in that line or the ones after it$/,
    () => 'Berichtigen Sie die Anführungszeichen in dieser Zeile oder danach',
  ],
  [
    /^a quote that is not closed within (.+) characters$/,
    (_, count) =>
      `ein Anführungszeichen, das innerhalb von ${count.replace('million', 'Millionen')} Zeichen nicht schließt`,
  ],
  [
    /^"(.*)", which (.+) \((\d+) such lines of (\d+)\)$/,
    (_, line, reason, some, all) => `„${line}“: Die Zeile ${recordingSaidInGerman(reason)} (${some} solche von ${all})`,
  ],
  [/^lines shaped like the header$/, () => 'Zeilen, die aussehen wie die Kopfzeile'],
  [
    /^If the file has decimal commas and commas between cells, export it again with semicolons$/,
    () => 'Hat die Datei Dezimalkommas und Kommas zwischen den Zellen, geben Sie sie mit Semikolons neu aus',
  ],
  [
    /^Check the file, or give delimiter, header line and time column in a mapping file$/,
    () => 'Prüfen Sie die Datei, oder sagen Sie Trennzeichen, Kopfzeile und Zeitspalte in einer Zuordnung',
  ],
  [/^(\d+) readable samples? in (\d+) lines?$/, (_, some, all) => `lesbare Messwerte: ${some}, Zeilen: ${all}`],
  [/^at least 2 samples$/, () => 'wenigstens 2 Messwerte'],
  [/^Check that this is the whole recording$/, () => 'Prüfen Sie, ob das die ganze Aufzeichnung ist'],
  [
    /^a time that goes back from (.+) s to (.+) s and stays back$/,
    (_, from, to) => `eine Zeit, die von ${from} s auf ${to} s zurückgeht und dort bleibt`,
  ],
  [/^one recording whose time rises$/, () => 'eine einzige Aufzeichnung, deren Zeit steigt'],
  [
    /^Part the file there into one file for each recording$/,
    () => 'Teilen Sie die Datei dort in eine Datei je Aufzeichnung',
  ],
  [/^"(.*)" \((\d+) such cells of (\d+)\)$/, (_, cell, some, all) => `„${cell}“ (${some} solche Zellen von ${all})`],
  [
    /^a number with "(.)" as decimal mark, an on\/off word, or nothing$/,
    (_, mark) => `eine Zahl mit „${mark}“ als Dezimalzeichen, ein Wort für an oder aus, oder nichts`,
  ],
  [
    /^Give decimal mark and columns in a mapping file, or set this column to null there$/,
    () => 'Nennen Sie Dezimalzeichen und Spalten in einer Zuordnung, oder lassen Sie diese Spalte dort weg',
  ],
  [/^an absolute pressure and no barometric pressure$/, () => 'einen absoluten Druck und keinen Luftdruck'],
  [
    /^a barometric pressure to subtract, as the sensors read pressure against ambient$/,
    () => 'ein Luftdruck zum Abziehen, da gegen die Umgebung gemessen wird',
  ],
  [
    /^Record the barometric pressure too, or give it as "barometricAbsPa" in a mapping file$/,
    () => 'Zeichnen Sie auch den Luftdruck auf, oder nennen Sie ihn in der Zuordnung',
  ],
];

const ROWS: readonly SaidRow[] = [...ACCESS, ...JOBS, ...SENT, ...STORE, ...LIVE, ...READERS];

/** A sentence of the server in German; what only the recording room says, too. */
export function serverSaidInGerman(sentence: string): string {
  const said = sayWith(ROWS, sentence);
  return said === sentence ? recordingSaidInGerman(sentence) : said;
}
