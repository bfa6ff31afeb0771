// Sends what waits on this telephone, in order, as the account that entered it and as nobody else. Pages and their worker
// share it; a lock lets one of them send at a time, so that nothing goes out twice at once.
self.handSend = (function () {
  'use strict';
  const store = self.handStore;
  const LOCK = 'culvert-hand-send';
  const DAY = 24 * 3600 * 1000;
  // The server knows a key for 24 hours. Whatever may have arrived longer ago is looked up before it is sent again.
  const KEY_IS_KNOWN = DAY - 3600 * 1000;
  const SENT_ARE_SHOWN = DAY / 2;
  const PATIENCE = 30000;
  const CLOCKS_AGREE = 3000;
  const TRIES_OF_A_TAG = 4;

  // No answer came, or one that says "later".
  function Later(reason) { this.reason = reason; }
  // The server took the matter in hand and said no.
  function Refused(problem) { this.problem = problem; }

  async function ask(path, options, patience) {
    let response;
    try {
      response = await fetch(path, Object.assign({
        cache: 'no-store', credentials: 'same-origin', redirect: 'error', signal: AbortSignal.timeout(patience || PATIENCE)
      }, options));
    } catch (gone) {
      throw new Later('noSignal');
    }
    if (response.status === 401) { throw new Later('signedOut'); }
    if (response.status >= 500 || response.status === 429 || response.status === 408) { throw new Later('noSignal'); }
    return response;
  }

  async function problem(response) {
    try {
      return Object.assign({status: response.status}, await response.json());
    } catch (unreadable) {
      return {status: response.status, title: response.statusText, type: ''};
    }
  }

  // Who is signed in now, with the secret of that session and no other, and the server's clock.
  async function standing() {
    // Whoever signed out without a signal is signed in still, as far as the server knows.
    if (await store.setting('signOut')) { throw new Later('signedOut'); }
    const asked = Date.now();
    const response = await ask('/hand/standing', {headers: {Accept: 'application/json'}});
    if (response.status === 403) { return {accountId: null}; }
    if (!response.ok) { throw new Later('noSignal'); }
    let told;
    try { told = await response.json(); } catch (cut) { throw new Later('noSignal'); }
    told.offset = Math.round(Date.parse(told.now) - (asked + Date.now()) / 2);
    await store.set('offset', told.offset);
    return told;
  }

  function json(value) { return JSON.stringify(value); }

  async function base64(blob) {
    const bytes = new Uint8Array(await blob.arrayBuffer());
    let text = '';
    for (let at = 0; at < bytes.length; at += 0x8000) {
      text += String.fromCharCode.apply(null, bytes.subarray(at, at + 0x8000));
    }
    return btoa(text);
  }

  async function sha256(blob) {
    const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', await blob.arrayBuffer()));
    return Array.from(digest, function (byte) { return byte.toString(16).padStart(2, '0'); }).join('');
  }

  function sameInstant(one, other) {
    return one && other && Date.parse(one) === Date.parse(other);
  }

  // Whether the server has it already, found by what it holds: for what may have arrived when its key is forgotten.
  async function isThere(entry) {
    if (!entry.listed) { return false; }
    const response = await ask(entry.path + '?limit=200', {headers: {Accept: 'application/json'}});
    if (!response.ok) { throw new Refused(await problem(response)); }
    const items = (await response.json()).items;
    if (entry.listed === 'photograph') {
      const digest = await sha256(entry.file);
      return items.some(function (one) { return one.sha256 === digest; });
    }
    return items.some(function (one) {
      return sameInstant(one.at, entry.body.at) && one.kind === (entry.body.kind || 'task')
          && (one.stepKey || null) === (entry.body.stepKey || null) && (one.words || null) === (entry.body.words || null);
    });
  }

  async function post(entry, secret, tag) {
    const headers = {
      'Content-Type': 'application/json', Accept: 'application/json', 'Idempotency-Key': entry.key, 'X-CSRF-Token': secret
    };
    if (tag) { headers['If-Match'] = tag; }
    const body = entry.file ? Object.assign({}, entry.body, {content: await base64(entry.file)}) : entry.body;
    // One bar of signal carries some ten kilobytes a second.
    const response = await ask(entry.path, {method: entry.method, headers: headers, body: json(body)},
        PATIENCE + (entry.file ? entry.file.size / 10 : 0));
    if (response.ok) {
      // The answer was cut off, but it was one of success: it was taken.
      try { return await response.json(); } catch (cut) { return {}; }
    }
    const told = await problem(response);
    const type = String(told.type || '').replace(/^.*\//, '');
    if (type === 'still-running') { throw new Later('noSignal'); }
    if (type === 'forged' || type === 'not-signed-in') { throw new Later('signedOut'); }
    if (type === 'stale' && tag) { return null; }
    throw new Refused(told);
  }

  // A step of a record: entered as long as nobody has entered it before, and only onto the record as it is.
  async function step(entry, secret) {
    for (let tries = 0; tries < TRIES_OF_A_TAG; tries++) {
      const response = await ask(entry.record, {headers: {Accept: 'application/json'}});
      if (!response.ok) { throw new Refused(await problem(response)); }
      const before = (await response.json())[entry.field];
      if (sameInstant(before, entry.body.at)) { return null; }
      if (before) { throw new Refused({status: 409, type: 'before', at: before}); }
      const answer = await post(entry, secret, response.headers.get('ETag'));
      if (answer) { return answer; }
    }
    throw new Later('noSignal');
  }

  async function send(entry, told) {
    const first = !entry.triedAt;
    if (first && entry.body.at && !entry.atGiven) {
      // The telephone's clock was perhaps not known to be wrong when this was entered; seconds are the way of an answer.
      const wrong = told.offset - entry.offset;
      const at = Date.parse(entry.body.at) + (Math.abs(wrong) > CLOCKS_AGREE ? wrong : 0);
      entry.body.at = new Date(Math.min(at, Date.parse(told.now))).toISOString();
      entry.offset = told.offset;
    }
    const sureOfKey = first || Date.now() - entry.triedAt < KEY_IS_KNOWN;
    entry.triedAt = entry.triedAt || Date.now();
    entry.tries = (entry.tries || 0) + 1;
    entry.state = 'sending';
    await store.put(entry);
    try {
      if (sureOfKey || !await isThere(entry)) {
        const answer = entry.record ? await step(entry, told.formSecret) : await post(entry, told.formSecret, null);
        // What a vet wants to hear of.
        if (answer && (answer.flags || []).length) { entry.ring = true; }
      }
      entry.state = 'sent';
      entry.sentAt = Date.now();
      entry.problem = null;
      entry.fields = null;
      entry.file = null;
    } catch (why) {
      if (why instanceof Refused) {
        entry.state = 'refused';
        entry.problem = why.problem;
      } else {
        entry.state = 'kept';
        await store.put(entry);
        throw why;
      }
    }
    await store.put(entry);
  }

  async function round() {
    const told = await standing();
    let sent = 0;
    const done = new Set();
    for (;;) {
      const all = await store.list();
      const next = all.find(function (entry) {
        return entry.accountId === told.accountId && (entry.state === 'kept' || entry.state === 'sending') && !done.has(entry.key);
      });
      if (!next) { break; }
      done.add(next.key);
      await send(next, told);
      sent++;
    }
    for (const entry of await store.list()) {
      if (entry.state === 'sent' && Date.now() - entry.sentAt > SENT_ARE_SHOWN) { await store.drop(entry.key); }
    }
    return {accountId: told.accountId, sent: sent};
  }

  return {
    // What came of it: {accountId, sent}, or {failed: 'noSignal' | 'signedOut'}.
    run: function () {
      return navigator.locks.request(LOCK, async function () {
        try {
          return await round();
        } catch (why) {
          if (why instanceof Later) {
            // A page that was closed in the middle leaves one behind that nobody sends now.
            for (const entry of await store.list()) {
              if (entry.state === 'sending') { await store.put(Object.assign(entry, {state: 'kept'})); }
            }
            return {failed: why.reason};
          }
          throw why;
        }
      });
    }
  };
})();
