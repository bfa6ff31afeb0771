// Shows how much of a file is sent. Without it the form is sent as any other.
(function () {
  'use strict';
  function say(form, text) {
    const words = form.querySelector('.sending-words');
    words.hidden = false;
    words.textContent = text;
  }

  document.addEventListener('submit', function (event) {
    const form = event.target;
    if (!form.matches('form.sending-file')) {
      return;
    }
    event.preventDefault();
    const file = form.querySelector('input[type=file]').files[0];
    if (file && file.size > Number(form.dataset.most)) {
      say(form, form.dataset.tooLarge);
      return;
    }
    const bar = form.querySelector('progress');
    const buttons = form.querySelectorAll('button');
    const body = new FormData(form);
    if (event.submitter && event.submitter.name) {
      body.append(event.submitter.name, event.submitter.value);
    }
    const sending = new XMLHttpRequest();
    sending.upload.addEventListener('progress', function (sent) {
      bar.hidden = false;
      bar.value = sent.loaded / sent.total;
      say(form, sent.loaded < sent.total
        ? form.dataset.sending + ' ' + Math.floor(100 * sent.loaded / sent.total) + ' %' : form.dataset.lookedThrough);
    });
    sending.addEventListener('load', function () {
      if (sending.status < 300) {
        window.location.assign(sending.responseURL);
        return;
      }
      const page = new DOMParser().parseFromString(sending.responseText, 'text/html');
      document.querySelector('main').replaceWith(page.querySelector('main'));
      document.querySelector('main').focus();
    });
    sending.addEventListener('error', function () {
      bar.hidden = true;
      buttons.forEach(function (button) { button.disabled = false; });
      say(form, form.dataset.failed);
    });
    sending.open('POST', form.action);
    sending.send(body);
    buttons.forEach(function (button) { button.disabled = true; });
  });
})();
