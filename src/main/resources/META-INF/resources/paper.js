// Has a report made, and gives it once it is here. Without it the page leads to the report by itself.
const making = document.querySelector('[data-paper]');
if (making) {
  const bar = making.querySelector('progress');
  const file = making.querySelector('a');
  const say = (what) => {
    bar.hidden = what !== 'making';
    for (const said of making.querySelectorAll('[data-said]')) {
      said.hidden = said.dataset.said !== what;
    }
  };
  say('making');
  fetch(making.dataset.paper)
    .then((answer) => {
      if (!answer.ok) {
        throw new Error(String(answer.status));
      }
      return answer.blob();
    })
    .then((made) => {
      file.href = URL.createObjectURL(made);
      say('ready');
      file.click();
    })
    .catch(() => say('failed'));
}
