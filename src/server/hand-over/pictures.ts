/**
 * The photos of a job as a document can hold them: upright, no larger than print shows, and without what a camera writes beside
 * the picture (place, device, owner), which is nobody's business who is handed the sheet.
 */
import type { HandOverPicture } from '../../report/hand-over/hand-over.ts';

export interface PictureFile {
  /** Of the job's attachment. */
  readonly id: string;
  readonly path: string;
}

/** Kinds that can be drawn. */
export const PICTURE_TYPES: readonly string[] = ['image/jpeg', 'image/png', 'image/webp', 'image/gif'];
/** So many a document holds at most; all files are listed. Judgement. */
export const MOST_PICTURES = 30;
/** Longest side: 8 cm on paper at 300 dots per inch, and sharp on a screen. */
const LONGEST_PX = 1000;
const QUALITY = 78;

async function drawn(path: string): Promise<HandOverPicture> {
  const { default: sharp } = await import('sharp');
  const { data, info } = await sharp(path)
    .rotate()
    .resize({ width: LONGEST_PX, height: LONGEST_PX, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .jpeg({ quality: QUALITY })
    .toBuffer({ resolveWithObject: true });
  return { mediaType: 'image/jpeg', bytes: new Uint8Array(data), widthPx: info.width, heightPx: info.height };
}

/** By the id of the attachment. A file that is no picture after all is left out: it stands in the list of files. */
export async function picturesOf(files: readonly PictureFile[]): Promise<ReadonlyMap<string, HandOverPicture>> {
  const pictures = new Map<string, HandOverPicture>();
  for (const { id, path } of files.slice(0, MOST_PICTURES)) {
    try {
      pictures.set(id, await drawn(path));
    } catch {
      // Damaged, or of a kind that its first bytes only pretend to be.
    }
  }
  return pictures;
}
