/** What the growing finding and the line to the car say in English sentences, in German. */
import { CAUSES, type CauseId } from '../../diagnosis/finding.ts';
import { type SaidRow, sayWith } from './said.ts';
import { TRADE_DE } from './trade.de.ts';

const comma = (text: string): string => text.replace(/(\d)\.(\d)/g, '$1,$2');
const BY_WORDS = new Map(CAUSES.map((id) => [id === 'none' ? 'a sound car' : id.replaceAll('_', ' '), id]));
/** A cause as the growing finding writes it; the first letter may stand at the beginning of a sentence. */
function cause(words: string): string {
  const id: CauseId | undefined = BY_WORDS.get(words) ?? BY_WORDS.get(words.charAt(0).toLowerCase() + words.slice(1));
  return id === undefined ? words : id === 'none' ? 'ein Fahrzeug ohne Fehler' : `„${TRADE_DE.causes[id]}“`;
}
const limits = (words: string): string => comma(words).replace(' and ', ' und ');
const narrower = (now: string, then: string): string =>
  `eine weitere Minute engte die Größe von ±${comma(now)} auf ±${comma(then)} ein`;

const NARROWER = 'another minute would narrow the size from ±(.+? %) to ±(.+? %)';

const HOLDING: readonly SaidRow[] = [
  [/^Only (\d+) s so far; the gas is still settling\.$/, (_, s) => `Erst ${s} s; das Gas kommt noch zur Ruhe.`],
  [
    /^The causes are still being tried on what has come so far\.$/,
    () => 'Die Ursachen werden am bisher Gekommenen noch erprobt.',
  ],
  [
    new RegExp(`^Whether the hole is above (.+) is open, and ${NARROWER}\\.$`),
    (_, which, now, then) => `Offen ist, ob das Loch über ${limits(which)} liegt, und ${narrower(now, then)}.`,
  ],
  [
    new RegExp(`^There is a hole, and ${NARROWER}\\.$`),
    (_, now, then) => `Ein Loch ist da, und ${narrower(now, then)}.`,
  ],
  [
    /^Another minute is expected to part (.+) from (.+) by a factor of (\d+)\.$/,
    (_, a, b, factor) =>
      `Eine weitere Minute trennt ${cause(a)} von ${cause(b)} voraussichtlich um den Faktor ${factor}.`,
  ],
  [
    new RegExp(
      `^(The limits of 0\\.5 and 1\\.0 mm are decided|Whether the hole is above (.+?) stays open); ${NARROWER}; (.+)\\.$`,
    ),
    (_, _first, which, now, then, rest) =>
      `${which === '' ? 'Über die Grenzen von 0,5 und 1,0 mm ist entschieden' : `Ob das Loch über ${limits(which)} liegt, bleibt offen`}; ${narrower(now, then)}; ${parted(rest)}.`,
  ],
];

function parted(words: string): string {
  const alike = /^(.+) and (.+) would look alike for as long as it lasts$/.exec(words);
  if (alike !== null) return `${cause(alike[1]!)} und ${cause(alike[2]!)} sähen gleich aus, so lange es auch dauert`;
  const stands = /^(.+) stands at (.+)$/.exec(words);
  return stands === null ? words : `${cause(stands[1]!)} steht bei ${comma(stands[2]!)}`;
}

const LINE: readonly SaidRow[] = [
  [/^(.+); trying again$/, (_, what) => `${liveSaidInGerman(what)}; es wird weiter versucht`],
  [/^no control unit answers; is the key on\?$/, () => 'kein Steuergerät antwortet; ist die Zündung an?'],
  [/^the adapter is gone$/, () => 'der Adapter ist fort'],
  [/^the line was closed$/, () => 'die Leitung wurde geschlossen'],
  [/^the car no longer answers$/, () => 'das Fahrzeug antwortet nicht mehr'],
  [/^no answer$/, () => 'keine Antwort'],
  [/^the car has none of the items that are wanted$/, () => 'das Fahrzeug hat keinen der gewünschten Datenwerte'],
  [/^connect ECONNREFUSED (.+)$/, (_, where) => `an ${where} nimmt nichts eine Verbindung an`],
  [/^the simulated car has ended$/, () => 'das simulierte Fahrzeug ist beendet'],
  [/^the recording cannot be written: (.+)$/, (_, why) => `die Aufzeichnung lässt sich nicht schreiben: ${why}`],
  [/^the recording is as large as a recording may be$/, () => 'die Aufzeichnung ist so groß, wie eine sein darf'],
  [
    /^the serial library is not installed on this machine: .+$/,
    () => 'die Bibliothek für serielle Leitungen fehlt auf diesem Rechner',
  ],
  [
    /^(candump|canplayer) could not be started \((.+)\); install can-utils$/,
    (_, name, why) => `${name} ließ sich nicht starten (${why}); installieren Sie can-utils`,
  ],
  [
    /^(candump|canplayer) ended: is the network (.+) up\?$/,
    (_, name, net) => `${name} ist beendet: läuft das Netz ${net}?`,
  ],
  [/^canplayer no longer takes frames$/, () => 'canplayer nimmt keine Botschaften mehr an'],
  // What the finding warns of.
  [
    /^There is no tank pressure; map the column that holds it\.$/,
    () => 'Es kommt kein Tankdruck: dieses Fahrzeug gibt ihn auf dem Bus nicht aus.',
  ],
  [
    /^No pressure of the pump run was recorded; map the column that holds it\.$/,
    () => 'Es kommt kein Druck des Pumpentests, weder vom Pumpenmodul noch vom Tank.',
  ],
  [
    /^The command of the leak pump is not recorded; without it a pump run cannot be followed\.$/,
    () => 'Der Befehl der Leckprüfpumpe wird nicht aufgezeichnet; ohne ihn lässt sich ein Pumpentest nicht verfolgen.',
  ],
];

export const liveSaidInGerman = (sentence: string): string => sayWith([...HOLDING, ...LINE], sentence);
