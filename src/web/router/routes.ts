/** Addresses of the pages. */
export type Route =
  | { readonly page: 'jobs' }
  | { readonly page: 'job'; readonly id: string }
  | { readonly page: 'hand-over'; readonly id: string }
  | { readonly page: 'live'; readonly id: string }
  /** With the car of a job, or any. */
  | { readonly page: 'system'; readonly jobId: string | null }
  | { readonly page: 'settings' }
  | { readonly page: 'sign-in'; readonly token: string | null; readonly next: string | null }
  | { readonly page: 'shared'; readonly token: string }
  | { readonly page: 'unknown' };

function partsOf(path: string): string[] {
  const parts = path.split('/').filter((part) => part !== '');
  try {
    return parts.map(decodeURIComponent);
  } catch {
    // A torn escape: an address of nothing, not a fault.
    return ['?'];
  }
}

export function routeOf(path: string, search: string, hash: string): Route {
  const parts = partsOf(path);
  const [first, second, third] = parts;
  if (parts.length === 0) return { page: 'jobs' };
  if (first === 'jobs' && second !== undefined && parts.length === 2) return { page: 'job', id: second };
  if (first === 'jobs' && second !== undefined && (third === 'hand-over' || third === 'live') && parts.length === 3) {
    return { page: third, id: second };
  }
  if (first === 'shared' && second !== undefined && parts.length === 2) return { page: 'shared', token: second };
  if (parts.length === 1 && first === 'system')
    return { page: 'system', jobId: new URLSearchParams(search).get('job') };
  if (parts.length === 1 && first === 'settings') return { page: 'settings' };
  if (parts.length === 1 && first === 'sign-in') {
    // The secret stands behind "#", so that it reaches no log of any server.
    const token = new URLSearchParams(hash.slice(1)).get('first');
    return { page: 'sign-in', token, next: new URLSearchParams(search).get('next') };
  }
  return { page: 'unknown' };
}
