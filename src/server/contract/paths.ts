/** Names that both ends of the wire use. */
export const API = '/api/v1';
/** Every request that changes something carries the token of GET /session in this header. */
export const TOKEN_HEADER = 'x-vaporwright-csrf';

/** Largest file that is taken in, bytes as sent (judgement: a day at 100 samples per second, packed, is far below). */
export const MAX_RECORDING_BYTES = 256 * 1024 * 1024;
/** Largest text that a packed file may unfold to; stops files made to fill the memory. Judgement. */
export const MAX_UNPACKED_BYTES = 1024 * 1024 * 1024;
/** Photos and documents. Judgement. */
export const MAX_ATTACHMENT_BYTES = 32 * 1024 * 1024;
/** One job with its files in one JSON. Judgement. */
export const MAX_JOB_FILE_BYTES = 512 * 1024 * 1024;
