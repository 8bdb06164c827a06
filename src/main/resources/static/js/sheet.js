// The rows of the day sheet as its form holds them; and a kept sheet (data-copy, see sw.js) as the day that is asked for.
// Before every script that reads the form, because the rows of a kept sheet may become another day's.
self.Sheet = (() => {
  const root = document.documentElement, form = document.querySelector('form.day'), words = document.querySelector('[data-queue-words]');
  if (!form || !words) return null;

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
  if (root.dataset.copy) {
    for (const old of document.querySelectorAll('.flash, .undo')) old.remove(); // draft.js would take it for the answer to a save
    asDay(wanted());
    words.textContent = words.dataset.copy;
  }

  // --- a kept sheet as another day's: its rows without what was saved on them
  function wanted() {
    return /^\/days\/([\d-]+)$/.exec(location.pathname)?.[1] ?? today();
  }
  // The shop's date: a phone may keep the time of another place.
  function today() {
    const dateIn = timeZone => Object.fromEntries(new Intl.DateTimeFormat('en-US', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' })
      .formatToParts(new Date()).map(part => [part.type, part.value]));
    let date;
    try { date = dateIn(form.dataset.zone); } catch { date = dateIn(); } // a zone that this browser does not know
    return `${date.year}-${date.month}-${date.day}`;
  }
  function asDay(date) {
    const held = new URL(form.action).pathname.split('/').pop();
    if (held === date) return;
    if (form.dataset.fixed) loosen();
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
    for (const part of document.querySelectorAll('.days, .inweek, .undo, .part, .flash, .row .why, .why-rows')) part.remove();
    if (date > today()) form.replaceChildren(Object.assign(document.createElement('p'), { textContent: form.dataset.future }));
    const name = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' }).format(new Date(`${date}T12:00`)).replace(',', '');
    document.querySelector('h1').textContent = location.pathname === '/' ? words.dataset.today.replace('{0}', name) : name;
  }

  /** A day that stands still has nothing to type in: the rows that it brings along for other days take the place of its own. */
  function loosen() {
    const spare = document.querySelector('[data-spare]')?.content.cloneNode(true);
    for (const { row } of rows()) row.remove();
    delete form.dataset.fixed;
    if (!spare) return;
    form.querySelector('.save').append(spare.querySelector('[data-spare-save]'));
    form.querySelector('.sheet').prepend(...spare.children);
  }

  return { BOXES, rows, first, settle, blank, fresh };
})();
