// Opens the working that a link leads to: a closed <details> would hide it.
(function () {
  'use strict'
  function open () {
    const target = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)))
    if (!target) return
    const closed = target.closest('details')
    if (closed && !closed.open) {
      closed.open = true
      target.scrollIntoView()
    }
  }
  addEventListener('hashchange', open)
  document.addEventListener('click', event => {
    const link = event.target.closest('a[href^="#"]')
    if (link && link.getAttribute('href') === location.hash) open()
  })
  open()
})()
