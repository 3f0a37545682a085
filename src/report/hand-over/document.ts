/** A document as blocks, before it is a page or a PDF: what is said is decided once. */
import type { Drawing } from '../drawing.ts';
import type { HandOverPicture } from './hand-over.ts';

export type Tone = 'body' | 'lead' | 'plain' | 'quote' | 'quiet' | 'strong' | 'warn';

export interface Column {
  readonly title: string;
  /** Share of the width, all together 1. */
  readonly share: number;
  readonly align?: 'right';
}

export interface Bar {
  readonly name: string;
  readonly detail: string;
  readonly probability: number;
  readonly certainty: string;
  readonly percent: string;
}

export interface Picture {
  readonly shown: HandOverPicture;
  /** What it shows, for those who do not see it. */
  readonly alt: string;
  readonly caption: string;
}

export type Block =
  | { readonly kind: 'text'; readonly tone: Tone; readonly text: string }
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'facts'; readonly rows: readonly (readonly [label: string, value: string])[] }
  | { readonly kind: 'table'; readonly columns: readonly Column[]; readonly rows: readonly (readonly string[])[] }
  | { readonly kind: 'bars'; readonly rows: readonly Bar[] }
  | { readonly kind: 'figure'; readonly draw: (width: number) => Drawing; readonly key: string }
  | { readonly kind: 'pictures'; readonly items: readonly Picture[] }
  | { readonly kind: 'caution'; readonly lead: string; readonly items: readonly string[] }
  | { readonly kind: 'signatures'; readonly lines: readonly string[] };

export interface Section {
  readonly title: string;
  readonly blocks: readonly Block[];
}

export interface Part {
  readonly id: 'customer' | 'evidence' | 'inspection';
  readonly title: string;
  readonly subtitle: string;
  /** Points above and below the rule between sections on paper. */
  readonly gap: number;
  readonly sections: readonly Section[];
}

export interface HandOverDocument {
  readonly language: string;
  /** Title of the file. */
  readonly title: string;
  /** At the head of the first page, e.g. shop and address. */
  readonly head: readonly string[];
  /** Said where data are invented; null for real ones. */
  readonly demo: string | null;
  /** At the foot of each page: job number and car. */
  readonly foot: string;
  readonly pageOf: (page: number, pages: number) => string;
  readonly program: string;
  readonly madeAt: string;
  readonly parts: readonly Part[];
}

export const text = (tone: Tone, words: string): Block => ({ kind: 'text', tone, text: words });

/** A list, or nothing where there is nothing to list. */
export const listed = (items: readonly string[]): readonly Block[] =>
  items.length === 0 ? [] : [{ kind: 'list', items }];

export const titled = (title: string, items: readonly string[]): readonly Block[] =>
  items.length === 0 ? [] : [{ kind: 'heading', text: title }, ...listed(items)];
