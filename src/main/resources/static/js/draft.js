// Keeps, for each person apart, what is typed in <form data-draft="name"> on this device until the server says that it is saved.
// The hidden id that the page made is kept too (data-kept): a save whose answer was lost is then a repeat, not a second entry.
(() => {
  const store = key => `tallywright.draft.${document.documentElement.dataset.person ?? ''}.${key}`;
  const read = key => { try { return JSON.parse(localStorage.getItem(store(key))); } catch { return null; } };
  const drop = key => { try { localStorage.removeItem(store(key)); } catch { /* no storage: nothing kept */ } };
  const boxes = form => [...form.elements].filter(e => e.name && !e.name.startsWith('_')
    && (e.type !== 'hidden' || e.name === 'id' || 'kept' in e.dataset) && !['password', 'file', 'submit', 'button', 'fieldset'].includes(e.type));
  const isTick = e => e.type === 'checkbox' || e.type === 'radio';
  const now = e => isTick(e) ? e.checked : e.value;
  const first = e => isTick(e) ? e.defaultChecked
    : e.tagName === 'SELECT' ? ([...e.options].find(o => o.defaultSelected) ?? e.options[0])?.value ?? '' : e.defaultValue;
  // A box in a row is known by its row (data-row), not by its number: rows may stand in another order next time.
  const name = e => { const row = e.closest('[data-row]'); return row ? `${row.dataset.row} ${e.name.split('.').pop()}` : e.name; };
  const label = e => isTick(e) ? `${name(e)}=${e.value}` : name(e);

  // What was sent is forgotten only when a page comes back that says so.
  const sent = (() => { try { return sessionStorage.getItem('tallywright.sent'); } catch { return null; } })();
  if (sent && document.querySelector('[data-saved]')) { drop(sent); sessionStorage.removeItem('tallywright.sent'); }

  for (const form of document.querySelectorAll('form[data-draft]')) {
    const key = form.dataset.draft;
    const kept = read(key);
    if (kept && !form.querySelector('[data-refused]')) offer(form, key, kept);
    const keep = () => {
      const typed = {};
      for (const e of boxes(form)) if (e.type === 'hidden' || now(e) !== first(e)) typed[label(e)] = [first(e), now(e)];
      try { localStorage.setItem(store(key), JSON.stringify(typed)); } catch { /* full or forbidden: the form still works */ }
    };
    form.addEventListener('input', keep);
    form.addEventListener('change', keep);
  }

  // Only the answer to this very form may forget its draft: any other form sent meanwhile clears the note.
  document.addEventListener('submit', event => {
    try { sessionStorage.setItem('tallywright.sent', event.target.dataset.draft ?? ''); } catch { /* as above */ }
  });

  // Buttons that name a row by its id name it by the kept one too.
  function rename(form, e, id) {
    if (e.value) for (const button of form.querySelectorAll(`button[value*="${CSS.escape(e.value)}"]`)) button.value = button.value.replace(e.value, id);
    e.value = id;
  }

  function offer(form, key, kept) {
    let put = 0;
    for (const e of boxes(form)) {
      const [was, typed] = kept[label(e)] ?? [];
      if (typed === undefined) continue;
      if (e.type === 'hidden') { if (!boxes(form).some(o => o !== e && o.value === typed)) rename(form, e, typed); continue; }
      if (first(e) !== was || now(e) !== first(e)) continue; // changed on the server since: the server's stays
      if (isTick(e)) e.checked = typed; else e.value = typed;
      put++;
    }
    if (!put) return drop(key);
    const note = document.createElement('p');
    note.className = 'kept';
    note.setAttribute('role', 'status');
    note.append(form.dataset.draftNote ?? 'Typed here before and not saved yet.');
    const away = document.createElement('button');
    away.type = 'button';
    away.className = 'button bare';
    away.textContent = form.dataset.draftAway ?? 'Throw it away';
    away.addEventListener('click', () => { drop(key); location.reload(); });
    note.append(' ', away);
    form.prepend(note);
    form.dispatchEvent(new Event('input', { bubbles: true }));
  }
})();
