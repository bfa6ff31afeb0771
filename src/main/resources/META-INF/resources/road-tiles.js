// Draws the roads of vector tiles (Mapbox Vector Tile specification 2.1) on Leaflet's canvas, behind everything else.
window.culvertRoadTiles = (function () {
  'use strict';
  const PIXELS = 256;

  // Protocol buffers, as far as tiles need them: unsigned numbers, and fields that have a length.
  function varint(octets, at) {
    let value = 0;
    let factor = 1;
    for (;;) {
      const octet = octets[at.i++];
      value += (octet & 0x7f) * factor;
      if (octet < 0x80) {
        return value;
      }
      factor *= 128;
    }
  }

  function fields(octets, take) {
    const at = { i: 0 };
    while (at.i < octets.length) {
      const key = varint(octets, at);
      const kind = key & 7;
      if (kind === 2) {
        const length = varint(octets, at);
        take(key >> 3, octets.subarray(at.i, at.i + length));
        at.i += length;
      } else if (kind === 0) {
        take(key >> 3, varint(octets, at));
      } else {
        at.i += kind === 1 ? 8 : 4;
      }
    }
  }

  function signed(number) {
    return number % 2 === 0 ? number / 2 : -(number + 1) / 2;
  }

  // Commands of section 4.3: 1 moves, 2 draws; positions are told by how far they are from the one before.
  function drawLine(commands, context, scale) {
    const at = { i: 0 };
    let x = 0;
    let y = 0;
    while (at.i < commands.length) {
      const command = varint(commands, at);
      for (let left = command >> 3; left > 0; left--) {
        x += signed(varint(commands, at));
        y += signed(varint(commands, at));
        if ((command & 7) === 1) {
          context.moveTo(x * scale, y * scale);
        } else {
          context.lineTo(x * scale, y * scale);
        }
      }
    }
  }

  function draw(octets, canvas, size) {
    const context = canvas.getContext('2d');
    context.strokeStyle = '#7d8a86';
    context.lineWidth = 1.5;
    context.lineJoin = 'round';
    context.beginPath();
    fields(octets, function (field, layer) {
      if (field !== 3) {
        return;
      }
      let extent = 4096;
      const lines = [];
      fields(layer, function (part, value) {
        if (part === 5) {
          extent = value;
        } else if (part === 2) {
          fields(value, function (of, commands) {
            if (of === 4) {
              lines.push(commands);
            }
          });
        }
      });
      lines.forEach(function (line) {
        drawLine(line, context, size / extent);
      });
    });
    context.stroke();
  }

  const Layer = L.GridLayer.extend({
    createTile: function (where, done) {
      const canvas = document.createElement('canvas');
      const size = this.getTileSize();
      canvas.width = size.x;
      canvas.height = size.y;
      fetch('/tiles/roads/' + where.z + '/' + where.x + '/' + where.y + '.mvt').then(function (answer) {
        if (!answer.ok) {
          throw new Error('roads: ' + answer.status);
        }
        return answer.arrayBuffer();
      }).then(function (body) {
        draw(new Uint8Array(body), canvas, size.x);
        done(null, canvas);
      }).catch(function (problem) {
        done(problem, canvas);
      });
      return canvas;
    }
  });

  /** A layer of the roads, in the zooms that there are tiles of. */
  return function (described) {
    return new Layer({
      tileSize: PIXELS,
      minNativeZoom: described.minzoom,
      maxNativeZoom: described.maxzoom,
      minZoom: described.minzoom,
      keepBuffer: 1,
      noWrap: true
    });
  };
})();
