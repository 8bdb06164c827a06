// A form goes off once: its buttons rest after the first tap and wake when the page is shown again.
(() => {
  document.addEventListener('submit', event => {
    const form = event.target;
    if (event.defaultPrevented || form.method !== 'post') return;
    if (form.dataset.sent) return event.preventDefault();
    form.dataset.sent = 'sent';
    // After this turn, so that the tapped button's own name and value still go along.
    setTimeout(() => {
      for (const button of form.querySelectorAll('button:not([type=button])')) button.setAttribute('aria-disabled', 'true');
    });
  });
  addEventListener('pageshow', () => {
    for (const form of document.querySelectorAll('form[data-sent]')) {
      delete form.dataset.sent;
      for (const button of form.querySelectorAll('button[aria-disabled]')) button.removeAttribute('aria-disabled');
    }
  });
})();
