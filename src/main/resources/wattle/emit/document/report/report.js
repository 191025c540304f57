(function () {
  // Search: rows, findings, folded pictures and lines of the plan without the words are hidden, and parts in which nothing is left.
  var field = document.getElementById('search');
  var found = document.getElementById('found');
  var items = Array.from(document.querySelectorAll('tbody tr, .finding, .folded, .plan .line'));
  var texts = items.map(function (item) { return item.textContent.toLowerCase(); });
  var parts = Array.from(document.querySelectorAll('main section')).map(function (section) {
    return { section: section, hits: 0, all: 0 };
  });
  var partOf = items.map(function (item) {
    var section = item.closest('section');
    var part = parts.find(function (p) { return p.section === section; });
    part.all++;
    return part;
  });
  function search() {
    var words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
    var count = 0;
    parts.forEach(function (part) { part.hits = 0; });
    items.forEach(function (item, i) {
      var hit = words.every(function (word) { return texts[i].indexOf(word) >= 0; });
      if (item.hidden === hit) { item.hidden = !hit; }
      if (hit) { count++; partOf[i].hits++; }
    });
    parts.forEach(function (part) { part.section.hidden = words.length > 0 && part.all > 0 && part.hits === 0; });
    found.textContent = words.length ? count + ' of ' + items.length + ' lines' : '';
  }
  function showAll() { field.value = ''; search(); }
  field.addEventListener('input', search);
  document.addEventListener('keydown', function (event) {
    if (event.key === '/' && event.target !== field && !event.ctrlKey && !event.metaKey && !event.altKey) { event.preventDefault(); field.focus(); }
    if (event.key === 'Escape' && event.target === field) { showAll(); }
  });

  // A link to what a search has hidden, or to a step that stands folded, brings it into view.
  function reveal() {
    var target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!target) { return; }
    var folded = target.closest('details:not([open])');
    var hidden = target.closest('[hidden]');
    if (hidden) { showAll(); }
    if (folded) { folded.open = true; }
    if (hidden || folded) { target.scrollIntoView(); }
  }
  window.addEventListener('hashchange', reveal);
  reveal();

  // Where there is room the contents stand beside the report; elsewhere they close behind whoever followed a link.
  var contents = document.getElementById('contents');
  var roomy = window.matchMedia('(min-width: 75em)');
  function settle() { contents.open = roomy.matches; }
  roomy.addEventListener('change', settle);
  settle();
  contents.addEventListener('click', function (event) {
    if (event.target.closest('a') && !roomy.matches) { contents.open = false; }
  });

  // A figure opens to its formula and inputs, and an input to its own; without this script their links lead to where they are told.
  function inputs(step) { return Array.from(step.children).filter(function (c) { return c.localName === 'a'; }); }
  function told(link) { return document.getElementById(link.hash.slice(1)); }
  // Steps beneath one, itself included, counted only so far as it matters: what is short is told in place.
  function size(step) {
    return inputs(step).reduce(function (sum, link) { return sum > 6 ? sum : sum + size(told(link)); }, 1);
  }
  function line(step, deep) {
    var item = document.createElement('li');
    Array.from(step.childNodes).forEach(function (node) { if (node.localName !== 'a') { item.append(node.cloneNode(true)); } });
    item.querySelectorAll('small a').forEach(function (note) { note.replaceWith(told(note).textContent); });
    var links = inputs(step);
    if (!links.length) { return item; }
    if (!deep) {
      var more = document.createElement('a');
      more.href = '#' + step.id;
      more.textContent = links.length === 1 ? '1 input' : links.length + ' inputs';
      more.setAttribute('aria-expanded', 'false');
      item.append(' ', more);
    } else {
      item.append(list(step));
    }
    return item;
  }
  function list(step) {
    var all = document.createElement('ul');
    inputs(step).forEach(function (link) { all.append(line(told(link), size(told(link)) <= 6)); });
    return all;
  }
  function fill(figure) {
    var link = figure.lastElementChild;
    if (!figure.open || link.localName !== 'a') { return; }
    var steps = document.createElement('ul');
    steps.className = 'steps';
    steps.append(line(told(link), true));
    link.replaceWith(steps);
  }
  document.addEventListener('toggle', function (event) { if (event.target.matches('td details')) { fill(event.target); } }, true);
  document.addEventListener('click', function (event) {
    var link = event.target.closest('td .steps a');
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey) { return; }
    event.preventDefault();
    var open = link.getAttribute('aria-expanded') === 'true';
    if (open) {
      link.nextElementSibling.remove();
    } else {
      var opened = list(told(link));
      opened.className = 'steps';
      link.after(opened);
    }
    link.setAttribute('aria-expanded', String(!open));
  });
})();
