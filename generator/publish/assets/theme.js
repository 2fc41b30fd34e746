// The header's labels that act as buttons on a narrow page answer to the keyboard like buttons.
(function () {
  'use strict'
  document.addEventListener('keydown', event => {
    const label = event.target.closest && event.target.closest('label[role="button"]')
    if (!label || (event.key !== 'Enter' && event.key !== ' ')) return
    event.preventDefault()
    label.click()
  })
})()
