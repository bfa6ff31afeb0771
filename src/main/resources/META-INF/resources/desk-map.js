// The desk's map. It draws what the page itself says of places, can be moved, and takes a tap as a place.
(function () {
  'use strict';
  const frame = document.getElementById('map-frame');
  const where = document.getElementById('where');
  if (!frame || !where || typeof L === 'undefined') {
    return;
  }
  const box = document.getElementById('map');
  const told = document.getElementById('map-told');
  const back = document.getElementById('take-back');
  const words = box.dataset;
  const LEAST_METRES = 350;
  const FINGER_PIXELS = 10;
  const NUMBERS_FROM_ZOOM = 12;
  const DEEPEST = 18;

  function colour(name) {
    return getComputedStyle(document.documentElement).getPropertyValue(name).trim();
  }

  function begin() {
    const still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    frame.hidden = false;
    where.classList.add('on-map');
    const map = L.map(box, {
      preferCanvas: true, attributionControl: false, zoomControl: false, zoomSnap: 1, maxZoom: DEEPEST,
      zoomAnimation: !still, fadeAnimation: !still, inertia: !still
    });
    L.control.zoom({ zoomInTitle: words.closer, zoomOutTitle: words.wider }).addTo(map);
    L.control.scale({ imperial: false }).addTo(map);
    map.createPane('posts').style.zIndex = 550;
    const place = L.layerGroup().addTo(map);
    const marks = L.layerGroup().addTo(map);
    const markOf = new Map();
    let before = null;
    let tapped = false;

    function point(text) {
      const numbers = text.split(' ').map(Number);
      return [numbers[0], numbers[1]];
    }

    function line(text) {
      const numbers = text.split(' ').map(Number);
      const points = [];
      for (let i = 0; i + 1 < numbers.length; i += 2) {
        points.push([numbers[i], numbers[i + 1]]);
      }
      return points;
    }

    // Ring, road and chainage as the drawing beneath has them
    function drawPlace() {
      place.clearLayers();
      const figure = where.querySelector('figure.place');
      if (!figure) {
        tapped = false;
        return;
      }
      const at = point(figure.dataset.at);
      const within = Number(figure.dataset.within);
      const ink = colour('--ink');
      const alarm = colour('--alarm');
      figure.querySelectorAll('[data-course]').forEach(function (road) {
        L.polyline(line(road.dataset.course), { color: ink, weight: 5, interactive: false }).addTo(place);
      });
      // Beside the road, not on it
      const posts = Array.from(figure.querySelectorAll('circle[data-at]'));
      const ends = posts.length < 2 ? [] : [point(posts[0].dataset.at), point(posts[posts.length - 1].dataset.at)];
      const level = ends.length > 0 && Math.abs(ends[1][0] - ends[0][0]) < Math.abs(ends[1][1] - ends[0][1]);
      posts.forEach(function (post) {
        L.circleMarker(point(post.dataset.at), {
          radius: 4, color: ink, weight: 1.5, fillColor: colour('--field'), fillOpacity: 1, interactive: false
        }).bindTooltip(post.dataset.words, {
          permanent: true, direction: level ? 'bottom' : 'right', offset: level ? [0, 0] : [6, 0], pane: 'posts', className: 'post-label'
        }).addTo(place);
      });
      L.circle(at, {
        radius: within, color: alarm, weight: 2, dashArray: '6 4', fillColor: alarm, fillOpacity: 0.12, interactive: false
      }).addTo(place);
      L.marker(at, { icon: L.divIcon({ className: 'place-cross', iconSize: [19, 19] }), interactive: false, keyboard: false })
        .addTo(place);
      if (!tapped) {
        map.fitBounds(L.latLng(at).toBounds(2 * Math.max(LEAST_METRES, 1.4 * within)), { animate: false });
      }
      tapped = false;
    }

    function rowsOf(incident) {
      return Array.from(document.querySelectorAll('[data-incident]')).filter(function (row) {
        return row.dataset.incident === incident;
      });
    }

    // One mark for each incident of the lists beside the map, with its number
    function drawMarks() {
      marks.clearLayers();
      markOf.clear();
      const same = new Set(Array.from(document.querySelectorAll('.near [data-incident]'), function (row) {
        return row.dataset.incident;
      }));
      document.querySelectorAll('[data-incident][data-at]').forEach(function (row) {
        const incident = row.dataset.incident;
        if (markOf.has(incident)) {
          return;
        }
        const label = document.createElement('span');
        label.textContent = (same.has(incident) ? '≈ ' : '') + row.dataset.number;
        const mark = L.marker(point(row.dataset.at), {
          icon: L.divIcon({ className: same.has(incident) ? 'mark same' : 'mark', html: label, iconSize: [0, 0] }),
          keyboard: false
        });
        mark.on('click', function () {
          const rows = rowsOf(incident);
          const link = rows[0].querySelector('a, input:not([type=hidden])');
          rows[0].scrollIntoView({ block: 'nearest' });
          if (link) {
            link.focus();
          }
        });
        mark.addTo(marks);
        markOf.set(incident, mark);
      });
    }

    function pointOut(event) {
      const row = event.target instanceof Element ? event.target.closest('[data-incident]') : null;
      markOf.forEach(function (mark, incident) {
        const element = mark.getElement();
        const is = row !== null && row.dataset.incident === incident;
        if (element) {
          element.classList.toggle('chosen', is);
        }
        mark.setZIndexOffset(is ? 1000 : 0);
      });
    }

    // As many digits as a finger at this zoom can tell apart: the server reads the uncertainty from them
    function digits(latitude) {
      const metres = FINGER_PIXELS * 40075016.7 * Math.cos(latitude * Math.PI / 180) / (256 * Math.pow(2, map.getZoom()));
      return metres <= 31 ? 5 : metres <= 45 ? 4 : metres <= 187 ? 3 : metres <= 1600 ? 2 : 1;
    }

    function fill(sentence, text) {
      return sentence.replace('%', function () {
        return text;
      });
    }

    function say(text) {
      const field = document.getElementById('place');
      field.value = text;
      field.dispatchEvent(new Event('input', { bubbles: true }));
    }

    function take(at) {
      const field = document.getElementById('place');
      const spot = at.wrap();
      const count = digits(spot.lat);
      const text = spot.lat.toFixed(count) + ', ' + spot.lng.toFixed(count);
      before = field.value;
      tapped = true;
      say(text);
      told.textContent = fill(words.taken, text);
      back.hidden = before.trim() === '';
      back.textContent = fill(words.back, before);
    }

    map.on('click', function (event) {
      take(event.latlng);
    });
    document.getElementById('take-middle').addEventListener('click', function () {
      take(map.getCenter());
    });
    back.addEventListener('click', function () {
      say(before);
      told.textContent = '';
      back.hidden = true;
      document.getElementById('place').focus();
    });
    map.on('zoomend', function () {
      box.classList.toggle('far', map.getZoom() < NUMBERS_FROM_ZOOM);
    });
    document.addEventListener('focusin', pointOut);
    document.addEventListener('mouseover', pointOut);
    document.addEventListener('htmx:afterSettle', function (event) {
      if (event.target === where) {
        drawPlace();
      }
      drawMarks();
    });

    function drawGround() {
      if (words.tiles) {
        L.tileLayer(words.tiles, { maxZoom: DEEPEST, referrerPolicy: 'no-referrer' }).addTo(map);
        if (words.attribution) {
          L.control.attribution({ prefix: false }).addAttribution(words.attribution).addTo(map);
        }
      }
      return fetch('/tiles/roads/tiles.json').then(function (answer) {
        if (!answer.ok) {
          throw new Error(String(answer.status));
        }
        return answer.json();
      }).then(function (described) {
        const box = described.bounds;
        if (!map.getZoom()) {
          map.fitBounds([[box[1], box[0]], [box[3], box[2]]], { animate: false });
        }
        const roads = culvertRoadTiles(described);
        roads.on('tileerror', function () {
          told.textContent = words.noRoads;
        });
        roads.addTo(map);
      });
    }

    drawPlace();
    drawGround().catch(function () {
      told.textContent = words.noRoads;
      if (!map.getZoom()) {
        map.setView([0, 0], 2);
      }
    }).then(drawMarks);
  }

  // The page is painted without waiting for the map's own style
  const style = document.createElement('link');
  style.rel = 'stylesheet';
  style.href = frame.dataset.style;
  style.addEventListener('load', begin);
  document.head.append(style);
})();
