// Shows that a file is on its way, since its roads may take a while to be read.
for (const form of document.querySelectorAll('form[data-slow]')) {
  form.addEventListener('submit', () => {
    for (const said of form.querySelectorAll('.slow')) {
      said.hidden = false;
    }
  });
}
