// Draws the hotspots of the table beside it, and links the map with the table both ways.
(function () {
  'use strict';
  const box = document.getElementById('map');
  if (!box) {
    return;
  }
  const told = document.getElementById('told');
  const style = getComputedStyle(document.documentElement);
  const map = L.map(box, { preferCanvas: true, attributionControl: false, zoomSnap: 1 });
  L.control.scale({ imperial: false }).addTo(map);
  const hotspots = L.featureGroup().addTo(map);
  const layerOf = new Map();
  const rows = document.querySelectorAll('tr[data-rank]');
  const plain = { color: style.getPropertyValue('--alarm').trim(), weight: 7, opacity: 0.9, fill: false };
  const chosen = { color: style.getPropertyValue('--ink').trim(), weight: 11, opacity: 1, fill: false };

  function choose(rank, move) {
    layerOf.forEach(function (layer, of) {
      layer.setStyle(of === rank ? chosen : plain);
    });
    rows.forEach(function (row) {
      const is = Number(row.dataset.rank) === rank;
      row.classList.toggle('chosen', is);
      if (!is) {
        row.removeAttribute('aria-current');
        return;
      }
      row.setAttribute('aria-current', 'true');
      const link = document.createElement('a');
      link.href = row.dataset.card;
      link.textContent = box.dataset.card;
      told.replaceChildren(row.dataset.words + '. ', link);
    });
    const layer = layerOf.get(rank);
    if (layer && move) {
      map.fitBounds(layer.getBounds().pad(2), { maxZoom: 15 });
    }
  }

  function lines(text) {
    return text.split('|').filter(Boolean).map(function (line) {
      return line.split(',').map(function (point) {
        const at = point.split(' ');
        return [Number(at[1]), Number(at[0])];
      });
    });
  }

  function drawHotspots() {
    rows.forEach(function (row) {
      const rank = Number(row.dataset.rank);
      const layer = L.polyline(lines(row.dataset.lines), plain);
      layerOf.set(rank, layer);
      layer.bindTooltip(String(rank), { permanent: true, direction: 'center', className: 'rank-label' });
      layer.on('click', function () {
        choose(rank, false);
        row.scrollIntoView({ block: 'nearest' });
      });
      layer.addTo(hotspots);
    });
    map.fitBounds(hotspots.getBounds().pad(0.2), { maxZoom: 14 });
  }

  async function drawRoads() {
    const answer = await fetch('/tiles/roads/tiles.json');
    if (!answer.ok) {
      throw new Error('roads: ' + answer.status);
    }
    const roads = culvertRoadTiles(await answer.json());
    roads.on('tileerror', function (event) {
      told.textContent = 'Some of the roads could not be drawn (' + event.error.message + '); the table is whole.';
    });
    roads.addTo(map);
  }

  document.querySelectorAll('button.find').forEach(function (button) {
    button.addEventListener('click', function () {
      choose(Number(button.dataset.rank), true);
    });
  });

  drawHotspots();
  if (/^#hotspot-\d+$/.test(location.hash)) {
    choose(Number(location.hash.slice('#hotspot-'.length)), true);
  }
  drawRoads().catch(function (problem) {
    told.textContent = 'The roads could not be drawn (' + problem.message + '); the table is whole.';
  });
})();
