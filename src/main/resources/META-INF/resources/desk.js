// Tells when a call began: at the first letter that was typed, not when the page was opened.
(function () {
  'use strict';
  const begun = document.getElementById('begunAt');
  if (!begun) {
    return;
  }
  document.addEventListener('input', function () {
    if (!begun.value) {
      begun.value = new Date().toISOString();
    }
  });
})();
