// Sends a file of counts without leaving its page, so that the file which was tried is still chosen when it is entered.
(function () {
  'use strict';
  function say(form, text) {
    const words = form.querySelector('.sending-words');
    words.hidden = false;
    words.textContent = text;
  }

  function show(text, chosen) {
    const page = new DOMParser().parseFromString(text, 'text/html');
    const main = page.querySelector('main');
    document.querySelector('main').replaceWith(main);
    document.title = page.title;
    const fresh = main.querySelector('form.counts-file input[type=file]');
    if (fresh && chosen.files.length > 0) {
      ['aria-invalid', 'aria-describedby'].forEach(function (name) {
        if (fresh.hasAttribute(name)) {
          chosen.setAttribute(name, fresh.getAttribute(name));
        } else {
          chosen.removeAttribute(name);
        }
      });
      fresh.replaceWith(chosen);
    }
    main.focus();
  }

  document.addEventListener('submit', function (event) {
    const form = event.target;
    if (!form.matches('form.counts-file')) {
      return;
    }
    event.preventDefault();
    const body = new FormData(form);
    if (event.submitter && event.submitter.name) {
      body.append(event.submitter.name, event.submitter.value);
    }
    const buttons = form.querySelectorAll('button');
    buttons.forEach(function (button) { button.disabled = true; });
    say(form, form.dataset.sending);
    fetch(form.action, { method: 'POST', body: body, headers: { Accept: 'text/html' } }).then(function (answer) {
      if (answer.redirected) {
        window.location.assign(answer.url);
        return null;
      }
      return answer.text().then(function (text) {
        show(text, form.querySelector('input[type=file]'));
      });
    }).catch(function () {
      buttons.forEach(function (button) { button.disabled = false; });
      say(form, form.dataset.failed);
    });
  });
})();
