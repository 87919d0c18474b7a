// Keeps the page of the round, and what it is drawn with, for when there is no line.
"use strict";
const KEPT = "round";
const WAIT_MS = 8000;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));
self.addEventListener("fetch", (event) => {
  const path = new URL(event.request.url).pathname;
  const ours = path === "/round" || path.startsWith("/static/");
  if (ours && event.request.method === "GET") event.respondWith(fresh(event.request, path));
});

// What the line brings, else what was kept. A sign-in that has ended is no page to keep.
async function fresh(request, path) {
  const cache = await caches.open(KEPT);
  try {
    const answer = await fetch(request, { signal: AbortSignal.timeout(WAIT_MS) });
    if (answer.ok && !answer.redirected) await cache.put(request, answer.clone());
    return answer;
  } catch (fault) {
    const kept = await cache.match(request, { ignoreSearch: path === "/round", ignoreVary: true });
    if (kept) return kept;
    throw fault;
  }
}
