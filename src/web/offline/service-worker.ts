/** Keeps the pages and what was opened on this device, so that they can be read with no server. */
export function registerServiceWorker(): void {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return;
  window.addEventListener('load', () => {
    // Refused where the page is not served over a safe channel; the pages then work with the server only.
    navigator.serviceWorker.register('/sw.js').catch(() => undefined);
  });
}
