/** Content-Disposition (RFC 6266) of a file whose name a person chose. */

const plain = (name: string): string => name.replace(/[^\x20-\x7e]|["\\%]/g, '_');
/** RFC 8187 leaves fewer characters as they are than encodeURIComponent does. */
const extended = (name: string): string =>
  encodeURIComponent(name.replace(/\p{Surrogate}/gu, '_')).replace(
    /['()*]/g,
    (c) => `%${c.charCodeAt(0).toString(16).toUpperCase()}`,
  );

export const asAttachment = (name: string): string =>
  `attachment; filename="${plain(name)}"; filename*=UTF-8''${extended(name)}`;
export const inlineNamed = (name: string): string =>
  `inline; filename="${plain(name)}"; filename*=UTF-8''${extended(name)}`;
