// Keeps the pages of the account that is signed in for when there is no signal, and sends what waits. Pages are kept for one
// account alone: they go when it signs out, and when anybody signs in.
importScripts('/hand-store.js', '/hand-send.js');
(function () {
  'use strict';
  const store = self.handStore;
  const SHELL = 'hand-shell-1';
  const PAGES = 'hand-pages-';
  const OFFLINE = '/hand/offline';
  const SIGNED_OUT = '/hand/signed-out';
  const FILES = ['/culvert.css', '/hand.css', '/hand-store.js', '/hand-send.js', '/hand-entry.js', '/hand.js'];
  const LONGEST_WAIT = 8000;

  self.addEventListener('install', function (event) {
    self.skipWaiting();
    event.waitUntil(caches.open(SHELL).then(function (shell) { return shell.addAll(FILES.concat(OFFLINE, SIGNED_OUT)); }));
  });

  self.addEventListener('activate', function (event) {
    event.waitUntil(caches.keys().then(function (names) {
      return Promise.all(names.filter(function (name) { return name.startsWith('hand-shell-') && name !== SHELL; })
          .map(function (name) { return caches.delete(name); }));
    }).then(function () { return self.clients.claim(); }));
  });

  function isPage(path) { return path === '/hand' || path.startsWith('/hand/'); }

  function ofShell(path) { return caches.open(SHELL).then(function (shell) { return shell.match(path, {ignoreVary: true}); }); }

  // Nobody's pages are here any more. What is still on its way was asked for by whoever is gone.
  async function forget() {
    await store.set('generation', (await store.setting('generation') || 0) + 1);
    await store.set('account', null);
    const names = await caches.keys();
    await Promise.all(names.filter(function (name) { return name.startsWith(PAGES); })
        .map(function (name) { return caches.delete(name); }));
  }

  async function remember(path, response, generation) {
    const account = response.headers.get('Culvert-Account');
    if (!response.ok || !account || generation !== (await store.setting('generation') || 0)) { return; }
    const before = await store.setting('account');
    if (account !== before) {
      if (before) { await forget(); }
      await store.set('account', account);
    }
    const pages = await caches.open(PAGES + account);
    await pages.put(path, response);
  }

  async function find(path) {
    const account = await store.setting('account');
    if (!account) { return null; }
    const pages = await caches.open(PAGES + account);
    return pages.match(path, {ignoreVary: true});
  }

  // Whoever signed out without a signal is signed out at the server first of all.
  async function settleSignOut() {
    const body = await store.setting('signOut');
    if (!body) { return true; }
    try {
      await fetch('/sign-out', {method: 'POST', body: body, redirect: 'manual', credentials: 'same-origin',
        headers: {'Content-Type': 'application/x-www-form-urlencoded'}});
    } catch (gone) {
      return false;
    }
    await store.set('signOut', null);
    return true;
  }

  async function signOut(request) {
    const body = await request.clone().text();
    await forget();
    try {
      return await fetch(request);
    } catch (gone) {
      await store.set('signOut', body);
      return ofShell(SIGNED_OUT);
    }
  }

  async function signIn(request) {
    const response = await fetch(request);
    if (response.type === 'opaqueredirect') { await forget(); }
    return response;
  }

  async function page(event, path) {
    const generation = await store.setting('generation') || 0;
    const cached = await find(path);
    const network = fetch(event.request).then(async function (response) {
      await remember(path, response.clone(), generation);
      return response;
    });
    try {
      const slow = new Promise(function (done) { setTimeout(done, LONGEST_WAIT, null); });
      const response = await (cached ? Promise.race([network, slow]) : network);
      // A proxy that cannot reach its server answers so.
      if (response && !(cached && response.status >= 502 && response.status <= 504)) { return response; }
    } catch (gone) {
      return cached || ofShell(OFFLINE);
    }
    event.waitUntil(network.catch(function () { return null; }));
    return cached;
  }

  async function navigate(event) {
    const request = event.request;
    const path = new URL(request.url).pathname;
    if (request.method === 'POST' && path === '/sign-out') { return signOut(request); }
    if (!await settleSignOut() && isPage(path)) { return ofShell(SIGNED_OUT); }
    if (request.method === 'POST' && path === '/sign-in') { return signIn(request); }
    if (request.method === 'GET' && isPage(path)) { return page(event, path); }
    try {
      return await fetch(request);
    } catch (gone) {
      if (isPage(path)) { return ofShell(OFFLINE); }
      throw gone;
    }
  }

  async function file(request, path) {
    try {
      const response = await fetch(request);
      if (response.ok) { (await caches.open(SHELL)).put(path, response.clone()); }
      return response;
    } catch (gone) {
      const kept = await ofShell(path);
      if (kept) { return kept; }
      throw gone;
    }
  }

  self.addEventListener('fetch', function (event) {
    const url = new URL(event.request.url);
    if (url.origin !== self.location.origin) { return; }
    if (event.request.mode === 'navigate') {
      event.respondWith(navigate(event));
    } else if (event.request.method === 'GET' && FILES.includes(url.pathname)) {
      event.respondWith(file(event.request, url.pathname));
    }
  });

  async function keep(paths) {
    const generation = await store.setting('generation') || 0;
    for (const path of paths.filter(isPage)) {
      try {
        await remember(path, await fetch(path, {headers: {Accept: 'text/html'}, redirect: 'manual', cache: 'no-store'}), generation);
      } catch (gone) {
        return;
      }
    }
  }

  self.addEventListener('message', function (event) {
    if (event.data && Array.isArray(event.data.keep)) { event.waitUntil(keep(event.data.keep)); }
  });

  // Where a browser wakes us when the signal is back, even with the page closed.
  self.addEventListener('sync', function (event) {
    if (event.tag === store.NAME) {
      event.waitUntil(settleSignOut().then(function () { return self.handSend.run(); }).then(function (came) {
        if (came.failed === 'noSignal') { throw new Error('no signal yet'); }
      }));
    }
  });
})();
