// Lets a running clock tick: <span data-clock="72"> holds the seconds at the server when the page was made. Without a signal
// the clock's buttons say so, and what is typed beside them stays.
(() => {
  const loaded = Date.now(), ticking = [...document.querySelectorAll('[data-clock]')];
  const say = all => all < 60 ? `${all} min` : `${Math.floor(all / 60)} h${all % 60 ? ` ${String(all % 60).padStart(2, '0')}` : ''}`;
  const tick = () => {
    for (const out of ticking) out.textContent = say(Math.floor((+out.dataset.clock + (Date.now() - loaded) / 1000) / 60));
  };
  if (ticking.length) {
    setInterval(tick, 10000);
    document.addEventListener('visibilitychange', tick);
  }
  document.addEventListener('click', event => {
    const button = event.target.closest?.('button[value^="clock-"]');
    if (!button || navigator.onLine) return;
    event.preventDefault();
    const words = document.querySelector('[data-queue-words]');
    words.textContent = button.form.dataset.clockSignal;
    words.scrollIntoView({ block: 'nearest' });
  });
})();
