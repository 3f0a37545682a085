import type { PlanWords } from './readiness-words.ts';

const times = (count: number): string => `${count} ${count === 1 ? 'Versuch' : 'Versuche'}`;

/** "2026-10-25" as "25.10.2026". */
const day = (date: string): string => date.split('-').reverse().join('.');

export const PLAN_DE: PlanWords = {
  forecastWanted: (wanted) => {
    switch (wanted.kind) {
      case 'hour-and-temperature':
        return 'eine Uhrzeit und eine Temperatur, etwa „06:00 4,5“';
      case 'hour-of-day':
        return 'eine Stunde von 0 bis 23';
      case 'outside-air':
        return 'eine Temperatur der Außenluft';
      case 'later-hour':
        return `eine Uhrzeit nach ${wanted.after}`;
    }
  },
  step: (step, f) => {
    switch (step.kind) {
      case 'idle':
        return `starten und ${f.duration(step.seconds)} im Leerlauf lassen`;
      case 'cruise':
        return `${f.duration(step.seconds)} gleichmäßig mit ${f.of('vehicleSpeedMPerS', step.low)} bis ${f.of('vehicleSpeedMPerS', step.high)} fahren, wenig Gas, soweit Recht und Verkehr es erlauben`;
      case 'drive':
        return `${f.duration(step.seconds)} fahren, ohne den Motor abzustellen`;
      case 'pull':
        return `einmal ${f.duration(step.seconds)} oder länger mit Vollgas ziehen, etwa beim Einfädeln, mit warmem Motor und wo es gefahrlos geht`;
      case 'no-stop':
        return 'den Motor dazwischen nicht abstellen';
      case 'leave':
        return `dann abstellen und ${f.duration(step.seconds)} oder länger in Ruhe lassen`;
    }
  },
  note: (note, f) =>
    note.kind === 'near-limits'
      ? `${f.temperature(note.temperatureK)} beim Start liegen nahe an den Grenzen oder darüber hinaus`
      : 'die Garage ist wärmer als die Außenluft, und zwar mehr, als das Fahrzeug zulässt: draußen abstellen',
  remark: (remark, f) => {
    switch (remark.kind) {
      case 'level-unknown':
        return `Füllstand nicht bekannt: er muss zwischen ${f.percent(remark.low)} und ${f.percent(remark.high)} liegen, am besten etwa halb.`;
      case 'level-above':
        return `Füllstand ${f.percent(remark.level ?? 0)} liegt über ${f.percent(remark.low)} bis ${f.percent(remark.high)}: erst leerer fahren, bis etwa ${f.percent(0.6)}.`;
      case 'level-below':
        return `Füllstand ${f.percent(remark.level ?? 0)} liegt unter ${f.percent(remark.low)} bis ${f.percent(remark.high)}: etwa halb voll tanken, dann abstellen.`;
      case 'level-near-end':
        return `Füllstand ${f.percent(remark.level ?? 0)} liegt nahe am Ende von ${f.percent(remark.low)} bis ${f.percent(remark.high)}: zwischen ${f.percent(0.3)} und ${f.percent(0.7)} halten.`;
      case 'no-start':
        return 'Kein Start innerhalb der Vorhersage erfüllt die Bedingungen.';
      case 'by-inspection':
        return `Prüftermin in ${remark.days} ${remark.days === 1 ? 'Tag' : 'Tagen'} (${day(remark.date)}): ${times(remark.attempts)}, mit ${f.percent(remark.probability)} ist die Eigendiagnose bis dahin gelaufen.`;
      case 'not-enough':
        return 'Darauf ist kein Verlass: bitten Sie die Prüfstelle jetzt um Aufschub oder einen späteren Termin.';
      case 'forecast-ends':
        return `Die Vorhersage endet am ${day(remark.date)}, vor dem Prüftermin: mit einer neueren noch einmal planen.`;
      case 'within-forecast':
        return `${times(remark.attempts)} innerhalb der Vorhersage: danach ist die Eigendiagnose mit ${f.percent(remark.probability)} gelaufen.`;
      case 'enough-by':
        return `90 % sind mit dem Versuch vom ${day(remark.date)} erreicht.`;
      case 'routine-in-the-way':
        return `Die üblichen Fahrten unterbrechen die Standzeit. Bliebe das Fahrzeug außer zu den geplanten Fahrten stehen, wären es ${f.percent(remark.probability)}.`;
      case 'judgement':
        return 'Die Wahrscheinlichkeiten beruhen auf Einschätzung: Verkehr, Fehler der Vorhersage, und wie oft ein gesundes Fahrzeug prüft. Sie sind ein Anhalt, kein Versprechen.';
    }
  },
  avoid: (avoid, f) => {
    switch (avoid.kind) {
      case 'clearing':
        return 'Keine Codes löschen und die Batterie nicht abklemmen: jede Eigendiagnose finge von vorn an.';
      case 'start-before':
        return `In den ${f.duration(avoid.seconds)} davor kein Start, auch kein kurzer.`;
      case 'key-after':
        return `In den ${f.duration(avoid.seconds)} nach der Fahrt Zündung nicht einschalten und kein Gerät anstecken.`;
      case 'refuelling':
        return 'Zwischen der Fahrt und dem Ende der Standzeit nicht tanken.';
      case 'topping-off':
        return 'Nicht nachtanken, wenn die Zapfpistole abgeschaltet hat; den Deckel bis zum Klicken schließen, und zwar vor der Standzeit.';
      case 'heated-garage':
        return 'Keine beheizte Garage: Kühlmittel und Luft müssen gleich kalt sein.';
    }
  },
  outlook: ({ because, peaks, passHighGaugePa, passLowGaugePa }, f) => {
    const [sound] = peaks;
    const hole = peaks[2] ?? sound;
    const show = (peak: typeof sound): string =>
      peak === undefined ? '' : `${f.pascals(peak.highestGaugePa)} bis ${f.pascals(peak.lowestGaugePa)}`;
    const targets = `Zielwerte +${f.pascals(passHighGaugePa)} und ${f.pascals(passLowGaugePa)}`;
    if (because === 'told-apart')
      return `Kann es sagen: ein dichtes Fahrzeug erreicht ${show(sound)}, eines mit einem Loch von 0,5 mm (0,020 in) ${show(hole)} (${targets}; üblich, am Fahrzeug nachsehen).`;
    return because === 'hole-passes'
      ? `Kann es nicht sagen: selbst mit einem Loch von 0,5 mm (0,020 in) würden ${show(hole)} erreicht, und der Test wäre bestanden (${targets}): der Dampf gleicht das Loch aus. Auf kühleren oder weniger flüchtigen Kraftstoff warten.`
      : `Kann es nicht sagen: selbst ein dichtes Fahrzeug erreicht nur ${show(sound)} (${targets}): zu wenig Wärme oder Temperaturgang für dieses Dampfvolumen. Vorher länger fahren oder eine Nacht abwarten, die stärker abkühlt.`;
  },
  noHole: 'dicht',
  plateau:
    'Bei langsamem Temperaturgang verhält sich der Druck, den ein Loch übrig lässt, umgekehrt zur vierten Potenz seines Durchmessers: halbes Loch, sechzehnfacher Druck. Ein Loch von 0,25 mm (0,010 in) kann bestehen, wo 0,5 mm (0,020 in) klar durchfallen, und Temperaturgang und Dampfvolumen entscheiden mehr als das Fahrzeug.',
};
