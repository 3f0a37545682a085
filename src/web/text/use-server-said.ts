import { useLate } from './use-late.ts';

type Say = (sentence: string) => string;
const asItIs: Say = (sentence) => sentence;

const LOAD = {
  en: async (): Promise<Say> => asItIs,
  de: async (): Promise<Say> => (await import('./server-said.de.ts')).serverSaidInGerman,
};

/** Says sentences of the server, English there, in the language of the page; as they are until its words have come. */
export const useServerSaid = (): Say => useLate(LOAD) ?? asItIs;
