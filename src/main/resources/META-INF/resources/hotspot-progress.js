// Shows how far a run has come, and the result when it is there.
(function () {
  'use strict';
  const box = document.getElementById('progress');
  const bar = document.getElementById('done');
  const words = document.getElementById('done-words');

  async function look() {
    try {
      const answer = await fetch('/api/hotspot-runs/' + box.dataset.run, { headers: { Accept: 'application/json' } });
      if (answer.ok) {
        const run = await answer.json();
        bar.value = run.simulationsDone;
        words.textContent = run.simulationsDone + ' of ' + run.simulationsTotal + ', ' + run.state;
        if (run.state === 'done' || run.state === 'failed') {
          window.location.reload();
          return;
        }
      }
    } catch (away) {
      words.textContent = 'The server does not answer; trying again.';
    }
    window.setTimeout(look, 1000);
  }

  window.setTimeout(look, 500);
})();
