// Draws the area where an animal may go back, what is taken out of it, and the sites; links the map with the list both ways.
(function () {
  'use strict';
  const box = document.getElementById('map');
  if (!box) {
    return;
  }
  const told = document.getElementById('told');
  const key = document.querySelector('.map-key');
  const found = [Number(box.dataset.latitude), Number(box.dataset.longitude)];
  const styles = getComputedStyle(document.documentElement);
  const colour = function (name) {
    return styles.getPropertyValue('--' + name).trim();
  };
  const siteOf = new Map();
  let map;

  function sign(text, kind) {
    return L.divIcon({ className: 'site-sign ' + kind, iconSize: [30, 30], text: text });
  }

  // A marker whose text is set as a text
  const Sign = L.Marker.extend({
    onAdd: function (on) {
      L.Marker.prototype.onAdd.call(this, on);
      this.getElement().textContent = this.options.icon.options.text;
    }
  });

  function choose(rank, move) {
    siteOf.forEach(function (marker, of) {
      marker.getElement().classList.toggle('chosen', of === rank);
    });
    document.querySelectorAll('li[data-rank]').forEach(function (item) {
      const is = Number(item.dataset.rank) === rank;
      item.classList.toggle('chosen', is);
      if (is) {
        item.setAttribute('aria-current', 'true');
      } else {
        item.removeAttribute('aria-current');
      }
    });
    const marker = siteOf.get(rank);
    if (!marker) {
      return;
    }
    told.textContent = rank + '. ' + marker.options.title;
    if (move) {
      map.setView(marker.getLatLng(), Math.max(map.getZoom(), 14));
      box.scrollIntoView({ block: 'nearest' });
    }
  }

  const cuts = {
    catchment: { color: 'ink', dashArray: '8 4' },
    excluded: { color: 'alarm', dashArray: null },
    burnt: { color: 'alarm', dashArray: '2 5' },
    flooded: { color: 'doubt', dashArray: '6 3' }
  };

  function draw(area) {
    map = L.map(box, { preferCanvas: true, attributionControl: false, zoomSnap: 1 });
    map.setView(found, 13);
    L.control.scale({ imperial: false }).addTo(map);
    const told = area.properties;
    const all = L.featureGroup().addTo(map);
    told.takenOut.forEach(function (part) {
      const how = cuts[part.cut];
      L.geoJSON(part.geometry, {
        style: { color: colour(how.color), weight: 2, dashArray: how.dashArray, fillOpacity: 0.18 }
      }).bindTooltip(part.words).addTo(map);
    });
    if (area.geometry) {
      L.geoJSON(area.geometry, {
        style: { color: colour('deep'), weight: 1.5, fillOpacity: 0.25 }, interactive: false
      }).addTo(all);
    }
    told.askFirst.forEach(function (one) {
      L.geoJSON(one.geometry, {
        style: { color: colour('ink'), weight: 3, dashArray: '1 6', fill: false }
      }).bindTooltip(one.name).addTo(map);
    });
    L.circle(found, { radius: Number(box.dataset.within), color: colour('ink'), weight: 1.5, dashArray: '4 3', fill: false })
      .addTo(all);
    new Sign(found, { icon: sign('+', 'found'), keyboard: false, interactive: false }).addTo(map);
    if (told.lookFirst) {
      new Sign([told.lookFirst.decimalLatitude, told.lookFirst.decimalLongitude], {
        icon: sign('\u2605', 'look'), keyboard: false, interactive: false
      }).addTo(map);
    }
    told.sites.forEach(function (site) {
      const item = document.getElementById('site-' + site.rank);
      if (!item) {
        return;
      }
      const marker = new Sign([site.decimalLatitude, site.decimalLongitude], {
        icon: sign(String(site.rank), 'known'), title: site.name, alt: site.name
      });
      marker.on('click', function () {
        choose(site.rank, false);
        item.scrollIntoView({ block: 'nearest' });
      });
      siteOf.set(site.rank, marker);
      marker.addTo(map);
    });
    map.fitBounds(all.getBounds().pad(0.05), { maxZoom: 16 });
  }

  async function drawRoads() {
    const answer = await fetch('/tiles/roads/tiles.json');
    if (answer.ok) {
      culvertRoadTiles(await answer.json()).addTo(map);
    }
  }

  async function start() {
    const answer = await fetch(box.dataset.area, { headers: { accept: 'application/geo+json' } });
    if (!answer.ok) {
      throw new Error(String(answer.status));
    }
    const area = await answer.json();
    box.hidden = false;
    told.hidden = false;
    key.hidden = false;
    draw(area);
    document.querySelectorAll('button.find').forEach(function (button) {
      if (siteOf.has(Number(button.dataset.rank))) {
        button.hidden = false;
        button.addEventListener('click', function () {
          choose(Number(button.dataset.rank), true);
        });
      }
    });
    await drawRoads();
  }

  start().catch(function () {
    told.hidden = false;
    told.textContent = box.dataset.failed;
  });
})();
