/** T01 bis T38 und R01 bis R04 auf Deutsch. Zahlen in den Worten sind übliche Praxis ohne Quelle, wo nichts anderes dabeisteht. */
import type { CheckText } from './text.ts';

const text = (name: string, steps: readonly string[], note: string): CheckText => ({ name, steps, note });

export const CHECKS_DE: Readonly<Record<string, CheckText>> = {
  T01: text(
    'Fehlercodes, Freeze Frame und Prüfbereitschaft lesen',
    [
      'Lesegerät bei eingeschalteter Zündung anschließen. Nichts löschen.',
      'Gespeicherte, vorläufige und permanente Codes, den Freeze Frame und die Prüfbereitschaft der Eigendiagnosen aufschreiben.',
      'Wählen, wofür die Codes sprechen: Stromkreis, Durchfluss oder Leck.',
    ],
    'Eine Codefamilie umfasst vieles, ihre Größenstufe ist grob; Löschen vernichtet den Freeze Frame.',
  ),
  T02: text(
    'Kunden befragen',
    [
      'Fragen, wann zuletzt getankt wurde, ob dabei der Deckel offen blieb oder der Motor lief und ob nachgetankt wird.',
      'Nach Arbeiten an Tank, Pumpe oder Karosserie fragen, nach einem neuen Deckel und ob die Lampe dem Wetter folgt.',
      'Wählen, was auffällt.',
    ],
    'Die Erinnerung hat Lücken, doch ein klares Ja sagt viel.',
  ),
  T03: text(
    'Tankdeckel und Einfüllstutzen ansehen',
    [
      'Vor dem Anfassen feststellen, wie fest der Deckel sitzt.',
      'Langsam öffnen; die Dichtung ringsum, die Dichtfläche am Stutzen und den Bereich darunter auf Rost ansehen.',
      'Befund fotografieren; Deckel aufsetzen, wie er war.',
    ],
    'Nur was zu sehen ist; Rost sitzt verdeckt unter der Verkleidung.',
  ),
  T04: text(
    'Tankdeckel am Prüfgerät prüfen',
    [
      'Deckel mit dem passenden Adapter auf das Prüfgerät setzen.',
      'Deckelprüfung des Geräts ablaufen lassen (amtliche Programme prüfen bei 30 inH2O bis zu 15 s).',
      'Einmal mit neu aufgesetztem Deckel wiederholen.',
    ],
    'Ein falscher Adapter sieht aus wie ein undichter Deckel.',
  ),
  T05: text(
    'Durchfluss mit bekannt gutem Deckel noch einmal messen',
    [
      'Bei angeschlossenem Messaufbau die Größe mit dem eigenen Deckel des Fahrzeugs aufschreiben.',
      'Einen Deckel richtiger Bauart aufsetzen, der nachweislich dichtet.',
      'Bei gleichem Druck noch einmal messen und beide Größen eintragen.',
    ],
    'Eine schlechte Dichtfläche am Stutzen bleibt unerkannt.',
  ),
  T06: text(
    'Belüftungseinlass und Aktivkohlebehälter ansehen',
    [
      'Fahrzeug anheben.',
      'Belüftungseinlass auf Staub, Spinnweben, Schlamm oder Wasser ansehen; Aktivkohlebehälter auf Risse, nasse Stellen und schwarzen Staub.',
      'Befund fotografieren.',
    ],
    'Eine Verstopfung im Inneren bleibt unerkannt.',
  ),
  T07: text(
    'Tankdrucksensor bei Umgebungsdruck',
    [
      'Deckel langsam öffnen und abgenommen lassen; das Belüftungsventil muss offen sein (Zündung an, Motor aus, kein Selbsttest).',
      'Zehn Sekunden warten, dann den Tankdruck ablesen.',
      'Mit Einheit und Vorzeichen eintragen.',
    ],
    'Findet einen falschen Nullpunkt, nicht eine falsche Kennlinie oder einen verstopften Anschluss.',
  ),
  T08: text(
    'Tankdrucksensor bei zwei Drücken',
    [
      'Handpumpe und Vergleichsmanometer am Sensoranschluss oder am abgedichteten System anschließen.',
      'Etwa 5 inH2O anlegen, Manometer und Sensor aufschreiben. Dann etwa 10 inH2O (oder −10 inH2O), beide aufschreiben.',
      'Druck ablassen und sehen, ob der Sensor zurückgeht. Im Messbereich des Sensors bleiben.',
    ],
    'Findet Kennlinie und Hysterese; das Manometer muss stimmen.',
  ),
  T09: text(
    'Füllstand- und Temperatursensoren auf Plausibilität prüfen',
    [
      'Nach acht Stunden Stand Kühlmittel, Ansaugluft, Kraftstoff und Außenluft vergleichen: innerhalb 3 bis 5 K.',
      'Füllstand fünf Minuten lang bei der Fahrt beobachten oder gemessene 5 L zugeben.',
      'Wählen, ob sie plausibel sind.',
    ],
    'Eine tote Stelle des Füllstandgebers zeigt sich nur bei der Fahrt.',
  ),
  T10: text(
    'Spulenwiderstand von Tankentlüftungs- und Belüftungsventil',
    [
      'Beide Ventile bei ausgeschalteter Zündung abstecken.',
      'An den zwei Kontakten messen; Temperatur des Ventils aufschreiben (nach langem Stand die Außentemperatur).',
      'Beide Widerstände und die Temperatur eintragen; eine unterbrochene Spule so, wie das Messgerät sie zeigt: OL.',
    ],
    'Sieht weder Schmutz noch verschlissene Sitze.',
  ),
  T11: text(
    'Stromkreise unter Last und in Bewegung',
    [
      'Anstelle jedes Ventils eine Lampe als Last anschließen und ansteuern.',
      'Spannungsabfall an Masse (unter 0,1 V) und Versorgung messen.',
      'Kabelbaum und Stecker je zwei Minuten bewegen und dabei beobachten.',
    ],
    'Was nur zeitweise auftritt, zeigt sich vielleicht nicht.',
  ),
  T12: text(
    'Tankentlüftungsventil hält Unterdruck, stromlos',
    [
      'Motor aus, Ventil abgesteckt. Schlauch auf der Motorseite abziehen.',
      'Mit der Handpumpe 10 bis 15 inHg Unterdruck am Ventil anlegen und aufhören zu pumpen.',
      'Nach 30 Sekunden wieder ablesen und beide Werte als Unterdruck (negativ) eintragen.',
    ],
    'Ein Sitz, der nur heiß undicht ist, bleibt unerkannt: warm wiederholen, wenn die Beanstandung warm auftritt.',
  ),
  T13: text(
    'Sog an der Spülleitung im Leerlauf',
    [
      'Warmer Motor im Leerlauf; Tankentlüftungsventil abstecken, damit das Steuergerät es nicht öffnen kann.',
      'Schlauch auf der Behälterseite abziehen und Finger oder Papier an das Ventil halten.',
      'Wählen, ob Sog da ist.',
    ],
    'Heiße und bewegte Teile; mit angestecktem Ventil kann das Steuergerät spülen.',
  ),
  T14: text(
    'Spülleitung nach dem Tanken abklemmen',
    [
      'Die Beanstandung muss jetzt, nach dem Tanken, auftreten.',
      'Schlauch der Spülleitung mit einer weichen Klemme abdrücken.',
      'Wählen, ob der Motor mit abgeklemmtem Schlauch gut läuft.',
    ],
    'Eine Klemme kann einen alten Schlauch brechen; ohne die Beanstandung sagt die Prüfung nichts.',
  ),
  T15: text(
    'Spülung ansteuern, Gemisch und Druck beobachten',
    [
      'Warmer Motor, Lambdaregelung aktiv. Tankentlüftungsventil in Stufen ansteuern.',
      'Kurz- und langfristige Gemischkorrektur und den Tankdruck eine Minute beobachten.',
      'Wählen, was sich bewegt hat.',
    ],
    'Ein leerer Aktivkohlebehälter magert das Gemisch ab; das ist kein Fehler.',
  ),
  T16: text(
    'Belüftungsventil dichtet und öffnet',
    [
      'Belüftungsventil geschlossen ansteuern; 5 bis 10 inH2O auf der Behälterseite anlegen und eine Minute beobachten (Verlust unter 0,5 inH2O).',
      'Ansteuerung lösen: Luft muss frei durchgehen.',
      'Ventil nicht länger als zwei Minuten bestromt halten.',
    ],
    'Sicherstellen, dass das Ventil wirklich bestromt ist: Klicken fühlen oder hören.',
  ),
  T17: text(
    'Tanken mit abgezogenem Belüftungsschlauch',
    [
      'Im Freien, Füllstand unter 70 %, Behälter und Fahrzeug leitend verbunden.',
      'Einige Liter wie gewohnt tanken und jedes Abschalten aufschreiben; dann Belüftungsschlauch vom Aktivkohlebehälter abziehen und weitertanken.',
      'Wählen, was sich geändert hat. Schlauch wieder aufsetzen.',
    ],
    'Dampf tritt aus: nur im Freien, keine Zündquelle in der Nähe.',
  ),
  T18: text(
    'Durchfluss durch den Belüftungsweg',
    [
      'Belüftungsventil offen. 10 L/min Luft oder Inertgas von der Behälterseite durch den Belüftungsweg schicken, Tank abgetrennt.',
      'Ablesen, welchen Druck das braucht.',
      'Durchfluss und Druckabfall eintragen.',
    ],
    'Nasse Kohle kann einen kleinen Durchfluss noch durchlassen.',
  ),
  T19: text(
    'Ganzes System hält Druck',
    [
      'System abdichten: Adapter an Einfüllstutzen oder Serviceanschluss, Belüftungsventil geschlossen, Tankentlüftungsventil abgesteckt.',
      'Mit Inertgas auf 10 bis 14 inH2O bringen und drei Minuten beruhigen lassen.',
      'Druck aufschreiben, warten, wieder aufschreiben. Beide, die Zeit und das Dampfvolumen eintragen.',
      'Kraftstoff- und Außentemperatur und Füllstand mit aufschreiben: Der Nachweis vergleicht sie mit denen nach der Reparatur.',
    ],
    'Eine wandernde Temperatur ist der übliche Fehlalarm.',
  ),
  T20: text(
    'Durchfluss in das ganze System',
    [
      'Messaufbau gegen einen Blindstopfen nullen und aufschreiben, was dann noch fließt.',
      'Anschließen, Belüftungsventil geschlossen, Tankentlüftungsventil abgesteckt; Inertgas mit 10 bis 14 inH2O.',
      'Warten, bis der Durchfluss steht; Durchfluss, Druck und Durchfluss gegen den Blindstopfen eintragen.',
      'Kraftstoff- und Außentemperatur und Füllstand mit aufschreiben: Der Nachweis vergleicht sie mit denen nach der Reparatur.',
    ],
    'Hängt nicht vom Volumen ab; Lecks des Adapters zählen mit.',
  ),
  T21: text(
    'System in drei Abschnitte teilen',
    [
      'So abklemmen oder verschließen, dass nur die Spülseite versorgt wird; messen.',
      'Ebenso Behälter und Belüftung, dann Tank und Stutzen.',
      'Die drei Größen eintragen, und die des Ganzen, wenn sie gemessen wurde: Flächen müssen sich addieren.',
      'Kraftstoff- und Außentemperatur und Füllstand mit aufschreiben: Der Nachweis vergleicht sie mit denen nach der Reparatur.',
    ],
    'Nur so gut wie die Klemmen: Abschnitte, die zusammen mehr durchlassen als das Ganze, verraten sie.',
  ),
  T22: text(
    'Gleicher Durchfluss bei zwei Füllständen',
    [
      'Durchfluss bei etwa einem Viertel Tankfüllung messen.',
      'Auf etwa drei Viertel auffüllen, beruhigen lassen, bei gleicher Temperatur noch einmal messen.',
      'Beide Größen eintragen.',
    ],
    'Flüssigkeit verdeckt Löcher; Abkühlung täuscht. Nicht vor der Teilung in Abschnitte.',
  ),
  T23: text(
    'Nebel unter Druck',
    [
      'Beide Ventile dichten nachweislich. Nebel mit Inertgas bei 10 bis 14 inH2O oder weniger einleiten.',
      'Ruhige Luft, starke Lampe; Einfüllseite, Schläuche, Ventile, Aktivkohlebehälter, Leitungen und Tankoberseite absuchen.',
      'Wählen, wo Nebel austritt; fotografieren.',
    ],
    'Bei 0,010 in zeigt sich nur etwa jedes zweite Leck.',
  ),
  T24: text(
    'Leck unter Unterdruck',
    [
      'Abgedichtetes System langsam auf −8 inH2O bringen, nicht unter −10 inH2O.',
      'An Tankdeckel, Tankentlüftungs- und Belüftungsventil horchen und außen mit Nebel absuchen.',
      'Wählen, wo er hineingezogen wird.',
    ],
    'Zeigt Sitze, die Überdruck zudrückt.',
  ),
  T25: text(
    'UV-Mittel, am nächsten Tag angesehen',
    [
      'UV-Mittel wie beim Nebel einleiten.',
      'Fahrzeug über Nacht stehen lassen.',
      'Im Dunkeln mit der Lampe ansehen und wählen, wo es leuchtet.',
    ],
    'Altes UV-Mittel zeigt falsche Stellen.',
  ),
  T26: text(
    'Mit dem Kohlenwasserstoffmessgerät absuchen',
    [
      'Ruhige Luft; Gerät abseits des Fahrzeugs zur Ruhe kommen lassen.',
      'Einfüllseite, Schläuche, Aktivkohlebehälter und Tankoberseite langsam von unten absuchen.',
      'Wählen, wo die Anzeige steigt und bleibt.',
    ],
    'Der Atem des Aktivkohlebehälters und alte Spritzer täuschen.',
  ),
  T27: text(
    'Mit Ultraschall horchen',
    [
      'System mit Inertgas auf 10 bis 14 inH2O bringen.',
      'Mit dem Ultraschall-Lecksuchgerät absuchen.',
      'Wählen, wo es am lautesten ist.',
    ],
    'Geringer Druck macht wenig Geräusch; ab 1 mm (0,040 in).',
  ),
  T28: text(
    'Seifenlösung an erreichbaren Verbindungen',
    [
      'System mit Inertgas auf 10 bis 14 inH2O bringen.',
      'Jede erreichbare Verbindung benetzen.',
      'Wählen, wo Blasen wachsen.',
    ],
    'Die Tankoberseite bleibt unerreichbar.',
  ),
  T29: text(
    'Aktivkohlebehälter wiegen',
    [
      'Aktivkohlebehälter ausbauen, Anschlüsse verschließen; kippen und auf Flüssigkeit horchen, nach schwarzem Staub sehen.',
      'Wiegen.',
      'Gewicht und Trockengewicht (vom Teil oder von einem neuen) eintragen.',
    ],
    'Das Trockengewicht ist oft nicht bekannt.',
  ),
  T30: text(
    'Tankvorgang aufzeichnen',
    [
      'Tankdruck und Ansteuerung der Belüftung beim Tanken aufzeichnen, wo die Regeln der Tankstelle es erlauben.',
      'Druckspitze und Abschaltungen aufschreiben.',
      'Wählen, welche Seite zurückhält.',
    ],
    'Die Daten des Fahrzeugs müssen beim Tanken wach bleiben.',
  ),
  T31: text(
    'Leckselbsttest des Fahrzeugs auslösen',
    [
      'Feststellen, ob Füllstand, Temperatur und Batterie den Test zulassen.',
      'Auslösen und den Tankdruck von davor bis danach aufzeichnen.',
      'Wählen, wie er endete; die Aufzeichnung lässt sich dem Auftrag hinzufügen.',
    ],
    'Prüft dieselbe Grenze wie das Fahrzeug; nicht jedes Fahrzeug bietet es an.',
  ),
  T32: text(
    'Natürlichen Unterdruck über Nacht aufzeichnen',
    [
      'Tank durch eine Fahrt erwärmen; im Freien abstellen, System abdichten, wie das Fahrzeug es tut, Aufzeichnung starten.',
      'Über Nacht stehen lassen.',
      'Wählen, ob sich Über- oder Unterdruck gehalten hat.',
    ],
    'Das Wetter kann die Prüfung wertlos machen.',
  ),
  T33: text(
    'Pumpenmodul laufen lassen',
    [
      'Lauf des Moduls auslösen.',
      'Referenz, Endwert am Tank und noch einmal die Referenz aufschreiben.',
      'Alle drei eintragen.',
    ],
    'Das Verhältnis hebt Luftdruck und Batteriespannung heraus.',
  ),
  T34: text(
    'Abgeschlossener Drucktank: halten und ablassen',
    [
      'Tank über Nacht bei mindestens 5 K Temperaturwechsel aufzeichnen.',
      'Tanken anfordern und aufzeichnen, wie der Druck fällt.',
      'Wählen, was er tat.',
    ],
    'Hochvolt und Tankdruck: nach den Herstellerunterlagen vorgehen.',
  ),
  T35: text(
    'Fahrt unter Ladedruck aufzeichnen',
    [
      'Zu zweit. Warmer Motor, sichere Straße.',
      '5 bis 10 s gleichmäßiger Ladedruck, während der Test die Belüftung geschlossen hält.',
      'Wählen, was der Tankdruck tat.',
    ],
    'Der Verkehr begrenzt, wie gleichmäßig es geht.',
  ),
  T36: text(
    'Ist der Kraftstoff für die Jahreszeit zu flüchtig?',
    [
      'Fragen, wo und wann getankt wurde; Ethanolanteil auslesen, wo das Fahrzeug ihn angibt.',
      'Mit dem Wetter vergleichen.',
      'Wählen.',
    ],
    'Nur ein mittelbarer Hinweis.',
  ),
  T37: text(
    'Gleicher Durchfluss nach der Reparatur',
    [
      'Gleicher Messaufbau, gleicher Druck, höchstens 3 K Unterschied zur ersten Messung.',
      'Wieder gegen den Blindstopfen nullen.',
      'Durchfluss, Druck und Durchfluss gegen den Blindstopfen eintragen.',
      'Kraftstoff- und Außentemperatur und Füllstand wieder aufschreiben.',
    ],
    'Derselbe Messaufbau hebt seinen eigenen Fehler heraus.',
  ),
  R01: text(
    'Tieferes Absaugen aufzeichnen',
    [
      'Absaugen mit tieferem Ziel (etwa −2,4 kPa) auslösen, Belüftungsventil geschlossen; nicht weiter, als das Fahrzeug zulässt.',
      'Eine Minute halten, dann die Belüftung öffnen; alles aufzeichnen.',
      'Aufzeichnung dem Auftrag hinzufügen: Der Befund nimmt sie auf.',
    ],
    'Mehr Druck trennt ein Leck besser von Dampf und schwacher Spülung.',
  ),
  R02: text(
    'Test bei anderem Füllstand aufzeichnen',
    [
      'Füllstand auf etwa vier Fünftel bringen.',
      'Beruhigen lassen, dann denselben Test ausführen und aufzeichnen.',
      'Aufzeichnung dem Auftrag hinzufügen.',
    ],
    'Trennt eine Größe von einem falschen Dampfvolumen.',
  ),
  R03: text(
    'Längeres Halten aufzeichnen',
    [
      'Denselben Test ausführen, aber vier Minuten halten.',
      'Belüftung öffnen und auch das Belüften aufzeichnen.',
      'Aufzeichnung dem Auftrag hinzufügen.',
    ],
    'Trennt kleine Lecks von aufsteigendem Dampf.',
  ),
  R04: text(
    'Halten mit abgeklemmter Dampfleitung aufzeichnen',
    [
      'Wie üblich absaugen, dann die Dampfleitung nahe am Tank mit einer weichen Klemme abdrücken.',
      'Anderthalb Minuten halten, Belüftung öffnen, Klemme abnehmen; alles aufzeichnen.',
      'Aufzeichnung mit einem Vermerk zur Klemme dem Auftrag hinzufügen.',
    ],
    'Trennt die Tankseite von der Behälterseite; eine alte Leitung kann unter der Klemme reißen.',
  ),
  T38: text(
    'Fahren und stehen lassen, bis der Selbsttest gelaufen ist',
    [
      'Die Bedingungen herstellen, die das Fahrzeug braucht.',
      'Fahren und abstellen, wie seine Herstellerunterlagen es sagen.',
      'Prüfbereitschaft und Ergebnis auslesen.',
    ],
    'Der einzige Nachweis, den die Untersuchung gelten lässt.',
  ),
};
