// Small comforts of every page: menus that close, focus on what was refused, a print button.
(() => {
  document.addEventListener('keydown', event => {
    if (event.key !== 'Escape') return;
    const open = event.target.closest?.('details[data-closes][open]');
    if (!open) return;
    open.open = false;
    open.querySelector('summary').focus();
  });
  document.addEventListener('click', event => {
    for (const open of document.querySelectorAll('details[data-closes][open]'))
      if (!open.contains(event.target)) open.open = false;
  });

  document.querySelector('[data-refused]')?.focus();
  // A link of the summary leads to the box itself, not only to its place on the page.
  document.addEventListener('click', event => {
    const link = event.target.closest?.('[data-refused] a[href^="#"]');
    const box = link && document.getElementById(decodeURIComponent(link.hash.slice(1)));
    if (!box) return;
    event.preventDefault();
    box.focus();
    box.scrollIntoView({ block: 'center' });
  });

  for (const button of document.querySelectorAll('[data-print]')) {
    button.hidden = false;
    button.addEventListener('click', () => print());
  }

  // What is folded for a phone stands open where there is room, and on paper.
  const folded = [...document.querySelectorAll('details[data-wide]')];
  if (matchMedia('(min-width: 40rem)').matches) for (const part of folded) part.open = true;
  let opened = [];
  addEventListener('beforeprint', () => {
    opened = folded.filter(part => !part.open);
    for (const part of opened) part.open = true;
  });
  addEventListener('afterprint', () => { for (const part of opened) part.open = false; });

  // A figure that the address names is opened: /jobs/26-014#margin
  const named = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (named?.tagName === 'DETAILS') named.open = true;
})();
