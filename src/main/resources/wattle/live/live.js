(function () {
  'use strict';
  // What this page wants to see. It is kept for as long as its tab is open; the server keeps nothing of it.
  var KEY = 'wattle-live';
  var asked = { events: [], panel: '', branch: '', place: '', everyRow: false };
  var look = -1;
  var version = 0;
  var asking = false;
  var askAgain = false;
  var focusNext = '';
  var pressed = false;
  var held = null;
  try { asked = Object.assign(asked, JSON.parse(sessionStorage.getItem(KEY)) || {}); } catch (e) { sessionStorage.removeItem(KEY); }

  function byId(id) { return document.getElementById(id); }

  function post(path, body) {
    return fetch(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) });
  }

  function setLink(words) {
    if (byId('link').textContent !== words) { byId('link').textContent = words; }
  }

  function room(id) { return Math.floor(byId(id).clientWidth) - 2; }

  // One question at a time: what has been clicked meanwhile goes with the next.
  function ask() {
    if (asking) { askAgain = true; return; }
    asking = true;
    askAgain = false;
    var question = Object.assign({}, asked, { width: room('branches'), panelWidth: room('panels') });
    delete asked.start;
    post('look', question).then(function (answer) {
      return answer.json().then(function (told) {
        if (!answer.ok) {
          setLink('— not up to date: ' + (told.error || 'the server refuses'));
          return;
        }
        setLink('');
        if (askAgain) { return; }
        if (pressed) { held = told; } else { show(told); }
      });
    }).catch(function () {
      setLink('— not up to date: the server does not answer');
      setTimeout(ask, 2000);
    }).finally(function () {
      asking = false;
      if (askAgain) { ask(); }
    });
  }

  function nameOf(element) {
    if (!element || element === document.body) { return ''; }
    if (element.id) { return '#' + CSS.escape(element.id); }
    // By what it is about; where its line stands changes with each click.
    var names = ['data-line', 'data-place', 'data-branch', 'data-panel', 'data-start', 'data-at'].filter(function (n) { return element.hasAttribute(n); }).slice(0, 1);
    var part = element.closest('[data-part]');
    return names.length === 0 || !part ? '' : '[data-part="' + part.dataset.part + '"] ' + element.tagName.toLowerCase() + (element.classList.length ? '.' + element.classList[0] : '')
      + names.map(function (n) { return '[' + n + '="' + CSS.escape(element.getAttribute(n)) + '"]'; }).join('');
  }

  // Puts a part in place; what was focused, opened or half typed in it stays so.
  function replace(part, markup) {
    if (part.innerHTML === markup || part.told === markup) { return; }
    part.told = markup;
    var focused = part.contains(document.activeElement) ? nameOf(document.activeElement) : '';
    var typed = Array.from(part.querySelectorAll('input')).filter(function (i) { return i.value !== i.defaultValue && i.id && !i.sent; });
    var folds = {};
    part.querySelectorAll('details[id]').forEach(function (d) { folds[d.id] = d.open; });
    var scrolled = Array.from(part.querySelectorAll('.wide')).map(function (w) { return w.scrollLeft; });
    part.innerHTML = markup;
    part.querySelectorAll('details[id]').forEach(function (d) { if (d.id in folds) { d.open = folds[d.id]; } });
    part.querySelectorAll('.wide').forEach(function (w, i) { w.scrollLeft = scrolled[i] || 0; });
    typed.forEach(function (i) { var again = byId(i.id); if (again) { again.value = i.value; } });
    var again = focused && document.querySelector(focused);
    if (again) { again.focus({ preventScroll: true }); } else if (focused) { part.parentElement.querySelector('h2').focus({ preventScroll: true }); }
  }

  function show(told) {
    look = told.look;
    version = told.version;
    asked.events = told.events;
    document.title = told.title;
    byId('title').textContent = told.title;
    byId('status').textContent = told.status;
    if (byId('told').textContent !== told.told) { byId('told').textContent = told.told; }
    if (byId('trouble').textContent !== told.trouble) { byId('trouble').textContent = told.trouble; }
    byId('trouble').hidden = told.trouble === '';
    document.querySelectorAll('[data-part]').forEach(function (part) { replace(part, told.parts[part.dataset.part]); });
    keep();
    if (focusNext) {
      var next = document.querySelector(focusNext);
      focusNext = '';
      if (next) { next.focus({ preventScroll: true }); next.scrollIntoView({ block: 'nearest' }); }
    }
  }

  function keep() {
    try { sessionStorage.setItem(KEY, JSON.stringify(asked)); } catch (e) { return; } // full or forbidden: only a reload forgets
  }

  function drop(at) {
    var gone = at.split(',').filter(Boolean).map(Number);
    asked.events = asked.events.filter(function (line, i) { return gone.indexOf(i) < 0; });
  }

  function toggle(line, at, instead) {
    drop(at || instead || '');
    if (!at) { asked.events = asked.events.concat([line]); }
    ask();
  }

  function choose(what, value) {
    asked[what] = value;
    if (what === 'branch') { asked.place = ''; }
    ask();
  }

  function spot(thing, picture) {
    var part = picture.closest('[data-part]').dataset.part;
    if (part === 'panels') {
      var button = document.querySelector('[data-part="panels"] .toggle[data-line="open ' + CSS.escape(/^main /.test(thing) ? thing : 'breaker ' + thing) + '"]');
      if (button) { toggle(button.dataset.line, button.dataset.at, button.dataset.instead); }
    } else {
      focusNext = '#box-title';
      choose('place', thing);
    }
  }

  // What is being pressed is not replaced before it is let go, or the click would be lost.
  function release() {
    setTimeout(function () {
      pressed = false;
      if (held && !asking) { show(held); }
      held = null;
    });
  }
  document.addEventListener('pointerdown', function () { pressed = true; });
  document.addEventListener('pointerup', release);
  document.addEventListener('pointercancel', release);

  document.addEventListener('click', function (event) {
    var at = event.target;
    if (at.closest('.spot')) { spot(at.closest('.spot').dataset.thing, at); return; }
    var button = at.closest('button');
    if (!button || button.type === 'submit') { return; }
    if (button.classList.contains('toggle')) {
      toggle(button.dataset.line, button.dataset.at, button.dataset.instead);
    } else if (button.classList.contains('drop')) {
      drop(button.dataset.at);
      ask();
    } else if (button.dataset.start) {
      asked.start = button.dataset.start;
      asked.events = [];
      ask();
    } else if (button.dataset.place) {
      choose('place', button.getAttribute('aria-pressed') === 'true' ? '' : button.dataset.place);
    } else if (button.dataset.branch) {
      if (!button.closest('#branches')) { focusNext = '#branches-h'; }
      choose('branch', button.dataset.branch);
    } else if (button.dataset.panel) {
      focusNext = '#panels-h';
      choose('panel', button.dataset.panel);
    } else if (button.id === 'copy') {
      copy();
    }
  });

  document.addEventListener('change', function (event) {
    if (event.target.dataset.choice) { choose(event.target.dataset.choice, event.target.value); }
    if (event.target.id === 'every-row') { choose('everyRow', event.target.checked); }
  });

  document.addEventListener('submit', function (event) {
    event.preventDefault();
    var form = event.target;
    if (form.id === 'typed') {
      asked.events = asked.events.concat([form.elements.line.value]);
      form.elements.line.sent = true;
    } else {
      var figure = form.elements.figure.value.trim();
      var line = form.dataset.line + (figure && form.dataset.before ? ' ' + form.dataset.before : '') + (figure ? ' ' + figure : '');
      drop(form.dataset.at);
      asked.events = asked.events.concat([line]);
      form.elements.figure.sent = true;
    }
    ask();
  });

  // The spot of what a button is about is shown in the picture, and the other way round by the pointer itself.
  function near(event) {
    document.querySelectorAll('.spot.near').forEach(function (s) { s.classList.remove('near'); });
    var button = event.target.closest && event.target.closest('[data-part] button');
    var thing = button && (button.dataset.place || (button.dataset.line || '').replace(/^open (breaker )?/, ''));
    if (thing) {
      var found = button.closest('[data-part]').querySelector('.spot[data-thing="' + CSS.escape(thing) + '"]');
      if (found) { found.classList.add('near'); }
    }
  }
  document.addEventListener('focusin', near);
  document.addEventListener('mouseover', near);

  function copy() {
    var text = byId('block').textContent;
    function said(words) { byId('copied').textContent = words; }
    function bySelection() {
      getSelection().selectAllChildren(byId('block'));
      said('selected: press Ctrl+C');
    }
    if (navigator.clipboard) {
      navigator.clipboard.writeText(text).then(function () { said('copied'); }, bySelection);
    } else {
      bySelection();
    }
  }

  // A figure is told when it is opened, and within it each input that is told elsewhere.
  function unfold(question, into) {
    post('unfold', Object.assign({ look: look }, question)).then(function (answer) {
      if (answer.status === 410) { ask(); return; }
      return answer.text().then(function (told) {
        if (answer.ok) { into.innerHTML = told; } else { into.textContent = 'not known any more'; }
      });
    }).catch(function () { into.textContent = 'the server does not answer'; });
  }
  document.addEventListener('toggle', function (event) {
    if (!event.target.open) { return; }
    event.target.querySelectorAll('.fold:empty').forEach(function (fold) { unfold({ figure: Number(fold.dataset.figure) }, fold); });
  }, true);
  document.addEventListener('click', function (event) {
    var link = event.target.closest('.fold .steps a');
    if (!link) { return; }
    event.preventDefault();
    if (link.nextElementSibling) {
      link.nextElementSibling.remove();
      link.setAttribute('aria-expanded', 'false');
    } else {
      var told = document.createElement('div');
      link.after(told);
      link.setAttribute('aria-expanded', 'true');
      unfold({ step: Number(link.hash.slice(2)) }, told);
    }
  });

  var wait = 0;
  window.addEventListener('resize', function () { clearTimeout(wait); wait = setTimeout(ask, 200); });

  byId('every-row').checked = asked.everyRow;
  var versions = new EventSource('versions');
  versions.addEventListener('plan', function (event) {
    if (Number(event.data) !== version) { ask(); } else { setLink(''); }
  });
  versions.addEventListener('error', function () { setLink('— the server has stopped; shown is what it told last'); });
  ask();
})();
