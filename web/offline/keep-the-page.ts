/**
 * How does this window come to be kept on the device, and how does a newer page take over? The service worker keeps it;
 * a newer one waits until the person takes it, and nothing is ever loaded anew under somebody's hands.
 */
import { trustedScript } from "../parts/trusted.js";
import { useHealth } from "../state/health.js";

const LOOK_AGAIN_MS = 3_600_000;

export function keepThePage(): void {
  // While the page is being worked on, its files change under their names.
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  const { serviceWorker } = navigator;
  let controlled = serviceWorker.controller !== null;
  let taking = false;
  serviceWorker.addEventListener("controllerchange", () => {
    if (taking) location.reload();
    else if (controlled) useHealth.setState({ outdated: true, newer: undefined });
    controlled = true;
  });
  serviceWorker
    .register(trustedScript("/service-worker.js"), { updateViaCache: "none" })
    .then((registration) => {
      const offer = () => {
        const { waiting } = registration;
        if (waiting === null || serviceWorker.controller === null) return;
        const newer = () => {
          taking = true;
          waiting.postMessage("take over");
        };
        useHealth.setState({ newer });
      };
      offer();
      registration.addEventListener("updatefound", () => {
        const { installing } = registration;
        installing?.addEventListener("statechange", () => {
          if (installing.state === "installed") offer();
        });
      });
      // A server that was gone may have come back as a newer one.
      const look = () => void registration.update().catch(() => undefined);
      useHealth.subscribe((now, before) => {
        if (now.reached === true && before.reached === false) look();
      });
      setInterval(look, LOOK_AGAIN_MS);
    })
    .catch(() => {
      // Forbidden in this browser, or not on the own machine's address: the page needs its server then, as before.
    });
}
