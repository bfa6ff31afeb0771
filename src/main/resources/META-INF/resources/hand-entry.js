// Makes of a form what the API takes. What is wrong with a field is said at once, with or without a signal.
self.handEntry = (function () {
  'use strict';
  const LARGEST = 10000000;

  function Wrong(field, words) { this.field = field; this.words = words; }

  function given(data, name) {
    const value = data.get(name);
    return typeof value === 'string' && value.trim() ? value.trim() : null;
  }

  // A local time of the region as an instant: what Intl says of the zone is taken off, twice because of its changes.
  function instant(local, zone) {
    const wanted = Date.parse(local + (local.length === 16 ? ':00Z' : 'Z'));
    const format = new Intl.DateTimeFormat('en-GB', {timeZone: zone, hourCycle: 'h23', year: 'numeric', month: '2-digit',
      day: '2-digit', hour: '2-digit', minute: '2-digit', second: '2-digit'});
    let guess = wanted;
    for (let i = 0; i < 2; i++) {
      const parts = {};
      format.formatToParts(guess).forEach(function (part) { parts[part.type] = part.value; });
      const shown = Date.UTC(parts.year, parts.month - 1, parts.day, parts.hour, parts.minute, parts.second);
      guess += wanted - shown;
    }
    return new Date(guess).toISOString();
  }

  function number(data, name, words) {
    const typed = given(data, name);
    if (!typed) { return null; }
    const value = Number(typed.replace(',', '.'));
    if (!/\d/.test(typed) || !Number.isFinite(value)) { throw new Wrong(name, words.noNumber); }
    return value;
  }

  function when(data, context) {
    const typed = given(data, 'at');
    if (!typed) { return {at: new Date(context.now).toISOString(), given: false}; }
    const at = instant(typed, context.zone);
    if (Date.parse(at) > context.now) { throw new Wrong('at', context.words.future); }
    return {at: at, given: true};
  }

  // Whoever skipped, answered or entered something must have said so.
  function care(form, data, act, context) {
    const at = when(data, context);
    const body = {at: at.at};
    const step = given(data, 'stepKey');
    if (step) {
      body.kind = 'task';
      body.stepKey = step;
      body.day = Number(data.get('day'));
    } else {
      body.kind = given(data, 'kind');
    }
    body.words = given(data, 'words');
    const shown = given(data, 'photographId');
    if (shown) { body.photographId = shown; }
    if (act === 'skip') {
      body.skippedBecause = given(data, 'skippedBecause');
      if (!body.skippedBecause) { throw new Wrong('skippedBecause', context.words.sayWhy); }
    } else {
      const field = form.querySelector('[name=value]');
      if (field) {
        body.value = number(data, 'value', context.words);
        if (body.value === null && (step || body.kind === 'weight')) { throw new Wrong('value', context.words.noNumber); }
      }
      if (!step && body.kind !== 'weight' && typeof body.value === 'number') { throw new Wrong('value', context.words.onlyWeight); }
      if (act === 'yes' || act === 'no') { body.answer = act === 'yes'; }
      if (!step && body.kind !== 'weight' && !body.words) { throw new Wrong('words', context.words.sayWhat); }
    }
    const low = form.dataset.low;
    const high = form.dataset.high;
    const outside = typeof body.value === 'number' && ((low && body.value < Number(low)) || (high && body.value > Number(high)));
    return {path: '/api/cases/' + form.dataset.case + '/care-entries', body: body, atGiven: at.given, listed: 'care',
      ring: Boolean(outside)};
  }

  function step(form, data, act, context) {
    const record = '/api/attendances/' + form.dataset.attendance;
    return {path: record + '/' + form.dataset.step, record: record, field: form.dataset.field,
      body: {at: new Date(context.now).toISOString()}};
  }

  function outcome(form, data, act, context) {
    const record = '/api/attendances/' + form.dataset.attendance;
    const body = {at: new Date(context.now).toISOString(), outcome: given(data, 'outcome'), passedOnTo: given(data, 'passedOnTo'),
      pouchChecked: given(data, 'pouchChecked'), youngFound: number(data, 'youngFound', context.words), words: given(data, 'words')};
    if (!body.outcome) { throw new Wrong('outcome', context.words.sayWhich); }
    if (body.outcome === 'passedOn' && !body.passedOnTo) { throw new Wrong('passedOnTo', context.words.sayWhich); }
    if (body.youngFound !== null && (!Number.isInteger(body.youngFound) || body.youngFound < 0)) {
      throw new Wrong('youngFound', context.words.noNumber);
    }
    ['carcassSigned', 'carcassMoved'].forEach(function (name) {
      const said = given(data, name);
      body[name] = said === null ? null : said === 'yes';
    });
    return {path: record + '/outcome', record: record, field: 'endedAt', body: body};
  }

  function settle(form, data, act, context) {
    const record = '/api/hand-overs/' + form.dataset.handOver;
    const body = {at: new Date(context.now).toISOString()};
    if (act === 'take') { return {path: record + '/acceptance', record: record, field: 'acceptedAt', body: body}; }
    body.reason = given(data, 'reason');
    if (!body.reason) { throw new Wrong('reason', context.words.sayWhy); }
    return {path: record + '/refusal', record: record, field: 'refusedAt', body: body};
  }

  function offer(form, data, act, context) {
    const organisation = given(data, 'organisationId');
    if (!organisation) { throw new Wrong('organisationId', context.words.sayWhich); }
    return {path: '/api/cases/' + form.dataset.case + '/hand-overs',
      body: {taker: {organisationId: organisation}, at: new Date(context.now).toISOString()}};
  }

  function photograph(form, data, act, context) {
    const file = data.get('picture');
    if (!file || !file.size || file.size > LARGEST || !/^image\/(jpeg|png)$/.test(file.type)) {
      throw new Wrong('picture', context.words.wrongFile);
    }
    return {path: form.dataset.path, body: {mediaType: file.type, caption: given(data, 'caption')}, file: file, listed: 'photograph'};
  }

  const kinds = {care: care, step: step, outcome: outcome, settle: settle, offer: offer, photograph: photograph};

  return {
    Wrong: Wrong,
    // context: {now, zone, words}; throws a Wrong that names the field.
    of: function (form, act, context) {
      return kinds[form.dataset.send](form, new FormData(form), act, context);
    },
    // What was typed, to be typed on.
    fields: function (form) {
      const fields = {};
      new FormData(form).forEach(function (value, name) {
        if (typeof value === 'string' && !/^(csrf|key|act)$/.test(name)) { fields[name] = value; }
      });
      return fields;
    }
  };
})();
