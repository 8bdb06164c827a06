// <form method="get" data-live="ID">: the figures in the element ID follow the form as it changes; nothing is sent but the question.
// data-live-at="ADDRESS": a form that is posted for something else asks there, about the boxes in data-live-boxes. data-live-stays: its
// buttons do more than ask.
(() => {
  const PAUSE = 250; // ms without a key before it is asked
  const refusals = (form, page) => { // beside each box as it is typed in, which stays as it is
    for (const box of form.querySelectorAll(form.dataset.liveBoxes ?? '.box')) {
      const there = page.getElementById(box.id), field = box.closest('.field');
      field.querySelector('.error')?.remove();
      field.classList.toggle('refused', there?.hasAttribute('aria-invalid') ?? false);
      for (const name of ['aria-invalid', 'aria-describedby'])
        if (there?.hasAttribute(name)) box.setAttribute(name, there.getAttribute(name)); else box.removeAttribute(name);
      const error = there?.closest('.field').querySelector('.error');
      if (error) field.append(error);
    }
  };
  for (const form of document.querySelectorAll('form[data-live]')) {
    const out = document.getElementById(form.dataset.live), button = form.querySelector('button'), at = form.dataset.liveAt;
    const stays = 'liveStays' in form.dataset;
    let timer, asked = 0;
    const ask = async () => {
      const mine = ++asked;
      try {
        const said = new URLSearchParams(new FormData(form));
        const answer = await (at ? fetch(at, { method: 'POST', body: said }) : fetch(`${form.action}?${said}`));
        const page = new DOMParser().parseFromString(await answer.text(), 'text/html'), found = page.getElementById(out.id);
        if (mine !== asked) return; // a later choice is on its way
        if (!found) { button.hidden = false; return; }
        out.replaceChildren(...found.childNodes);
        if (out.closest('[hidden]')) out.closest('[hidden]').hidden = false; // of no use where it cannot follow
        refusals(form, page);
      } catch { button.hidden = false; } // no signal: the button asks as without script
    };
    button.hidden = !stays;
    if (stays && !at) ask(); // the browser may have kept what was ticked
    form.addEventListener('input', () => { clearTimeout(timer); timer = setTimeout(ask, PAUSE); });
    form.addEventListener('submit', event => { if (!stays && button.hidden) { event.preventDefault(); ask(); } });
  }
})();
