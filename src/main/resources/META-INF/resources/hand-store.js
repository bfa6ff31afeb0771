// What waits on this telephone: entries, each with whose it is, and a few settings. Pages and their worker share it.
self.handStore = (function () {
  'use strict';
  const NAME = 'culvert-hand';
  let opening = null;

  function open() {
    if (!opening) {
      opening = new Promise(function (done, failed) {
        const request = indexedDB.open(NAME, 1);
        request.onupgradeneeded = function () {
          request.result.createObjectStore('entries', {keyPath: 'key'});
          request.result.createObjectStore('settings', {keyPath: 'name'});
        };
        request.onsuccess = function () {
          request.result.onversionchange = function () { request.result.close(); opening = null; };
          request.result.onclose = function () { opening = null; };
          done(request.result);
        };
        request.onerror = function () { opening = null; failed(request.error); };
      });
    }
    return opening;
  }

  // Done when it is on the disk, not when it is in some memory: whoever is told that it is kept may close the page.
  async function change(store, what) {
    const database = await open();
    return new Promise(function (done, failed) {
      const transaction = database.transaction(store, 'readwrite', {durability: 'strict'});
      transaction.oncomplete = function () { done(); };
      transaction.onerror = function () { failed(transaction.error); };
      transaction.onabort = function () { failed(transaction.error); };
      what(transaction.objectStore(store));
    });
  }

  async function read(store, what) {
    const database = await open();
    return new Promise(function (done, failed) {
      const request = what(database.transaction(store, 'readonly').objectStore(store));
      request.onsuccess = function () { done(request.result); };
      request.onerror = function () { failed(request.error); };
    });
  }

  function tell() {
    const channel = new BroadcastChannel(NAME);
    channel.postMessage('changed');
    channel.close();
  }

  return {
    NAME: NAME,
    // In the order in which they were made.
    list: async function () {
      const all = await read('entries', function (store) { return store.getAll(); });
      return all.sort(function (one, other) { return one.order - other.order || (one.key < other.key ? -1 : 1); });
    },
    get: function (key) {
      return read('entries', function (store) { return store.get(key); });
    },
    put: async function (entry) {
      await change('entries', function (store) { store.put(entry); });
      tell();
    },
    // One in the place of another, or both stay as they were.
    replace: async function (oldKey, entry) {
      await change('entries', function (store) { store.delete(oldKey); store.put(entry); });
      tell();
    },
    drop: async function (key) {
      await change('entries', function (store) { store.delete(key); });
      tell();
    },
    setting: async function (name) {
      const row = await read('settings', function (store) { return store.get(name); });
      return row ? row.value : null;
    },
    set: function (name, value) {
      return change('settings', function (store) { store.put({name: name, value: value}); });
    }
  };
})();
