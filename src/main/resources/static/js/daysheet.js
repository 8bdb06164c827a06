// A first reading of the hours as they are typed. The server reads them again and decides; this only shows what was heard.
//   <input data-hours id="h1">  <output class="heard" data-heard="h1"></output>
//   <output data-day-total></output> in the same form;  <input data-day-line> with <ul data-line-heard></ul>
//   data-minutes="135" on a row that cannot be changed is added to the total.
(() => {
  const DAY = 1440;
  const FRACTIONS = { '½': '1/2', '¼': '1/4', '¾': '3/4', '⅓': '1/3', '⅔': '2/3', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' };
  const tidy = text => text.replace(/(\d?)([½¼¾⅓⅔⅛⅜⅝⅞])/g, (_, d, f) => (d && d + ' ') + FRACTIONS[f])
    .replace(/[‐‑‒–—−]/g, '-').replace(/\s+/g, ' ').trim().toLowerCase();

  const number = text => {
    let m = /^(?:(\d+)(?: |-| - ))?(\d{1,4})\/(\d{1,4})$/.exec(text);
    if (m) return +m[3] ? +(m[1] ?? 0) + m[2] / m[3] : null;
    m = /^(\d*)(?:[.,](\d*))?$/.exec(text);
    return m && /\d/.test(text) && !/,$/.test(text) ? +`${m[1] || 0}.${m[2] || 0}` : null;
  };

  const time = (words, half) => {
    if (/^(noon|midday)$/.test(words)) return { at: 720, pm: true, fixed: true };
    if (words === 'midnight') return { at: 0, fixed: true };
    const [hour, minute = 0] = words.split(/[:.]/).map(Number);
    if (minute > 59 || hour > 24 || (hour === 24 && minute) || (half && (hour < 1 || hour > 12))) return null;
    if (half) return { at: (hour % 12 + (half === 'p' ? 12 : 0)) * 60 + minute, pm: half === 'p', half: true, fixed: true };
    return { at: hour % 24 * 60 + minute, fixed: hour > 12 || hour === 0 || words.startsWith('0') };
  };

  // An end that is not after its start is moved to the afternoon; a start from 1 to 4 is an afternoon hour.
  const TIME = '(noon|midday|midnight|\\d{1,2}(?:[:.]\\d{2})?)(?: ?([ap])\\.?(?:m\\.?)?)?';
  const RANGE = new RegExp(`^(?:from )?${TIME} ?(?:-|to|till?|until) ?${TIME}$`);
  const range = text => {
    const m = RANGE.exec(text);
    if (!m) return null;
    const start = time(m[1], m[2]), end = time(m[3], m[4]);
    if (!start || !end) return null;
    let from = start.at, to = end.fixed && !end.at ? DAY : end.at;
    if (!start.fixed && end.pm && from < 720 && from + 720 < to) from += 720;
    else if (!start.fixed && !end.pm && !end.half && from >= 60 && from < 300) from += 720;
    if (!end.fixed && to <= from && to < 720 && to + 720 > from) to += 720;
    return to > from ? to - from : null;
  };

  const H = '(?:h|hrs?|hours?)\\.?', M = '(?:m|mins?|minutes?)\\.?';
  const CLOCK = new RegExp(`^(\\d{1,2}):(\\d{1,2})(?: ?${H})?$`);
  const BOTH = new RegExp(`^(\\d{1,2}) ?${H}(?: and)? ?(\\d{1,2})(?: ?${M})?$`);
  const MINUTES = new RegExp(`^(.+?) ?${M}$`), HOURS = new RegExp(`^(.+?) ?${H}$`);
  const length = text => {
    let m = CLOCK.exec(text) ?? BOTH.exec(text);
    if (m) return +m[2] < 60 ? +m[1] * 60 + +m[2] : null;
    m = MINUTES.exec(text);
    const read = m ? number(m[1]) : number(HOURS.exec(text)?.[1] ?? text);
    return read === null ? null : Math.round(m ? read : read * 60);
  };

  const minutes = raw => {
    const text = tidy(raw);
    const parts = BOTH.test(text) ? [text] : text.split(/ ?(?:\+|&|\band\b) ?/);
    const ranges = parts.map(range);
    const found = ranges.every(r => r !== null) ? ranges : ranges.some(r => r !== null) ? [null] : parts.map(length);
    const total = found.includes(null) ? 0 : found.reduce((a, b) => a + b, 0);
    return total > 0 && total <= DAY ? total : null;
  };

  // In a line a time with a unit, a colon or a range counts wherever it stands, a bare number only at the end.
  const plain = text => /^\d{1,2}:\d{1,2}$|\d ?(h|m)|(\d|noon|midday|midnight)( ?[ap]m?)? ?(-|to|till?|until) ?(\d|noon|mid)/.test(text) && !/^[a-z]/.test(text.replace(/^(from|noon|midday|midnight)/, ''));
  const heardIn = part => {
    const words = part.split(/\s+/);
    for (let i = 0; i < words.length; i++) for (let j = Math.min(words.length, i + 9); j > i; j--) {
      const text = words.slice(i, j).join(' ');
      if (plain(tidy(text)) && minutes(text) !== null) return [minutes(text), [...words.slice(0, i), ...words.slice(j)].join(' ')];
    }
    for (const size of [2, 1]) {
      const text = words.slice(-size).join(' ');
      if ((size === 1 || /^\d{1,2} \d\/\d$/.test(text)) && minutes(text) !== null) return [minutes(text), words.slice(0, -size).join(' ')];
    }
    return [null, part];
  };
  const parts = line => line.split(/[;\n]|,(?!\d)|(?<!\d),/).map(p => p.trim()).filter(Boolean);
  const say = all => all < 60 ? `${all} min` : `${Math.floor(all / 60)} h${all % 60 ? ` ${String(all % 60).padStart(2, '0')}` : ''}`;

  const show = form => {
    let total = 0;
    for (const box of form.querySelectorAll('[data-hours]')) {
      const typed = box.value.trim(), read = typed ? minutes(typed) : 0;
      total += read ?? 0;
      const out = form.querySelector(`[data-heard="${CSS.escape(box.id)}"]`);
      if (!out) continue;
      out.textContent = !typed ? '' : read === null ? out.dataset.unclear ?? 'not clear yet' : say(read);
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
  for (const form of document.querySelectorAll('form')) {
    if (!form.querySelector('[data-day-total], [data-heard], [data-day-line]')) continue;
    form.addEventListener('input', () => show(form));
    show(form);
  }
})();
