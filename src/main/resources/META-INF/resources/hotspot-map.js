// Draws roads and hotspots, and links the map with the table both ways.
(function () {
  'use strict';
  const box = document.getElementById('map');
  if (!box) {
    return;
  }
  const told = document.getElementById('told');
  const map = L.map(box, { preferCanvas: true, attributionControl: false, zoomSnap: 1 });
  L.control.scale({ imperial: false }).addTo(map);
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

  drawHotspots().then(drawRoads).catch(function (problem) {
    told.textContent = 'The map could not be drawn (' + problem.message + '); the table is whole.';
  });
})();
