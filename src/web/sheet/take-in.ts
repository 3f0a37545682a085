/** What a dropped file is, and where it goes. */
import type { Car } from '../../system/car.ts';

export type Dropped =
  | { readonly kind: 'recording' }
  | { readonly kind: 'attachment' }
  | { readonly kind: 'car'; readonly car: Car }
  | { readonly kind: 'job-file' }
  | { readonly kind: 'unknown-json' };

const PICTURE_OR_PAPER = /\.(jpe?g|png|webp|heic|gif|pdf|docx?|odt|mp4|mov)$/i;

export async function whatIs(file: File): Promise<Dropped> {
  if (file.type.startsWith('image/') || file.type.startsWith('video/') || PICTURE_OR_PAPER.test(file.name)) {
    return { kind: 'attachment' };
  }
  if (!/\.json$/i.test(file.name) && file.type !== 'application/json') return { kind: 'recording' };
  // The schema stands at the head of a job file, which may be large.
  const head = await file.slice(0, 4096).text();
  if (/"vaporwright-job-file-\d+"/.test(head)) return { kind: 'job-file' };
  try {
    // The check of a car is loaded only when a car file comes.
    const { carSchema } = await import('../../system/car.ts');
    const read = carSchema.safeParse(JSON.parse(await file.text()));
    if (read.success) return { kind: 'car', car: read.data };
  } catch {
    // No JSON at all.
  }
  return { kind: 'unknown-json' };
}
