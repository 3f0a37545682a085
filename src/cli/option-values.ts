/** What the values of options may be, and what is said of one that is not. */
import { InvalidArgumentError } from 'commander';

/** Trouble codes, separated by commas or spaces, in capitals. */
export const codeList = (text: string): string[] => {
  const codes = text
    .split(/[\s,]+/)
    .filter((code) => code !== '')
    .map((code) => code.toUpperCase());
  const wrong = codes.find((code) => !/^[PCBU][0-3][0-9A-F]{3}$/.test(code));
  if (wrong !== undefined) throw new InvalidArgumentError(`"${wrong}" is not a trouble code such as P0442.`);
  return codes;
};

/** Names, separated by commas or spaces. */
export const checkList = (text: string): string[] => text.split(/[\s,]+/).filter((id) => id !== '');

/** A number above 0. */
export function positiveNumber(text: string): number {
  const value = Number(text);
  if (!(value > 0 && Number.isFinite(value))) throw new InvalidArgumentError(`"${text}" is not a number above 0.`);
  return value;
}

/** A number from a least to a most; `what` names it in the message. */
export const numberWithin =
  (least: number, most: number, what: string) =>
  (text: string): number => {
    const value = Number(text);
    if (text.trim() !== '' && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`"${text}" is not ${what} from ${least} to ${most}.`);
  };

/** A year of four digits. */
export const modelYear = (text: string): number => {
  if (/^(19|20)\d{2}$/.test(text)) return Number(text);
  throw new InvalidArgumentError(`"${text}" is not a year, as 2012.`);
};

/** Hours and minutes, as 07:30. */
export const timeOfDay = (text: string): string => {
  if (/^([01]?\d|2[0-3]):[0-5]\d$/.test(text)) return text;
  throw new InvalidArgumentError(`"${text}" is not a time of day, as 07:30.`);
};

/** A time zone of the IANA database, as this machine knows it. */
export const timeZone = (text: string): string => {
  try {
    new Intl.DateTimeFormat('en', { timeZone: text });
    return text;
  } catch {
    throw new InvalidArgumentError(`"${text}" is no time zone that is known here, as Europe/Berlin.`);
  }
};

/** Bit rate of a diagnostic bus, ISO 15765-4 [bit/s]. */
export const bitRate = (text: string): number => {
  const value = Number(text);
  if (value === 500_000 || value === 250_000) return value;
  throw new InvalidArgumentError(`"${text}" is not a bit rate of the bus: 500000 or 250000.`);
};

/** A number from 0 to 1. */
export function share(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !(value >= 0 && value <= 1)) {
    throw new InvalidArgumentError(`"${text}" is not a number from 0 to 1.`);
  }
  return value;
}

/** A figure and its value, as shop.rate=75, added to those before. */
export function figureChange(text: string, before: Readonly<Record<string, number>>): Record<string, number> {
  const at = text.lastIndexOf('=');
  const value = Number(text.slice(at + 1));
  if (at < 1 || text.slice(at + 1).trim() === '' || !Number.isFinite(value)) {
    throw new InvalidArgumentError(`"${text}" is not a figure and its value, such as shop.rate=75.`);
  }
  return { ...before, [text.slice(0, at)]: value };
}

/** A whole number, not negative. */
export const wholeNumber = (text: string): number => {
  if (/^\d{1,9}$/.test(text)) return Number(text);
  throw new InvalidArgumentError(`"${text}" is not a whole number.`);
};

/** A TCP port. */
export const portNumber = (text: string): number => {
  const port = wholeNumber(text);
  if (port <= 65_535) return port;
  throw new InvalidArgumentError(`"${text}" is not a port: those go up to 65535.`);
};
