// A first reading of the hours as they are typed. The server reads them again and decides; this only shows what was heard.
//   <input data-hours id="h1">  <output class="heard" data-heard="h1"></output>
//   <output data-day-total></output> in the same form;  <input data-day-line> with <ul data-line-heard></ul>
(() => {
  const clock = text => {
    if (text === 'noon') return 720;
    const m = /^(\d{1,2})(?:[:.](\d{2}))?\s*(am|pm)?$/.exec(text);
    if (!m) return null;
    let hour = +m[1];
    const minute = +(m[2] ?? 0);
    if (m[3] && (hour < 1 || hour > 12)) return null;
    if (m[3]) hour = hour % 12 + (m[3] === 'pm' ? 12 : 0);
    return hour > 24 || minute > 59 ? null : hour * 60 + minute;
  };
  const minutes = raw => {
    const text = raw.trim().toLowerCase().replace(/\s+/g, ' ');
    let m;
    if ((m = /^(\d{1,2})(?:[.,](\d{1,2}))? ?h?$/.exec(text))) return Math.round(+`${m[1]}.${m[2] ?? 0}` * 60);
    if ((m = /^[.,](\d{1,2}) ?h?$/.exec(text))) return Math.round(+`0.${m[1]}` * 60);
    if ((m = /^(\d{1,2}):([0-5]\d)$/.exec(text))) return +m[1] * 60 + +m[2];
    if ((m = /^(\d{1,2}) ?h ?([0-5]?\d) ?m?(?:in)?$/.exec(text))) return +m[1] * 60 + +m[2];
    if ((m = /^(\d{1,4}) ?m(?:in)?$/.exec(text))) return +m[1];
    if ((m = /^(.+?) ?[-–] ?(.+)$/.exec(text))) {
      const from = clock(m[1]), to = clock(m[2]);
      return from !== null && to !== null && to > from ? to - from : null;
    }
    return null;
  };
  const say = total => total < 60 ? `${total} min` : `${Math.floor(total / 60)} h${total % 60 ? ` ${String(total % 60).padStart(2, '0')}` : ''}`;
  const heardIn = part => {
    const words = part.trim().split(/\s+/);
    for (const size of [3, 2, 1]) for (let i = 0; i + size <= words.length; i++) {
      const found = minutes(words.slice(i, i + size).join(' '));
      if (found !== null) return [found, [...words.slice(0, i), ...words.slice(i + size)].join(' ')];
    }
    return [null, part.trim()];
  };
  // A comma between digits with no space is a decimal one; every other comma parts two entries.
  const parts = line => line.split(/,(?!\d)|(?<!\d),/).map(p => p.trim()).filter(Boolean);

  const show = form => {
    let total = 0;
    for (const box of form.querySelectorAll('[data-hours]')) {
      const read = box.value.trim() ? minutes(box.value) : 0;
      total += read ?? 0;
      const out = form.querySelector(`[data-heard="${CSS.escape(box.id)}"]`);
      if (!out) continue;
      out.textContent = box.value.trim() ? (read === null ? out.dataset.unclear ?? 'not clear yet' : say(read)) : '';
      out.classList.toggle('unclear', read === null);
    }
    for (const fixed of form.querySelectorAll('[data-minutes]')) total += +fixed.dataset.minutes;
    const line = form.querySelector('[data-day-line]'), list = form.querySelector('[data-line-heard]');
    if (line && list) list.replaceChildren(...parts(line.value).map(part => {
      const [read, rest] = heardIn(part), item = document.createElement('li'), how = document.createElement('b');
      total += read ?? 0;
      how.textContent = read === null ? list.dataset.unclear ?? 'how long?' : say(read);
      item.classList.toggle('unclear', read === null);
      item.append(rest || '…', how);
      return item;
    }));
    for (const out of form.querySelectorAll('[data-day-total]')) out.textContent = say(total);
  };
  for (const form of document.querySelectorAll('form:has([data-day-total])')) {
    form.addEventListener('input', () => show(form));
    show(form);
  }
})();
