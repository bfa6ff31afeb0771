// Draws roads and hotspots, and links the map with the table both ways.
(function () {
  'use strict';
  const box = document.getElementById('map');
  if (!box) {
    return;
  }
  const PAGES_OF_ROADS = 40;
  const told = document.getElementById('told');
  const map = L.map(box, { preferCanvas: true, attributionControl: false, zoomSnap: 0.5 });
  L.control.scale({ imperial: false }).addTo(map);
  const roads = L.layerGroup().addTo(map);
  const hotspots = L.featureGroup().addTo(map);
  const layerOf = new Map();
  const plain = { color: '#a3301a', weight: 7, opacity: 0.9 };
  const chosen = { color: '#1d2b28', weight: 11, opacity: 1 };

  function choose(rank, move) {
    layerOf.forEach(function (layer, of) {
      layer.setStyle(of === rank ? chosen : plain);
    });
    document.querySelectorAll('tr[data-rank]').forEach(function (row) {
      const is = Number(row.dataset.rank) === rank;
      row.classList.toggle('chosen', is);
      if (is) {
        row.setAttribute('aria-current', 'true');
      } else {
        row.removeAttribute('aria-current');
      }
    });
    const layer = layerOf.get(rank);
    if (!layer) {
      return;
    }
    const it = layer.feature.properties;
    told.textContent = 'Hotspot ' + rank + ': ' + it.road + ', ' + (it.fromChainageMetres / 1000).toFixed(2) + ' to '
      + (it.toChainageMetres / 1000).toFixed(2) + ' km, ' + it.incidents + ' collisions.';
    if (move) {
      map.fitBounds(layer.getBounds().pad(2), { maxZoom: 15 });
    }
  }

  async function drawHotspots() {
    const answer = await fetch('/api/hotspot-runs/' + box.dataset.run + '/hotspots.geojson');
    if (!answer.ok) {
      throw new Error('hotspots: ' + answer.status);
    }
    L.geoJSON(await answer.json(), {
      style: plain,
      onEachFeature: function (feature, layer) {
        const rank = feature.properties.rank;
        layerOf.set(rank, layer);
        layer.bindTooltip(String(rank), { permanent: true, direction: 'center', className: 'rank-label' });
        layer.on('click', function () {
          choose(rank, false);
          document.getElementById('hotspot-' + rank).scrollIntoView({ block: 'nearest' });
        });
      }
    }).addTo(hotspots);
    map.fitBounds(hotspots.getBounds().pad(0.2), { maxZoom: 14 });
  }

  async function drawRoads() {
    let cursor = null;
    for (let page = 0; page < PAGES_OF_ROADS; page++) {
      const query = '?limit=1000' + (cursor ? '&cursor=' + encodeURIComponent(cursor) : '');
      const answer = await fetch('/api/road-networks/current/links' + query);
      if (!answer.ok) {
        throw new Error('roads: ' + answer.status);
      }
      const links = await answer.json();
      L.geoJSON(links, { style: { color: '#7d8a86', weight: 1.5 }, interactive: false }).addTo(roads);
      hotspots.bringToFront();
      cursor = links.next;
      if (!cursor) {
        return;
      }
    }
    told.textContent = 'The map shows a part of the roads only; the table is whole.';
  }

  document.querySelectorAll('button.find').forEach(function (button) {
    button.addEventListener('click', function () {
      choose(Number(button.dataset.rank), true);
    });
  });

  drawHotspots().then(drawRoads).catch(function (problem) {
    told.textContent = 'The map could not be drawn (' + problem.message + '); the table is whole.';
  });
})();
