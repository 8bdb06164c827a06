// Saves that wait on this phone for a signal. Used by the pages and by the service worker (sw.js).
//   { n, person, path, rows: [{ id, version, what, class, time, note, reason, title }], fields: [[name, value]], refused, page }
// n numbers them as they were saved and they go out in that order; `refused` holds what the server said against one, `page`
// the page it said it on, as long as only the worker, which cannot read pages, has seen it.
// Ids are made before the first sending, so whatever reached the server already is only repeated (src/docs/adr/0009).
self.Queue = (() => {
  const ANSWER = 20000; // ms until an answer counts as lost
  let opened;
  const base = () => opened ??= new Promise((done, fail) => {
    const ask = indexedDB.open('tallywright', 1);
    ask.onupgradeneeded = () => {
      ask.result.createObjectStore('save', { keyPath: 'n', autoIncrement: true }).createIndex('person', 'person');
      ask.result.createObjectStore('note');
    };
    ask.onerror = () => { opened = null; fail(ask.error); };
    ask.onsuccess = () => {
      ask.result.onversionchange = ask.result.onclose = () => { ask.result.close(); opened = null; };
      done(ask.result);
    };
  });
  const within = async (store, mode, work) => {
    const change = (await base()).transaction(store, mode, { durability: 'strict' });
    return new Promise((done, fail) => {
      const ask = work(change.objectStore(store));
      change.oncomplete = () => done(ask.result);
      change.onabort = () => fail(change.error);
    });
  };
  const others = new BroadcastChannel('tallywright-queue');
  const tell = () => self.document?.dispatchEvent(new Event('queue'));
  const changed = () => { tell(); others.postMessage('changed'); };
  others.onmessage = tell;
  const write = async work => { const result = await within('save', 'readwrite', work); changed(); return result; };

  const keep = item => write(all => all.put(item));
  // Not if it was thrown away or taken back into the form meanwhile.
  const rekeep = item => write(all => {
    const there = all.get(item.n);
    there.onsuccess = () => there.result && all.put(item);
    return there;
  });
  const drop = n => write(all => all.delete(n));
  const of = async person => (await within('save', 'readonly', all => all.index('person').getAll(person))).map(read);
  const note = (key, value) => value === undefined
    ? within('note', 'readonly', all => all.get(key)) : within('note', 'readwrite', all => all.put(value, key));

  const sentences = html => [...new Set([...new DOMParser().parseFromString(html, 'text/html')
    .querySelectorAll('.summary li, .error, .ask p, main > p')].map(e => e.textContent.trim()).filter(Boolean))];
  const read = item => {
    if (item.page && self.DOMParser) { item.refused = sentences(item.page); delete item.page; }
    return item;
  };

  const fields = item => {
    const all = [...item.fields ?? []];
    (item.rows ?? []).forEach((row, at) => {
      for (const box of ['id', 'version', 'what', 'class', 'time', 'note', 'reason']) all.push([`row.${at}.${box}`, row[box] ?? '']);
      if (row.pick) all.push([`row.${at}.pick`, '1']);
    });
    return all;
  };

  // null where nobody is signed in; throws where there is no signal.
  const signal = async person => {
    const answer = await fetch('/signal', { headers: { 'Queued-By': person }, cache: 'no-store', redirect: 'error', signal: AbortSignal.timeout(ANSWER) });
    if (answer.status === 204 || answer.status === 403) return null;
    if (answer.status !== 200 || !answer.headers.has('Tallywright-Person')) throw new Error('no signal');
    return (await answer.json()).token;
  };

  // 'saved', 'refused', or 'out' where it is not this person who is signed in; throws where there is no answer.
  const post = async (item, token, when) => {
    const body = new URLSearchParams([...fields(item), ['_csrf', token]]);
    const answer = await fetch(item.path, { method: 'POST', body, redirect: 'error', signal: AbortSignal.timeout(ANSWER),
      headers: { 'Queued-By': item.person, Queued: when } });
    const to = answer.headers.get('Went-To');
    if (to) {
      const led = new URL(to, location.origin);
      item.to = led.pathname + led.search;
      return led.pathname === '/sign-in' ? 'out' : 'saved';
    }
    if (answer.status === 403) return 'out';
    // A page that is not ours is a gate on the way, a 5xx may pass: both are no answer.
    if (answer.status >= 500 || !answer.headers.has('Tallywright-Person')) throw new Error(`no answer: ${answer.status}`);
    const html = await answer.text();
    item.refused = [];
    item.page = /<main[^]*<\/main>/.exec(html)?.[0] ?? html;
    read(item);
    return 'refused';
  };

  // A later save of the same row was typed over what an earlier one made of it; the sheet says which version that is.
  const onward = async item => {
    const mine = new Set((item.rows ?? []).map(row => row.id));
    const later = (await of(item.person)).filter(next => next.n > item.n && next.rows?.some(row => mine.has(row.id)));
    if (!later.length) return;
    const sheet = await (await fetch(item.path, { cache: 'no-store', redirect: 'error', signal: AbortSignal.timeout(ANSWER) })).text();
    const values = {}, versions = {};
    for (const [tag] of sheet.matchAll(/<input[^>]*>/g)) {
      const name = /\sname="(row\.\d+\.(?:id|version))"/.exec(tag)?.[1];
      if (name) values[name] = /\svalue="([^"]*)"/.exec(tag)?.[1] ?? '';
    }
    for (const name in values) if (name.endsWith('.id')) versions[values[name]] = values[name.replace(/id$/, 'version')];
    for (const next of later) {
      for (const row of next.rows) { // only the version that our own save made: an edit by somebody else is not typed over
        const sent = item.rows.find(one => one.id === row.id);
        if (sent && row.version !== '' && row.version === sent.version && [+sent.version, +sent.version + 1].includes(+versions[row.id])) row.version = versions[row.id];
      }
      await rekeep(next);
    }
  };

  // Sends one after another, each until it is answered. One sender at a time, whatever pages are open.
  const sending = async (person, when, token) => {
    const did = { saved: [], refused: [], end: 'empty' };
    let last = -1;
    try {
      for (;;) {
        const item = (await of(person)).find(next => !next.refused && next.n > last);
        if (!item) return did;
        last = item.n;
        token ??= await signal(person);
        let became = token ? await post(item, token, when) : 'out';
        if (became === 'out' && token) {
          token = await signal(person);
          became = token ? await post(item, token, when) : 'out';
        }
        if (became === 'out') { did.end = 'out'; return did; }
        did[became].push(item);
        if (became === 'refused') await rekeep(item);
        else { await onward(item); await drop(item.n); }
      }
    } catch (lost) {
      did.end = 'lost';
      return did;
    }
  };
  const send = (person, when = 'later', token) => navigator.locks
    ? navigator.locks.request('tallywright-queue', () => sending(person, when, token)) : sending(person, when, token);

  return { keep, drop, of, note, send, signal, fields };
})();
