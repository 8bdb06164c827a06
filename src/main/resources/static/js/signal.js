// On every page of a signed-in person: sends what waits on this phone, says how much there is, and warns at the way out.
(() => {
  const me = document.documentElement.dataset.person, words = document.querySelector('[data-queue-words]');
  if (!me || !words || !self.indexedDB || !navigator.serviceWorker) return;
  const FIRST = 4000, LAST = 60000; // ms between tries
  const onSheet = document.querySelector('form.day') !== null;
  let pause = FIRST, timer, busy = false, again = false;
  const say = (text, n) => text.replace('{0}', n);

  const count = async () => {
    const waiting = (await Queue.of(me)).length;
    if (!onSheet) words.textContent = waiting ? say(words.dataset.count, waiting) : '';
    return waiting;
  };

  const send = async () => {
    clearTimeout(timer);
    if (busy) { again = true; return; }
    if (!(await Queue.of(me)).some(item => !item.refused)) return count();
    busy = true;
    again = false;
    const did = await Queue.send(me);
    busy = false;
    if (again) return send();
    pause = did.end === 'empty' || did.saved.length ? FIRST : Math.min(LAST, pause * 2);
    if (did.end === 'lost') timer = setTimeout(send, pause);
    if (did.end === 'out' && !onSheet) words.textContent = words.dataset.asleep; else await count();
  };
  addEventListener('online', () => { pause = FIRST; send(); });
  addEventListener('pageshow', send);
  document.addEventListener('visibilitychange', () => { if (!document.hidden) { pause = FIRST; send(); } });
  document.addEventListener('queue', () => { if (!busy) count(); });
  document.addEventListener('kept', () => {
    clearTimeout(timer);
    timer = setTimeout(send, pause);
    navigator.serviceWorker.ready.then(worker => worker.sync?.register('queue')).catch(() => { /* asked for by pages alone */ });
  });

  // A kept page holds an old form token; as soon as there is a signal its forms get one that holds.
  const renew = async () => {
    const token = await Queue.signal(me).catch(() => null);
    if (token) for (const box of document.querySelectorAll('input[name=_csrf]')) box.value = token;
  };
  if (document.documentElement.dataset.copy) { addEventListener('online', renew); renew(); }

  navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' }).then(() => navigator.serviceWorker.ready).then(worker => {
    const path = location.pathname;
    if (onSheet && !location.search && !document.documentElement.dataset.copy) worker.active.postMessage({ sheet: path, person: me });
  }).catch(() => { /* no worker here: pages need a signal, as before */ });

  // The way out: a full queue is told of first, and without a signal nobody is signed out.
  const out = document.querySelector('form[action="/sign-out"]');
  out?.addEventListener('submit', async event => {
    if (out.dataset.sure) return;
    event.preventDefault();
    const waiting = await count().catch(() => 0);
    if (!waiting) { out.dataset.sure = 'sure'; return out.requestSubmit(); }
    const note = document.createElement('p');
    note.className = 'queue-leaving';
    note.setAttribute('role', 'alert');
    note.textContent = say(words.dataset.leaving, waiting);
    out.querySelector('.queue-leaving')?.remove();
    out.prepend(note);
    out.querySelector('button').textContent = words.dataset.leave;
    out.dataset.sure = 'sure';
  });
})();
