/**
 * Part of the service worker: takes the photos that another app shares (W3C "Web Share Target") and lays them into a cache, from
 * which the app picks them up. They stay there until it has stored them, so nothing is lost if it is closed in between.
 */
const SHARED = 'shared-photos';

addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  if (method === 'POST' && new URL(url).pathname === '/shared-photos')
    event.respondWith(receive(event.request));
});

async function receive(request) {
  const cache = await caches.open(SHARED);
  const form = await request.formData();
  const files = form.getAll('photos').filter((part) => part instanceof File && part.size > 0);
  const now = Date.now();
  for (const [at, file] of files.entries()) {
    const headers = {
      'content-type': file.type || 'application/octet-stream',
      'x-name': encodeURIComponent(file.name),
      'x-modified': String(file.lastModified),
    };
    await cache.put(`/shared-photos/${now}-${String(at).padStart(3, '0')}`, new Response(file, { headers }));
  }
  return Response.redirect('/#/look/shared', 303);
}
