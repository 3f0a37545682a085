import type { PartsText } from './parts.en.ts';

export const PARTS_DE: PartsText = {
  parts: {
    cap: {
      does: 'Verschließt den Einfüllstutzen gasdicht und entlastet den Tank, wenn Über- oder Unterdruck zu groß werden.',
      fails: 'Lose, verkantet, Dichtung rissig oder gequollen, falsche Ausführung, Entlastung hängt offen.',
      shows: 'Lampe ein bis zwei Tage nach dem Tanken, Geruch am Stutzen.',
      checked:
        'Dichtung und Sitz ansehen. Auf dem Deckelprüfer prüfen oder einen sicher guten, passenden Deckel aufsetzen und das Halten wiederholen.',
      limits: {
        text: 'Die amtliche Deckelprüfung vergleicht bei 7,5 kPa (30 inH2O) binnen 15 s mit einer kalibrierten Blende.',
        mark: 'source',
      },
      repair: 'Passenden Deckel aufsetzen, Sitz reinigen.',
    },
    fillerFlap: {
      does: 'Federklappen mit Dichtungen verschließen den Stutzen ohne Deckel; die Zapfpistole drückt sie auf.',
      fails: 'Schmutz auf der Dichtung, schwache Feder, Eis, beschädigte Lippe.',
      shows: 'Wie ein loser Deckel: Leckcode nach dem Tanken.',
      checked: 'Einfülltrichter einführen und herausziehen, Halten wiederholen; mit Blindkappe vergleichen.',
      limits: { text: 'Gleicher Leckwert mit Blindkappe: Die Klappe ist es nicht.', mark: 'common' },
      repair: 'Reinigen, sonst Gehäuse ersetzen.',
    },
    fillerNeck: {
      does: 'Führt den Kraftstoff zum Tank und gibt dem Deckel seinen Dichtsitz.',
      fails: 'An Schelle oder hinter der Abdeckung durchgerostet, Sitz verbeult, Karosserieschaden.',
      shows: 'Ein Leck, das über salzige Winter wächst.',
      checked:
        'Abdeckung abnehmen, Spiegel; Rauch an den Schellen; mit dem Finger drücken und den Durchfluss beobachten.',
      limits: { text: 'Kein Rauch, Durchfluss unter der Referenz von 0,5 mm (0,020 in).', mark: 'common' },
      repair: 'Rohr und Schellen ersetzen. Nie schweißen.',
    },
    fillerHose: {
      does: 'Bewegliche Verbindung zum Tank; das dünne Rohr daneben führt beim Tanken Dampf zum Stutzen zurück.',
      fails: 'Porös, Schelle verrutscht, geknickt.',
      shows: 'Geruch bei vollem Tank; geknickt schaltet die Zapfpistole ab.',
      checked: 'Biegen und drücken, während der Durchflussmesser läuft.',
      limits: { text: 'Der Wert ändert sich beim Biegen nicht.', mark: 'common' },
      repair: 'Schlauch und Schellen ersetzen.',
    },
    fillLimitValve: {
      does: 'Hauptweg für den Dampf. Sein Schwimmer schließt bei vollem Tank; der Druck schaltet dann die Zapfpistole ab.',
      fails:
        'Hängt zu: Zapfpistole schaltet bei jedem Stand ab. Hängt offen: Überfüllung, Kraftstoff in der Aktivkohle.',
      shows: 'Langsames Tanken, oder ein Tank, der zu viel nimmt, und nasse Aktivkohle.',
      checked:
        'Tanken mit abgezogener Leitung am Behälter (im Freien, geerdet): Schaltet sie weiter ab, liegt es hier oder an der Leitung. Bei weniger als halb vollem Tank mit wenig Inertgas durchblasen.',
      limits: { text: 'Aufrecht frei, aufgeschwommen oder gekippt dicht.', mark: 'common' },
      repair: 'Meist Teil der Tankoberseite; Tank absenken.',
    },
    rolloverValve: {
      does: 'Kleine zweite Entlüftung, deren Kugel bei Schräglage schließt, damit nichts ausläuft.',
      fails: 'Hängt zu: Druck baut sich am Hang auf. Hängt offen: Flüssigkeit im Behälter.',
      shows: 'Zischen oder Geruch am Hang.',
      checked: 'Wenig Inertgas, aufrecht und gekippt, Tank weniger als halb voll.',
      limits: { text: 'Aufrecht frei, gekippt dicht.', mark: 'common' },
      repair: 'Meist Teil der Tankoberseite; Tank absenken.',
    },
    vapourLine: {
      does: 'Führt Dampf vom Tank zum Aktivkohlebehälter.',
      fails: 'Durchgescheuert, gequetscht, Senke mit Flüssigkeit.',
      shows: 'Langsames Tanken, Druck im Tank; mit Loch ein Leckcode.',
      checked: 'Freier Durchgang in beide Richtungen mit Inertgas geringen Drucks; auf Senken achten.',
      limits: { text: 'Frei in beide Richtungen bei höchstens 7 kPa (1 psi).', mark: 'common' },
      repair: 'Anders verlegen oder ersetzen.',
    },
    canister: {
      does: 'Hält die Aktivkohle; Anschlüsse zu Tank, Motor und Frischluft.',
      fails: 'Durch Schlag gerissen, Stutzen abgebrochen.',
      shows: 'Geruch hinten; Leckcode.',
      checked: 'Anschlüsse verschließen und 2,5 kPa (10 inH2O) halten.',
      limits: { text: 'Verliert in 2 min weniger als 0,12 kPa (0,5 inH2O).', mark: 'judgement' },
      repair: 'Ersetzen.',
    },
    carbonBed: {
      does: 'Nimmt beim Parken und Tanken Dampf auf und gibt ihn an den Motor ab, wenn Frischluft hindurchgesaugt wird. Aufnehmen erwärmt, Abgeben kühlt.',
      fails: 'Mit Kraftstoff oder Wasser geflutet, Körner zerbröselt, gealtert.',
      shows: 'Fett beim Spülen, schwarzer Staub in Ventilen, langsames Tanken, Geruch an der Belüftung.',
      checked:
        'Gegen das Trockengewicht wiegen, falls bekannt; auf Flüssigkeit horchen; schwarzer Staub dahinter; an der Belüftung riechen.',
      limits: { text: '100 g über trocken ist gut beladen; schwappt es, ersetzen.', mark: 'common' },
      repair: 'Behälter ersetzen und alle Leitungen und Ventile dahinter reinigen; Ursache der Flutung suchen.',
    },
    purgeLine: {
      does: 'Vom Behälter zum Tankentlüftungsventil und weiter zum Motor.',
      fails: 'Bogen porös, T-Stück gerissen, O-Ring der Schnellkupplung verletzt.',
      shows: 'Code für großes Leck; ein Leck nur auf der Motorseite.',
      checked: 'Beide Enden verschließen und 1,2 bis 2 kPa (5 bis 8 inH2O) Unterdruck halten.',
      limits: { text: 'Verliert in 1 min weniger als 10 %.', mark: 'judgement' },
      repair: 'Schlauch oder Kupplung ersetzen.',
    },
    purgeValve: {
      does: 'Dosiert Dampf in Takten zum Motor. Stromlos zu.',
      fails: 'Undicht, durch Staub offen, hängt zu, Spule unterbrochen oder Kurzschluss.',
      shows:
        'Rauer Leerlauf oder schlechter Start nach dem Tanken; kein Spülen; Unterdruck wächst nach dem Absaugen weiter.',
      checked:
        'Stromlos muss es Unterdruck halten; angesteuert klickt es und die Strömung folgt dem Takt; bei abgezogenem Stecker im Leerlauf kein Sog auf der Behälterseite.',
      limits: {
        text: 'Verliert in 30 s weniger als 5 % bei 34 bis 51 kPa Unterdruck (10 bis 15 inHg); Spule etwa 20 bis 40 Ω (aus dem Gedächtnis). Warm wiederholen.',
        mark: 'common',
      },
      repair: 'Ersetzen; mit Kohle darin Leitungen reinigen und den Behälter ansehen.',
    },
    ventValve: {
      does: 'Lässt Frischluft zum Behälter; schließt nur für einen Selbsttest. Stromlos offen.',
      fails:
        'Korrodiert, Staub, Wasser oder Insekten am Sitz; Spule unterbrochen oder Kurzschluss. Dichtet nicht oder öffnet nicht.',
      shows: 'Leckcode, wenn es nicht dichtet; langsames Tanken und wachsender Unterdruck, wenn es nicht öffnet.',
      checked:
        'Bestromen und 1,2 bis 2,5 kPa (5 bis 10 inH2O) halten; stromlos muss es frei atmen. Nicht länger als 2 min bestromen.',
      limits: {
        text: 'Zu: verliert weniger als 0,12 kPa (0,5 inH2O) je Minute. Spule etwa 20 bis 60 Ω (aus dem Gedächtnis).',
        mark: 'common',
      },
      repair: 'Ersetzen; Lufteinlass höher legen, wenn Wasser oder Staub wiederkommen.',
    },
    ventFilter: {
      does: 'Hält Staub und Insekten von der Frischluftseite fern.',
      fails: 'Mit Staub, Schlamm, Gespinst oder Wasser verstopft.',
      shows: 'Langsames Tanken; Unterdruck im Tank beim Spülen.',
      checked: 'Durchfluss 10 L/min bei offener Belüftung.',
      limits: { text: 'Druckabfall unter 0,25 bis 0,5 kPa (1 bis 2 inH2O).', mark: 'judgement' },
      repair: 'Reinigen oder ersetzen.',
    },
    pressureSensor: {
      does: 'Misst den Druck im Tank gegen die Außenluft; der Selbsttest lebt von ihm.',
      fails: 'Versatz, falsche Steigung, träge oder verstopfter Stutzen, Wasser im Referenzanschluss, Schlauch ab.',
      shows: 'Ein Leck, das keines ist, ein Bestehen, das keines ist, ein Test, der nie läuft.',
      checked:
        'Deckel ab, Belüftung offen: bei Umgebungsdruck ablesen. Dann zwei bekannte Drücke mit der Handpumpe, Rückkehr beobachten. Messbereich nicht verlassen.',
      limits: { text: 'Bei Umgebung innerhalb 0,12 kPa (0,5 inH2O); folgt auf 5 % und kehrt zurück.', mark: 'common' },
      repair: 'Ersetzen; Referenzanschluss frei machen.',
    },
    levelSender: {
      does: 'Sagt, wie voll der Tank ist: Getestet wird nur zwischen Grenzen, und der Dampfraum wird daraus berechnet.',
      fails: 'Tote Stelle, Rauschen durch Schwappen, Kammern widersprechen sich.',
      shows: 'Die Überwachung läuft nie.',
      checked: 'Fünf Minuten Fahrt lang die Prozente ansehen; gemessene 5 L zutanken.',
      limits: { text: 'Ruhig und auf 10 % richtig.', mark: 'common' },
      repair: 'Tankgeber ersetzen.',
    },
    temperatureSensor: {
      does: 'Außen- und Kraftstofftemperatur geben die Überwachung frei und korrigieren sie.',
      fails: 'Zeigt falsch an, ohne einen Code zu setzen.',
      shows: 'Die Überwachung läuft nicht oder urteilt falsch.',
      checked: 'Nach acht Stunden Stehen alle Temperaturen vergleichen.',
      limits: { text: 'Kalt alle innerhalb 3 bis 5 K.', mark: 'common' },
      repair: 'Ersetzen.',
    },
    senderSeal: {
      does: 'Verschließt die größte Öffnung des Tanks über Pumpe und Geber.',
      fails: 'O-Ring gequollen oder verrollt, Überwurfring sitzt nicht, Rost am Sitz.',
      shows: 'Leck nach Arbeiten an der Pumpe; Geruch über drei Viertel voll.',
      checked: 'Leck bei einem Viertel und bei drei Vierteln vergleichen; Rauch; Seifenlösung, wo man hinkommt.',
      limits: { text: 'Keine Änderung nach neuem Setzen: Es ist nicht diese Stelle.', mark: 'common' },
      repair: 'Neue Dichtung und neuer Ring, Sitz reinigen.',
    },
    tankShell: {
      does: 'Hält Kraftstoff und Dampf; Teil der dichten Grenze.',
      fails: 'Naht verrostet, Steinschlag, Pore in der Schweißnaht, Tülle geschrumpft.',
      shows: 'Leck, das vom Füllstand abhängt; Fleck.',
      checked: 'Tank für sich abschnittsweise prüfen; UV-Mittel.',
      limits: { text: 'Hält wie ein guter Tank gleichen Volumens.', mark: 'common' },
      repair: 'Tank ersetzen. Nie im Fahrzeug schweißen.',
    },
    pumpModule: {
      does: 'Eine kleine Pumpe saugt erst durch eine bekannte Blende, dann an Behälter und Tank, und vergleicht beides.',
      fails: 'Pumpe schwach oder fest, Filter verstopft.',
      shows: 'Referenz nicht erreicht; besteht immer oder nie.',
      checked: 'Angesteuerter Lauf mit allen Phasen aufgezeichnet; bekannte Blende anstelle der eigenen.',
      limits: {
        text: 'Beide Referenzen stimmen auf etwa 10 %; ein guter Tank kommt über die Referenz.',
        mark: 'common',
      },
      repair: 'Modul ersetzen.',
    },
    changeoverValve: {
      does: 'Schaltet die Pumpe von der Blende auf den Tank; in Ruhe ist es die offene Belüftung.',
      fails: 'Hängt oder lässt an der Blende vorbei.',
      shows: 'Referenz- und Tankverlauf sind gleich.',
      checked: 'Angesteuerter Lauf: Beim Umschalten muss sich der Verlauf ändern.',
      limits: { text: 'Referenz- und Tankphase unterscheiden sich beim guten Fahrzeug.', mark: 'common' },
      repair: 'Modul ersetzen.',
    },
    referenceOrifice: {
      does: 'Das bekannte Loch, mit dem der Tank verglichen wird, oft 0,5 mm (aus dem Gedächtnis).',
      fails: 'Verschmutzt: lässt weniger durch, die Referenz steht zu hoch.',
      shows: 'Ein guter Tank fällt durch.',
      checked: 'Referenz mit gutem Fahrzeug oder äußerer Blende vergleichen.',
      limits: { text: 'Referenz etwa 1 bis 4 kPa (4 bis 16 inH2O).', mark: 'memory' },
      repair: 'Modul ersetzen.',
    },
    isolationValve: {
      does: 'Hält einen abgeschlossenen Tank zu; öffnet zum Tanken auf Anforderung und für Tests.',
      fails: 'Hängt zu: Tank lässt sich nicht entlasten oder füllen. Undicht: Tank hält nie.',
      shows: 'Tankklappe bleibt verriegelt; Tankdruck immer nahe null.',
      checked: 'Betankungsanforderung stellen und den Abfall aufzeichnen; Halten über Nacht beobachten.',
      limits: { text: 'Tank etwa 20 s nach der Anforderung unter 1 kPa; hält, wenn zu.', mark: 'common' },
      repair: 'Ventil ersetzen.',
    },
    manifoldCheckValve: {
      does: 'Lässt Spülstrom bei kleiner Last zum Saugrohr und schließt, wenn Ladedruck zurückdrücken würde.',
      fails: 'Falsch herum eingebaut, gerissen, hängt.',
      shows: 'Ladedruck in Behälter und Tank: Druck steigt bei geschlossener Belüftung.',
      checked: 'Durchgang nur in eine Richtung; Tankdruck unter Ladedruck aufzeichnen.',
      limits: { text: 'Durchgang in eine Richtung; kein Ladedruck am Tank.', mark: 'common' },
      repair: 'Ersetzen; Pfeil beachten.',
    },
    ejectorCheckValve: {
      does: 'Öffnet unter Ladedruck zur Strahlpumpe, schließt bei kleiner Last.',
      fails: 'Hängt zu, leckt zurück, Schlauch ab.',
      shows: 'Kein Spülen unter Ladedruck; kleine Falschluft im Leerlauf.',
      checked: 'Durchgang nur in eine Richtung; Takte müssen unter Ladedruck im Tank zu sehen sein.',
      limits: { text: 'Durchgang in eine Richtung.', mark: 'common' },
      repair: 'Ersetzen; Pfeil beachten.',
    },
    ejector: {
      does: 'Ladeluft bläst durch eine Düse und reißt Dampf mit, während das Saugrohr selbst unter Druck steht.',
      fails: 'Düse gerissen, Zuleitung ab.',
      shows: 'Kein Spülen unter Ladedruck.',
      checked: 'Fahrt mit stetigem Ladedruck aufzeichnen: Bei geschlossener Belüftung muss der Tankdruck sanft fallen.',
      limits: { text: 'Etwa 2 bis 10 kPa Sog unter Ladedruck.', mark: 'memory' },
      repair: 'Strahlpumpe oder Schlauch ersetzen.',
    },
    crossover: {
      does: 'Verbindet das Gas beider Kammern, sodass ein Druck herrscht.',
      fails: 'Verstopft oder geknickt.',
      shows: 'Füllt nur halb; Kammern widersprechen sich.',
      checked: 'Beim Tanken beide Füllstände vergleichen.',
      repair: 'Frei machen oder ersetzen; meist Tank absenken.',
    },
    transferPump: {
      does: 'Ein Strahl rücklaufenden Kraftstoffs hebt Kraftstoff aus der passiven Kammer zur Pumpe.',
      fails: 'Düse verstopft, Leitung ab.',
      shows: 'Bleibt mit Restkraftstoff stehen; Stände der Kammern laufen auseinander.',
      checked: 'Beide Geber über eine Fahrt vergleichen.',
      limits: { text: 'Kammern innerhalb 5 bis 15 %.', mark: 'memory' },
      repair: 'Einheit ersetzen.',
    },
  },
  cautions: {
    vapour:
      'Kraftstoffdampf brennt und sinkt: bewegte Luft, keine Zündquelle, Löscher in Reichweite. Flüssiger Kraftstoff ist zuerst Brandgefahr.',
    noShopAir:
      'Nie Druckluft oder Sauerstoff in ein Kraftstoffsystem: Der Dampf kann explosionsfähig werden. Nur geregeltes Inertgas.',
    pressure:
      'Übliche Grenze 3,5 kPa (14 inH2O), wenn die Fahrzeugangaben nicht weniger sagen (übliche Praxis); Überdruckventil vorsehen.',
    vacuum: 'Höchstens 2,5 bis 3 kPa (10 bis 12 inH2O) Unterdruck, langsam: Kunststofftanks beulen ein (Einschätzung).',
    openSlowly: 'Tankdeckel langsam öffnen und warten, bis das Zischen aufhört.',
    sealedTank:
      'Dieser Tank kann unter bis zu 40 kPa stehen (aus dem Gedächtnis): vor dem Öffnen einer Leitung über die Betankungsanforderung entlasten.',
    loweringTank:
      'Erst entleeren; Tank abstützen; zu zweit; Restkraftstoff verlagert sich. Geschlossener, zugelassener Behälter, geerdet.',
    hotParts: 'Heißer Motor und Auspuff: abkühlen lassen; abstecken, was von selbst anlaufen könnte.',
    poweringValves:
      'Ventile mit Gerät oder abgesicherten Leitungen bestromen, Batterieseite zuletzt, kein Funke an der Belüftung; nicht lange, sie werden heiß.',
    selfTest: 'Das Steuergerät kann noch Stunden nach dem Abstellen selbst prüfen: Hände weg von Bewegtem.',
    carbonDust: 'Kohlestaub: Maske, feucht kehren, keine Druckluft. Kohle voll Kraftstoff ist Kraftstoff.',
    highVoltage: 'Hochvolt nach Fahrzeugangaben freischalten, bevor hinten unter dem Fahrzeug gearbeitet wird.',
    noHotWork: 'Keine Heißarbeiten an Tank oder Stutzen, leer oder nicht.',
  },
};
