// Keeps the day sheet and its parts on the phone, for when there is no signal. Pages are kept for each person apart, and only
// the sheets: no other page of the shop is stored here. Parts (style, script) are known by the hash in their address.
importScripts('/js/queue.js');

const SHEET = /^\/$|^\/days\/\d{4}-\d\d-\d\d$/;
const PART = /^\/(css|js)\//;
const STAND_IN = '/no-signal';
const PATIENCE = 8000; // ms until a kept sheet is shown in place of a slow one
const MOST = 20; // sheets kept

const pages = person => `pages-${person}`;

self.addEventListener('install', event => {
  self.skipWaiting();
  event.waitUntil(fetch(STAND_IN, { credentials: 'omit' }).then(answer => keepPage('stand-in', STAND_IN, answer)));
});
self.addEventListener('activate', event => event.waitUntil(self.clients.claim()));

self.addEventListener('message', event => {
  if (SHEET.test(event.data?.sheet)) event.waitUntil(unseen(event.data.sheet, event.data.person));
});

self.addEventListener('sync', event => {
  if (event.tag === 'queue') event.waitUntil(Queue.note('who').then(async who => {
    if (who && (await Queue.send(who)).end === 'lost') throw new Error('no signal yet');
  }));
});

self.addEventListener('fetch', event => {
  const { request } = event, url = new URL(request.url);
  if (url.origin !== location.origin) return;
  if (request.method === 'GET' && PART.test(url.pathname)) {
    event.respondWith(caches.match(request).then(kept => kept ?? fetch(request)));
  } else if (request.mode === 'navigate') {
    event.respondWith(request.method === 'GET' && SHEET.test(url.pathname) && !url.search
      ? sheet(event, url.pathname) : other(event, url.pathname));
  }
});

async function other(event, path) {
  try {
    const answer = await fetch(event.request);
    if (path === '/sign-in' && answer.status === 200 || path === '/sign-out' && answer.type === 'opaqueredirect') event.waitUntil(forget(null));
    return answer;
  } catch {
    return await caches.match(STAND_IN) ?? Response.error();
  }
}

async function sheet(event, path) {
  const fresh = fetch(event.request).then(answer => {
    event.waitUntil(seen(path, answer.clone()));
    return answer;
  });
  const slow = new Promise(done => setTimeout(done, PATIENCE)).then(() => kept(path)).catch(() => null).then(copy => copy ?? fresh);
  try {
    return await Promise.race([fresh, slow]);
  } catch {
    return await kept(path).catch(() => null) ?? await caches.match(STAND_IN) ?? Response.error();
  }
}

/** A copy of the person who was signed in last, or another of his sheets, which the page makes the day that is asked for. */
async function kept(path) {
  const who = await Queue.note('who');
  if (!who) return null;
  const own = await caches.open(pages(who));
  for (const page of [path, '/', ...(await own.keys()).reverse()]) {
    const copy = await own.match(page), html = await copy?.text();
    if (!html || page !== path && !html.includes('<form class="day"')) continue; // a day that has not come has no form
    return new Response(html.replace('<html ', '<html data-copy="copy" '), { headers: copy.headers });
  }
  return null;
}

async function seen(path, answer) {
  const person = answer.headers.get('Tallywright-Person');
  if (answer.status !== 200 || answer.redirected || !person) return;
  await forget(person);
  await keepPage(pages(person), path, answer);
}

/** The sheet that was opened before this worker was here. */
async function unseen(path, person) {
  if (await Queue.note('who') === person && await (await caches.open(pages(person))).match(path)) return;
  await seen(path, await fetch(path, { cache: 'no-store' }));
}

/** Copies of everybody else go as soon as somebody signs in or out; queues stay, each seen by its own person only. */
async function forget(allBut) {
  for (const name of await caches.keys())
    if (name.startsWith('pages-') && name !== pages(allBut)) await caches.delete(name);
  await Queue.note('who', allBut);
}

/** The page is put last: it opens with all its parts or not at all. */
async function keepPage(name, path, answer) {
  if (!answer.ok) return;
  const html = await answer.text(), parts = await caches.open('parts'), store = await caches.open(name);
  const needed = [...html.matchAll(/(?:href|src)="(\/(?:css|js)\/[^"]+)"/g)].map(found => found[1]);
  const there = new Set((await parts.keys()).map(part => new URL(part.url).pathname));
  await Promise.all(needed.filter(part => !there.has(part)).map(part => parts.add(part)));
  const headers = new Headers(answer.headers);
  for (const name of ['content-encoding', 'content-length', 'transfer-encoding']) headers.delete(name);
  await store.put(path, new Response(html, { headers }));
  if (path === '/') await renew(store, parts, new Set(needed), there);
  const sheets = (await store.keys()).filter(page => new URL(page.url).pathname !== '/');
  for (const old of sheets.slice(0, Math.max(0, sheets.length - MOST))) await store.delete(old);
}

/** After a new version of the server: its parts, its sheet and its stand-in, and none of the old ones. */
async function renew(store, parts, needed, there) {
  const old = [...there].filter(part => !needed.has(part));
  if (!old.length) return;
  for (const page of await store.keys()) if (new URL(page.url).pathname !== '/') await store.delete(page);
  for (const part of old) await parts.delete(part);
  await keepPage('stand-in', STAND_IN, await fetch(STAND_IN, { credentials: 'omit' }));
}
