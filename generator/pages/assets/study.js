// Opens the working that a link leads to, and what it is folded away in: a closed <details> would hide it.
(function () {
  'use strict'
  function open () {
    const target = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)))
    if (!target) return
    let opened = false
    for (let closed = target.closest('details'); closed; closed = closed.parentElement.closest('details')) {
      opened = opened || !closed.open
      closed.open = true
    }
    if (opened) target.scrollIntoView()
  }
  addEventListener('hashchange', open)
  document.addEventListener('click', event => {
    const link = event.target.closest('a[href^="#"]')
    if (link && link.getAttribute('href') === location.hash) open()
  })
  open()
})()
