/**
 * Registers the service worker and offers a waiting version in the update bar.
 *
 * Only the reader's word lets the new version take over, so nothing changes under their hands.
 */
export function keepOffline(): void {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return;
  // After load, so that filling the store never competes with the first paint.
  addEventListener('load', () => void register());
}

async function register(): Promise<void> {
  const offer = document.querySelector<HTMLElement>('[data-update-offer]');
  if (!offer) return;
  try {
    const registration = await navigator.serviceWorker.register('/service-worker.js');
    offerWhenWaiting(registration, offer);
  } catch {
    // Private windows and old browsers refuse; the site works the same with a network.
  }
}

function offerWhenWaiting(registration: ServiceWorkerRegistration, offer: HTMLElement): void {
  const show = () => {
    if (registration.waiting && navigator.serviceWorker.controller) offer.hidden = false;
  };
  show();
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', show);
  });
  offer.querySelector('[data-update-later]')?.addEventListener('click', () => {
    offer.hidden = true;
  });
  offer.querySelector('[data-update-accept]')?.addEventListener('click', () => {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), {
      once: true,
    });
    registration.waiting?.postMessage({ type: 'SKIP_WAITING' });
  });
}
