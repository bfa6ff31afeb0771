// Shows how far a run has come as the server tells it, and the result when it is there.
(function () {
  'use strict';
  const box = document.getElementById('progress');
  const bar = document.getElementById('done');
  const words = document.getElementById('done-words');
  const events = new EventSource('/api/hotspot-runs/' + box.dataset.run + '/progress');

  events.addEventListener('progress', function (event) {
    const run = JSON.parse(event.data);
    bar.value = run.simulationsDone;
    words.textContent = box.dataset.done.replace('%d', run.simulationsDone).replace('%t', run.simulationsTotal) +
      (box.dataset[run.state] ? ', ' + box.dataset[run.state] : '');
    if (run.state !== 'waiting' && run.state !== 'computing') {
      events.close();
      window.location.reload();
    }
  });
  events.addEventListener('error', function () {
    words.textContent = box.dataset.silent;
  });
})();
