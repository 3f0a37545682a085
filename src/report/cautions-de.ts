/** Vorsicht auf Deutsch, so wie `cautions.ts` sie auf Englisch sagt; Zahlen behalten ihre Marke. */
export const GENERAL_CAUTION_DE =
  'Nur übliche Werte. Die Herstellerunterlagen dieses Fahrzeugs, die Regeln Ihres Betriebs und das Brandschutz-, Umwelt- und ' +
  'Straßenverkehrsrecht an Ihrem Ort gehen überall vor, wo sie von diesem Blatt abweichen; Arbeiten, die einen Befähigungsnachweis verlangen, gehören in die Hände derer, die ihn haben.';

export const STANDING_CAUTIONS_DE: readonly string[] = [
  'Tritt flüssiger Kraftstoff aus oder riecht es stark nach Kraftstoff: aufhören, lüften, Zündquellen fernhalten. Das ist zuerst eine Brandgefahr und erst dann ein Abgasfehler.',
  'Tankverschluss langsam öffnen und das Zischen abwarten, bevor eine Leitung gelöst wird. Heiße Abgasanlage abkühlen lassen.',
  'Niemals Druckluft aus der Werkstatt oder Sauerstoff in die Kraftstoffanlage geben: Tankdampf kann explosionsfähig werden. Geregeltes Inertgas und dafür gebautes Gerät verwenden.',
  'Prüfdruck und Unterdruck, die das Fahrzeug nennt, nicht überschreiten; 3,5 kPa (14 inH2O) gelten als übliche Obergrenze (übliche Praxis, ohne Quelle), Kunststofftanks beulen schon bei weniger Unterdruck ein.',
  'In bewegter Luft arbeiten, geeigneten Feuerlöscher in Reichweite, Handschuhe und Augenschutz. Tank vor dem Absenken entleeren und abstützen; zu zweit.',
];

export const SEALED_TANK_CAUTION_DE =
  'Dieses Fahrzeug hat einen abgeschlossenen Drucktank, der unter Druck stehen darf: vor dem Öffnen einer Leitung über die Betankungsanforderung des Fahrzeugs entlasten und die Hochvoltanlage nach den Herstellerunterlagen freischalten.';
