// Takes the forms of the page over: what is entered is kept on this telephone first, then sent, and shown as what it is.
// Where a browser lacks something for that, the forms go to the server as they are.
(function () {
  'use strict';
  const box = document.getElementById('hand');
  if (!box || !window.isSecureContext || !window.indexedDB || !window.BroadcastChannel || !navigator.locks
      || !navigator.serviceWorker || !AbortSignal.timeout) {
    return;
  }
  const store = window.handStore;
  const words = box.dataset;
  const account = words.account;
  const marks = {kept: '•', sending: '↑', sent: '✓', refused: '✕'};
  const WAITS = [5, 15, 30, 60, 120, 300];
  const SENT_SHOWN = 5;
  const SLOW = 1000;
  const line = document.getElementById('line');
  const forms = Array.from(document.querySelectorAll('form[data-send]'));
  const clock = new Intl.DateTimeFormat(document.getElementById('main').lang || 'en',
      {hour: '2-digit', minute: '2-digit', hourCycle: 'h23', timeZone: words.zone});
  let offset = 0;
  let plain = false;

  function time(instant) { return clock.format(new Date(instant)); }

  // What the line says

  function say(text, action) {
    line.textContent = text;
    line.hidden = !text;
    if (text && action) { line.append(' ', action); }
  }

  function link(text, href) {
    const made = document.createElement('a');
    made.href = href;
    made.textContent = text;
    return made;
  }

  function button(text, press) {
    const made = document.createElement('button');
    made.type = 'button';
    made.textContent = text;
    made.addEventListener('click', press);
    return made;
  }

  // What is wrong with a form

  function reveal(element) {
    for (let one = element; one; one = one.parentElement) {
      if (one.tagName === 'DETAILS') { one.open = true; }
      if (one.tagName === 'FORM') { one.hidden = false; }
    }
  }

  function clear(form) {
    form.querySelectorAll('.beside-it, .wrong').forEach(function (one) { one.remove(); });
    form.querySelectorAll('[aria-invalid]').forEach(function (one) {
      one.removeAttribute('aria-invalid');
      one.removeAttribute('aria-describedby');
    });
  }

  function wrong(form, field, text) {
    const input = field ? form.querySelector('[name="' + CSS.escape(field) + '"]:not([type=hidden]):not(button)') : null;
    const told = document.createElement('p');
    told.textContent = text;
    reveal(input || form);
    if (!input) {
      told.className = 'wrong';
      told.setAttribute('role', 'alert');
      form.prepend(told);
      told.tabIndex = -1;
      return told;
    }
    told.className = 'beside-it';
    told.id = (input.id || field) + '-wrong';
    input.setAttribute('aria-invalid', 'true');
    input.setAttribute('aria-describedby', told.id);
    input.closest('p').after(told);
    return input;
  }

  function why(problem) {
    if (!problem) { return ''; }
    if (problem.type === 'before') { return words.before.replace('TIME', time(problem.at)); }
    const said = (problem.errors || []).map(function (one) { return one.detail; }).concat(problem.reasons || []);
    return said.length ? said.join(' ') : problem.detail || problem.title || String(problem.status);
  }

  // What is kept

  // What a page does not know yet: one that the server wrote after an entry was sent shows what became of it.
  function isNews(entry) {
    return entry.state !== 'refused' && (entry.state !== 'sent' || entry.sentAt + offset >= Date.parse(words.made));
  }

  function live(entries, form) {
    return entries.filter(function (one) { return one.of === form.dataset.of && isNews(one); }).pop();
  }

  function inPlace(form, entry) {
    const had = document.activeElement && form.contains(document.activeElement);
    let told = form.nextElementSibling;
    if (!told || !told.classList.contains('in-place')) {
      told = document.createElement('p');
      told.className = 'in-place';
      told.tabIndex = -1;
      form.after(told);
    }
    const text = marks[entry.state] + ' ' + entry.said + ': ' + words[entry.state] + ' ' + time(entry.madeAt) + (entry.ring ? ' – ' + words.ring : '');
    if (told.textContent !== text) { told.textContent = text; }
    form.hidden = true;
    if (had) { told.focus(); }
  }

  function standAgain(form) {
    const told = form.nextElementSibling;
    if (told && told.classList.contains('in-place')) { told.remove(); }
    form.hidden = false;
  }

  function paintForms(entries) {
    const steps = forms.filter(function (form) { return form.dataset.send === 'step'; });
    forms.forEach(function (form) {
      if (!form.dataset.of || form.dataset.send === 'step') { return; }
      const entry = live(entries, form);
      if (entry) { inPlace(form, entry); } else if (form.hidden) { standAgain(form); }
    });
    // Of steps the next one is shown, and those before it as what they are.
    let at = steps.findIndex(function (form) { return form.dataset.next === 'yes'; });
    let open = at >= 0;
    for (; at >= 0 && at < steps.length; at++) {
      const entry = live(entries, steps[at]);
      if (entry) {
        inPlace(steps[at], entry);
      } else {
        standAgain(steps[at]);
        steps[at].hidden = !open;
        open = false;
      }
    }
    const scene = document.getElementById('scene');
    if (scene && steps.length && open) { scene.open = true; }
  }

  function row(entry) {
    const made = document.getElementById('kept-one').content.cloneNode(true).querySelector('li');
    made.className = entry.state + (entry.ring ? ' ring' : '');
    made.dataset.key = entry.key;
    made.querySelector('.what').textContent = entry.what;
    made.querySelector('.mark').textContent = marks[entry.state];
    made.querySelector('.said').textContent = words[entry.state];
    made.querySelector('.at').textContent = time(entry.madeAt);
    const reason = made.querySelector('.why');
    reason.hidden = entry.state !== 'refused' && !entry.ring;
    reason.textContent = entry.state === 'refused' ? why(entry.problem) : words.ring;
    if (entry.state === 'refused') {
      // The server says it in English.
      if (entry.problem.type !== 'before') { reason.lang = 'en'; }
      made.querySelector('.acts').hidden = false;
      made.querySelector('.mend').hidden = entry.page === location.pathname && !formOf(entry);
      made.querySelector('.mend').addEventListener('click', function () { mend(entry); });
      const sure = made.querySelector('.sure');
      made.querySelector('.drop').addEventListener('click', function () {
        sure.hidden = false;
        made.querySelector('.acts').hidden = true;
        sure.querySelector('.drop-no').focus();
      });
      sure.querySelector('.drop-no').addEventListener('click', function () {
        sure.hidden = true;
        made.querySelector('.acts').hidden = false;
        made.querySelector('.drop').focus();
      });
      sure.querySelector('.drop-yes').addEventListener('click', function () { store.drop(entry.key).then(paint); });
    }
    return made;
  }

  function counted(count, one, some) {
    return count === 0 ? '' : count === 1 ? one : some.replace('COUNT', count);
  }

  function setText(element, text) {
    if (element.textContent !== text) { element.textContent = text; }
    element.hidden = !text;
  }

  async function paint() {
    const all = await store.list();
    const mine = all.filter(function (entry) { return entry.accountId === account; });
    const others = all.filter(function (entry) { return entry.accountId !== account && entry.state !== 'sent'; }).length;
    const waiting = mine.filter(function (entry) { return entry.state === 'kept' || entry.state === 'sending'; }).length;
    const refused = mine.filter(function (entry) { return entry.state === 'refused'; }).length;
    const sent = mine.filter(function (entry) { return entry.state === 'sent'; });
    const shown = mine.filter(function (entry) { return entry.state !== 'sent' || sent.indexOf(entry) >= sent.length - SENT_SHOWN; });
    document.getElementById('kept').hidden = !mine.length && !others;
    setText(document.getElementById('kept-line'), [counted(waiting, words.keptOne, words.keptSome),
      counted(refused, words.refusedOne, words.refusedSome), mine.length && !waiting && !refused ? words.allSent : ''].join(' ').trim());
    setText(document.getElementById('kept-others'), counted(others, words.othersOne, words.othersSome));
    paintRows(shown);
    paintForms(mine);
    return mine;
  }

  // A row is made anew only when it says something else, so that whoever is about to press a button of it finds it there.
  function paintRows(entries) {
    const list = document.getElementById('kept-list');
    const before = new Map(Array.from(list.children, function (one) { return [one.dataset.key, one]; }));
    list.replaceChildren(...entries.map(function (entry) {
      const old = before.get(entry.key);
      const kind = entry.state + (entry.ring ? ' ring' : '');
      return old && old.className === kind ? old : row(entry);
    }));
  }

  // Mending

  function formOf(entry) {
    return forms.find(function (form) {
      if (form.dataset.send !== entry.kind || (form.dataset.of || null) !== entry.of) { return false; }
      return entry.of !== null || form.dataset.path === entry.path || entry.path === '/api/cases/' + form.dataset.case + '/care-entries';
    });
  }

  function mend(entry) {
    const form = formOf(entry);
    if (!form) {
      if (entry.page !== location.pathname) { location.assign(entry.page + '#mend=' + entry.key); }
      return;
    }
    standAgain(form);
    reveal(form);
    clear(form);
    Object.entries(entry.fields || {}).forEach(function (field) {
      const input = form.elements.namedItem(field[0]);
      if (input && input.type !== 'hidden') { input.value = field[1]; }
    });
    if (entry.file) {
      const files = new DataTransfer();
      files.items.add(entry.file);
      form.elements.namedItem('picture').files = files.files;
    }
    form.dataset.mends = entry.key;
    const errors = (entry.problem && entry.problem.errors) || [];
    const first = errors.length
      ? errors.map(function (one) { return wrong(form, one.field, one.detail); })[0]
      : wrong(form, null, why(entry.problem));
    first.focus();
  }

  // Entering

  function last(entries) {
    return entries.reduce(function (most, entry) { return Math.max(most, entry.order); }, 0);
  }

  async function enter(form, act, submitter) {
    clear(form);
    const now = Date.now() + offset;
    let made;
    try {
      made = window.handEntry.of(form, act, {now: now, zone: words.zone, words: words});
    } catch (not) {
      if (!(not instanceof window.handEntry.Wrong)) { throw not; }
      wrong(form, not.field, not.words).focus();
      return;
    }
    try {
      const all = await store.list();
      if (form.dataset.of && live(all.filter(function (one) { return one.accountId === account; }), form)) { return; }
      const entry = Object.assign({
        key: crypto.randomUUID(), accountId: account, method: 'POST', kind: form.dataset.send, of: form.dataset.of || null,
        what: form.dataset.what + (submitter ? ': ' + submitter.textContent.trim() : ''),
        said: submitter ? submitter.textContent.trim() : form.dataset.what, page: location.pathname,
        fields: window.handEntry.fields(form), order: Math.max(Date.now(), last(all) + 1), madeAt: now, offset: offset, state: 'kept'
      }, made);
      if (form.dataset.mends) { await store.replace(form.dataset.mends, entry); } else { await store.put(entry); }
    } catch (full) {
      // This browser keeps nothing, or has no room: then the form goes as it is.
      plain = true;
      form.requestSubmit(submitter);
      return;
    }
    delete form.dataset.mends;
    if (!form.dataset.of) { form.reset(); }
    await paint();
    openNext(form);
    wake();
    run();
  }

  function openNext(form) {
    const card = form.closest('.card');
    if (!card || form.dataset.send === 'step') { return; }
    const next = Array.from(document.querySelectorAll('details.card')).find(function (one) {
      return card.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_FOLLOWING && one.querySelector('form:not([hidden])');
    });
    if (next) { next.open = true; }
  }

  document.addEventListener('submit', function (event) {
    const form = event.target;
    if (!form.dataset.send || plain) { return; }
    event.preventDefault();
    if (form.dataset.busy) { return; }
    form.dataset.busy = 'yes';
    const submitter = event.submitter;
    enter(form, submitter ? submitter.value : '', submitter).finally(function () { delete form.dataset.busy; });
  });

  // Sending

  let running = false;
  let again = false;
  let tries = 0;
  let timer = 0;
  let news = false;

  async function run() {
    clearTimeout(timer);
    if (running) { again = true; return; }
    running = true;
    const slow = setTimeout(function () { say(words.stillWaiting); }, SLOW);
    let came;
    try {
      came = await window.handSend.run();
    } finally {
      clearTimeout(slow);
      running = false;
    }
    offset = await store.setting('offset') || 0;
    await paint();
    if (came.failed === 'noSignal') {
      say(words.noSignal.replace('TIME', time(words.made)));
      timer = setTimeout(run, WAITS[Math.min(tries, WAITS.length - 1)] * 1000);
      tries++;
    } else if (came.failed === 'signedOut') {
      say(words.signInAgain, link(words.signIn, '/sign-in?next=' + encodeURIComponent(location.pathname)));
    } else if (came.accountId !== account) {
      // Somebody else is signed in: this page is none of theirs.
      location.replace('/hand');
      return;
    } else {
      tries = 0;
      news = news || came.sent > 0;
      say(news ? words.news : '', news ? button(words.showAnew, function () { location.reload(); }) : null);
      keep();
    }
    if (again) { again = false; run(); }
  }

  function keep() {
    const paths = Array.from(document.querySelectorAll('a[data-keep]'), function (one) { return one.pathname; });
    navigator.serviceWorker.ready.then(function (registration) {
      registration.active.postMessage({keep: Array.from(new Set(['/hand', location.pathname].concat(paths)))});
    });
  }

  function wake() {
    // Without that a browser may throw away what it keeps when the telephone is full.
    if (navigator.storage && navigator.storage.persist) { navigator.storage.persist(); }
    navigator.serviceWorker.ready.then(function (registration) {
      // Not every browser has it, and not every person allows it: the page sends by itself all the same.
      return registration.sync ? registration.sync.register(store.NAME) : null;
    }).catch(function () { return null; });
  }

  function atOnce() {
    tries = 0;
    run();
  }

  forms.forEach(function (form) { if (form.dataset.send === 'step' && !form.hidden) { form.dataset.next = 'yes'; } });
  navigator.serviceWorker.register('/hand-worker.js', {scope: '/', updateViaCache: 'none'}).catch(function () { return null; });
  new BroadcastChannel(store.NAME).addEventListener('message', paint);
  window.addEventListener('online', atOnce);
  window.addEventListener('pageshow', function (event) { if (event.persisted) { atOnce(); } });
  document.addEventListener('visibilitychange', function () { if (!document.hidden) { atOnce(); } });
  store.setting('offset').then(async function (known) {
    offset = known || 0;
    const mine = await paint();
    const asked = location.hash.startsWith('#mend=') ? location.hash.slice(6) : '';
    const entry = mine.find(function (one) { return one.key === asked; });
    if (entry && entry.state === 'refused') { mend(entry); }
    run();
  });
})();
