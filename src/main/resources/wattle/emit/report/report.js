// Search: rows, findings and lines of the plan without the words are hidden; everything else of the page stays.
(function () {
  var field = document.getElementById('search');
  var found = document.getElementById('found');
  var items = Array.from(document.querySelectorAll('tbody tr, .finding, .plan .line'));
  var texts = items.map(function (item) { return item.textContent.toLowerCase(); });
  function search() {
    var words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
    var count = 0;
    items.forEach(function (item, i) {
      var hit = words.every(function (word) { return texts[i].indexOf(word) >= 0; });
      item.hidden = !hit;
      if (hit) { count++; }
    });
    found.textContent = words.length ? count + ' of ' + items.length + ' lines' : '';
  }
  field.addEventListener('input', search);
  document.addEventListener('keydown', function (event) {
    if (event.key === '/' && event.target !== field) { event.preventDefault(); field.focus(); }
    if (event.key === 'Escape' && event.target === field) { field.value = ''; search(); }
  });
  // A link to a line that a search has hidden brings it back.
  window.addEventListener('hashchange', function () {
    var target = document.getElementById(location.hash.slice(1));
    if (target && target.hidden) { field.value = ''; search(); target.scrollIntoView(); }
  });
})();
