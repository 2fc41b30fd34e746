// On a narrow page the theme opens navigation and search by labels, which no keyboard reaches.
// Each gets a button in its place; without scripts the labels stay.
(function () {
  'use strict'
  const NAMES = { __drawer: 'Navigation', __search: 'Open search' }

  function replace (label) {
    const toggle = document.getElementById(label.htmlFor)
    const button = document.createElement('button')
    button.type = 'button'
    button.className = label.className
    button.dataset.opens = toggle.id
    button.setAttribute('aria-label', NAMES[toggle.id])
    button.append(...label.childNodes)
    label.replaceWith(button)

    const tell = () => button.setAttribute('aria-expanded', String(toggle.checked))
    button.addEventListener('click', () => toggle.click())
    toggle.addEventListener('change', tell)
    tell()
    return { toggle, button }
  }

  const [navigation] = Object.keys(NAMES).map(id => replace(document.querySelector(`.md-header label[for="${id}"].md-header__button`)))
  document.addEventListener('keydown', event => {
    if (event.key !== 'Escape' || !navigation.toggle.checked) return
    navigation.toggle.click()
    navigation.button.focus()
  })
})()
