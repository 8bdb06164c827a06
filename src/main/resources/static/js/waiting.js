// The day sheet without a signal: a save is first kept on this phone, then sent; what waits is shown on the sheet it was typed on.
// After sheet.js, which knows its rows; before the scripts that read the form.
(() => {
  const root = document.documentElement, me = root.dataset.person, form = document.querySelector('form.day');
  const words = document.querySelector('[data-queue-words]'), say = words?.dataset;
  if (!me || !form || !say || !self.Sheet || !self.indexedDB || !navigator.serviceWorker) return;

  const { BOXES, rows, first, settle, blank, fresh } = Sheet;
  const heard = () => form.dispatchEvent(new Event('input', { bubbles: true }));

  const path = new URL(form.action).pathname + new URL(form.action).search;
  const here = location.pathname === '/' ? '/' : path; // a refused mark or undo is answered where nothing can be opened

  // --- from the form to the queue
  const title = row => {
    if (row.pick) {
      const chosen = row.what.selectedOptions[0], group = chosen?.parentElement.label;
      return chosen?.value ? [chosen.textContent, group].filter(Boolean).join(' · ') : '';
    }
    const label = row.row.querySelector('label').cloneNode(true);
    for (const extra of label.querySelectorAll('.row-state, .tag, .why')) extra.remove();
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

  // A refused save that was opened on this page: what is saved here takes its place. Where the form goes off by itself (`sent`),
  // the page that comes back tells: it says that it saved, and the rows stand on it as saved ones.
  const answered = () => { try { return JSON.parse(sessionStorage.getItem('tallywright.answering')); } catch { return null; } };
  const unanswer = () => { answering = null; sessionStorage.removeItem('tallywright.answering'); };
  const answer = (item, sent) => sessionStorage.setItem('tallywright.answering', JSON.stringify({ n: item.n, path, sent }));
  const newIn = item => (item?.rows ?? []).filter(row => !row.version).map(row => row.id);
  const came = sent => sent && document.querySelector('[data-saved]')
    && sent.every(id => rows().some(row => row.id.value === id && row.version.value));
  let answering = answered();
  const done = answering?.path === path && came(answering.sent) ? Queue.drop(answering.n).catch(() => { /* shown again */ }) : null;
  if (answering?.path !== path || !('typed' in form.dataset)) unanswer();

  // What the clock came to is put in by the server, or not at all.
  // On a kept page its boxes are out of sight; what a draft brought back into them waits there, and the hours are kept without it.
  const ofClock = () => !root.dataset.copy && [...form.querySelectorAll('[name=take], [name^="ended."]')].some(box => box.value.trim());
  let saving = false, leaving = false;
  const leave = away => { leaving = true; root.dataset.leaving = ''; away(); };
  form.addEventListener('submit', event => {
    if (leaving) return event.preventDefault(); // the page is about to be another; the draft brings back what was typed
    const act = event.submitter?.name === 'act' ? event.submitter.value : 'save';
    if (form.dataset.plain || act !== 'save' || ofClock()) {
      if (answered()) answer(answered(), newIn(read()));
      return;
    }
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
      leave(() => location.assign(saved.to));
    } else if (did.refused.some(done => done.n === item.n)) {
      answer(item);
      plainly(); // the server's own page says what is wrong, beside each box
    } else {
      unanswer();
      went = false;
      delete form.dataset.typed;
      for (const old of form.querySelectorAll('.summary, .row .error, .ask')) old.remove(); // said of what was typed before
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
  let changing, went = false;

  async function show() {
    await done;
    const items = (await Queue.of(me)).filter(item => item.path === path && item.n !== answering?.n);
    const there = new Set(items.map(item => item.n));
    const gone = [...mine].some(n => !there.has(n));
    mine.clear();
    there.forEach(n => mine.add(n));
    list.hidden = !items.length;
    const sheet = make('div', '', { className: 'sheet' });
    sheet.append(...items.map(card));
    list.replaceChildren(make('h2', say.title), sheet);
    const edits = items.flatMap(item => item.rows.filter(row => row.version).map(row => ({ ...row, said: item.refused ? say.refused : say.waits })));
    for (const row of rows()) if (row.row.dataset.state === 'queued' && row.row.dataset.was && !edits.some(kept => kept.id === row.id.value)) outOfBoxes(row);
    for (const kept of edits) inBoxes(kept);
    for (const item of items) if (item.n !== changing) item.rows.filter(row => !row.version).forEach(apart);
    heard();
    went ||= gone;
    if (went && !saving) settled(items.some(item => !item.refused));
  }

  // An entry that was saved before shows in its own row what waits for it.
  function inBoxes(kept) {
    const row = rows().find(each => each.id.value === kept.id);
    if (!row || touched(row)) return;
    for (const name of BOXES) settle(row[name], kept[name]);
    row.row.dataset.was ??= row.row.dataset.state;
    row.row.dataset.state = 'queued';
    const state = row.row.querySelector('.row-state');
    if (!state) return;
    state.dataset.was ??= state.textContent;
    state.textContent = kept.said;
  }

  // Nothing waits for it any more: the row says again what the server said, beside what is typed in it now.
  function outOfBoxes(row) {
    if (!touched(row)) for (const name of BOXES) settle(row[name], row[name].dataset.first ?? first(row[name]));
    row.row.dataset.state = row.row.dataset.was;
    const state = row.row.querySelector('.row-state');
    if (state?.dataset.was) state.textContent = state.dataset.was;
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
    answer(item, newIn(item));
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

  /** What waited is saved: the sheet is shown as it is now, unless more of it is still to go or something is being typed on it. */
  function settled(more) {
    if (leaving) return;
    if (!more && !rows().some(touched) && !form.elements.line?.value.trim()) return leave(() => location.replace(here));
    words.replaceChildren(say.sent, ' ', make('a', say.fresh, { href: here }));
  }

  document.addEventListener('queue', () => { if (!saving) show(); });
  addEventListener('pageshow', event => {
    if (event.persisted) { leaving = false; delete form.dataset.plain; delete root.dataset.leaving; }
    show();
  });
})();
