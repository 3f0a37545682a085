import type { ReactNode } from 'react';
import { Choice } from '../kit/choice.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { chooseTheme, THEMES, useTheme } from '../look/theme.ts';
import { LANGUAGES, type Language, useSpoken } from '../text/language.ts';
import {
  LENGTH_UNITS,
  PRESSURE_UNITS,
  shownSymbol,
  TEMPERATURE_UNITS,
  useUnits,
  VOLUME_UNITS,
} from '../units/units.ts';

const named = <T extends string>(symbols: readonly T[]): { value: T; name: string }[] =>
  symbols.map((value) => ({ value, name: shownSymbol(value) }));

/** Units, language and appearance: for this device, on every page at once. */
export function DisplayChoices(): ReactNode {
  const { text, language, setLanguage } = useSpoken();
  const units = useUnits();
  const { chosen } = useTheme();
  const words = text.display;
  return (
    <>
      <Choice
        label={words.pressure}
        options={named(PRESSURE_UNITS)}
        value={units.choice.pressure}
        onChange={(pressure) => units.choose({ pressure })}
      />
      <Choice
        label={words.length}
        options={named(LENGTH_UNITS)}
        value={units.choice.length}
        onChange={(length) => units.choose({ length })}
      />
      <Choice
        label={words.temperature}
        options={named(TEMPERATURE_UNITS)}
        value={units.choice.temperature}
        onChange={(temperature) => units.choose({ temperature })}
      />
      <Choice
        label={words.volume}
        options={named(VOLUME_UNITS)}
        value={units.choice.volume}
        onChange={(volume) => units.choose({ volume })}
      />
      <Choice
        label={words.language}
        options={(Object.keys(LANGUAGES) as Language[]).map((value) => ({ value, name: LANGUAGES[value].name }))}
        value={language}
        onChange={setLanguage}
      />
      <Choice
        label={words.theme}
        options={THEMES.map((value) => ({ value, name: words.themes[value] }))}
        value={chosen}
        onChange={chooseTheme}
      />
    </>
  );
}

export function DisplayDialog({ onClose }: { readonly onClose: () => void }): ReactNode {
  const { display } = useSpoken().text;
  return (
    <Dialog title={display.title} onClose={onClose}>
      <p className="quiet">{display.words}</p>
      <DisplayChoices />
    </Dialog>
  );
}
