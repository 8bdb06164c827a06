// The day sheet without a signal: a save is first kept on this phone, then sent; what waits is shown on the sheet it was typed on.
// Before the scripts that read the form, because a kept sheet may have to become another day's.
(() => {
  const root = document.documentElement, me = root.dataset.person, form = document.querySelector('form.day');
  const words = document.querySelector('[data-queue-words]'), say = words?.dataset;
  if (!me || !form || !say || !self.indexedDB || !navigator.serviceWorker) return;

  const BOXES = ['what', 'class', 'time', 'note', 'reason'];
  const fresh = () => crypto.randomUUID();
  const boxesOf = row => Object.fromEntries([...row.querySelectorAll('[name^="row."]')].map(box => [box.name.split('.').pop(), box]));
  const rows = () => [...form.querySelectorAll('.sheet > .row')].map(row => ({ row, ...boxesOf(row) })).filter(row => row.id && row.time);
  const first = box => box.tagName === 'SELECT' ? ([...box.options].find(o => o.defaultSelected) ?? box.options[0])?.value ?? '' : box.defaultValue;
  const settle = (box, value) => {
    box.dataset.first ??= first(box);
    box.value = value;
    if (box.tagName === 'SELECT') for (const option of box.options) option.defaultSelected = option.selected;
    else box.defaultValue = value;
  };
  const blank = row => {
    row.id.value = fresh();
    settle(row.version, '');
    for (const name of ['time', 'note', 'reason']) settle(row[name], '');
    if (row.pick) settle(row.what, '');
    delete row.row.dataset.state;
    row.row.querySelector('.row-state')?.remove();
    row.row.querySelector('.row-more')?.removeAttribute('open');
  };
  const heard = () => form.dispatchEvent(new Event('input', { bubbles: true }));

  if (root.dataset.copy) {
    for (const old of document.querySelectorAll('.flash, .undo')) old.remove(); // draft.js would take it for the answer to a save
    asDay(wanted());
    words.textContent = say.copy;
  }
  const path = new URL(form.action).pathname + new URL(form.action).search;
  const here = location.pathname === '/' ? '/' : path; // a refused mark or undo is answered where nothing can be opened

  // --- a kept sheet as another day's: its rows without what was saved on them
  function wanted() {
    const now = new Date(), two = n => String(n).padStart(2, '0');
    return /^\/days\/([\d-]+)$/.exec(location.pathname)?.[1] ?? `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  }
  function asDay(date) {
    const held = new URL(form.action).pathname.split('/').pop();
    if (held === date) return;
    const seen = new Set();
    for (const row of rows()) {
      const what = row.pick ? 'pick' : row.what.value;
      if (seen.has(what)) { row.row.remove(); continue; }
      seen.add(what);
      if (row.version.value && row.class.tagName === 'SELECT') settle(row.class, row.class.options[0].value);
      blank(row);
    }
    form.setAttribute('action', `/days/${date}`);
    form.dataset.draft = form.dataset.draft.replace(held, date);
    for (const part of document.querySelectorAll('.days, .undo, .part, .flash')) part.remove();
    const name = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' }).format(new Date(`${date}T12:00`)).replace(',', '');
    document.querySelector('h1').textContent = location.pathname === '/' ? say.today.replace('{0}', name) : name;
  }

  // --- from the form to the queue
  const title = row => {
    if (row.pick) {
      const chosen = row.what.selectedOptions[0], group = chosen?.parentElement.label;
      return chosen?.value ? [chosen.textContent, group].filter(Boolean).join(' · ') : '';
    }
    const label = row.row.querySelector('label').cloneNode(true);
    for (const extra of label.querySelectorAll('.row-state, .tag')) extra.remove();
    return [...label.childNodes].map(part => part.textContent.trim()).filter(Boolean).join(' · ');
  };
  // Where the sheet came back from the server, what stands in its boxes was typed and is not what is stored.
  const touched = row => row.version.value
    ? 'typed' in form.dataset || BOXES.some(name => row[name].value !== first(row[name]))
    : ['time', 'note', 'reason'].some(name => row[name].value.trim());
  const read = () => {
    const typed = rows().filter(row => touched(row) || row.row.dataset.state === 'refused').map(row => ({
      id: row.id.value, version: row.version.value, pick: row.pick ? 1 : 0, title: title(row),
      ...Object.fromEntries(BOXES.map(name => [name, row[name].value])) }));
    const fields = [...form.querySelectorAll('input[name=yes]')].filter(tick => tick.type === 'hidden' || tick.checked).map(tick => ['yes', tick.value]);
    const line = form.elements.line?.value.trim();
    if (line) fields.push(['line', line]);
    return typed.length || line ? { person: me, path, rows: typed, fields } : null;
  };

  // A refused save that was opened on this page: what is saved here takes its place.
  const answered = () => { try { return JSON.parse(sessionStorage.getItem('tallywright.answering')); } catch { return null; } };
  const unanswer = () => { answering = null; sessionStorage.removeItem('tallywright.answering'); };
  let answering = answered();
  if (answering?.path !== path || !('typed' in form.dataset)) unanswer();
  const answer = item => sessionStorage.setItem('tallywright.answering', JSON.stringify({ n: item.n, path }));

  let saving = false, leaving = false;
  form.addEventListener('submit', event => {
    if (leaving) return event.preventDefault(); // the page is about to be another; the draft brings back what was typed
    const act = event.submitter?.name === 'act' ? event.submitter.value : 'save';
    if (form.dataset.plain || act !== 'save') return;
    const item = read();
    if (!item) return;
    if (event.submitter?.name === 'yes') item.fields.push(['yes', event.submitter.value]); // a question, answered in one tap
    event.preventDefault();
    if (saving) return;
    saving = true;
    form.setAttribute('aria-busy', 'true');
    save(item).finally(() => { saving = false; form.removeAttribute('aria-busy'); });
  });

  async function save(item) {
    if (answering) item.n = answering.n;
    try {
      item.n = await Queue.keep(item);
    } catch {
      return plainly(); // nothing can be kept here: as without script
    }
    const did = await Queue.send(me, 'now', root.dataset.copy ? undefined : form.elements._csrf.value);
    const saved = did.saved.find(done => done.n === item.n) ?? ((await Queue.of(me)).some(left => left.n === item.n) ? null : { to: here });
    if (saved) { // here, or by the worker or another page that was faster
      sessionStorage.removeItem('tallywright.answering');
      mine.delete(item.n);
      leaving = true;
      location.assign(saved.to);
    } else if (did.refused.some(done => done.n === item.n)) {
      answer(item);
      plainly(); // the server's own page says what is wrong, beside each box
    } else {
      unanswer();
      forgetDraft();
      for (const row of rows()) if (item.rows.some(kept => kept.id === row.id.value))
        row.version.value ? BOXES.forEach(name => settle(row[name], row[name].value)) : blank(row);
      if (form.elements.line) settle(form.elements.line, '');
      words.textContent = did.end === 'out' ? say.asleep : say.kept;
      document.dispatchEvent(new Event('kept'));
      await show();
      words.scrollIntoView({ block: 'nearest' });
    }
  }
  function plainly() {
    form.dataset.plain = 'plain';
    form.requestSubmit(form.querySelector('button[name=act][value=save]'));
  }
  function forgetDraft() {
    try { localStorage.removeItem(`tallywright.draft.${me}.${form.dataset.draft}`); } catch { /* nothing was kept */ }
  }

  // --- what waits, on the sheet it was typed on
  const list = document.createElement('section');
  list.className = 'queue';
  list.hidden = true;
  form.prepend(list);
  const make = (tag, text, more = {}) => Object.assign(document.createElement(tag), { textContent: text }, more);
  const button = (text, work) => {
    const made = make('button', text, { type: 'button', className: 'button second' });
    made.addEventListener('click', () => work(made));
    return made;
  };
  const mine = new Set();
  let changing;

  async function show() {
    const items = (await Queue.of(me)).filter(item => item.path === path && item.n !== answering?.n);
    const there = new Set(items.map(item => item.n));
    const gone = [...mine].some(n => !there.has(n));
    mine.clear();
    there.forEach(n => mine.add(n));
    list.hidden = !items.length;
    const sheet = make('div', '', { className: 'sheet' });
    sheet.append(...items.map(card));
    list.replaceChildren(make('h2', say.title), sheet);
    for (const item of items) for (const row of item.rows) if (row.version) inBoxes(row); else if (item.n !== changing) apart(row);
    heard();
    if (gone && !saving) settled();
  }

  // An entry that was saved before shows in its own row what waits for it.
  function inBoxes(kept) {
    const row = rows().find(each => each.id.value === kept.id);
    if (!row || touched(row)) return;
    for (const name of BOXES) settle(row[name], kept[name]);
    row.row.dataset.state = 'queued';
    const state = row.row.querySelector('.row-state');
    if (state) state.textContent = say.waits;
  }

  // A new entry that waits already, brought into another tab by its draft, must not be saved there as an edit of the first.
  function apart(kept) {
    const row = rows().find(each => each.id.value === kept.id && !each.version.value);
    if (!row || 'typed' in form.dataset) return;
    if (BOXES.every(name => row[name].value === kept[name])) blank(row); else row.id.value = fresh();
  }

  function card(item) {
    const box = make('div', '', { className: 'row words' });
    box.dataset.state = item.refused ? 'refused' : 'queued';
    const name = make('span', '');
    const lines = item.rows.map(row => [row.title, row.time || say.off]);
    const line = item.fields.find(([field]) => field === 'line');
    if (line) lines.push([line[1], '']);
    name.append(...lines.flatMap(([what, time], at) => [at ? document.createElement('br') : '', what, time ? ' · ' : '', time ? make('b', time) : '']));
    name.append(document.createElement('br'), make('span', item.refused ? say.refused : say.waits, { className: 'row-state' }));
    box.append(name);
    for (const row of item.rows) if (!row.version && row.time) {
      const counted = make('input', '', { type: 'hidden', value: row.time }); // the day's total hears it too
      counted.dataset.hours = '';
      box.append(counted);
    }
    const actions = make('div', '', { className: 'actions' });
    if (item.refused) {
      const why = make('ul', '');
      why.append(...item.refused.map(sentence => make('li', sentence)));
      box.append(why);
      actions.append(button(say.look, () => look(item)));
    } else if (item.rows.length === 1 && !line && place(item.rows[0])) actions.append(button(say.change, () => change(item)));
    actions.append(button(say.away, me => {
      if (me.dataset.sure) { mine.delete(item.n); Queue.drop(item.n).then(show); }
      me.dataset.sure = 'sure';
      me.textContent = say.sure;
    }));
    box.append(actions);
    return box;
  }

  /** Opens a refused save as if it had just been sent: the server's page says beside each box what is wrong. */
  async function look(item) {
    const token = await Queue.signal(me).catch(() => null);
    if (!token) { words.textContent = say.waits; return; }
    answer(item);
    const sent = make('form', '', { method: 'post', action: item.path, hidden: true });
    for (const [name, value] of [...Queue.fields(item), ['act', 'save'], ['_csrf', token]]) sent.append(make('input', '', { type: 'hidden', name, value }));
    document.body.append(sent);
    sent.submit();
  }

  const place = kept => rows().find(row => row.id.value === kept.id)
    ?? rows().find(row => !row.pick && !row.version.value && row.what.value === kept.what && !row.time.value)
    ?? rows().find(row => row.pick && !row.time.value && [...row.what.options].some(option => option.value === kept.what));
  async function change(item) {
    const [kept] = item.rows, row = place(kept);
    if (!row) return show();
    changing = item.n;
    row.id.value = kept.id;
    for (const name of BOXES) {
      if (row.version.value) settle(row[name], row[name].dataset.first ?? first(row[name]));
      row[name].value = kept[name];
    }
    heard(); // kept as a draft before it leaves the queue
    mine.delete(item.n);
    await Queue.drop(item.n);
    await show();
    row.time.focus();
  }

  /** What waited is saved: the sheet is shown as it is now, unless something is being typed on it. */
  function settled() {
    if (!rows().some(touched) && !form.elements.line?.value.trim()) { leaving = true; root.dataset.leaving = ''; return location.replace(here); }
    words.replaceChildren(say.sent, ' ', make('a', say.fresh, { href: here }));
  }

  document.addEventListener('queue', () => { if (!saving) show(); });
  addEventListener('pageshow', event => {
    if (event.persisted) { leaving = false; delete form.dataset.plain; delete root.dataset.leaving; }
    show();
  });
})();
